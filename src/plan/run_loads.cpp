#include "rillwatt/plan/run_loads.hpp"

#include <fmt/format.h>

namespace rillwatt {

std::vector<RunLoad> run_loads(const Assessment& assessment) {
    std::vector<RunLoad> loads;
    for (const RunShare& share :
         run_shares(*assessment.site, assessment.circuits, assessment.solution.nominal())) {
        const SegmentResult* segment = share.segment;
        std::string where = segment == nullptr ? "supply"
                            : segment->link.empty()
                                ? fmt::format("{} to {}", segment->cable, segment->to)
                                : fmt::format("link {}, {}", segment->link, segment->cable);
        loads.push_back({share.run, Amperes(share.standing.value), Amperes(share.standing.limit),
                         std::move(where), share.standing.share(), share.standing.broken()});
    }
    return loads;
}

} // namespace rillwatt
