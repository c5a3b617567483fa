#include "rillwatt/purchase/bill.hpp"

#include "rillwatt/layout/trench.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace rillwatt {

const char* bill_kind_name(BillKind kind) {
    switch (kind) {
    case BillKind::cable:
        return "cable";
    case BillKind::transformer:
        return "transformer";
    case BillKind::fixture:
        return "fixture";
    case BillKind::pump:
        return "pump";
    case BillKind::accessory:
        return "accessory";
    }
    return "";
}

namespace {

/// Lengths on the bill are in the site's units: what the shop is asked for.
struct SiteLength {
    double metres;
    const char* name;
};

SiteLength unit_of(const Site& site) {
    return site.settings.units == LengthUnit::feet ? SiteLength{metres_per_foot, "ft"} : SiteLength{1, "m"};
}

void add_line(Bill& bill, BillLine line) {
    if (line.quantity <= 0) return;
    if (line.price) {
        line.cost = *line.price * line.quantity;
        bill.total += *line.cost;
    } else {
        bill.unpriced.push_back(line.item);
    }
    bill.lines.push_back(std::move(line));
}

std::optional<Money> price_of(const CableType& cable, Metres length) {
    if (!cable.price) return std::nullopt;
    return *cable.price * length;
}

void add_cut_cable(Bill& bill, const Site& site, const CableType& cable, Metres total) {
    const SiteLength unit = unit_of(site);
    add_line(bill, {.item = cable.id,
                    .kind = BillKind::cable,
                    .description = "cable, cut to length",
                    .quantity = total.value() / unit.metres,
                    .unit = unit.name,
                    .price = price_of(cable, Metres(unit.metres)),
                    .why = "every length of the site"});
}

void add_cables(Bill& bill, const Site& site, const Catalog& catalog, const CutPlan& cuts) {
    std::map<std::string, Metres> by_length;
    std::map<std::pair<std::string, double>, int> spools;
    for (const CableStock& stock : cuts.stock) {
        const CableType* cable = find_entry(catalog.cables, stock.cable);
        if (cable->spools.empty())
            by_length[stock.cable] += stock.length;
        else
            ++spools[{stock.cable, stock.length.value()}];
    }
    for (const auto& [id, total] : by_length)
        add_cut_cable(bill, site, *find_entry(catalog.cables, id), total);
    for (const auto& [key, count] : spools) {
        const CableType& cable = *find_entry(catalog.cables, key.first);
        const Metres length(key.second);
        const bool usual = std::find(cable.spools.begin(), cable.spools.end(), length) != cable.spools.end();
        add_line(bill, {.item = cable.id,
                        .kind = BillKind::cable,
                        .description = fmt::format("cable, {} of {}", usual ? "spool" : "special spool",
                                                   length_text(length, site.settings.units)),
                        .quantity = static_cast<double>(count),
                        .unit = "spool",
                        .price = price_of(cable, length),
                        .why = "every length of the site, packed into whole spools"});
    }
}

/// Counts parts by their model and adds a line for each, in catalog order.
template<class Map>
void add_models(Bill& bill, const Map& entries, const std::vector<std::string>& models, BillKind kind,
                const char* description) {
    std::map<std::string, int> counts;
    for (const std::string& model : models)
        ++counts[model];
    for (const auto& [id, count] : counts)
        if (const auto* entry = find_entry(entries, id))
            add_line(bill, {.item = id,
                            .kind = kind,
                            .description = description,
                            .quantity = static_cast<double>(count),
                            .unit = "piece",
                            .price = entry->price,
                            .why = "one for each on the site"});
}

void add_equipment(Bill& bill, const Site& site, const Catalog& catalog, const SiteCircuits& circuits) {
    std::vector<std::string> models;
    for (const TransformerCircuit& circuit : circuits.transformers)
        if (circuit.type != nullptr) models.push_back(circuit.type->id);
    add_models(bill, catalog.transformers, models, BillKind::transformer, "transformer");
    models.clear();
    for (const Fixture& fixture : site.fixtures)
        models.push_back(fixture.model);
    add_models(bill, catalog.fixtures, models, BillKind::fixture, "light");
    models.clear();
    for (const Pump& pump : site.pumps)
        models.push_back(pump.model);
    add_models(bill, catalog.pumps, models, BillKind::pump, "pump");
}

/// How much of each use a site needs; the uses are those the catalog's accessories name.
struct Need {
    double quantity = 0;
    const char* unit = "piece";
    const char* why = "";
};

bool set_in_soil(const FixtureType& type) {
    return type.kind == FixtureKind::path || type.kind == FixtureKind::accent;
}

std::map<std::string, Need> needs_of(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                                     const CutPlan& cuts) {
    double stakes = 0;
    double wired = 0;
    for (const Fixture& fixture : site.fixtures) {
        const FixtureType* type = find_entry(catalog.fixtures, fixture.model);
        if (type != nullptr && set_in_soil(*type)) ++stakes;
        if (fixture.from) ++wired;
    }
    Metres sleeves;
    for (const Sleeve& sleeve : site.sleeves)
        sleeves += distance(sleeve.a, sleeve.b);
    const double joints = wired + static_cast<double>(site.splices.size());
    return {
        {"splice", {joints, "piece", "one for each splice and each light"}},
        {"fixture-stake", {stakes, "piece", "one for each path or accent light"}},
        {"sleeve-metre", {sleeves.value(), "m", "sleeves on the plan"}},
        {"trench-tape-metre",
         {trench_length(trench_stretches(site, lengths), TrenchGround::soil).value(), "m",
          "trench to dig on the plan"}},
        {"cable-tag",
         {2.0 * static_cast<double>(cuts.pieces.size()), "piece", "two for each piece of cable"}},
        {"marker-stake",
         {static_cast<double>(site.fixtures.size() + site.splices.size()), "piece",
          "one for each light and splice"}},
    };
}

/// Accessories by the metre, said in feet where the site is measured in feet.
BillLine in_site_units(BillLine line, const Site& site) {
    const SiteLength unit = unit_of(site);
    if (line.unit != "m" || unit.metres == 1) return line;
    line.quantity /= unit.metres;
    if (line.price) line.price = *line.price * unit.metres;
    line.unit = unit.name;
    return line;
}

void add_accessories(Bill& bill, const Site& site, const Catalog& catalog,
                     const std::map<std::string, Need>& needs) {
    for (const auto& [id, accessory] : catalog.accessories) {
        const auto need = needs.find(accessory.use);
        if (need == needs.end()) continue;
        add_line(bill, in_site_units({.item = id,
                                      .kind = BillKind::accessory,
                                      .description = accessory.note,
                                      .quantity = need->second.quantity,
                                      .unit = need->second.unit,
                                      .price = accessory.price,
                                      .why = need->second.why},
                                     site));
    }
}

} // namespace

Bill make_bill(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
               const SiteCircuits& circuits) {
    const CutPlan cuts = plan_cuts(site, circuits);
    Bill bill;
    add_cables(bill, site, catalog, cuts);
    bill.remarks = cuts.remarks;
    add_equipment(bill, site, catalog, circuits);
    add_accessories(bill, site, catalog, needs_of(site, catalog, lengths, cuts));
    return bill;
}

} // namespace rillwatt
