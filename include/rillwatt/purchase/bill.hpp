#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// One piece of cable to cut: a length of a circuit's tree or a link.
struct CablePiece {
    std::string tag;   ///< written on both ends: run id and number, "A-3"
    std::string run;   ///< id of the run it belongs to
    std::string cable; ///< catalog id
    std::string from;
    std::string to;
    Metres length;
    bool from_plan = false; ///< measured on the plan, allowance included
};

/// One spool to buy, or one length to have cut, and the pieces that come out of it.
struct CableStock {
    std::string cable;
    Metres length;                   ///< as sold
    std::vector<std::size_t> pieces; ///< indices into CutPlan::pieces, in the order they are cut
    Metres rest;
};

/// Every cable piece of a site and the spools it comes from, cable by cable.
struct CutPlan {
    std::vector<CablePiece> pieces; ///< run by run, from the transformer outwards
    std::vector<CableStock> stock;
    std::vector<std::string> remarks; ///< pieces longer than any spool, a spool more than the total suggests
};

/// Cuts every known length of the site's circuits, packed into spools with the least waste.
CutPlan plan_cuts(const Site& site, const SiteCircuits& circuits);

/// What kind of thing a line of the bill buys.
enum class BillKind { cable, transformer, fixture, pump, accessory };

const char* bill_kind_name(BillKind kind);

struct BillLine {
    std::string item; ///< catalog id
    BillKind kind = BillKind::cable;
    std::string description; ///< "cable, spools of 250 ft"
    double quantity = 0;
    std::string unit;           ///< "ft", "m", "spool", "piece"
    std::optional<Money> price; ///< of one unit; empty when the catalog gives none
    std::optional<Money> cost;
    std::string why; ///< what it is counted by: "joints of cable", "one for each transformer"
};

/// What to buy and put on the truck.
struct Bill {
    std::vector<BillLine>
        lines;   ///< cable, transformers, fixtures, pumps, accessories; within these in catalog order
    Money total; ///< of the lines that have a price
    std::vector<std::string> unpriced; ///< items the total does not hold
    std::vector<std::string> remarks;  ///< of the cut plan
};

/// The bill of materials of a site: packed cable, transformers, fixtures, pumps and accessories, from what is
/// written and measured. What is still open is not in it.
Bill make_bill(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
               const SiteCircuits& circuits);

} // namespace rillwatt
