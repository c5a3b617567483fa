#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/plan/load_site.hpp"
#include "rillwatt/plan/site_update.hpp"
#include "rillwatt/purchase/bill.hpp"
#include "rillwatt/sizing/size.hpp"

namespace rillwatt {

/// A finished sizing with the site before and after it.
struct SizeReport {
    SizeResult result;
    SizeOptions options;
    Assessment before;
    Assessment after; ///< with the choices in place
    Bill bill;        ///< of the site with the choices in place
};

/// Sizes a site and computes it with the choices in place; for a weak supply the options of the report hold
/// the margin that was needed.
LoadResult<SizeReport> report_sizing(const LoadedSite& loaded, SizeOptions options, bool weak_supply);

/// Whether the same rule found fault with the same part before anything was chosen.
bool found_before(const SizeReport& report, const Finding& finding);

/// The errors and warnings of the site with the choices in place, those that it did not have before first.
/// Empty where nothing works: there are no choices then.
std::vector<Finding> warned_of(const SizeReport& report);

/// The choices as they go into the site file.
SiteUpdate update_with_choices(const LoadedSite& loaded, const std::vector<SizeChoice>& choices);

} // namespace rillwatt
