#pragma once

#include "rillwatt/plan/lamp_rows.hpp"
#include "rillwatt/purchase/bill.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// One record for each lamp: its volts in three cases, window, margin, amperes, drop. Volts and amperes are
/// plain numbers.
std::string lamps_csv(const Site& site, const std::vector<LampRow>& lamps);

/// One record for each cable piece: tag, run, cable, ends, length in metres and in the site's unit, and the
/// spool it is cut from.
std::string cut_list_csv(const Site& site, const CutPlan& cuts);

} // namespace rillwatt
