#include "label_placement.hpp"

#include "label_places.hpp"
#include <algorithm>
#include <deque>
#include <numeric>

namespace rillwatt {
namespace {

constexpr double clear_of_label = 2;
constexpr int most_evictions = 16; ///< of others by one label
constexpr int passes_of_improvement = 3;

/// Whether two labels, leaders included, are in one another's way.
bool clash(const LabelPlace& a, const LabelPlace& b) {
    if (overlap(a.box, b.box, clear_of_label)) return true;
    if (a.leader_from && meets(*a.leader_from, leader_end(a), b.box)) return true;
    if (b.leader_from && meets(*b.leader_from, leader_end(b), a.box)) return true;
    return a.leader_from && b.leader_from &&
           lines_cross(*a.leader_from, leader_end(a), *b.leader_from, leader_end(b));
}

class Placer {
  public:
    Placer(const LabelGround& ground, const std::vector<LabelRequest>& requests)
        : requests_(&requests), obstacles_(ground), labels_(ground.frame, requests.size()),
          chosen_(requests.size()), places_(requests.begin(), requests.end()) {}

    std::vector<std::optional<LabelPlace>> run() {
        for (const std::size_t label : hardest_first())
            choose(label, cheapest_free(label));
        evict();
        for (int pass = 0; pass < passes_of_improvement && improve(); ++pass) {
        }
        return chosen_;
    }

  private:
    void choose(std::size_t label, const std::optional<LabelPlace>& place) {
        leave(label);
        chosen_[label] = place;
        if (!place) return;
        labels_.add(label, place->box);
        if (place->leader_from) labels_.add(label, *place->leader_from, leader_end(*place));
    }

    void leave(std::size_t label) {
        const std::optional<LabelPlace>& place = chosen_[label];
        if (!place) return;
        labels_.remove(label, place->box);
        if (place->leader_from) labels_.remove(label, *place->leader_from, leader_end(*place));
        chosen_[label].reset();
    }

    /// Whether `visit` holds for a label in the way of the place.
    template<class Visit>
    bool any_clash(std::size_t label, const LabelPlace& place, Visit&& visit) const {
        const auto in_the_way = [&](std::size_t other) {
            return other != label && clash(place, *chosen_[other]) && visit(other);
        };
        const SheetBox room{place.box.x - clear_of_label, place.box.y - clear_of_label,
                            place.box.width + 2 * clear_of_label, place.box.height + 2 * clear_of_label};
        return labels_.any_near(room, in_the_way) ||
               (place.leader_from && labels_.any_near(*place.leader_from, leader_end(place), in_the_way));
    }

    bool is_free(std::size_t label, const LabelPlace& place) const {
        return !any_clash(label, place, [](std::size_t) { return true; });
    }

    /// The labels in the way of the place; empty when more than one of them cannot be left out, so that
    /// nothing would be won.
    std::vector<std::size_t> evictable(std::size_t label, const LabelPlace& place) const {
        std::vector<std::size_t> out;
        int wanted = 0;
        const bool too_many = any_clash(label, place, [&](std::size_t other) {
            if (std::find(out.begin(), out.end(), other) != out.end()) return false;
            out.push_back(other);
            return !(*requests_)[other].optional && ++wanted > 1;
        });
        if (too_many) out.clear();
        return out;
    }

    std::optional<LabelPlace> cheapest_free(std::size_t label) {
        for (std::size_t k = 0; const LabelPlace* place = places_[label].at(k, obstacles_); ++k)
            if (is_free(label, *place)) return *place;
        return std::nullopt;
    }

    /// Labels with the fewest cheap places first; optional ones last of all.
    std::vector<std::size_t> hardest_first() {
        std::vector<std::pair<bool, std::size_t>> rank;
        for (std::size_t label = 0; label < requests_->size(); ++label)
            rank.emplace_back((*requests_)[label].optional, cheap_places(label));
        std::vector<std::size_t> order(requests_->size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return rank[a] < rank[b]; });
        return order;
    }

    std::size_t cheap_places(std::size_t label) {
        constexpr double cheap = 4;
        std::size_t count = 0;
        for (const LabelPlace* place = places_[label].at(0, obstacles_); place && place->cost < cheap;
             place = places_[label].at(count, obstacles_))
            ++count;
        return count;
    }

    /// Labels left over take the places of others, which then wait in their stead.
    void evict() {
        std::vector<int> evictions(chosen_.size());
        std::deque<std::size_t> waiting;
        for (std::size_t label = 0; label < chosen_.size(); ++label)
            if (!chosen_[label] && !(*requests_)[label].optional) waiting.push_back(label);
        while (!waiting.empty()) {
            const std::size_t label = waiting.front();
            waiting.pop_front();
            choose(label, cheapest_free(label));
            if (chosen_[label] || evictions[label] == most_evictions) continue;
            if (const auto evicted = take_by_force(label, evictions[label]++)) waiting.push_back(*evicted);
        }
    }

    /// Takes a place from no more than one label that cannot be left out, and tells which. `turn` varies the
    /// place that is looked at first, so that two labels do not swap for ever.
    std::optional<std::size_t> take_by_force(std::size_t label, int turn) {
        const std::size_t count = places_[label].count(obstacles_);
        for (std::size_t k = 0; k < count; ++k) {
            const std::size_t rotated = (k + static_cast<std::size_t>(turn) * 7) % count;
            const LabelPlace& place = *places_[label].at(rotated, obstacles_);
            const std::vector<std::size_t> others = evictable(label, place);
            if (others.empty()) continue;
            for (const std::size_t other : others)
                leave(other);
            choose(label, place);
            const auto evicted = std::find_if(others.begin(), others.end(), [&](std::size_t other) {
                return !(*requests_)[other].optional;
            });
            return evicted == others.end() ? std::nullopt : std::optional(*evicted);
        }
        return std::nullopt;
    }

    bool improve() {
        bool improved = false;
        for (std::size_t label = 0; label < chosen_.size(); ++label) {
            const std::optional<LabelPlace> better = cheapest_free(label);
            if (!better || (chosen_[label] && better->cost >= chosen_[label]->cost)) continue;
            choose(label, better);
            improved = true;
        }
        return improved;
    }

    const std::vector<LabelRequest>* requests_;
    LabelObstacles obstacles_;
    SheetGrid labels_;
    std::vector<std::optional<LabelPlace>> chosen_;
    std::vector<CheapestPlaces> places_;
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

} // namespace rillwatt
