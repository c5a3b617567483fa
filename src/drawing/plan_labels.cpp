#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "plan_drawing.hpp"
#include <algorithm>
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
    const SheetPoint from = point_between(*place.leader_from, to, place.leader_gap / length);
    return fmt::format("<path class=\"rw-leader\" d=\"M{} {}L{} {}\"/>", coordinate(from.x),
                       coordinate(from.y), coordinate(to.x), coordinate(to.y));
}

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

namespace {

/// Places the labels that wait. What finds no place is left waiting; what does is ground that later labels
/// keep clear of.
void place_waiting(PlanDrawing& plan, std::vector<PlacedLabel>& placed) {
    const auto places = place_labels(plan.label_ground, plan.requests);
    std::vector<LabelText> texts;
    std::vector<LabelRequest> requests;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (!places[i]) {
            texts.push_back(std::move(plan.texts[i]));
            requests.push_back(std::move(plan.requests[i]));
            continue;
        }
        placed.push_back({std::move(plan.texts[i]), *places[i]});
        plan.label_ground.symbols.push_back(places[i]->box);
        if (places[i]->leader_from)
            plan.label_ground.lines.emplace_back(*places[i]->leader_from, leader_end(*places[i]));
    }
    plan.texts = std::move(texts);
    plan.requests = std::move(requests);
}

/// A name alone needs less room than with its figure, which the tables say as well. A label that has no
/// figure found no place and finds none.
void leave_out_figures(PlanDrawing& plan) {
    for (std::size_t i = 0; i < plan.texts.size(); ++i) {
        if (plan.texts[i].figure.empty()) plan.requests[i] = {.optional = plan.requests[i].optional};
        plan.texts[i].figure.clear();
        plan.requests[i].width = plan.texts[i].width();
    }
}

} // namespace

std::vector<PlacedLabel> placed_labels(PlanDrawing& plan, std::size_t& left_out) {
    std::vector<PlacedLabel> placed;
    place_waiting(plan, placed);
    leave_out_figures(plan);
    place_waiting(plan, placed);
    left_out = static_cast<std::size_t>(
        std::count_if(plan.requests.begin(), plan.requests.end(),
                      [](const LabelRequest& request) { return !request.optional; }));
    plan.requests.clear();
    plan.texts.clear();
    return placed;
}

std::string labels_markup(const std::vector<PlacedLabel>& labels) {
    std::string leaders;
    std::string texts;
    for (const PlacedLabel& label : labels) {
        leaders += leader(label.place);
        texts += drawn_label(label.text, label.place);
    }
    return "<g class=\"rw-leaders\">" + leaders + "</g>\n" + texts;
}

} // namespace rillwatt
