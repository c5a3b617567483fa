#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/plan/site_wiring.hpp"

#include "drawing_style.hpp"
#include "label_placement.hpp"
#include "plan_sheet.hpp"
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

/// The plan while it is drawn: shapes go straight into their layer, labels wait until everything that they
/// must not cover is known.
struct PlanDrawing {
    const Assessment& assessment;
    const Site& site;
    PlanSheet sheet;
    std::vector<DrawnCable> cables;
    std::set<std::string> faulty; ///< parts with an error finding

    std::string areas;
    std::string walks;
    std::string ground; ///< falls, sleeves
    std::string wires;
    std::string symbols;

    LabelGround label_ground;
    std::vector<LabelRequest> requests;
    std::vector<LabelText> texts;

    /// A label that stands where the request allows; its size is that of the text.
    void add_label(LabelText text, LabelRequest request);
    /// A label that may stand anywhere round a symbol of that radius, which it also keeps free of others.
    void add_symbol_label(LabelText text, SheetPoint at, double radius);
    std::string length(Metres value) const;
};

/// The areas that have an outline, those first that lie below others.
std::vector<const Area*> areas_from_below(const Site& site);

void draw_areas(PlanDrawing& plan);
void draw_ground(PlanDrawing& plan);
void draw_cables(PlanDrawing& plan);
void draw_symbols(PlanDrawing& plan);

/// Outlines of areas and walks and the waves of water, to be drawn above light that hides the ground.
std::string drawn_outlines(const PlanDrawing& plan);

/// The labels that wait, placed; the number left out for want of room is in `left_out`. What is added and
/// drawn after them keeps clear of them.
std::string drawn_labels(PlanDrawing& plan, std::size_t& left_out);

/// Scale bar, north, legend, title and cautions in the column at the right; `bottom` is where it ends.
std::string drawn_column(const PlanDrawing& plan, const LuxMap* lux, std::size_t left_out, double& bottom);

/// Symbols, drawn at the origin with a radius of about 7.
std::string fixture_symbol(const FixtureType* type, std::optional<double> pointing_degrees);
std::string splice_symbol();
std::string transformer_symbol();
std::string pump_symbol();
std::string outlet_symbol();
std::string mark_symbol();
std::string viewpoint_symbol(double looking_degrees);

} // namespace rillwatt
