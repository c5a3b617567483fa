#include "rillwatt/layout/plan_index.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/index/rtree.hpp>

#include <utility>

namespace rillwatt {

namespace {

namespace bg = boost::geometry;
namespace bgi = boost::geometry::index;

using Point = bg::model::d2::point_xy<double>;
using Box = bg::model::box<Point>;
using Segment = bg::model::segment<Point>;
using Entry = std::pair<Box, std::size_t>;

Point point_of(PlanPoint p) { return {p.x, p.y}; }
Box tree_box(const PlanBox& box) { return {{box.x_low, box.y_low}, {box.x_high, box.y_high}}; }

std::vector<Entry> entries_of(const std::vector<PlanBox>& boxes) {
    std::vector<Entry> entries;
    entries.reserve(boxes.size());
    for (std::size_t i = 0; i < boxes.size(); ++i)
        if (!boxes[i].empty()) entries.emplace_back(tree_box(boxes[i]), i);
    return entries;
}

} // namespace

struct PlanIndex::Tree {
    bgi::rtree<Entry, bgi::quadratic<8>> boxes;

    template<class Predicate>
    void visit(const Predicate& predicate, const IndexVisit& visit) const {
        for (auto at = boxes.qbegin(predicate); at != boxes.qend(); ++at)
            if (!visit(at->second)) return;
    }
};

PlanBox box_of(const std::vector<PlanPoint>& points) {
    PlanBox box;
    for (const PlanPoint p : points)
        box.include(p);
    return box;
}

PlanBox box_of(PlanPoint a, PlanPoint b) {
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

bool meet(const PlanBox& a, const PlanBox& b) {
    return a.x_low <= b.x_high && b.x_low <= a.x_high && a.y_low <= b.y_high && b.y_low <= a.y_high;
}

bool meets(PlanPoint a, PlanPoint b, const PlanBox& box) {
    return !box.empty() && bg::intersects(Segment(point_of(a), point_of(b)), tree_box(box));
}

PlanIndex::PlanIndex() : tree_(std::make_unique<Tree>()) {}
PlanIndex::PlanIndex(const std::vector<PlanBox>& boxes) : PlanIndex() {
    const std::vector<Entry> entries = entries_of(boxes);
    if (!entries.empty()) tree_->boxes = {entries.begin(), entries.end()};
}
PlanIndex::~PlanIndex() = default;
PlanIndex::PlanIndex(PlanIndex&&) noexcept = default;
PlanIndex& PlanIndex::operator=(PlanIndex&&) noexcept = default;

std::size_t PlanIndex::size() const { return tree_->boxes.size(); }

void PlanIndex::visit(const PlanBox& box, IndexVisit visit) const {
    tree_->visit(bgi::intersects(tree_box(box)), visit);
}

void PlanIndex::visit_along(PlanPoint a, PlanPoint b, IndexVisit visit) const {
    tree_->visit(bgi::intersects(Segment(point_of(a), point_of(b))), visit);
}

/// In rings: what lies within 2 m, then within 4 m, and so on. (The library's own search by distance keeps
/// all it has seen in order, which costs far more than the few that are asked for.)
void PlanIndex::visit_from(PlanPoint p, IndexVisit visit) const {
    using Near = std::pair<double, std::size_t>;
    double before = -1;
    std::size_t seen = 0;
    for (double reach = 2; seen < size(); before = reach, reach *= 2) {
        std::vector<Near> ring;
        const auto around = bgi::intersects(tree_box(box_of(p, p).grown(reach)));
        for (auto at = tree_->boxes.qbegin(around); at != tree_->boxes.qend(); ++at) {
            const double away = bg::distance(point_of(p), at->first);
            if (away > before && away <= reach) ring.emplace_back(away, at->second);
        }
        std::sort(ring.begin(), ring.end());
        seen += ring.size();
        for (const Near& near : ring)
            if (!visit(near.second, near.first)) return;
    }
}

std::vector<std::size_t> PlanIndex::found(const PlanBox& box) const {
    std::vector<std::size_t> numbers;
    auto add = [&](std::size_t i) {
        numbers.push_back(i);
        return true;
    };
    visit(box, add);
    std::sort(numbers.begin(), numbers.end());
    return numbers;
}

std::vector<std::size_t> PlanIndex::found_along(PlanPoint a, PlanPoint b) const {
    std::vector<std::size_t> numbers;
    auto add = [&](std::size_t i) {
        numbers.push_back(i);
        return true;
    };
    visit_along(a, b, add);
    std::sort(numbers.begin(), numbers.end());
    return numbers;
}

} // namespace rillwatt
