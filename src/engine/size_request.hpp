#pragma once

#include "rillwatt/engine/answer.hpp"
#include "rillwatt/search/size_options.hpp"

#include <string>

namespace rillwatt {

/// What a request asks of sizing or headroom.
SizeOptions size_options(const Request& request);

/// What is wrong with that: options that contradict each other, a number out of range. Empty: nothing.
std::string option_fault(const Request& request, const SizeOptions& options);

} // namespace rillwatt
