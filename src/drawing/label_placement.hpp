#pragma once

#include "svg_parts.hpp"
#include <cstddef>
#include <optional>
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

/// A label with the places it could take.
struct LabelRequest {
    std::vector<LabelPlace> places;
    std::optional<std::size_t> symbol; ///< obstacle that is its own: a leader may come out of it
    bool optional = false;             ///< left out sooner than another label is moved for it
};

/// Places around a point symbol, nearest first: rings of directions, with leaders from the second ring on.
std::vector<LabelPlace> places_around(SheetPoint anchor, double radius, double width, double height);

/// What labels are placed among.
struct LabelGround {
    SheetBox frame;                                       ///< labels stay inside
    std::vector<SheetBox> symbols;                        ///< never covered
    std::vector<std::pair<SheetPoint, SheetPoint>> lines; ///< covered unwillingly
};

/// Chooses a place for each label so that no two labels overlap, none covers a symbol, and leaders neither
/// cross one another nor run through labels and symbols. Cheapest place first; a label that finds none
/// drives out the fewest others, which then look again; passes of improvement follow. Empty for a label that
/// is left out for want of room.
std::vector<std::optional<LabelPlace>> place_labels(const LabelGround& ground,
                                                    const std::vector<LabelRequest>& requests);

} // namespace rillwatt
