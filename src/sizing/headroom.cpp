#include "rillwatt/sizing/headroom.hpp"

#include "rillwatt/limits/breach.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/solver/network.hpp"

#include <fmt/format.h>

#include <utility>

namespace rillwatt {

namespace {

constexpr double resolution_va = 0.05;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Least window of the lamps of one run; of any lamp where the run has none.
Volts least_window(const TransformerCircuit& circuit, int run) {
    std::optional<Volts> here;
    std::optional<Volts> anywhere;
    for (const CircuitNode& node : circuit.nodes) {
        if (node.fixture == nullptr) continue;
        const Volts low = node.fixture->window_low;
        anywhere = anywhere ? std::min(*anywhere, low) : low;
        if (node.run == run) here = here ? std::min(*here, low) : low;
    }
    return here ? *here : anywhere.value_or(Volts(0));
}

/// Looks for what breaks when load is added at some nodes of one transformer. The circuit and its network are
/// made once, with as many more lights as are added at a time; they are moved from place to place.
class Probe {
  public:
    Probe(const Site& site, const TransformerCircuit& circuit, const SizeOptions& options, std::size_t lights)
        : site_(site), original_(circuit), circuit_(circuit), margins_(options.margins()) {
        light_.window_high = Volts(1000);
        light_.va = VoltAmperes(1);
        joint_.ampacity = Amperes(1e9); // no cable at all: the light hangs right there
        CircuitNode node;
        node.kind = NodeKind::splice; // not one of the site's parts: only its number is looked at
        node.parent = 0;
        node.length = Metres(0);
        node.fixture = &light_;
        node.cable = &joint_;
        circuit_.nodes.resize(circuit_.nodes.size() + lights, node);
        network_ = make_network(circuit_, operating_cases(site.settings).front());
    }
    Probe(const Probe&) = delete;
    Probe& operator=(const Probe&) = delete;

    /// What can be added at these nodes together, spread evenly; as many nodes as the probe has lights.
    Headroom find(const std::string& part, const std::vector<int>& nodes) {
        move_to(nodes);
        Headroom room;
        room.part = part;
        room.transformer = site_.transformers[original_.transformer].id;
        std::optional<Breach> breach = with(0);
        room.broken = breach.has_value();
        if (breach) return describe(room, *breach);
        breach = with(most_headroom.value());
        room.limited = breach.has_value();
        room.more = most_headroom;
        if (!breach) return room;
        double fits = 0;
        double breaks = most_headroom.value();
        while (breaks - fits > resolution_va) {
            const double middle = (fits + breaks) / 2;
            std::optional<Breach> found = with(middle);
            (found ? breaks : fits) = middle;
            if (found) breach = std::move(found);
        }
        room.more = VoltAmperes(fits);
        return describe(room, *breach);
    }

  private:
    void move_to(const std::vector<int>& nodes) {
        for (std::size_t k = 0; k < nodes.size(); ++k) {
            const std::size_t light = original_.nodes.size() + k;
            circuit_.nodes[light].parent = nodes[k];
            circuit_.nodes[light].run = original_.nodes[at(nodes[k])].run;
            network_.feed[light] = nodes[k];
        }
        lights_ = nodes.size();
        light_.window_low = least_window(original_, original_.nodes[at(nodes.front())].run);
    }

    std::optional<Breach> with(double va) {
        for (std::size_t k = 0; k < lights_; ++k)
            network_.power[original_.nodes.size() + k] = va / static_cast<double>(lights_);
        if (!solve(network_, workspace_, solution_)) return Breach{.kind = BreachKind::no_operating_point};
        return worst_breach(circuit_, solution_, margins_);
    }

    std::string part_words(const Breach& breach) const {
        if (breach.link < 0 && breach.node >= static_cast<int>(original_.nodes.size()))
            return "the added light";
        return part_of(site_, original_, breach).id;
    }

    Headroom describe(Headroom room, const Breach& breach) const {
        room.rule = rule_of(breach);
        room.breaks = part_words(breach);
        room.what = what_words(room.breaks, breach);
        return room;
    }

    static std::string what_words(const std::string& part, const Breach& breach) {
        const Volts volts(breach.limit);
        const Amperes amps(breach.limit);
        switch (breach.kind) {
        case BreachKind::lamp_low:
            return fmt::format("{} falls to {}", part, volts_text(volts));
        case BreachKind::lamp_high:
            return fmt::format("{} rises to {}", part, volts_text(volts));
        case BreachKind::cable:
            return fmt::format("{} {} reaches {}", breach.link < 0 ? "the cable to" : "link", part,
                               nominal_amps_text(amps));
        case BreachKind::secondary:
            return fmt::format("run {} reaches {}", part, nominal_amps_text(amps));
        case BreachKind::loading:
            return fmt::format("{} reaches {}", part, percent_text(breach.limit));
        case BreachKind::no_operating_point:
            return "more than the cable can carry";
        case BreachKind::contact_volts: // neither depends on the load
        case BreachKind::supply:
        case BreachKind::none:
            break;
        }
        return "";
    }

    const Site& site_;
    const TransformerCircuit& original_;
    TransformerCircuit circuit_; ///< with the added lights behind the other nodes
    Margins margins_;
    FixtureType light_;
    CableType joint_;
    std::size_t lights_ = 0;
    Network network_;
    Workspace workspace_;
    NetworkSolution solution_;
};

/// The heads of a transformer's runs.
std::vector<int> heads_of(const TransformerCircuit& circuit) {
    std::vector<int> heads;
    for (const CircuitRun& run : circuit.runs)
        heads.push_back(run.node);
    return heads;
}

} // namespace

std::vector<Headroom> find_headroom(const Assessment& assessment, const SizeOptions& options) {
    const Site& site = *assessment.site;
    std::vector<Headroom> rooms;
    for (const TransformerCircuit& circuit : assessment.circuits.transformers) {
        if (!circuit.complete() || circuit.runs.empty()) continue;
        rooms.push_back(Probe(site, circuit, options, circuit.runs.size())
                            .find(site.transformers[circuit.transformer].id, heads_of(circuit)));
        Probe place(site, circuit, options, 1);
        for (std::size_t i = 0; i < circuit.nodes.size(); ++i)
            rooms.push_back(place.find(node_id(site, circuit.nodes[i]), {static_cast<int>(i)}));
    }
    return rooms;
}

} // namespace rillwatt
