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

void sort_into_file_order(CaseResult& result) {
    const auto earlier_run = [](const RunResult& a, const RunResult& b) { return a.run < b.run; };
    const auto earlier_lamp = [](const LampResult& a, const LampResult& b) { return a.fixture < b.fixture; };
    std::sort(result.runs.begin(), result.runs.end(), earlier_run);
    // Thousands of lamps usually stand in the order in which they are fed.
    if (!std::is_sorted(result.lamps.begin(), result.lamps.end(), earlier_lamp))
        std::sort(result.lamps.begin(), result.lamps.end(), earlier_lamp);
}

CaseResult solve_case(const Site& site, const SiteCircuits& circuits, const OperatingCase& conditions) {
    CaseResult result;
    result.conditions = conditions;
    Workspace workspace;
    NetworkSolution solution;
    for (const TransformerCircuit& circuit : circuits.transformers) {
        if (!circuit.complete()) continue;
        if (conditions.loaded)
            solve_loaded(site, circuit, workspace, solution, result);
        else
            add_open_circuit_result(circuit, make_network(circuit, conditions), result);
    }
    sort_into_file_order(result);
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
