#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>

namespace rillwatt {

/// Every transformer's circuit drawn as a tree with lengths, cable, volts and amperes of the nominal case. A
/// part that is the only one its feed point feeds stands below it behind an arrow; only forks are indented.
void append_circuit_trees(std::string& out, const Assessment& assessment, const TextStyle& style);

} // namespace rillwatt
