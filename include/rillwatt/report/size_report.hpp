#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/report/text_style.hpp"
#include "rillwatt/sizing/bill.hpp"
#include "rillwatt/sizing/headroom.hpp"
#include "rillwatt/sizing/size.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// A finished sizing with the site before and after it.
struct SizeReport {
    SizeResult result;
    SizeOptions options;
    Assessment before;
    Assessment after; ///< with the choices in place
    Bill bill;        ///< of the site with the choices in place
};

/// What was chosen and why, the bill, before and after, for people.
std::string size_text(const SizeReport& report, const TextStyle& style);

/// The size object of the results contract.
std::string size_json(const SizeReport& report);

/// What every place can still carry, for people.
std::string headroom_text(const std::vector<Headroom>& rooms, const Assessment& assessment,
                          const SizeOptions& options, const TextStyle& style);

/// The same for programs: `{ "schema", "command": "headroom", "headroom": [ { "part", "transformer",
/// "broken", "more_va", "breaks", "what", "rule" } ] }`. `more_va` is null where nothing breaks.
std::string headroom_json(const std::vector<Headroom>& rooms, const Assessment& assessment);

} // namespace rillwatt
