#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/layout/places.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include "catalog_lookup.hpp"
#include "feeds.hpp"
#include "open_values.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

/// Where a part ended up.
struct Place {
    int transformer = -1; ///< index into Site::transformers; -1: hangs on none
    int node = -1;        ///< index into that circuit's nodes
};

/// Builds the circuits of one site, collecting everything that stands in the way.
class CircuitBuilder {
  public:
    CircuitBuilder(const Site& site, const Catalog& catalog, const SiteLengths& lengths)
        : site_(site), catalog_(catalog), lengths_(lengths), areas_(site) {}

    LoadResult<SiteCircuits> build() {
        put_together();
        if (!wrong_names_.empty() || !errors_.empty()) return {std::nullopt, all_errors()};
        result_.open = open_values(site_, result_.transformers);
        return {std::move(result_), {}};
    }

    /// What is wrong between parts that are there.
    std::vector<InputError> errors_but_of_names() {
        put_together();
        return std::move(errors_);
    }

  private:
    void put_together() {
        feeds_ = wire_up(site_, wrong_names_);
        errors_ = loop_errors(feeds_);
        places_.resize(feeds_.parts.size());
        result_.fixture_types.resize(site_.fixtures.size());
        add_transformers();
        for (const int part : feeds_.order)
            add_part(part);
        for (std::size_t i = 0; i < site_.links.size(); ++i)
            add_link(i);
        check_unwired();
    }

    void add_transformers() {
        std::unordered_map<std::string_view, const BranchCircuit*> circuits;
        for (const BranchCircuit& circuit : site_.circuits)
            circuits.emplace(circuit.id, &circuit);
        for (std::size_t i = 0; i < site_.transformers.size(); ++i) {
            const Transformer& transformer = site_.transformers[i];
            TransformerCircuit circuit;
            circuit.transformer = i;
            circuit.supply = site_.settings.supply_voltage;
            const auto branch = transformer.circuit ? circuits.find(*transformer.circuit) : circuits.end();
            if (branch != circuits.end() && branch->second->volts) circuit.supply = *branch->second->volts;
            if (transformer.model)
                circuit.type = look_up(catalog_.transformers, *transformer.model, "model", "model",
                                       transformer, wrong_names_);
            result_.transformers.push_back(std::move(circuit));
        }
    }

    void add_part(int number) {
        const WiredPart& part = feeds_.parts[static_cast<std::size_t>(number)];
        CircuitNode node;
        node.kind = part.kind;
        node.part = part.index;
        if (part.kind == NodeKind::run)
            add_run(number, part, node);
        else
            add_fed_part(number, part, node);
    }

    void add_run(int number, const WiredPart& part, CircuitNode node) {
        if (part.transformer < 0) return;
        const Run& run = site_.runs[part.index];
        auto& circuit = result_.transformers[static_cast<std::size_t>(part.transformer)];
        check_tap(run, circuit);
        node.run = static_cast<int>(circuit.runs.size());
        set_cable(node, run.cable, run, nullptr);
        place(number, part.transformer);
        circuit.runs.push_back({part.index, static_cast<int>(circuit.nodes.size()), run.tap});
        circuit.nodes.push_back(node);
    }

    void add_fed_part(int number, const WiredPart& part, CircuitNode node) {
        const Place& feed = places_[static_cast<std::size_t>(part.feed)];
        if (feed.transformer < 0) return;
        auto& circuit = result_.transformers[static_cast<std::size_t>(feed.transformer)];
        const CircuitNode& parent = circuit.nodes[static_cast<std::size_t>(feed.node)];
        node.parent = feed.node;
        node.run = parent.run;
        if (part.kind == NodeKind::splice) {
            const Splice& splice = site_.splices[part.index];
            set_cable(node, splice.cable, splice, parent.cable);
            node.length = lengths_.splices.at(part.index).length;
        } else {
            const Fixture& fixture = site_.fixtures[part.index];
            set_cable(node, fixture.cable, fixture, parent.cable);
            node.length = lengths_.fixtures.at(part.index).length;
            set_type(node, part.index);
            node.in_water = areas_.in_water(fixture);
        }
        place(number, feed.transformer);
        circuit.nodes.push_back(node);
    }

    /// Its own cable, else what its feed hands on.
    void set_cable(CircuitNode& node, const std::optional<std::string>& own, const Part& part,
                   const CableType* inherited) {
        node.own_cable = own.has_value();
        node.cable = own ? look_up(catalog_.cables, *own, "cable", "cable", part, wrong_names_) : inherited;
    }

    void set_type(CircuitNode& node, std::size_t index) {
        const Fixture& fixture = site_.fixtures[index];
        node.fixture = types_.find(fixture.model);
        if (!node.fixture) look_up(catalog_.fixtures, fixture.model, "model", "model", fixture, wrong_names_);
        if (node.fixture && !node.fixture->lead_cable.empty())
            node.lead_cable = look_up(catalog_.cables, node.fixture->lead_cable, "model", "lead cable",
                                      fixture, wrong_names_);
        result_.fixture_types[index] = node.fixture;
    }

    /// Notes that a part becomes the next node of a circuit.
    void place(int number, int transformer) {
        const auto& circuit = result_.transformers[static_cast<std::size_t>(transformer)];
        places_[static_cast<std::size_t>(number)] = {transformer, static_cast<int>(circuit.nodes.size())};
    }

    void check_tap(const Run& run, const TransformerCircuit& circuit) {
        if (!run.tap || !circuit.type || circuit.type->taps.empty()) return;
        const auto same = [&run](Volts tap) { return std::abs((tap - *run.tap).value()) < 1e-9; };
        const auto& taps = circuit.type->taps;
        if (std::any_of(taps.begin(), taps.end(), same)) return;
        std::string offered;
        for (const Volts tap : taps)
            offered += (offered.empty() ? "" : ", ") + trimmed_text(tap.value(), 3);
        const Transformer& transformer = site_.transformers[circuit.transformer];
        errors_.push_back(
            {run.location,
             fmt::format("`tap` of run \"{}\" is {}, and transformer \"{}\" ({}) has no such tap", run.id,
                         trimmed_text(run.tap->value(), 3), transformer.id, circuit.type->id),
             fmt::format("one of its taps: {}", offered),
             {},
             "tap"});
    }

    /// Where the part is that one end of a link names. A part that hangs on no run (a light not wired yet)
    /// has no place, and the link waits for it.
    Place find_end(const Link& link, const std::string& id) {
        const int found = by_id_.find(id);
        if (found < 0) {
            wrong_names_.push_back(
                {link.location,
                 fmt::format("link \"{}\" ends at \"{}\", which is no part of a circuit", link.id, id),
                 "`between` two runs, splices or fixtures of one transformer",
                 {},
                 "between"});
            return {};
        }
        return places_[static_cast<std::size_t>(found)];
    }

    void add_link(std::size_t index) {
        const Link& link = site_.links[index];
        const Place a = find_end(link, link.a);
        const Place b = find_end(link, link.b);
        if (a.transformer < 0 || b.transformer < 0) return;
        if (a.transformer != b.transformer || a.node == b.node) {
            errors_.push_back(misplaced(link, a, b));
            return;
        }
        CircuitLink added;
        added.link = index;
        added.a = a.node;
        added.b = b.node;
        if (link.cable)
            added.cable = look_up(catalog_.cables, *link.cable, "cable", "cable", link, wrong_names_);
        added.length = lengths_.links.at(index).length;
        result_.transformers[static_cast<std::size_t>(a.transformer)].links.push_back(added);
    }

    InputError misplaced(const Link& link, Place a, Place b) {
        const auto name = [this](Place place) {
            return site_.transformers[static_cast<std::size_t>(place.transformer)].id;
        };
        const std::string found =
            a.transformer != b.transformer
                ? fmt::format(
                      "link \"{}\" joins \"{}\" on transformer \"{}\" and \"{}\" on transformer \"{}\"",
                      link.id, link.a, name(a), link.b, name(b))
                : fmt::format("link \"{}\" joins \"{}\" to itself", link.id, link.a);
        return {link.location, found, "two different parts of one transformer", {}, "between"};
    }

    /// Names of catalog entries are checked also where a fixture is not wired yet.
    void check_unwired() {
        for (std::size_t i = 0; i < feeds_.parts.size(); ++i) {
            const WiredPart& part = feeds_.parts[i];
            if (part.kind != NodeKind::fixture || places_[i].transformer >= 0) continue;
            CircuitNode unused;
            set_type(unused, part.index);
        }
    }

    std::vector<InputError> all_errors() {
        std::vector<InputError> errors = std::move(wrong_names_);
        errors.insert(errors.end(), errors_.begin(), errors_.end());
        std::stable_sort(errors.begin(), errors.end(), [](const InputError& a, const InputError& b) {
            return a.location.line < b.location.line;
        });
        return errors;
    }

    const Site& site_;
    const Catalog& catalog_;
    const SiteLengths& lengths_;
    AreaIndex areas_;
    Feeds feeds_;
    PartsById by_id_{feeds_.parts};
    std::vector<Place> places_; ///< of each part of the wiring
    EntryFinder<decltype(Catalog::fixtures)> types_{catalog_.fixtures};
    SiteCircuits result_;
    std::vector<InputError> wrong_names_; ///< of parts and of catalog entries
    std::vector<InputError> errors_;      ///< everything else
};

} // namespace

LoadResult<SiteCircuits> build_circuits(const Site& site, const Catalog& catalog,
                                        const SiteLengths& lengths) {
    return CircuitBuilder(site, catalog, lengths).build();
}

std::vector<InputError> wiring_errors(const Site& site, const Catalog& catalog) {
    SiteLengths all_open;
    all_open.splices.resize(site.splices.size());
    all_open.fixtures.resize(site.fixtures.size());
    all_open.links.resize(site.links.size());
    return CircuitBuilder(site, catalog, all_open).errors_but_of_names();
}

} // namespace rillwatt
