#include "rillwatt/solver/site_solution.hpp"

#include "rillwatt/solver/network.hpp"

#include "circuit_result.hpp"
#include "node_results.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

/// Hottest a conductor is taken to be in the weak case unless the site says hotter: the printed column of
/// NEC chapter 9 Table 8.
constexpr Celsius weak_conductor{75};

/// Solves one circuit after the other in one case after the other, in memory that serves all of them.
class CaseSolver {
  public:
    CaseSolver(const Site& site, std::vector<CaseResult>& cases) : site_(site), cases_(cases) {}

    /// The circuit of that place among SiteCircuits::transformers.
    void solve_circuit(const TransformerCircuit& circuit, std::size_t place) {
        for (std::size_t i = 0; i < cases_.size(); ++i) {
            CaseResult& result = cases_[i];
            if (i == 0)
                make_network(circuit, result.conditions, network_);
            else
                set_conditions(network_, circuit, result.conditions);
            if (result.conditions.loaded)
                solve_loaded(circuit, result, result.circuits[place]);
            else
                add_open_circuit_result(circuit, network_, result, result.circuits[place]);
        }
    }

  private:
    void solve_loaded(const TransformerCircuit& circuit, CaseResult& result, CircuitResult& beside) {
        if (solve(network_, workspace_, solution_)) {
            add_circuit_result(site_, circuit, network_, solution_, result, beside);
            return;
        }
        result.solved = false;
        // Without lamps only links of no resistance between different taps come here: there is no lamp to
        // name.
        if (!network_.lamps.empty()) result.unsolved.push_back(no_operating_point(circuit, network_));
    }

    const Site& site_;
    std::vector<CaseResult>& cases_;
    Network network_;
    Workspace workspace_;
    NetworkSolution solution_;
};

/// A fixture has one lamp: each is put at its fixture's place rather than compared with others.
std::vector<LampResult> in_file_order(std::vector<LampResult> lamps, std::size_t fixtures) {
    const auto before = [](const LampResult& a, const LampResult& b) { return a.fixture < b.fixture; };
    if (std::is_sorted(lamps.begin(), lamps.end(), before)) return lamps;
    std::vector<const LampResult*> of_fixture(fixtures, nullptr);
    for (const LampResult& lamp : lamps)
        of_fixture[lamp.fixture] = &lamp;
    std::vector<LampResult> ordered;
    ordered.reserve(lamps.size());
    for (const LampResult* lamp : of_fixture)
        if (lamp != nullptr) ordered.push_back(*lamp);
    return ordered;
}

void reserve_results(const Site& site, const SiteCircuits& circuits, CaseResult& result) {
    result.circuits.resize(circuits.transformers.size());
    result.lamps.reserve(site.fixtures.size());
    if (result.conditions.loaded)
        result.segments.reserve(site.splices.size() + site.fixtures.size() + site.links.size());
}

void put_in_file_order(const Site& site, CaseResult& result) {
    std::sort(result.runs.begin(), result.runs.end(),
              [](const RunResult& a, const RunResult& b) { return a.run < b.run; });
    result.lamps = in_file_order(std::move(result.lamps), site.fixtures.size());
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
    for (const OperatingCase& conditions : operating_cases(site.settings)) {
        solution.cases.emplace_back().conditions = conditions;
        reserve_results(site, circuits, solution.cases.back());
    }
    CaseSolver solver(site, solution.cases);
    for (std::size_t i = 0; i < circuits.transformers.size(); ++i)
        if (circuits.transformers[i].complete()) solver.solve_circuit(circuits.transformers[i], i);
    for (CaseResult& result : solution.cases) {
        put_in_file_order(site, result);
        put_beside_nodes(site, circuits, result);
    }
    return solution;
}

} // namespace rillwatt
