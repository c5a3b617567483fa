#include "run_loads.hpp"

#include <cmath>

namespace rillwatt {

namespace {

void offer(RunLoad& load, Amperes amps, Amperes limit, const std::string& where) {
    const double loading = limit.value() > 0 ? amps / limit : 0;
    if (!load.where.empty() && loading <= load.loading) return;
    load.amps = amps;
    load.limit = limit;
    load.loading = loading;
    load.where = where;
}

} // namespace

std::vector<RunLoad> run_loads(const Assessment& assessment) {
    const CaseResult& nominal = assessment.solution.nominal();
    std::vector<RunLoad> loads;
    std::vector<std::size_t> place(assessment.site->runs.size(), 0);
    for (const RunResult& run : nominal.runs) {
        place[run.run] = loads.size();
        loads.push_back({&run, {}, {}, "", 0});
        const TransformerType* type = assessment.circuits.transformers[run.transformer].type;
        if (type != nullptr) offer(loads.back(), run.amps, type->secondary_limit, "supply");
    }
    for (const SegmentResult& segment : nominal.segments) {
        const CableType* cable = find_entry(assessment.catalog->cables, segment.cable);
        if (cable == nullptr || loads.empty()) continue;
        const Amperes amps(std::abs(segment.amps.value()));
        offer(loads[place[segment.run]], amps, cable->ampacity, segment.cable + " to " + segment.to);
    }
    return loads;
}

} // namespace rillwatt
