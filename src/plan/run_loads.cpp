#include "rillwatt/plan/run_loads.hpp"

#include <fmt/format.h>

#include <cmath>

namespace rillwatt {

namespace {

/// Whether a limit is nearer than those before it; where it is, the caller names it.
bool takes(RunLoad& load, Amperes amps, Amperes limit) {
    const double loading = limit.value() > 0 ? amps / limit : 0;
    if (!load.where.empty() && loading <= load.loading) return false;
    load.amps = amps;
    load.limit = limit;
    load.loading = loading;
    return true;
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
        if (type != nullptr && takes(loads.back(), run.amps, type->secondary_limit))
            loads.back().where = "supply";
    }
    for (const SegmentResult& segment : nominal.segments) {
        if (loads.empty()) continue;
        const Amperes amps(std::abs(segment.amps.value()));
        RunLoad& load = loads[place[segment.run]];
        if (takes(load, amps, segment.type->ampacity))
            load.where = fmt::format("{} to {}", segment.cable, segment.to);
    }
    return loads;
}

} // namespace rillwatt
