#include "svg_parts.hpp"

#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace rillwatt {
namespace {

/// Advance widths of the printable ASCII characters, in thousandths of the type size, as in the common
/// sans-serif faces that share one set of metrics.
constexpr std::array<int, 95> advance{
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333,  278, 278, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667,
    611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667,  611, 722, 667, 944, 667,
    667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278,  556, 556, 222, 222, 500,
    222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500,  500, 334, 260, 334, 584};

bool is_continuation(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

double turn(SheetPoint a, SheetPoint b, SheetPoint c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

} // namespace

bool overlap(const SheetBox& a, const SheetBox& b, double margin) {
    return a.x < b.right() + margin && b.x < a.right() + margin && a.y < b.bottom() + margin &&
           b.y < a.bottom() + margin;
}

bool lines_cross(SheetPoint a, SheetPoint b, SheetPoint c, SheetPoint d) {
    return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

bool meets(SheetPoint a, SheetPoint b, const SheetBox& box) {
    double from = 0;
    double to = 1;
    const auto clip = [&](double start, double step, double low, double high) {
        if (step == 0) return start >= low && start <= high;
        const double t1 = (low - start) / step;
        const double t2 = (high - start) / step;
        from = std::max(from, std::min(t1, t2));
        to = std::min(to, std::max(t1, t2));
        return from <= to;
    };
    return clip(a.x, b.x - a.x, box.x, box.right()) && clip(a.y, b.y - a.y, box.y, box.bottom());
}

std::string coordinate(double value) { return trimmed_text(value, 1); }

std::string points_text(const std::vector<SheetPoint>& points) {
    std::string out;
    for (const SheetPoint p : points)
        out += (out.empty() ? "" : " ") + coordinate(p.x) + "," + coordinate(p.y);
    return out;
}

double text_width(std::string_view text, double size, bool bold) {
    int sum = 0;
    for (const char c : text) {
        if (is_continuation(c)) continue;
        const bool ascii = c >= ' ' && c <= '~';
        sum += ascii ? advance[static_cast<std::size_t>(c - ' ')] : 900;
    }
    return sum * size / 1000 * (bold ? 1.07 : 1.0);
}

std::string shortened(std::string_view text, std::size_t most) {
    std::size_t characters = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (is_continuation(text[i])) continue;
        if (++characters > most) return std::string(text.substr(0, i)) + "…";
    }
    return std::string(text);
}

std::string svg_text(SheetPoint at, std::string_view text, double size, std::string_view classes,
                     Anchor anchor, bool bold) {
    if (text.empty()) return {};
    const char* anchor_text = anchor == Anchor::middle ? " text-anchor=\"middle\""
                              : anchor == Anchor::end  ? " text-anchor=\"end\""
                                                       : "";
    return fmt::format("<text class=\"{}\" x=\"{}\" y=\"{}\" font-size=\"{}\"{}{} textLength=\"{}\" "
                       "lengthAdjust=\"spacingAndGlyphs\">{}</text>",
                       classes, coordinate(at.x), coordinate(at.y), coordinate(size), anchor_text,
                       bold ? " font-weight=\"700\"" : "", coordinate(text_width(text, size, bold)),
                       html_text(text));
}

std::string svg_title(std::string_view text) { return "<title>" + html_text(text) + "</title>"; }

std::vector<std::string> broken_lines(std::string_view text, double width, double size) {
    std::vector<std::string> lines;
    std::string line;
    while (!text.empty()) {
        const std::size_t end = text.find(' ');
        const std::string word(text.substr(0, end));
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        if (!line.empty() && text_width(line + " " + word, size) > width) {
            lines.push_back(line);
            line.clear();
        }
        line += (line.empty() ? "" : " ") + word;
    }
    if (!line.empty()) lines.push_back(line);
    return lines;
}

} // namespace rillwatt
