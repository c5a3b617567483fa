#include "rillwatt/sizing/weak_supply.hpp"

#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/limits/standing.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace rillwatt {

namespace {

constexpr double steps_per_volt = 10;

Volts next_step(Volts margin) {
    return Volts(std::floor(margin.value() * steps_per_volt + 1 + 1e-9) / steps_per_volt);
}

Volts in_whole_steps(Volts margin) {
    return Volts(std::ceil(margin.value() * steps_per_volt - 1e-9) / steps_per_volt);
}

/// What a sized site lacks on a weak supply: nothing, or a wider margin.
std::optional<Volts> lacking(const Site& site, const Catalog& catalog, Volts margin) {
    const SiteLengths lengths = measure_lengths(site);
    const LoadResult<SiteCircuits> circuits = build_circuits(site, catalog, lengths);
    if (!circuits) return std::nullopt; // told by whoever assesses the site
    const SiteSolution solution = solve_site(site, *circuits.value);
    const std::optional<Volts> missed = margin_missed(solution, site, catalog);
    return missed || !solution.weak().solved ? std::optional(next_step(margin)) : std::nullopt;
}

} // namespace

std::optional<Volts> margin_missed(const SiteSolution& solution, const Site& site, const Catalog& catalog) {
    std::map<std::size_t, Volts> nominal;
    for (const LampResult& lamp : solution.nominal().lamps)
        nominal[lamp.fixture] = lamp.volts;
    std::optional<Volts> missed;
    for (const LampResult& lamp : solution.weak().lamps) {
        const FixtureType* type = find_entry(catalog.fixtures, site.fixtures[lamp.fixture].model);
        const auto before = nominal.find(lamp.fixture);
        if (type == nullptr || before == nominal.end() || !against_low_end(*type, lamp.volts).broken())
            continue;
        if (against_low_end(*type, before->second).broken()) continue;
        missed = std::max(missed.value_or(Volts(0)), in_whole_steps(before->second - lamp.volts));
    }
    return missed;
}

LoadResult<WeakSupplySizing> size_for_weak_supply(const std::shared_ptr<const Site>& site,
                                                  const std::shared_ptr<const Catalog>& catalog,
                                                  const SizeOptions& options) {
    SizeOptions now = options;
    now.strong_supply = true;
    for (;;) {
        LoadResult<SizeResult> sized = size_site(site, catalog, now);
        if (!sized) return {std::nullopt, std::move(sized.errors)};
        const std::vector<std::string>& beyond = sized.value->beyond_strong;
        if (!beyond.empty() && now.low_margin > options.low_margin) {
            // the margin came from taps that do not do: what remains to be chosen from may need less
            now.beyond_strong.insert(now.beyond_strong.end(), beyond.begin(), beyond.end());
            now.low_margin = options.low_margin;
            continue;
        }
        const bool whole = sized.value->status != SizeStatus::infeasible;
        const std::optional<Volts> wider =
            whole ? lacking(*sized.value->sized, *catalog, now.above_low_end()) : std::nullopt;
        if (!wider) {
            // other choices may do with less at some lamps
            if (sized.value->infeasible && now.low_margin > options.low_margin)
                sized.value->infeasible->proven = false;
            return {WeakSupplySizing{std::move(*sized.value), now.above_low_end()}, {}};
        }
        now.low_margin = *wider;
    }
}

} // namespace rillwatt
