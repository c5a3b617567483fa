#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/exchange/json_writer.hpp"

#include <string>

namespace rillwatt {

/// The light object of a site, for programs: SI units, full precision. The assessment must have light; of its
/// findings those about light are written.
std::string light_json(const Assessment& assessment);

/// The same object written where the writer stands, for objects that carry one.
void write_light(JsonWriter& json, const Assessment& assessment);

} // namespace rillwatt
