#include "bill_cost.hpp"

#include "rillwatt/purchase/bill.hpp"

namespace rillwatt::test {

double billed(const Garden& garden, const Site& sized) {
    const auto circuits = build_circuits(sized, garden.catalog, garden.lengths());
    const Bill bill = make_bill(sized, garden.catalog, garden.lengths(), *circuits.value);
    double cost = 0;
    for (const BillLine& line : bill.lines)
        if (line.kind == BillKind::cable || line.kind == BillKind::transformer)
            cost += line.cost ? line.cost->value() : 0;
    return cost;
}

bool never_thicker_downstream(const Garden& garden, const Site& sized) {
    const auto open = garden.build();
    const auto circuits = build_circuits(sized, garden.catalog, garden.lengths());
    for (std::size_t t = 0; t < circuits.value->transformers.size(); ++t) {
        const auto& nodes = circuits.value->transformers[t].nodes;
        const auto& before = open.value->transformers[t].nodes;
        for (std::size_t i = 0; i < nodes.size(); ++i) {
            if (nodes[i].parent < 0) continue;
            const auto feed = static_cast<std::size_t>(nodes[i].parent);
            const bool chosen = before[i].cable == nullptr && before[feed].cable == nullptr;
            if (!chosen || nodes[feed].kind == NodeKind::run) continue;
            if (nodes[i].cable->section_mm2 > nodes[feed].cable->section_mm2) return false;
        }
    }
    return true;
}

} // namespace rillwatt::test
