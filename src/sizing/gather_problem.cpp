#include "gather_problem.hpp"

#include "rillwatt/layout/places.hpp"
#include "rillwatt/limits/supply_limits.hpp"
#include "rillwatt/solver/network.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace rillwatt::sizing {

namespace {

/// Collects the parts of a problem while keeping track of which cable has which index.
class Gathering {
  public:
    Gathering(const Site& site, const Catalog& catalog, SizeProblem& problem)
        : site_(site), areas_(site), catalog_(catalog), problem_(problem) {}

    void add_candidates();
    void add_circuit(const SiteCircuits& circuits, std::size_t index);
    void count_typed(const SiteCircuits& circuits);

  private:
    int cable_index(const CableType& type);
    int spool_index(const CableType& type);
    void count_length(const CableType& type, double metres);
    void count_price(const std::string& id, bool priced, double cost);
    std::vector<Model> open_models(const TransformerCircuit& circuit, bool water) const;
    std::vector<RunProblem> runs_of(const TransformerCircuit& circuit);
    WindowedLamp lamp_of(const CircuitNode& node, const OperatingCase& conditions,
                         const Margins& margins) const;
    double weak_ratio(double ratio) const {
        return problem_.weak ? ratio * problem_.weak->supply_factor : ratio;
    }
    bool needs_contact_limit(const TransformerCircuit& circuit, const CircuitNode& node) const;

    const Site& site_;
    AreaIndex areas_;
    const Catalog& catalog_;
    SizeProblem& problem_;
    std::map<const CableType*, int> index_;
    std::map<const CableType*, int> spool_;
    std::set<std::string> unpriced_;
};

int Gathering::spool_index(const CableType& type) {
    if (type.spools.empty()) return -1;
    const auto [it, fresh] = spool_.emplace(&type, static_cast<int>(problem_.spools.size()));
    if (fresh) {
        search::SpoolCable spool{&type, {}, type.price ? type.price->value() : 0, {}};
        for (const Metres sold : type.spools)
            spool.sold.push_back(search::whole_length(sold.value()));
        std::sort(spool.sold.begin(), spool.sold.end());
        problem_.spools.push_back(std::move(spool));
    }
    return it->second;
}

int Gathering::cable_index(const CableType& type) {
    const auto [it, fresh] = index_.emplace(&type, static_cast<int>(problem_.cables.size()));
    if (!fresh) return it->second;
    Cable cable;
    cable.type = &type;
    cable.ohms_per_metre = cable_ohms(type, Metres(1), problem_.nominal.conductor);
    if (problem_.weak) cable.weak_ohms_per_metre = cable_ohms(type, Metres(1), problem_.weak->conductor);
    cable.price = type.price ? type.price->value() : 0;
    cable.ampacity = most_amps(type);
    cable.spool = spool_index(type);
    if (cable.spool >= 0)
        cable.longest = search::metres_of(problem_.spools[static_cast<std::size_t>(cable.spool)].sold.back());
    problem_.cables.push_back(cable);
    return it->second;
}

/// The catalog entries a `[stock]` list allows, or all of them.
template<class Entry, class Map>
std::vector<const Entry*> stocked(const Map& entries, const std::optional<std::vector<std::string>>& list) {
    std::vector<const Entry*> found;
    if (!list) {
        for (const auto& [id, entry] : entries)
            found.push_back(&entry);
        return found;
    }
    for (const std::string& id : *list)
        if (const Entry* entry = find_entry(entries, id))
            if (std::find(found.begin(), found.end(), entry) == found.end()) found.push_back(entry);
    return found;
}

void Gathering::add_candidates() {
    std::vector<const CableType*> types = stocked<CableType>(catalog_.cables, site_.stock.cables);
    std::erase_if(types, [](const CableType* type) { return !type->price || !type->direct_burial; });
    std::stable_sort(types.begin(), types.end(),
                     [](const CableType* a, const CableType* b) { return a->section_mm2 < b->section_mm2; });
    int rank = 0;
    for (std::size_t i = 0; i < types.size(); ++i) {
        if (i > 0 && types[i]->section_mm2 > types[i - 1]->section_mm2) ++rank;
        const int index = cable_index(*types[i]);
        problem_.cables[static_cast<std::size_t>(index)].thickness = rank;
        problem_.candidates.push_back(index);
    }
}

std::vector<Model> Gathering::open_models(const TransformerCircuit& circuit, bool water) const {
    std::vector<Model> models;
    for (const TransformerType* type :
         stocked<TransformerType>(catalog_.transformers, site_.stock.transformers)) {
        if (!type->price || !supply_fits(circuit.supply, type->primary_volts)) continue;
        if (water && !type->water_listed) continue;
        const double ratio = circuit.supply / type->primary_volts;
        models.push_back({type, ratio, weak_ratio(ratio), type->price->value()});
    }
    std::stable_sort(models.begin(), models.end(),
                     [](const Model& a, const Model& b) { return a.price < b.price; });
    return models;
}

WindowedLamp Gathering::lamp_of(const CircuitNode& node, const OperatingCase& conditions,
                                const Margins& margins) const {
    const FixtureType& type = *node.fixture;
    const double lead =
        node.lead_cable == nullptr ? 0 : cable_ohms(*node.lead_cable, type.lead, conditions.conductor);
    const VoltRange range = lamp_range(type, margins);
    return {{lamp_load(type, lead)}, range.low, range.high};
}

bool Gathering::needs_contact_limit(const TransformerCircuit& circuit, const CircuitNode& node) const {
    if (node.in_water) return true;
    // A tap helps a light near water only where its transformer is listed for it.
    const bool listed = circuit.type == nullptr || circuit.type->water_listed;
    return listed && needs_water_supply(areas_, site_, node);
}

std::vector<RunProblem> Gathering::runs_of(const TransformerCircuit& circuit) {
    std::vector<RunProblem> runs(circuit.runs.size());
    for (std::size_t r = 0; r < runs.size(); ++r) {
        runs[r].run = static_cast<int>(r);
        if (circuit.runs[r].tap) runs[r].tap = circuit.runs[r].tap->value();
    }
    std::vector<int> local(circuit.nodes.size(), -1);
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i) {
        const CircuitNode& node = circuit.nodes[i];
        if (node.kind == NodeKind::run) continue;
        RunProblem& run = runs[static_cast<std::size_t>(node.run)];
        RunNode place;
        place.node = static_cast<int>(i);
        place.parent = local[static_cast<std::size_t>(node.parent)];
        place.metres = node.length->value();
        if (node.cable != nullptr) place.typed = cable_index(*node.cable);
        if (node.fixture != nullptr) place.lamp = lamp_of(node, problem_.nominal, problem_.options.margins());
        if (place.lamp && problem_.weak) place.weak_lamp = lamp_of(node, *problem_.weak, {});
        if (needs_contact_limit(circuit, node)) run.most_contact = contact_limit(site_.settings);
        local[i] = static_cast<int>(run.nodes.size());
        run.nodes.push_back(place);
    }
    return runs;
}

bool has_open_length(const TransformerCircuit& circuit) {
    for (const CircuitNode& node : circuit.nodes)
        if (node.kind != NodeKind::run && !node.length) return true;
    for (const CircuitLink& link : circuit.links)
        if (!link.length) return true;
    return false;
}

void Gathering::add_circuit(const SiteCircuits& circuits, std::size_t index) {
    const TransformerCircuit& circuit = circuits.transformers[index];
    if (has_open_length(circuit)) {
        problem_.left_out.push_back(site_.transformers[circuit.transformer].id);
        return;
    }
    TransformerProblem transformer;
    transformer.circuit = index;
    transformer.runs = runs_of(circuit);
    transformer.meshed = !circuit.links.empty();
    for (const CircuitLink& link : circuit.links)
        transformer.link_typed.push_back(link.cable == nullptr ? -1 : cable_index(*link.cable));
    transformer.model_open = circuit.type == nullptr;
    transformer.needs_water_listing = needs_water_listing(areas_, site_, circuit);
    if (transformer.model_open) {
        transformer.models = open_models(circuit, transformer.needs_water_listing);
    } else {
        const TransformerType& type = *circuit.type;
        const double ratio = circuit.supply / type.primary_volts;
        transformer.models.push_back({&type, ratio, weak_ratio(ratio), type.price ? type.price->value() : 0});
    }
    problem_.transformers.push_back(std::move(transformer));
}

void Gathering::count_price(const std::string& id, bool priced, double cost) {
    problem_.typed_cost += cost;
    if (!priced && unpriced_.insert(id).second) problem_.unpriced.push_back(id);
}

/// A piece that no spool holds is bought at its own length.
void Gathering::count_length(const CableType& type, double metres) {
    const search::Length piece = search::whole_length(metres);
    const int spool = spool_index(type);
    const bool cut = spool >= 0 && piece <= problem_.spools[static_cast<std::size_t>(spool)].sold.back();
    if (cut) problem_.spools[static_cast<std::size_t>(spool)].typed.push_back(piece);
    const double cost = !cut && type.price ? metres * type.price->value() : 0;
    count_price(type.id, type.price.has_value(), cost);
}

/// Counts what is laid and bought whatever is chosen. A typed transformer that can be sized is counted with
/// its choice.
void Gathering::count_typed(const SiteCircuits& circuits) {
    for (const TransformerCircuit& circuit : circuits.transformers) {
        for (const CircuitNode& node : circuit.nodes)
            if (node.kind != NodeKind::run && node.cable != nullptr && node.length)
                count_length(*node.cable, node.length->value());
        for (const CircuitLink& link : circuit.links)
            if (link.cable != nullptr && link.length) count_length(*link.cable, link.length->value());
        if (circuit.type == nullptr) continue;
        const auto& price = circuit.type->price;
        const double cost = has_open_length(circuit) && price ? price->value() : 0;
        count_price(circuit.type->id, price.has_value(), cost);
    }
}

} // namespace

SizeProblem gather(const Site& site, const Catalog& catalog, const SiteCircuits& circuits,
                   const SizeOptions& options) {
    SizeProblem problem;
    problem.circuits = &circuits;
    problem.options = options;
    const std::vector<OperatingCase> cases = operating_cases(site.settings);
    problem.nominal = cases[0];
    if (options.weak_supply) problem.weak = cases[1];
    Gathering gathering(site, catalog, problem);
    gathering.add_candidates();
    for (std::size_t i = 0; i < circuits.transformers.size(); ++i)
        gathering.add_circuit(circuits, i);
    gathering.count_typed(circuits);
    return problem;
}

} // namespace rillwatt::sizing
