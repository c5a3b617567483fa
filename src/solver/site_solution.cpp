#include "rillwatt/solver/site_solution.hpp"

#include "rillwatt/solver/network.hpp"

#include "circuit_result.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

/// Hottest a conductor is taken to be in the weak case unless the site says hotter: the printed column of
/// NEC chapter 9 Table 8.
constexpr Celsius weak_conductor{75};

void solve_loaded(const Site& site, const TransformerCircuit& circuit, Workspace& workspace,
                  NetworkSolution& solution, CaseResult& result) {
    const Network network = make_network(circuit, result.conditions);
    if (solve(network, workspace, solution)) {
        add_circuit_result(site, circuit, network, solution, result);
        return;
    }
    result.solved = false;
    // Without lamps only links of no resistance between different taps come here: there is no lamp to name.
    if (!network.lamps.empty()) result.unsolved.push_back(no_operating_point(circuit, network));
}

/// A fixture has one lamp: each is put at its fixture's place rather than compared with others.
std::vector<LampResult> in_file_order(const std::vector<LampResult>& lamps, std::size_t fixtures) {
    std::vector<const LampResult*> of_fixture(fixtures, nullptr);
    for (const LampResult& lamp : lamps)
        of_fixture[lamp.fixture] = &lamp;
    std::vector<LampResult> ordered;
    ordered.reserve(lamps.size());
    for (const LampResult* lamp : of_fixture)
        if (lamp != nullptr) ordered.push_back(*lamp);
    return ordered;
}

void reserve_results(const Site& site, CaseResult& result) {
    result.lamps.reserve(site.fixtures.size());
    if (result.conditions.loaded)
        result.segments.reserve(site.splices.size() + site.fixtures.size() + site.links.size());
}

CaseResult solve_case(const Site& site, const SiteCircuits& circuits, const OperatingCase& conditions) {
    CaseResult result;
    result.conditions = conditions;
    reserve_results(site, result);
    Workspace workspace;
    NetworkSolution solution;
    for (const TransformerCircuit& circuit : circuits.transformers) {
        if (!circuit.complete()) continue;
        if (conditions.loaded)
            solve_loaded(site, circuit, workspace, solution, result);
        else
            add_open_circuit_result(circuit, make_network(circuit, conditions), result);
    }
    std::sort(result.runs.begin(), result.runs.end(),
              [](const RunResult& a, const RunResult& b) { return a.run < b.run; });
    result.lamps = in_file_order(result.lamps, site.fixtures.size());
    return result;
}

} // namespace

std::vector<OperatingCase> operating_cases(const SiteSettings& settings) {
    const Celsius normal = settings.conductor_temperature;
    return {
        {"nominal", 1, normal, true},
        {"weak", 1 - settings.supply_band, std::max(normal, weak_conductor), true},
        {"strong", 1 + settings.supply_band, normal, false},
    };
}

SiteSolution solve_site(const Site& site, const SiteCircuits& circuits) {
    SiteSolution solution;
    for (const OperatingCase& conditions : operating_cases(site.settings))
        solution.cases.push_back(solve_case(site, circuits, conditions));
    return solution;
}

} // namespace rillwatt
