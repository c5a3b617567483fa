#include "walk_search.hpp"

#include "exact_search.hpp"
#include "lower_bound.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

// Effort of each stage, in points of the walk looked at: so much for each point that there is, and no less
// than a small walk may have.
constexpr long per_point = 5000;
constexpr long at_least = 20'000'000;
constexpr std::size_t few_lamps = 6; ///< up to here all sets of fewer are tried

Effort stage_effort(const LightTable& table) {
    return {std::max(at_least, per_point * static_cast<long>(table.points()))};
}

} // namespace

WalkSearch::WalkSearch(const LightTable& table, const WalkNeed& need, const std::vector<double>& base,
                       std::size_t most)
    : table_(table), need_(need), base_(base), most_(most), sum_(table, need, base) {}

bool WalkSearch::meets(const std::vector<std::size_t>& lamps) {
    if (lamps.empty()) return false;
    sum_.put(lamps);
    return sum_.met();
}

/// Takes what `sum_` holds as the best so far when it is fewer, or as few and more even.
void WalkSearch::keep(std::vector<std::size_t> lamps, std::string pattern) {
    const LuxSpread spread = spread_of(sum_.lux());
    const auto evenness = [](const LuxSpread& s) { return s.mean > 0 ? s.least / s.mean : 0; };
    if (best_ && lamps.size() > best_->lamps.size()) return;
    if (best_ && lamps.size() == best_->lamps.size() && evenness(spread) <= evenness(best_->spread)) return;
    std::sort(lamps.begin(), lamps.end(),
              [&](std::size_t a, std::size_t b) { return table_[a].slot.along < table_[b].slot.along; });
    most_ = lamps.size();
    best_ = LampSet{std::move(lamps), std::move(pattern), spread};
}

/// Counts upwards in growing steps until a pattern does. `failed` gets the last count that did not.
bool WalkSearch::grow(const Pattern& pattern, std::size_t& failed) {
    while (failed < most_) {
        const std::size_t count = std::min(std::max(failed + 1, failed + failed / 4), most_);
        if (meets(set_out(table_, pattern, count))) {
            keep(sum_.lamps(), pattern_words(pattern, count));
            return true;
        }
        failed = count;
    }
    return false;
}

/// The smallest count at which a pattern does, by halving; pairs only where fewer do than otherwise.
void WalkSearch::try_pattern(const Pattern& pattern) {
    const bool last_resort = pattern.sides == Pattern::Sides::pairs && best_.has_value();
    std::size_t failed = bound_ - 1;
    std::size_t found = best_ ? best_->lamps.size() - (last_resort ? 1 : 0) : most_;
    if (best_) {
        if (found <= failed || !meets(set_out(table_, pattern, found))) return;
        keep(sum_.lamps(), pattern_words(pattern, found));
    } else {
        if (!grow(pattern, failed)) return;
        found = best_->lamps.size();
    }
    while (found - failed > 1) {
        const std::size_t middle = failed + (found - failed) / 2;
        if (meets(set_out(table_, pattern, middle))) {
            found = middle;
            keep(sum_.lamps(), pattern_words(pattern, middle));
        } else {
            failed = middle;
        }
    }
}

bool WalkSearch::move_patterns_of(std::size_t count, Effort& effort) {
    for (const Pattern& pattern : all_patterns()) {
        if (effort.spent()) return false;
        sum_.put(set_out(table_, pattern, count));
        if (sum_.lamps().empty() || !move_until_met(sum_, effort)) continue;
        keep(sum_.lamps(), "at uneven spacing");
        return true;
    }
    return false;
}

/// Fewer lights than the best pattern, set out regularly and then moved.
void WalkSearch::move_patterns() {
    if (most_ <= bound_) return;
    Effort effort = stage_effort(table_);
    std::size_t step = std::max<std::size_t>(1, (most_ - bound_) / 4);
    while (most_ > bound_) {
        step = std::min(step, most_ - bound_);
        if (move_patterns_of(most_ - step, effort)) continue;
        if (step == 1) return;
        step /= 2;
    }
}

/// The other way round: first where it is darkest, then none that is not missed; and the best so far
/// likewise.
void WalkSearch::fill_and_take_away() {
    if (best_ && best_->lamps.size() > bound_) {
        Effort effort = stage_effort(table_);
        sum_.put(best_->lamps);
        take_away(sum_, effort);
        if (sum_.lamps().size() < best_->lamps.size()) keep(sum_.lamps(), "at uneven spacing");
    }
    if (most_ <= bound_) return;
    Effort effort = stage_effort(table_);
    sum_.put({});
    if (!fill_dark_spots(sum_, most_ + 2, effort)) return;
    take_away(sum_, effort);
    if (sum_.lamps().size() < most_ || (!best_ && sum_.lamps().size() <= most_))
        keep(sum_.lamps(), "where it is darkest");
}

void WalkSearch::search_exhaustively() {
    if (!best_ || best_->lamps.size() > few_lamps) return;
    Effort effort = stage_effort(table_);
    while (bound_ < best_->lamps.size()) {
        std::vector<std::size_t> lamps;
        const Exhaustive answer = search_all(table_, need_, base_, bound_, effort, lamps);
        if (answer == Exhaustive::given_up) return;
        if (answer == Exhaustive::found) {
            sum_.put(lamps);
            return keep(std::move(lamps), "at uneven spacing");
        }
        if (table_.beyond_reach() > 0) return; // what little it gives there was left out
        ++bound_;
    }
}

void WalkSearch::bound_from_below() {
    if (!best_) return;
    Effort effort = stage_effort(table_);
    bound_ = std::max(bound_, fewest_possible(table_, need_, base_, best_->lamps.size(), effort));
}

const std::optional<LampSet>& WalkSearch::regular() {
    bound_ = lights_for_mean(table_, need_, base_);
    if (table_.size() == 0 || bound_ > most_) return best_;
    for (const Pattern& pattern : all_patterns())
        try_pattern(pattern);
    return best_;
}

const std::optional<LampSet>& WalkSearch::fewest() {
    regular();
    if (table_.size() == 0 || bound_ > most_) return best_;
    bound_from_below();
    move_patterns();
    fill_and_take_away();
    search_exhaustively();
    return best_;
}

} // namespace rillwatt
