#pragma once

#include "rillwatt/text/escape.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// A point of a drawing, in its units (CSS pixels at full size), y down.
struct SheetPoint {
    double x = 0;
    double y = 0;
};

/// An upright rectangle of a drawing.
struct SheetBox {
    double x = 0; ///< left
    double y = 0; ///< top
    double width = 0;
    double height = 0;

    double right() const { return x + width; }
    double bottom() const { return y + height; }
    SheetPoint centre() const { return {x + width / 2, y + height / 2}; }
};

inline SheetBox box_around(SheetPoint centre, double width, double height) {
    return {centre.x - width / 2, centre.y - height / 2, width, height};
}

/// The point that divides the way from a to b: 0 is a, 1 is b.
inline SheetPoint point_between(SheetPoint a, SheetPoint b, double share) {
    return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

/// Whether two boxes come nearer than `margin`.
bool overlap(const SheetBox& a, const SheetBox& b, double margin = 0);

/// Whether the straight line from a to b meets the box.
bool meets(SheetPoint a, SheetPoint b, const SheetBox& box);

/// Whether two straight lines cross.
bool lines_cross(SheetPoint a, SheetPoint b, SheetPoint c, SheetPoint d);

/// A coordinate with at most one decimal: finer than any print.
std::string coordinate(double value);

/// "x,y x,y ..." for polylines and polygons.
std::string points_text(const std::vector<SheetPoint>& points);

/// Width of a text in a sans-serif face of common proportions, in units of the drawing. Drawings set texts to
/// exactly this width, whatever face the reader has.
double text_width(std::string_view text, double size, bool bold = false);

/// The text, cut with an ellipsis when it is longer than `most` characters.
std::string shortened(std::string_view text, std::size_t most);

enum class Anchor { start, middle, end };

/// A `<text>` element of fixed width. `classes` are style classes of the drawing.
std::string svg_text(SheetPoint at, std::string_view text, double size, std::string_view classes,
                     Anchor anchor = Anchor::start, bool bold = false);

/// `<title>` with a user's text made safe.
std::string svg_title(std::string_view text);

/// Text broken at spaces into lines no wider than `width`.
std::vector<std::string> broken_lines(std::string_view text, double width, double size);

} // namespace rillwatt
