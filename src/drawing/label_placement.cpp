#include "label_placement.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <numbers>
#include <numeric>

namespace rillwatt {
namespace {

constexpr double clear_of_label = 2;
constexpr double clear_of_symbol = 1;
constexpr double cost_of_covered_line = 1.2;
/// A label close to a symbol that is not its own reads as that one's.
constexpr double close_to_symbol = 7;
constexpr double cost_of_closeness = 2.5;
constexpr double cost_of_crossed_line = 0.7;

bool inside(const SheetBox& box, const SheetBox& frame) {
    return box.x >= frame.x && box.y >= frame.y && box.right() <= frame.right() &&
           box.bottom() <= frame.bottom();
}

class Placer {
  public:
    Placer(const LabelGround& ground, const std::vector<LabelRequest>& requests)
        : ground_(&ground), requests_(&requests), chosen_(requests.size()) {
        for (const LabelRequest& request : requests)
            places_.push_back(possible_places(request));
    }

    std::vector<std::optional<LabelPlace>> run() {
        for (const std::size_t label : hardest_first())
            chosen_[label] = cheapest_free(label);
        drive_out();
        for (int pass = 0; pass < 3; ++pass)
            improve();
        return chosen_;
    }

  private:
    /// The places that suit the ground, with what they cost on it, cheapest first.
    std::vector<LabelPlace> possible_places(const LabelRequest& request) const {
        std::vector<LabelPlace> out;
        for (LabelPlace place : request.places) {
            if (!suits_ground(place, request.symbol)) continue;
            for (std::size_t i = 0; i < ground_->symbols.size(); ++i)
                if (request.symbol != i && overlap(place.box, ground_->symbols[i], close_to_symbol))
                    place.cost += cost_of_closeness;
            for (const auto& [a, b] : ground_->lines) {
                if (meets(a, b, place.box)) place.cost += cost_of_covered_line;
                if (place.leader_from && lines_cross(a, b, *place.leader_from, leader_end(place)))
                    place.cost += cost_of_crossed_line;
            }
            out.push_back(place);
        }
        std::stable_sort(out.begin(), out.end(),
                         [](const LabelPlace& a, const LabelPlace& b) { return a.cost < b.cost; });
        return out;
    }

    bool suits_ground(const LabelPlace& place, std::optional<std::size_t> own_symbol) const {
        if (!inside(place.box, ground_->frame)) return false;
        for (std::size_t i = 0; i < ground_->symbols.size(); ++i) {
            const SheetBox& symbol = ground_->symbols[i];
            if (overlap(place.box, symbol, clear_of_symbol)) return false;
            const bool own = own_symbol && *own_symbol == i;
            // Where symbols lie upon one another a leader cannot help but start inside its neighbour.
            const bool starts_inside =
                place.leader_from && meets(*place.leader_from, *place.leader_from, symbol);
            if (!own && !starts_inside && place.leader_from &&
                meets(*place.leader_from, leader_end(place), symbol))
                return false;
        }
        return true;
    }

    static bool clash(const LabelPlace& a, const LabelPlace& b) {
        if (overlap(a.box, b.box, clear_of_label)) return true;
        if (a.leader_from && meets(*a.leader_from, leader_end(a), b.box)) return true;
        if (b.leader_from && meets(*b.leader_from, leader_end(b), a.box)) return true;
        return a.leader_from && b.leader_from &&
               lines_cross(*a.leader_from, leader_end(a), *b.leader_from, leader_end(b));
    }

    std::vector<std::size_t> clashes(std::size_t label, const LabelPlace& place) const {
        std::vector<std::size_t> out;
        for (std::size_t other = 0; other < chosen_.size(); ++other)
            if (other != label && chosen_[other] && clash(place, *chosen_[other])) out.push_back(other);
        return out;
    }

    bool is_free(std::size_t label, const LabelPlace& place) const {
        for (std::size_t other = 0; other < chosen_.size(); ++other)
            if (other != label && chosen_[other] && clash(place, *chosen_[other])) return false;
        return true;
    }

    std::optional<LabelPlace> cheapest_free(std::size_t label) const {
        for (const LabelPlace& place : places_[label])
            if (is_free(label, place)) return place;
        return std::nullopt;
    }

    /// Labels with the fewest places first; optional ones last of all.
    std::vector<std::size_t> hardest_first() const {
        std::vector<std::size_t> order(requests_->size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        const auto cheap_places = [&](std::size_t label) {
            return std::count_if(places_[label].begin(), places_[label].end(),
                                 [](const LabelPlace& place) { return place.cost < 4; });
        };
        std::vector<std::pair<bool, std::ptrdiff_t>> rank;
        for (const std::size_t label : order)
            rank.emplace_back((*requests_)[label].optional, cheap_places(label));
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return rank[a] < rank[b]; });
        return order;
    }

    void drive_out() {
        std::deque<std::size_t> waiting;
        for (std::size_t label = 0; label < chosen_.size(); ++label)
            if (!chosen_[label] && !(*requests_)[label].optional) waiting.push_back(label);
        for (int turn = 0; turn < 1500 && !waiting.empty(); ++turn) {
            const std::size_t label = waiting.front();
            waiting.pop_front();
            if (const std::optional<LabelPlace> free = cheapest_free(label)) {
                chosen_[label] = free;
                continue;
            }
            for (const std::size_t driven : take_by_force(label, turn))
                waiting.push_back(driven);
        }
    }

    /// Takes the place that drives out the fewest; `turn` varies the choice so that two labels do not swap
    /// for ever.
    std::vector<std::size_t> take_by_force(std::size_t label, int turn) {
        const std::vector<LabelPlace>& places = places_[label];
        if (places.empty()) return {};
        std::vector<std::size_t> fewest;
        std::optional<LabelPlace> best;
        for (std::size_t k = 0; k < places.size(); ++k) {
            const LabelPlace& place = places[(k + static_cast<std::size_t>(turn) * 7) % places.size()];
            std::vector<std::size_t> driven = clashes(label, place);
            if (best && driven.size() >= fewest.size()) continue;
            best = place;
            fewest = std::move(driven);
        }
        for (const std::size_t other : fewest)
            chosen_[other].reset();
        chosen_[label] = best;
        std::erase_if(fewest, [&](std::size_t other) { return (*requests_)[other].optional; });
        return fewest;
    }

    void improve() {
        for (std::size_t label = 0; label < chosen_.size(); ++label) {
            const std::optional<LabelPlace> better = cheapest_free(label);
            if (better) chosen_[label] = better;
        }
    }

    const LabelGround* ground_;
    const std::vector<LabelRequest>* requests_;
    std::vector<std::vector<LabelPlace>> places_;
    std::vector<std::optional<LabelPlace>> chosen_;
};

} // namespace

SheetPoint leader_end(const LabelPlace& place) {
    const SheetPoint from = place.leader_from.value_or(place.box.centre());
    return {std::clamp(from.x, place.box.x, place.box.right()),
            std::clamp(from.y, place.box.y, place.box.bottom())};
}

std::vector<std::optional<LabelPlace>> place_labels(const LabelGround& ground,
                                                    const std::vector<LabelRequest>& requests) {
    return Placer(ground, requests).run();
}

std::vector<LabelPlace> places_around(SheetPoint anchor, double radius, double width, double height) {
    // Right of the symbol reads best, then left, then above and below, corners last.
    constexpr std::array<double, 16> bearing_cost{0,   0.35, 0.5, 0.45, 0.4, 0.6, 0.7, 0.4,
                                                  0.2, 0.5,  0.7, 0.6,  0.4, 0.6, 0.5, 0.35};
    constexpr std::array<double, 11> rings{3, 9, 18, 28, 40, 54, 70, 90, 114, 142, 176};
    std::vector<LabelPlace> places;
    for (std::size_t ring = 0; ring < rings.size(); ++ring) {
        const double away = radius + rings[ring];
        for (std::size_t k = 0; k < bearing_cost.size(); ++k) {
            const double bearing = static_cast<double>(k) * std::numbers::pi / 8;
            const SheetPoint centre{anchor.x + std::cos(bearing) * (away + width / 2),
                                    anchor.y - std::sin(bearing) * (away + height / 2)};
            LabelPlace place{box_around(centre, width, height), bearing_cost[k] + rings[ring] * 0.09, {}};
            if (ring > 0) place.leader_from = anchor;
            place.leader_gap = radius;
            places.push_back(place);
        }
    }
    return places;
}

} // namespace rillwatt
