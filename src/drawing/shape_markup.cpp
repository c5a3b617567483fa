#include "shape_markup.hpp"

#include <fmt/format.h>

namespace rillwatt {
namespace {

std::string style_of(const Line& line) {
    std::string style;
    if (line.width > 0) style = "stroke-width:" + coordinate(line.width) + "px";
    if (!line.dashes.empty()) style += (style.empty() ? "" : ";") + ("stroke-dasharray:" + line.dashes);
    return style.empty() ? "" : " style=\"" + style + "\"";
}

std::string strokes_path(const std::vector<SheetPoint>& points) {
    std::string d;
    for (std::size_t i = 0; i + 1 < points.size(); i += 2)
        d += "M" + coordinate(points[i].x) + " " + coordinate(points[i].y) + "L" +
             coordinate(points[i + 1].x) + " " + coordinate(points[i + 1].y);
    return d;
}

std::string line_markup(const Line& line, std::string_view drawing) {
    if (line.form == LineForm::strokes)
        return fmt::format("<path class=\"{}\" d=\"{}\"{}/>", line.look, strokes_path(line.points),
                           style_of(line));
    const std::string fill =
        line.pattern.empty() ? "" : fmt::format(" fill=\"url(#rw-{}-{})\"", drawing, line.pattern);
    return fmt::format("<{} class=\"{}\"{} points=\"{}\"{}/>",
                       line.form == LineForm::closed ? "polygon" : "polyline", line.look, fill,
                       points_text(line.points), style_of(line));
}

std::string light_markup(const Symbol& symbol) {
    std::string lamp =
        symbol.dark ? "<circle class=\"rw-dark\" r=\"5\"/>" : "<circle class=\"rw-lamp\" r=\"5\"/>";
    switch (symbol.kind) {
    case SymbolKind::path_light:
        return lamp + "<path class=\"rw-line\" d=\"M0-8V-5M0 8V5M-8 0H-5M8 0H5\"/>";
    case SymbolKind::submersible_light:
        return lamp + "<path class=\"rw-thin\" d=\"M-7 8q1.75-2.4 3.5 0t3.5 0t3.5 0t3.5 0\"/>";
    case SymbolKind::accent_light:
        return lamp +
               fmt::format("<path class=\"rw-line\" transform=\"rotate({:.0f})\" d=\"M4-3L10-6M4 3L10 6\"/>",
                           -symbol.pointing);
    case SymbolKind::downlight:
        return lamp + "<path class=\"rw-line\" d=\"M-3.5-3.5L3.5 3.5M-3.5 3.5L3.5-3.5\"/>";
    case SymbolKind::step_light:
        return lamp + "<path class=\"rw-line\" d=\"M-8-5H8\"/>";
    default:
        return lamp + "<circle class=\"rw-solid\" r=\"1.6\"/>";
    }
}

std::string figure_markup(const Symbol& symbol) {
    switch (symbol.kind) {
    case SymbolKind::splice:
        return "<path class=\"rw-solid\" d=\"M0-4.6L4.6 0L0 4.6L-4.6 0Z\"/>";
    case SymbolKind::transformer:
        return "<rect class=\"rw-body\" x=\"-8.5\" y=\"-6.5\" width=\"17\" height=\"13\"/>"
               "<circle class=\"rw-thin\" cx=\"-2.2\" r=\"3.6\"/><circle class=\"rw-thin\" cx=\"2.2\" "
               "r=\"3.6\"/>";
    case SymbolKind::pump:
        return "<circle class=\"rw-body\" r=\"7\"/><path class=\"rw-solid\" d=\"M-3.4-5L6-0L-3.4 5Z\"/>";
    case SymbolKind::outlet:
        return "<rect class=\"rw-body\" x=\"-5.5\" y=\"-5.5\" width=\"11\" height=\"11\" rx=\"2.5\"/>"
               "<path class=\"rw-line\" d=\"M-1.8-2.5V2.5M1.8-2.5V2.5\"/>";
    case SymbolKind::mark:
        return "<circle class=\"rw-thin\" r=\"3.6\"/><path class=\"rw-thin\" d=\"M-7 0H7M0-7V7\"/>";
    case SymbolKind::viewpoint:
        return fmt::format(
            "<g transform=\"rotate({:.0f})\"><path class=\"rw-thin\" d=\"M3 0L12-5M3 0L12 5\"/>"
            "<path class=\"rw-body\" d=\"M-5 0Q0-5.5 5 0Q0 5.5-5 0Z\"/>"
            "<circle class=\"rw-solid\" r=\"1.7\"/></g>",
            -symbol.pointing);
    default:
        return light_markup(symbol);
    }
}

} // namespace

std::string symbol_markup(const Symbol& symbol) {
    return figure_markup(symbol) + (symbol.wrong ? "<circle class=\"rw-wrong\" r=\"11.5\"/>" : "");
}

std::string shape_markup(const Shape& shape, std::string_view drawing) {
    std::string out = fmt::format("<g class=\"{}\"{}{}>{}", shape.look,
                                  shape.part.empty() ? "" : part_attribute(shape.part),
                                  shape.symbol ? fmt::format(" transform=\"translate({} {})\"",
                                                             coordinate(shape.at.x), coordinate(shape.at.y))
                                               : "",
                                  shape.title.empty() ? "" : svg_title(shape.title));
    for (const Line& line : shape.lines)
        out += line_markup(line, drawing);
    if (shape.symbol) out += symbol_markup(*shape.symbol);
    return out + "</g>\n";
}

std::string shapes_markup(const std::vector<Shape>& shapes, std::string_view drawing) {
    std::string out;
    for (const Shape& shape : shapes)
        out += shape_markup(shape, drawing);
    return out;
}

} // namespace rillwatt
