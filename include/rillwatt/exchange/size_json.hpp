#pragma once

#include "rillwatt/plan/size_report.hpp"
#include "rillwatt/sizing/headroom.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// The size object of the results contract.
std::string size_json(const SizeReport& report);

/// What every place can still carry: `{ "schema", "command": "headroom", "headroom": [ { "part",
/// "transformer", "broken", "more_va", "breaks", "what", "rule" } ] }`. `more_va` is null where nothing
/// breaks.
std::string headroom_json(const std::vector<Headroom>& rooms, const Assessment& assessment);

} // namespace rillwatt
