#include "enumeration.hpp"

#include "rillwatt/solver/network.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

namespace rillwatt::test {

namespace {

using Bought = std::map<std::string, std::vector<double>>; // metres of each piece of each cable

/// One way to serve one transformer.
struct Way {
    double price = 0; // of the transformer
    Bought pieces;
};

std::vector<const CableType*> buriable(const Catalog& catalog) {
    std::vector<const CableType*> cables;
    for (const auto& [id, type] : catalog.cables)
        if (type.price && type.direct_burial) cables.push_back(&type);
    return cables;
}

/// Tries everything for one transformer.
class Everything {
  public:
    Everything(const Garden& garden, const TransformerCircuit& circuit, const SizeOptions& options)
        : garden_(garden), circuit_(circuit), options_(options),
          conditions_(operating_cases(garden.site.settings)[0]),
          weak_(operating_cases(garden.site.settings)[1]),
          strong_(operating_cases(garden.site.settings)[2].supply_factor), cables_(buriable(garden.catalog)),
          chosen_(circuit.nodes.size(), nullptr), chosen_links_(circuit.links.size(), nullptr) {}

    std::vector<Way> ways() {
        for (const auto& [id, model] : garden_.catalog.transformers)
            if (circuit_.type == nullptr || circuit_.type == &model) try_model(model);
        return ways_;
    }

  private:
    void try_model(const TransformerType& model) {
        network_ = make_network(circuit_, conditions_);
        set_transformer(network_, model, circuit_.supply, conditions_);
        choose_tap(model, 0);
    }

    void choose_tap(const TransformerType& model, std::size_t run) {
        if (run == circuit_.runs.size()) {
            const bool joined =
                std::any_of(circuit_.links.begin(), circuit_.links.end(),
                            [&](const CircuitLink& link) { return tap_at(link.a) != tap_at(link.b); });
            if (!joined) choose_cable(model, 0);
            return;
        }
        for (const Volts tap : model.taps) {
            if (circuit_.runs[run].tap && *circuit_.runs[run].tap != tap) continue;
            network_.tap[run] = tap.value();
            choose_tap(model, run + 1);
        }
    }

    double tap_at(int node) const {
        return network_.tap[static_cast<std::size_t>(circuit_.nodes[static_cast<std::size_t>(node)].run)];
    }

    // Nodes come after what feeds them. One cable per run: the run's start chooses, the rest takes it.
    void choose_cable(const TransformerType& model, std::size_t i) {
        if (i == circuit_.nodes.size()) {
            choose_link(model, 0);
            return;
        }
        const CircuitNode& node = circuit_.nodes[i];
        const CableType* above = node.parent < 0 ? nullptr : chosen_[static_cast<std::size_t>(node.parent)];
        const bool is_run = node.kind == NodeKind::run;
        if (node.cable != nullptr) {
            put(i, node.cable, model);
        } else if (options_.per_length && is_run) {
            put(i, nullptr, model);
        } else if (!options_.per_length && !is_run) {
            if (held(i, above)) put(i, above, model);
        } else {
            for (const CableType* cable : cables_)
                if (!too_thick(i, cable) && held(i, cable)) put(i, cable, model);
        }
    }

    bool too_thick(std::size_t i, const CableType* cable) const {
        const int feed = circuit_.nodes[i].parent;
        if (!options_.per_length || options_.any_order || feed < 0) return false;
        const CircuitNode& above = circuit_.nodes[static_cast<std::size_t>(feed)];
        if (above.kind == NodeKind::run || above.cable != nullptr) return false;
        return cable->section_mm2 > chosen_[static_cast<std::size_t>(feed)]->section_mm2;
    }

    /// Whether a spool of the cable holds the length. A run's own node has none.
    bool held(std::size_t i, const CableType* cable) const {
        const auto& length = circuit_.nodes[i].length;
        return !length || cable->spools.empty() || *length <= cable->spools.back() + Metres(1e-6);
    }

    void put(std::size_t i, const CableType* cable, const TransformerType& model) {
        chosen_[i] = cable;
        if (circuit_.nodes[i].length)
            network_.ohms[i] = cable_ohms(*cable, *circuit_.nodes[i].length, conditions_.conductor);
        choose_cable(model, i + 1);
    }

    // A link has a cable of its own, whatever its ends have.
    void choose_link(const TransformerType& model, std::size_t k) {
        if (k == circuit_.links.size()) {
            judge(model);
            return;
        }
        const CircuitLink& link = circuit_.links[k];
        for (const CableType* cable : link.cable != nullptr ? std::vector{link.cable} : cables_) {
            if (link.cable == nullptr && !cable->spools.empty() && *link.length > cable->spools.back())
                continue;
            chosen_links_[k] = cable;
            network_.links[k].ohms = cable_ohms(*cable, *link.length, conditions_.conductor);
            choose_link(model, k + 1);
        }
    }

    /// Whether no lamp leaves its window on a weak supply, nor on a strong one without load.
    bool holds_in_other_cases(const TransformerType& model) {
        Network weak = make_network(circuit_, weak_);
        set_transformer(weak, model, circuit_.supply, weak_);
        weak.tap = network_.tap;
        for (std::size_t i = 0; i < circuit_.nodes.size(); ++i)
            if (circuit_.nodes[i].length)
                weak.ohms[i] = cable_ohms(*chosen_[i], *circuit_.nodes[i].length, weak_.conductor);
        for (std::size_t k = 0; k < circuit_.links.size(); ++k)
            weak.links[k].ohms = cable_ohms(*chosen_links_[k], *circuit_.links[k].length, weak_.conductor);
        const NetworkSolution solution = solve(weak);
        if (!solution.converged) return false;
        const double unloaded = circuit_.supply / model.primary_volts * strong_;
        for (std::size_t i = 0; i < circuit_.nodes.size(); ++i) {
            const CircuitNode& node = circuit_.nodes[i];
            if (node.fixture == nullptr) continue;
            if (solution.lamp_volts[i] < node.fixture->window_low.value() - 1e-8) return false;
            const std::size_t run = static_cast<std::size_t>(node.run);
            if (!circuit_.runs[run].tap &&
                network_.tap[run] * unloaded > node.fixture->window_high.value() + 1e-8)
                return false;
        }
        return true;
    }

    void judge(const TransformerType& model) {
        if (!solve(network_, workspace_, solution_)) return;
        double load = 0;
        for (std::size_t r = 0; r < circuit_.runs.size(); ++r) {
            if (solution_.run_amps[r] > model.secondary_limit.value() + 1e-8) return;
            load += solution_.run_amps[r] * solution_.run_volts[r];
        }
        if (load > model.va.value() * (options_.loading + 1e-8)) return;
        Way way{model.price ? model.price->value() : 0, {}};
        for (std::size_t k = 0; k < circuit_.links.size(); ++k) {
            if (std::abs(solution_.link_amps[k]) > chosen_links_[k]->ampacity.value() + 1e-8) return;
            way.pieces[chosen_links_[k]->id].push_back(circuit_.links[k].length->value());
        }
        for (std::size_t i = 0; i < circuit_.nodes.size(); ++i) {
            const CircuitNode& node = circuit_.nodes[i];
            if (!node.length) continue;
            if (std::abs(solution_.branch_amps[i]) > chosen_[i]->ampacity.value() + 1e-8) return;
            way.pieces[chosen_[i]->id].push_back(node.length->value());
            if (node.fixture == nullptr) continue;
            const double margin = options_.margin.value();
            if (solution_.lamp_volts[i] < node.fixture->window_low.value() + margin - 1e-8) return;
            if (solution_.lamp_volts[i] > node.fixture->window_high.value() - margin + 1e-8) return;
        }
        if (!options_.weak_supply || holds_in_other_cases(model)) keep(way);
    }

    /// Keeps a way unless an earlier one buys the same for no more.
    void keep(Way way) {
        for (auto& [cable, pieces] : way.pieces)
            std::sort(pieces.begin(), pieces.end());
        for (const Way& other : ways_)
            if (other.price <= way.price && other.pieces == way.pieces) return;
        ways_.push_back(std::move(way));
    }

    const Garden& garden_;
    const TransformerCircuit& circuit_;
    const SizeOptions& options_;
    OperatingCase conditions_;
    OperatingCase weak_;
    double strong_; // supply volts over nominal ones
    std::vector<const CableType*> cables_;
    std::vector<const CableType*> chosen_;
    std::vector<const CableType*> chosen_links_;
    Network network_;
    Workspace workspace_;
    NetworkSolution solution_;
    std::vector<Way> ways_;
};

/// The least length of spools that pieces can be cut from, by trying every way to put them together: each
/// joins one of the groups begun, or begins one.
double packed(const std::vector<Metres>& sold, const std::vector<double>& pieces, std::size_t next,
              std::vector<double>& groups) {
    if (next == pieces.size()) {
        double bought = 0;
        for (const double group : groups) {
            double least = 1e18;
            for (const Metres spool : sold)
                if (spool.value() >= group - 1e-6) least = std::min(least, spool.value());
            bought += least;
        }
        return bought;
    }
    double best = 1e18;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        groups[g] += pieces[next];
        if (groups[g] <= sold.back().value() + 1e-6)
            best = std::min(best, packed(sold, pieces, next + 1, groups));
        groups[g] -= pieces[next];
    }
    groups.push_back(pieces[next]);
    best = std::min(best, packed(sold, pieces, next + 1, groups));
    groups.pop_back();
    return best;
}

/// Pieces that no spool holds are bought at their own length; what is chosen is never such a piece.
double price_of(const Catalog& catalog, const Bought& bought) {
    static std::map<std::pair<std::vector<Metres>, std::vector<double>>, double> known;
    double price = 0;
    for (const auto& [id, all] : bought) {
        const CableType& type = catalog.cables.at(id);
        std::vector<double> pieces = all;
        double laid = 0;
        std::erase_if(pieces, [&](double piece) {
            const bool by_length = type.spools.empty() || piece > type.spools.back().value() + 1e-6;
            if (by_length) laid += piece;
            return by_length;
        });
        std::sort(pieces.rbegin(), pieces.rend());
        if (!pieces.empty()) {
            const auto [it, fresh] = known.try_emplace({type.spools, pieces}, 0);
            std::vector<double> groups;
            if (fresh) it->second = packed(type.spools, pieces, 0, groups);
            laid += it->second;
        }
        price += type.price->value() * laid;
    }
    return price;
}

double combine(const Catalog& catalog, const std::vector<std::vector<Way>>& all, std::size_t t,
               double transformers, const Bought& bought) {
    if (t == all.size()) return transformers + price_of(catalog, bought);
    double best = 1e18;
    for (const Way& way : all[t]) {
        Bought more = bought;
        for (const auto& [id, pieces] : way.pieces)
            more[id].insert(more[id].end(), pieces.begin(), pieces.end());
        best = std::min(best, combine(catalog, all, t + 1, transformers + way.price, more));
    }
    return best;
}

} // namespace

std::optional<double> cheapest_by_enumeration(const Garden& garden, const SizeOptions& options) {
    const auto built = garden.build();
    std::vector<std::vector<Way>> all;
    for (const TransformerCircuit& circuit : built.value->transformers) {
        all.push_back(Everything(garden, circuit, options).ways());
        if (all.back().empty()) return std::nullopt;
    }
    return combine(garden.catalog, all, 0, 0, {});
}

} // namespace rillwatt::test
