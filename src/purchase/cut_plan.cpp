#include "rillwatt/purchase/bill.hpp"
#include "rillwatt/purchase/spools.hpp"

#include <fmt/format.h>

#include <map>

namespace rillwatt {

namespace {

const std::vector<Metres>& spools_of(const CableType& cable) { return cable.spools; }

/// The pieces of one cable type, by their index in the plan.
struct Batch {
    const CableType* cable = nullptr;
    std::vector<std::size_t> pieces;
};

using Batches = std::map<std::string, Batch>;

void add_piece(CutPlan& plan, Batches& batches, const CableType& cable, CablePiece piece) {
    Batch& batch = batches[cable.id];
    batch.cable = &cable;
    batch.pieces.push_back(plan.pieces.size());
    plan.pieces.push_back(std::move(piece));
}

/// Whether the length that leads to a part stands in the site file; else it was measured on the plan.
bool typed_length(const Site& site, const CircuitNode& node) {
    return node.kind == NodeKind::splice ? site.splices[node.part].length.has_value()
                                         : site.fixtures[node.part].length.has_value();
}

void gather_run(const Site& site, const TransformerCircuit& circuit, int run, CutPlan& plan,
                Batches& batches) {
    const std::string& run_id = site.runs[circuit.runs[static_cast<std::size_t>(run)].run].id;
    int number = 0;
    for (const CircuitNode& node : circuit.nodes) {
        if (node.run != run || node.parent < 0 || node.cable == nullptr || !node.length) continue;
        const CircuitNode& feed = circuit.nodes[static_cast<std::size_t>(node.parent)];
        add_piece(plan, batches, *node.cable,
                  {.tag = fmt::format("{}-{}", run_id, ++number),
                   .run = run_id,
                   .cable = node.cable->id,
                   .from = node_id(site, feed),
                   .to = node_id(site, node),
                   .length = *node.length,
                   .from_plan = !typed_length(site, node)});
    }
}

void gather_links(const Site& site, const TransformerCircuit& circuit, CutPlan& plan, Batches& batches) {
    for (const CircuitLink& link : circuit.links) {
        if (link.cable == nullptr || !link.length) continue;
        const Link& written = site.links[link.link];
        const CircuitNode& start = circuit.nodes[static_cast<std::size_t>(link.a)];
        add_piece(plan, batches, *link.cable,
                  {.tag = written.id,
                   .run = site.runs[circuit.runs[static_cast<std::size_t>(start.run)].run].id,
                   .cable = link.cable->id,
                   .from = written.a,
                   .to = written.b,
                   .length = *link.length,
                   .from_plan = !written.length});
    }
}

/// A cable sold by length: one cut for each piece.
void cut_by_length(const Batch& batch, CutPlan& plan) {
    for (const std::size_t piece : batch.pieces)
        plan.stock.push_back({.cable = batch.cable->id,
                              .length = plan.pieces[piece].length,
                              .pieces = {piece},
                              .rest = Metres(0)});
}

/// For a piece that no spool holds: it is bought at its length, or has to be joined.
void take_special_spool(const Batch& batch, std::size_t piece, CutPlan& plan) {
    const CablePiece& cut = plan.pieces[piece];
    plan.stock.push_back(
        {.cable = batch.cable->id, .length = cut.length, .pieces = {piece}, .rest = Metres(0)});
    plan.remarks.push_back(
        fmt::format("{}: longer than any spool of {}; it needs a joint or a special spool, "
                    "which is what the bill counts",
                    cut.tag, batch.cable->id));
}

void cut_from_spools(const Batch& batch, CutPlan& plan) {
    std::vector<Metres> lengths;
    Metres total;
    for (const std::size_t piece : batch.pieces) {
        lengths.push_back(plan.pieces[piece].length);
        total += lengths.back();
    }
    const CutList cuts = pack_cut_list(spools_of(*batch.cable), lengths);
    for (const CutSpool& spool : cuts.spools) {
        CableStock stock{.cable = batch.cable->id, .length = spool.spool, .rest = spool.rest};
        for (const std::size_t piece : spool.pieces)
            stock.pieces.push_back(batch.pieces[piece]);
        plan.stock.push_back(std::move(stock));
    }
    for (const std::size_t piece : cuts.too_long)
        take_special_spool(batch, batch.pieces[piece], plan);
    const Metres least = cheapest_spools(spools_of(*batch.cable), total).total;
    if (cuts.too_long.empty() && cuts.bought > least + Metres(1e-6))
        plan.remarks.push_back(
            fmt::format("{}: the pieces do not fit into the spools that their total suggests; more "
                        "is bought so that no piece needs a joint",
                        batch.cable->id));
}

} // namespace

CutPlan plan_cuts(const Site& site, const SiteCircuits& circuits) {
    CutPlan plan;
    Batches batches;
    for (const TransformerCircuit& circuit : circuits.transformers) {
        for (std::size_t run = 0; run < circuit.runs.size(); ++run)
            gather_run(site, circuit, static_cast<int>(run), plan, batches);
        gather_links(site, circuit, plan, batches);
    }
    for (const auto& [id, batch] : batches) {
        if (spools_of(*batch.cable).empty())
            cut_by_length(batch, plan);
        else
            cut_from_spools(batch, plan);
    }
    return plan;
}

} // namespace rillwatt
