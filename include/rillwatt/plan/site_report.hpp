#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/plan/electrician_sheet.hpp"
#include "rillwatt/plan/lamp_rows.hpp"
#include "rillwatt/plan/load_site.hpp"
#include "rillwatt/plan/run_loads.hpp"
#include "rillwatt/plan/solved_circuit.hpp"
#include "rillwatt/purchase/bill.hpp"

#include <optional>
#include <vector>

namespace rillwatt {

/// The figures that a reader looks for first.
struct SiteSummary {
    std::optional<std::size_t> worst_lamp; ///< place in SiteReport::lamps: nearest to an end of its window
    std::optional<std::size_t> fullest;    ///< place among the nominal case's transformers
    Metres cable;                          ///< of all pieces
};

/// All that the files of a site's report say. What lies beside it points into the assessment.
struct SiteReport {
    Assessment assessment;
    std::vector<LampRow> lamps;
    std::vector<RunLoad> run_loads;
    std::vector<SolvedCircuit> circuits; ///< nominal case
    CutPlan cuts;
    Bill bill;
    ElectricianSheet sheet;
    SiteSummary summary;
};

/// Everything else that is computed from an assessment.
SiteReport report_site(Assessment assessment);

/// Computes a loaded site with its light and all that its report says.
LoadResult<SiteReport> report_site(const LoadedSite& loaded, FileSource& files);

} // namespace rillwatt
