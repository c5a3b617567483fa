#pragma once

#include "svg_parts.hpp"
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace rillwatt {

/// One place where a label could stand.
struct LabelPlace {
    SheetBox box;
    double cost = 0;
    std::optional<SheetPoint> leader_from; ///< a fine line leads from there to the box
    double leader_gap = 0;                 ///< the line begins so far from there, at the edge of a symbol
};

/// The end of a leader at the box: the nearest point of its edge.
SheetPoint leader_end(const LabelPlace& place);

/// A point that a label may stand round, on any side and in rings, with leaders from the second ring on.
struct LabelAnchor {
    SheetPoint at;
    double radius = 0; ///< of what is drawn there
};

/// A label with the places it could take: those written out, then those round each anchor.
struct LabelRequest {
    double width = 0;
    double height = 0;
    std::vector<LabelAnchor> anchors;
    std::vector<LabelPlace> places;
    std::optional<std::size_t> symbol; ///< obstacle that is its own: a leader may come out of it
    bool optional = false;             ///< left out sooner than another label is moved for it

    std::size_t place_count() const;
    LabelPlace place(std::size_t k) const;
    double own_cost(std::size_t k) const; ///< of that place, whatever lies about it
};

/// What labels are placed among.
struct LabelGround {
    SheetBox frame;                                       ///< labels stay inside
    std::vector<SheetBox> symbols;                        ///< never covered
    std::vector<std::pair<SheetPoint, SheetPoint>> lines; ///< covered unwillingly
};

/// Chooses a place for each label so that no two labels overlap, none covers a symbol, and leaders neither
/// cross one another nor run through labels and symbols. Cheapest place first; a label that finds none
/// evicts another, which then looks again; passes of improvement follow. Empty for a label that is left out
/// for want of room. What is near is found by grids (`sheet_grid.hpp`), and no label evicts more than a few
/// times: the work grows with the number of labels and with how close they stand, not with that of pairs.
std::vector<std::optional<LabelPlace>> place_labels(const LabelGround& ground,
                                                    const std::vector<LabelRequest>& requests);

} // namespace rillwatt
