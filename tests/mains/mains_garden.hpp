#pragma once

#include "rillwatt/mains/mains_summary.hpp"

#include <string>

namespace rillwatt::samples {

/// A site made by hand, part by part, for tests of the line-voltage side.
class MainsGarden {
  public:
    Site site;
    Catalog catalog;
    SiteCircuits circuits;
    SiteSolution solution;

    MainsGarden() { solution.cases.resize(3); }

    BranchCircuit& circuit(const std::string& id) {
        BranchCircuit made;
        made.id = id;
        site.circuits.push_back(made);
        return site.circuits.back();
    }

    /// A pump with a catalog entry of its own.
    PumpType& pump(const std::string& id, const std::string& circuit, double volts, double amps,
                   double watts) {
        Pump made;
        made.id = id;
        made.model = "model of " + id;
        made.circuit = circuit;
        site.pumps.push_back(made);
        PumpType& type = catalog.pumps[made.model];
        type.id = made.model;
        type.volts = Volts(volts);
        type.amps = Amperes(amps);
        type.watts = Watts(watts);
        type.submersible = true;
        type.cord = feet(20);
        return type;
    }

    /// A transformer of 300 VA at 120 V; solved when `primary_amps` is given, open when not.
    void transformer(const std::string& id, const std::string& circuit, std::optional<double> primary_amps) {
        Transformer made;
        made.id = id;
        made.circuit = circuit;
        site.transformers.push_back(made);
        TransformerType& type = catalog.transformers["mag-300"];
        type.va = VoltAmperes(300);
        TransformerCircuit tree;
        tree.transformer = site.transformers.size() - 1;
        tree.type = &type;
        circuits.transformers.push_back(tree);
        if (!primary_amps) return;
        TransformerResult result;
        result.transformer = tree.transformer;
        result.primary_amps = Amperes(*primary_amps);
        solution.cases[0].transformers.push_back(result);
    }

    MainsSummary summary() const { return summarise_mains(site, catalog, circuits, solution); }
};

} // namespace rillwatt::samples
