#include "rillwatt/layout/outline_index.hpp"

#include <utility>

namespace rillwatt {

namespace {

/// Fewer corners than this are looked at one after the other sooner than through an index.
constexpr std::size_t few_corners = 40;

} // namespace

OutlineIndex::OutlineIndex(std::vector<std::vector<PlanPoint>> outlines) : outlines_(std::move(outlines)) {
    std::vector<PlanBox> side_boxes;
    for (std::size_t i = 0; i < outlines_.size(); ++i) {
        const std::vector<PlanPoint>& outline = outlines_[i];
        first_sides_.push_back(sides_.size());
        for (std::size_t k = 0; k < outline.size(); ++k) {
            sides_.push_back({outline[k], outline[(k + 1) % outline.size()], i});
            side_boxes.push_back(rillwatt::box_of(sides_.back().a, sides_.back().b).grown(touch_tolerance));
        }
        const PlanBox box = rillwatt::box_of(outline);
        box_of_.push_back(box.empty() ? box : box.grown(touch_tolerance));
    }
    boxes_ = PlanIndex(box_of_);
    side_index_ = PlanIndex(side_boxes);
}

Location OutlineIndex::locate(std::size_t outline, PlanPoint p) const {
    if (outlines_[outline].size() < few_corners) return rillwatt::locate(outlines_[outline], p);
    bool touched = false;
    auto touches = [&](std::size_t k) {
        const Side& side = sides_[k];
        touched = side.outline == outline && same_place(nearest_on_segment(side.a, side.b, p), p);
        return !touched;
    };
    side_index_.visit({p.x, p.y, p.x, p.y}, touches);
    if (touched) return Location::on_outline;
    bool inside = false;
    auto passes = [&](std::size_t k) {
        const Side& side = sides_[k];
        if (side.outline == outline && crossed_to_the_right(side.a, side.b, p)) inside = !inside;
        return true;
    };
    side_index_.visit({p.x, p.y, std::max(p.x, box_of_[outline].x_high), p.y}, passes);
    return inside ? Location::inside : Location::outside;
}

std::vector<std::size_t> OutlineIndex::covering(PlanPoint p) const {
    std::vector<std::size_t> found = near(p);
    std::erase_if(found, [&](std::size_t i) { return locate(i, p) == Location::outside; });
    return found;
}

} // namespace rillwatt
