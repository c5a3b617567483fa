#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/report/escape.hpp"
#include "rillwatt/report/isolux_layer.hpp"
#include "rillwatt/report/light_section.hpp"

#include <fmt/format.h>

namespace rillwatt {

namespace {

constexpr double text_size = 0.34; ///< metres on the plan

const char* fill_of(AreaKind kind) {
    switch (kind) {
    case AreaKind::water:
        return "#cfe3ef";
    case AreaKind::building:
        return "#d9d4c8";
    case AreaKind::paving:
        return "#ece8dd";
    case AreaKind::bed:
        return "#e3ebd9";
    case AreaKind::lawn:
        break;
    }
    return "#eef4e6";
}

/// The plan is drawn in metres, y turned over because paper counts downwards.
std::string points_text(const std::vector<PlanPoint>& points) {
    std::string text;
    for (const PlanPoint& p : points)
        text += fmt::format("{},{} ", trimmed_text(p.x, 3), trimmed_text(-p.y, 3));
    return text;
}

std::string areas(const Site& site, bool buildings) {
    std::string out;
    for (const Area& area : site.areas)
        if ((area.kind == AreaKind::building) == buildings)
            out += fmt::format("<polygon points=\"{}\" fill=\"{}\" stroke=\"#8b8778\" stroke-width=\"0.03\">"
                               "<title>{}</title></polygon>\n",
                               points_text(area.outline), fill_of(area.kind), html_text(area.id));
    return out;
}

std::string walks(const Site& site) {
    std::string out;
    for (const Walk& walk : site.walks)
        out += fmt::format("<polyline points=\"{}\" fill=\"none\" stroke=\"#6d6a60\" stroke-opacity=\"0.16\" "
                           "stroke-width=\"{}\" stroke-linejoin=\"round\"><title>{}</title></polyline>\n"
                           "<polyline points=\"{}\" fill=\"none\" stroke=\"#3b3a35\" stroke-width=\"0.03\" "
                           "stroke-dasharray=\"0.2 0.12\"/>\n",
                           points_text(walk.line), trimmed_text(walk.width.value(), 3), html_text(walk.id),
                           points_text(walk.line));
    return out;
}

std::string falls(const Site& site) {
    std::string out;
    for (const Falls& f : site.falls)
        out += fmt::format("<polyline points=\"{}\" fill=\"none\" stroke=\"#0d5a86\" stroke-width=\"0.12\">"
                           "<title>{}</title></polyline>\n",
                           points_text({f.lip_left, f.lip_right}), html_text(f.id));
    return out;
}

std::string lights(const Site& site, const LightResult& light) {
    std::string out;
    for (const FixtureLight& fixture : light.fixtures)
        out += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"0.11\" fill=\"{}\" stroke=\"#1b2733\" "
                           "stroke-width=\"0.03\" data-part=\"{}\"><title>{}</title></circle>\n",
                           trimmed_text(fixture.at.x, 3), trimmed_text(-fixture.at.y, 3),
                           fixture.dark ? "#777777" : "#ffffff", html_text(site.fixtures[fixture.fixture].id),
                           html_text(site.fixtures[fixture.fixture].id));
    return out;
}

std::string viewpoints(const Site& site) {
    std::string out;
    for (const Viewpoint& viewpoint : site.viewpoints)
        out += fmt::format(
            "<g><title>{0}</title><circle cx=\"{1}\" cy=\"{2}\" r=\"0.16\" fill=\"none\" "
            "stroke=\"#0d5a86\" stroke-width=\"0.04\"/><circle cx=\"{1}\" cy=\"{2}\" r=\"0.05\" "
            "fill=\"#0d5a86\"/></g>\n",
            html_text(viewpoint.id), trimmed_text(viewpoint.at.x, 3), trimmed_text(-viewpoint.at.y, 3));
    return out;
}

} // namespace

std::string light_plan_svg(const Site& site, const LightResult& light) {
    if (!light.map || light.map->lux.empty()) return "";
    const LuxMap& map = *light.map;
    const double width = map.step * static_cast<double>(map.columns - 1);
    const double height = map.step * static_cast<double>(map.rows - 1);
    const double top = -(map.corner.y + height);
    const auto on_paper = [](PlanPoint p) { return PlanPoint{p.x, -p.y}; };
    std::string out =
        fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{} {} {} {}\" role=\"img\" "
                    "aria-label=\"Plan with isolux lines\" font-family=\"sans-serif\">\n"
                    "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"#fbfaf5\"/>\n",
                    trimmed_text(map.corner.x, 3), trimmed_text(top, 3), trimmed_text(width, 3),
                    trimmed_text(height + 3 * text_size, 3), trimmed_text(map.corner.x, 3),
                    trimmed_text(top, 3), trimmed_text(width, 3), trimmed_text(height + 3 * text_size, 3));
    out += areas(site, false) + isolux_layer(map, on_paper, text_size) + walks(site) + areas(site, true) +
           falls(site) + lights(site, light) + viewpoints(site);
    out += fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"#fbfaf5\"/>\n",
                       trimmed_text(map.corner.x, 3), trimmed_text(-map.corner.y, 3), trimmed_text(width, 3),
                       trimmed_text(3 * text_size, 3));
    out += isolux_key(map, {map.corner.x + text_size, -map.corner.y + 2 * text_size}, text_size);
    return out + "</svg>\n";
}

} // namespace rillwatt
