#include "rillwatt/limits/run_share.hpp"

namespace rillwatt {

std::vector<RunShare> run_shares(const Site& site, const SiteCircuits& circuits, const CaseResult& result) {
    std::vector<RunShare> shares;
    if (result.runs.empty()) return shares;
    shares.reserve(result.runs.size());
    std::vector<std::size_t> place(site.runs.size(), 0);
    for (const RunResult& run : result.runs) {
        place[run.run] = shares.size();
        const TransformerType& type = *circuits.transformers[run.transformer].type;
        shares.push_back({&run, nullptr, against_output(type, run.amps)});
    }
    for (const SegmentResult& segment : result.segments) {
        RunShare& share = shares[place[segment.run]];
        const Standing standing = against_ampacity(*segment.type, segment.amps);
        if (standing.share() <= share.standing.share()) continue;
        share.segment = &segment;
        share.standing = standing;
    }
    return shares;
}

} // namespace rillwatt
