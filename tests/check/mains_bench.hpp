#pragma once

#include "rillwatt/check/rule.hpp"
#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/mains/mains_summary.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

namespace rillwatt::samples {

/// A garden with one circuit, one pump, one transformer and one light beside a pond, nothing wrong with it:
/// each test changes one thing and asks one rule.
///
///       C1        P1 |~~~~~ pond ~~~~~|
///     (30,10)        | (40,0)-(60,20) |      feet
class MainsBench {
  public:
    Site site;
    Catalog catalog;

    MainsBench() {
        site.file = "bench.toml";
        add_catalog();
        Area pond;
        pond.id = "pond";
        pond.kind = AreaKind::water;
        pond.outline = {at(40, 0), at(60, 0), at(60, 20), at(40, 20)};
        site.areas.push_back(pond);
        add_circuit("C1");
        add_circuit("C2");
        add_pump("P1", "C1");
        Transformer transformer;
        transformer.id = "T1";
        transformer.model = "landscape";
        transformer.circuit = "C2";
        transformer.at = at(20, 10);
        site.transformers.push_back(transformer);
        Run run;
        run.id = "A";
        run.from = "T1";
        run.tap = Volts(12);
        run.cable = "12/2";
        site.runs.push_back(run);
        Fixture light;
        light.id = "light";
        light.model = "path";
        light.from = "A";
        light.length = feet(10);
        light.at = at(10, 10);
        site.fixtures.push_back(light);
    }

    static PlanPoint at(double x_feet, double y_feet) {
        return {x_feet * metres_per_foot, y_feet * metres_per_foot};
    }

    BranchCircuit& add_circuit(const std::string& id) {
        BranchCircuit circuit;
        circuit.id = id;
        circuit.breaker = Amperes(20);
        circuit.gfci = true;
        circuit.conductor = "12 AWG";
        circuit.length = feet(40);
        circuit.wiring = Wiring::pvc;
        circuit.cover = inches(18);
        circuit.at = at(30, 10);
        circuit.wet_cover = true;
        site.circuits.push_back(circuit);
        return site.circuits.back();
    }

    Pump& add_pump(const std::string& id, const std::string& circuit) {
        Pump pump;
        pump.id = id;
        pump.model = "pump";
        pump.circuit = circuit;
        pump.at = at(45, 10);
        site.pumps.push_back(pump);
        return site.pumps.back();
    }

    BranchCircuit& c1() { return site.circuits[0]; }
    BranchCircuit& c2() { return site.circuits[1]; }
    PumpType& pump_type() { return catalog.pumps["pump"]; }
    Fixture& light() { return site.fixtures[0]; }

    /// What one rule says of the site as it stands.
    std::vector<Finding> findings_of(const std::string& rule) const {
        const SiteLengths lengths = measure_lengths(site);
        const auto circuits = build_circuits(site, catalog, lengths);
        REQUIRE(circuits.value);
        const SiteSolution solution = solve_site(site, *circuits.value);
        const MainsSummary mains = summarise_mains(site, catalog, *circuits.value, solution);
        const std::vector<Breach> breaches = find_breaches(site, *circuits.value, solution);
        std::vector<Finding> found;
        const AreaIndex areas(site);
        for (auto& finding : run_rules({.site = site,
                             .catalog = catalog,
                             .areas = areas,
                             .lengths = lengths,
                             .circuits = *circuits.value,
                             .solution = solution,
                             .breaches = breaches,
                             .mains = mains}))
            if (finding.rule == rule) found.push_back(finding);
        return found;
    }

    /// "silent", or the severity of the worst finding of a rule.
    std::string verdict(const std::string& rule) const {
        const auto found = findings_of(rule);
        return found.empty() ? "silent" : severity_name(found.front().severity);
    }

  private:
    void add_catalog() {
        CableType& cable = catalog.cables["12/2"];
        cable.id = "12/2";
        cable.ampacity = Amperes(20);
        cable.direct_burial = true;
        cable.resistance = OhmsPerMetre(0.0065);
        cable.reference_temperature = Celsius(75);
        for (const char* id : {"path", "submersible"}) {
            FixtureType& type = catalog.fixtures[id];
            type.id = id;
            type.window_low = Volts(8);
            type.window_high = Volts(20);
            type.watts = Watts(4);
            type.va = VoltAmperes(5);
            type.rating = std::string(id) == "path" ? WaterRating::wet : WaterRating::submersible;
        }
        for (const char* id : {"landscape", "pool"}) {
            TransformerType& type = catalog.transformers[id];
            type.id = id;
            type.va = VoltAmperes(300);
            type.taps = {Volts(12), Volts(14), Volts(15), Volts(16)};
            type.water_listed = std::string(id) == "pool";
        }
        PumpType& pump = catalog.pumps["pump"];
        pump.id = "pump";
        pump.volts = Volts(115);
        pump.amps = Amperes(4);
        pump.watts = Watts(350);
        pump.submersible = true;
        pump.cord = feet(20);
        pump.leakage_ma = 0.3;
    }
};

} // namespace rillwatt::samples
