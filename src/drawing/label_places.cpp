#include "label_places.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

namespace rillwatt {
namespace {

constexpr double clear_of_symbol = 1;
constexpr double cost_of_covered_line = 1.2;
/// A label close to a symbol that is not its own reads as that one's.
constexpr double close_to_symbol = 7;
constexpr double cost_of_closeness = 2.5;
constexpr double cost_of_crossed_line = 0.7;

// Right of the symbol reads best, then left, then above and below, corners last.
constexpr std::array<double, 16> bearing_cost{0,   0.35, 0.5, 0.45, 0.4, 0.6, 0.7, 0.4,
                                              0.2, 0.5,  0.7, 0.6,  0.4, 0.6, 0.5, 0.35};
constexpr std::array<double, 11> rings{3, 9, 18, 28, 40, 54, 70, 90, 114, 142, 176};
constexpr double cost_of_distance = 0.09;

struct Direction {
    double x;
    double y;
};

const std::array<Direction, bearing_cost.size()>& directions() {
    static const auto table = [] {
        std::array<Direction, bearing_cost.size()> out{};
        for (std::size_t k = 0; k < out.size(); ++k) {
            const double bearing = static_cast<double>(k) * std::numbers::pi / 8;
            out[k] = {std::cos(bearing), std::sin(bearing)};
        }
        return out;
    }();
    return table;
}

double cost_round_anchor(std::size_t k) {
    return bearing_cost[k % bearing_cost.size()] + rings[k / bearing_cost.size()] * cost_of_distance;
}

/// The k-th place round an anchor, ring by ring.
LabelPlace place_round(const LabelAnchor& anchor, std::size_t k, double width, double height) {
    const std::size_t ring = k / bearing_cost.size();
    const Direction towards = directions()[k % bearing_cost.size()];
    const double away = anchor.radius + rings[ring];
    const SheetPoint centre{anchor.at.x + towards.x * (away + width / 2),
                            anchor.at.y - towards.y * (away + height / 2)};
    LabelPlace place{box_around(centre, width, height), cost_round_anchor(k), {}, anchor.radius};
    if (ring > 0) place.leader_from = anchor.at;
    return place;
}

constexpr std::size_t places_round_anchor = rings.size() * bearing_cost.size();

bool inside(const SheetBox& box, const SheetBox& frame) {
    return box.x >= frame.x && box.y >= frame.y && box.right() <= frame.right() &&
           box.bottom() <= frame.bottom();
}

SheetBox grown(const SheetBox& box, double by) {
    return {box.x - by, box.y - by, box.width + 2 * by, box.height + 2 * by};
}

/// Of equals the one written first comes first.
std::vector<std::uint32_t> sorted_by_own_cost(const LabelRequest& request) {
    std::vector<std::uint32_t> order(request.place_count());
    std::iota(order.begin(), order.end(), 0U);
    std::stable_sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
        return request.own_cost(a) < request.own_cost(b);
    });
    return order;
}

/// Most labels stand round one anchor, whose order is always the same.
std::vector<std::uint32_t> places_by_own_cost(const LabelRequest& request) {
    static const std::vector<std::uint32_t> round_one_anchor = sorted_by_own_cost({.anchors = {{}}});
    return request.places.empty() && request.anchors.size() == 1 ? round_one_anchor
                                                                 : sorted_by_own_cost(request);
}

void keep_each_once(std::vector<std::size_t>& items) {
    std::sort(items.begin(), items.end());
    items.erase(std::unique(items.begin(), items.end()), items.end());
}

} // namespace

std::size_t LabelRequest::place_count() const { return places.size() + anchors.size() * places_round_anchor; }

LabelPlace LabelRequest::place(std::size_t k) const {
    if (k < places.size()) return places[k];
    k -= places.size();
    return place_round(anchors[k / places_round_anchor], k % places_round_anchor, width, height);
}

double LabelRequest::own_cost(std::size_t k) const {
    return k < places.size() ? places[k].cost : cost_round_anchor((k - places.size()) % places_round_anchor);
}

LabelObstacles::LabelObstacles(const LabelGround& ground)
    : ground_(&ground), symbols_(ground.frame, ground.symbols.size()),
      lines_(ground.frame, ground.lines.size()) {
    for (std::size_t i = 0; i < ground.symbols.size(); ++i)
        symbols_.add(i, ground.symbols[i]);
    for (std::size_t i = 0; i < ground.lines.size(); ++i)
        lines_.add(i, ground.lines[i].first, ground.lines[i].second);
}

std::optional<double> LabelObstacles::cost(const LabelPlace& place,
                                           std::optional<std::size_t> own_symbol) const {
    if (!inside(place.box, ground_->frame)) return std::nullopt;
    const std::optional<double> symbols = cost_of_symbols(place, own_symbol);
    if (!symbols || !leader_is_clear(place)) return std::nullopt;
    return place.cost + *symbols + cost_of_lines(place);
}

std::optional<double> LabelObstacles::cost_of_symbols(const LabelPlace& place,
                                                      std::optional<std::size_t> own_symbol) const {
    found_.clear();
    const bool covered = symbols_.any_near(grown(place.box, close_to_symbol), [&](std::size_t i) {
        if (overlap(place.box, ground_->symbols[i], clear_of_symbol)) return true;
        if (own_symbol != i && overlap(place.box, ground_->symbols[i], close_to_symbol)) found_.push_back(i);
        return false;
    });
    if (covered) return std::nullopt;
    keep_each_once(found_);
    return static_cast<double>(found_.size()) * cost_of_closeness;
}

bool LabelObstacles::leader_is_clear(const LabelPlace& place) const {
    if (!place.leader_from) return true;
    const SheetPoint from = *place.leader_from;
    const SheetPoint to = leader_end(place);
    return !symbols_.any_near(from, to, [&](std::size_t i) {
        const SheetBox& symbol = ground_->symbols[i];
        // A leader comes out of its own symbol, and of a neighbour that lies upon that one.
        return meets(from, to, symbol) && !meets(from, from, symbol);
    });
}

double LabelObstacles::cost_of_lines(const LabelPlace& place) const {
    const auto count = [&](auto&& look) {
        found_.clear();
        look();
        keep_each_once(found_);
        return static_cast<double>(found_.size());
    };
    double cost = cost_of_covered_line * count([&] {
                      lines_.any_near(place.box, [&](std::size_t i) {
                          const auto& [a, b] = ground_->lines[i];
                          if (meets(a, b, place.box)) found_.push_back(i);
                          return false;
                      });
                  });
    if (!place.leader_from) return cost;
    const SheetPoint from = *place.leader_from;
    const SheetPoint to = leader_end(place);
    return cost + cost_of_crossed_line * count([&] {
                      lines_.any_near(from, to, [&](std::size_t i) {
                          const auto& [a, b] = ground_->lines[i];
                          if (lines_cross(a, b, from, to)) found_.push_back(i);
                          return false;
                      });
                  });
}

CheapestPlaces::CheapestPlaces(const LabelRequest& request)
    : request_(&request), order_(places_by_own_cost(request)) {}

std::size_t CheapestPlaces::count(const LabelObstacles& obstacles) {
    while (ask_next(obstacles)) {
    }
    tell_settled();
    return told_.size();
}

const LabelPlace* CheapestPlaces::at(std::size_t k, const LabelObstacles& obstacles) {
    while (told_.size() <= k && ask_next(obstacles))
        tell_settled();
    if (told_.size() <= k) tell_settled();
    return k < told_.size() ? &told_[k] : nullptr;
}

bool CheapestPlaces::ask_next(const LabelObstacles& obstacles) {
    if (asked_ == order_.size()) return false;
    LabelPlace place = request_->place(order_[asked_++]);
    const std::optional<double> cost = obstacles.cost(place, request_->symbol);
    if (!cost) return true;
    place.cost = *cost;
    // Of places that cost the same the one asked about first is told first.
    const auto before = std::partition_point(
        waiting_.begin(), waiting_.end(), [&](const LabelPlace& other) { return other.cost > place.cost; });
    waiting_.insert(before, place);
    return true;
}

void CheapestPlaces::tell_settled() {
    const double bound =
        asked_ < order_.size() ? request_->own_cost(order_[asked_]) : std::numeric_limits<double>::infinity();
    for (; !waiting_.empty() && waiting_.back().cost <= bound; waiting_.pop_back())
        told_.push_back(waiting_.back());
}

} // namespace rillwatt
