#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/exchange/json_writer.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// The check object of a site, for programs: SI units, full precision.
std::string check_json(const Assessment& assessment);

/// The same object written where the writer stands, for objects that carry one.
void write_check(JsonWriter& json, const Assessment& assessment);

/// An array of findings.
void write_findings(JsonWriter& json, const std::vector<Finding>& findings);

} // namespace rillwatt
