#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "plan_drawing.hpp"
#include <cmath>

namespace rillwatt {
namespace {

constexpr std::size_t longest_name = 26;
constexpr double before_figure = 4.5;

std::string shown_name(const LabelText& text) { return shortened(text.name, longest_name); }
std::string shown_figure(const LabelText& text) { return shortened(text.figure, longest_name); }

std::string tag(const LabelText& text, const SheetBox& box) {
    return fmt::format("<rect class=\"rw-tag\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"2.5\"/>{}",
                       coordinate(box.x), coordinate(box.y), coordinate(box.width), coordinate(box.height),
                       svg_text({box.centre().x, box.bottom() - 3}, shown_name(text), text.size, text.classes,
                                Anchor::middle, text.bold));
}

std::string lettering(const LabelText& text, const SheetBox& box) {
    const double base = box.bottom() - text.size * 0.28;
    std::string out = svg_text({box.x, base}, shown_name(text), text.size, "rw-halo " + text.classes,
                               Anchor::start, text.bold);
    const double name_width = text_width(shown_name(text), text.size, text.bold);
    return out + svg_text({box.x + name_width + before_figure, base}, shown_figure(text), text.size,
                          "rw-halo " + text.classes);
}

std::string leader(const LabelPlace& place) {
    if (!place.leader_from) return {};
    const SheetPoint to = leader_end(place);
    const double length = std::hypot(to.x - place.leader_from->x, to.y - place.leader_from->y);
    if (length <= place.leader_gap) return {};
    const double share = place.leader_gap / length;
    const SheetPoint from{place.leader_from->x + share * (to.x - place.leader_from->x),
                          place.leader_from->y + share * (to.y - place.leader_from->y)};
    return fmt::format("<path class=\"rw-leader\" d=\"M{} {}L{} {}\"/>", coordinate(from.x),
                       coordinate(from.y), coordinate(to.x), coordinate(to.y));
}

/// The box is written out so that tests, and whoever restyles the plan, know the room a label has.
std::string drawn_label(const LabelText& text, const LabelPlace& place) {
    const SheetBox& box = place.box;
    return fmt::format("<g class=\"rw-label{}\"{} data-box=\"{} {} {} {}\">{}</g>\n",
                       text.group.empty() ? "" : " " + text.group,
                       text.part.empty() ? "" : part_attribute(text.part), coordinate(box.x),
                       coordinate(box.y), coordinate(box.width), coordinate(box.height),
                       text.framed ? tag(text, box) : lettering(text, box));
}

} // namespace

double LabelText::width() const {
    const double name_width = text_width(shown_name(*this), size, bold);
    const double figure_width = figure.empty() ? 0 : before_figure + text_width(shown_figure(*this), size);
    return name_width + figure_width + (framed ? 8 : 0);
}

void PlanDrawing::add_label(LabelText text, LabelRequest request) {
    request.width = text.width();
    request.height = text.height();
    texts.push_back(std::move(text));
    requests.push_back(std::move(request));
}

void PlanDrawing::add_symbol_label(LabelText text, SheetPoint at, double radius) {
    const std::size_t symbol = label_ground.symbols.size();
    label_ground.symbols.push_back(box_around(at, 2 * radius, 2 * radius));
    add_label(std::move(text), {.anchors = {{at, radius}}, .symbol = symbol});
}

std::string PlanDrawing::length(Metres value) const { return length_text(value, site.settings.units); }

std::string drawn_labels(PlanDrawing& plan, std::size_t& left_out) {
    const auto places = place_labels(plan.label_ground, plan.requests);
    std::string leaders;
    std::string labels;
    left_out = 0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (!places[i]) {
            if (!plan.requests[i].optional) ++left_out;
            continue;
        }
        leaders += leader(*places[i]);
        labels += drawn_label(plan.texts[i], *places[i]);
        plan.label_ground.symbols.push_back(places[i]->box);
        if (places[i]->leader_from)
            plan.label_ground.lines.emplace_back(*places[i]->leader_from, leader_end(*places[i]));
    }
    plan.requests.clear();
    plan.texts.clear();
    return "<g class=\"rw-leaders\">" + leaders + "</g>\n" + labels;
}

} // namespace rillwatt
