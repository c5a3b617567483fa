#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/plan/site_wiring.hpp"

#include "drawing_style.hpp"
#include "label_placement.hpp"
#include "plan_sheet.hpp"
#include "shapes.hpp"
#include <set>
#include <string>
#include <vector>

namespace rillwatt {

/// One line of lettering in up to two weights.
struct LabelText {
    std::string part; ///< id for `data-part`; may be empty
    std::string name;
    std::string figure; ///< lighter, after the name; may be empty
    double size = 11;
    bool bold = false;
    std::string classes; ///< style classes besides the halo
    bool framed = false; ///< in a small box: the tag of a cable
    std::string group;   ///< class of the group, for its colour; may be empty

    double width() const;
    double height() const { return size + 2; }
};

/// A label where it stands.
struct PlacedLabel {
    LabelText text;
    LabelPlace place;
};

/// The plan while it is drawn: shapes in their layers, the lowest first; labels wait until all that they must
/// not cover is known. What it says in markup is put together at the end.
struct PlanDrawing {
    const Assessment& assessment;
    const Site& site;
    PlanSheet sheet;
    std::vector<DrawnCable> cables;
    std::set<std::string> faulty; ///< parts with an error finding

    std::vector<Shape> areas;
    std::vector<Shape> walks;
    std::vector<Shape> ground; ///< falls, sleeves
    std::vector<Shape> wires;
    std::vector<Shape> symbols;

    LabelGround label_ground;
    std::vector<LabelRequest> requests;
    std::vector<LabelText> texts;

    /// A label that stands where the request allows; its size is that of the text.
    void add_label(LabelText text, LabelRequest request);
    /// A label that may stand anywhere round a symbol of that radius, which it also keeps free of others.
    void add_symbol_label(LabelText text, SheetPoint at, double radius);
    std::string length(Metres value) const;
};

void draw_areas(PlanDrawing& plan);
void draw_ground(PlanDrawing& plan);
void draw_cables(PlanDrawing& plan);
void draw_symbols(PlanDrawing& plan);

/// The labels that wait, placed; the number left out for want of room is in `left_out`. What is added and
/// placed after them keeps clear of them.
std::vector<PlacedLabel> placed_labels(PlanDrawing& plan, std::size_t& left_out);

/// Leaders, then labels, each with its box written out, so that tests, and whoever restyles the plan, know
/// the room it has.
std::string labels_markup(const std::vector<PlacedLabel>& labels);

/// Scale bar, north, legend, title and cautions in the column at the right; `bottom` is where it ends.
std::string drawn_column(const PlanDrawing& plan, const LuxMap* lux, std::size_t left_out, double& bottom);

} // namespace rillwatt
