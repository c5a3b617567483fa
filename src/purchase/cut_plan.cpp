#include "rillwatt/purchase/bill.hpp"
#include "rillwatt/search/packing.hpp"
#include "rillwatt/search/packing_bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <numeric>

namespace rillwatt {

namespace {

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

std::vector<search::Length> whole_lengths(const std::vector<Metres>& lengths) {
    std::vector<search::Length> whole;
    for (const Metres length : lengths)
        whole.push_back(search::whole_length(length.value()));
    return whole;
}

void take_spool(const Batch& batch, const search::PackedSpool& spool, const std::vector<std::size_t>& pieces,
                CutPlan& plan) {
    CableStock stock{.cable = batch.cable->id};
    for (const Metres sold : batch.cable->spools)
        if (search::whole_length(sold.value()) == spool.length) stock.length = sold;
    stock.rest = stock.length;
    for (const std::size_t piece : spool.pieces) {
        stock.pieces.push_back(pieces[piece]);
        stock.rest -= plan.pieces[pieces[piece]].length;
    }
    stock.rest = std::max(stock.rest, Metres(0));
    plan.stock.push_back(std::move(stock));
}

/// Packs what sizing packs, in the same way: the bill's spools are those that were minimised.
void cut_from_spools(const Batch& batch, CutPlan& plan) {
    const std::vector<search::Length> sold = whole_lengths(batch.cable->spools);
    std::vector<std::size_t> pieces;
    std::vector<std::size_t> too_long;
    std::vector<search::Length> lengths;
    for (const std::size_t piece : batch.pieces) {
        const search::Length length = search::whole_length(plan.pieces[piece].length.value());
        const bool fits = length <= *std::max_element(sold.begin(), sold.end());
        (fits ? pieces : too_long).push_back(piece);
        if (fits) lengths.push_back(length);
    }
    const search::Packing packing = search::pack(sold, lengths);
    for (const search::PackedSpool& spool : packing.spools)
        take_spool(batch, spool, pieces, plan);
    for (const std::size_t piece : too_long)
        take_special_spool(batch, piece, plan);
    const search::Length total = std::accumulate(lengths.begin(), lengths.end(), search::Length{0});
    if (too_long.empty() && packing.bought > search::SpoolTotals(sold, total).covering(total))
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
        if (batch.cable->spools.empty())
            cut_by_length(batch, plan);
        else
            cut_from_spools(batch, plan);
    }
    return plan;
}

} // namespace rillwatt
