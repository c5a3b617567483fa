// Lights beside a walk: evenly spaced, staggered or along one side, as few as meet the target; where lights
// already help, single lights in the dark spots are tried too.
#include "rillwatt/check/light_limits.hpp"
#include "rillwatt/light/walk_light.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "walk_line.hpp"
#include "workbench.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double set_backs[] = {0.2, 0.35, 0.5, 0.7};   ///< metres off the edge, common practice 0.15 to 0.3
constexpr double closest_spacing = 0.6;                 ///< metres; more lights than that are no proposal
constexpr double tall_stem = 24 * metres_per_foot / 12; ///< metres: the longest usual stem
constexpr double generous = 1.5;                        ///< EN 13201-2: not more than 1.5 times the class
constexpr double slide_step = 0.25;                     ///< metres

struct Pattern {
    const char* words;
    int first_side;
    bool alternate;
};
constexpr Pattern patterns[] = {{"staggered", 1, true},
                                {"staggered", -1, true},
                                {"all on the left", 1, false},
                                {"all on the right", -1, false}};

/// One walk and what is tried on it.
class WalkPlanner {
  public:
    WalkPlanner(const Workbench& bench, const Walk& walk, const WalkTarget& target,
                std::vector<SpacePoint> points, std::vector<double> base)
        : bench_(bench), walk_(walk), target_(target), line_(walk), length_(line_.length()),
          points_(std::move(points)), base_(std::move(base)) {}

    std::optional<Trial> best() const;

  private:
    Fixture fixture(const FixtureType& type, PlanPoint at, bool tall) const;
    std::optional<WalkSlot> free_slot(const FixtureType& type, double along, int side, double reach,
                                      bool tall) const;
    std::optional<Trial> evenly(const FixtureType& type, const Pattern& pattern, int count, bool tall) const;
    std::optional<Trial> fewest_evenly(const FixtureType& type, int most, bool tall) const;
    std::optional<Trial> best_of_patterns(const FixtureType& type, int count, bool tall) const;
    std::optional<Trial> into_dark_spots(const FixtureType& type, std::size_t most, bool tall) const;
    int most_worth_trying(const Trial& found, const FixtureType& type, int cap) const;
    bool meets(const LuxSpread& spread) const;
    void finish(Trial& trial, const std::vector<double>& lux) const;
    double gain(const std::vector<double>& lux, const std::vector<double>& more) const;

    const Workbench& bench_;
    const Walk& walk_;
    WalkTarget target_;
    WalkLine line_;
    double length_;
    std::vector<SpacePoint> points_;
    std::vector<double> base_;
};

Fixture WalkPlanner::fixture(const FixtureType& type, PlanPoint at, bool tall) const {
    Fixture f;
    f.model = type.id;
    f.at = at;
    f.lights = walk_.id;
    if (walk_.elevation.value() != 0) f.elevation = walk_.elevation;
    if (tall) f.mounting = Metres(tall_stem);
    return f;
}

/// The nearest free place to the one wanted: farther off the edge, a little along, on the other side.
std::optional<WalkSlot> WalkPlanner::free_slot(const FixtureType& type, double along, int side, double reach,
                                               bool tall) const {
    for (double slide = 0; slide <= reach; slide += slide_step)
        for (const int turn : {1, -1})
            for (const double at : {along + slide, along - slide})
                for (const double back : set_backs) {
                    if (at < 0 || at > length_) continue;
                    WalkSlot slot = line_.beside(at, side * turn, walk_.width.value() / 2 + back);
                    slot.at = {bench_.taped(slot.at.x), bench_.taped(slot.at.y)};
                    if (bench_.free_ground(slot.at) &&
                        !bench_.dazzles(bench_.light_of(fixture(type, slot.at, tall))))
                        return slot;
                }
    return {};
}

bool WalkPlanner::meets(const LuxSpread& spread) const {
    const double even = limits::walk_uniformity.value * spread.mean;
    return spread.mean >= target_.mean.value_or(Lux(0)).value() &&
           spread.least >= target_.minimum.value_or(Lux(0)).value() && spread.least >= even;
}

void WalkPlanner::finish(Trial& trial, const std::vector<double>& lux) const {
    trial.spread = spread_of(lux);
    const double asked = target_.mean.value_or(Lux(trial.spread.mean)).value();
    trial.excess = std::max(0.0, trial.spread.mean / std::max(asked, 1e-9) - generous);
    trial.quality = trial.spread.mean > 0 ? trial.spread.least / trial.spread.mean : 0;
}

std::optional<Trial> WalkPlanner::evenly(const FixtureType& type, const Pattern& pattern, int count,
                                         bool tall) const {
    Trial trial;
    trial.type = &type;
    trial.pattern = count > 1 ? pattern.words : "";
    LitPoints lit{points_, straight_up, base_};
    const double spacing = length_ / count;
    double before = -1;
    for (int k = 0; k < count; ++k) {
        const int side = pattern.alternate && k % 2 == 1 ? -pattern.first_side : pattern.first_side;
        const auto slot = free_slot(type, (k + 0.5) * spacing, side, 0.45 * spacing, tall);
        if (!slot) continue; // the others may do
        trial.fixtures.push_back(fixture(type, slot->at, tall));
        trial.remarks.push_back(
            fmt::format("{} along, on the {}{}",
                        decimal_length_text(Metres(slot->along), bench_.site().settings.units, 1),
                        slot->side > 0 ? "left" : "right",
                        before < 0 ? ""
                                   : fmt::format(", {} after the one before",
                                                 decimal_length_text(Metres(slot->along - before),
                                                                     bench_.site().settings.units, 1))));
        before = slot->along;
        add_light(bench_.light_of(trial.fixtures.back()), bench_.scene().obstacles, lit);
    }
    finish(trial, lit.lux);
    if (trial.fixtures.empty() || !meets(trial.spread)) return {};
    return trial;
}

std::optional<Trial> WalkPlanner::best_of_patterns(const FixtureType& type, int count, bool tall) const {
    std::optional<Trial> best;
    for (const Pattern& pattern : patterns) {
        std::optional<Trial> trial = evenly(type, pattern, count, tall);
        if (trial && (!best || preferred(*trial, *best, bench_.cheapest()))) best = std::move(trial);
        if (count == 1 && pattern.first_side < 0) break;
    }
    return best;
}

/// Counts upwards in growing steps until something does, then back as long as fewer do.
std::optional<Trial> WalkPlanner::fewest_evenly(const FixtureType& type, int most, bool tall) const {
    const double area = length_ * walk_.width.value();
    const double lumens = bench_.light_of(fixture(type, {}, tall)).factor *
                          bench_.light_of(fixture(type, {}, tall)).photometry->distribution.flux();
    const double short_of = std::max(0.0, target_.mean.value_or(Lux(0)).value() - spread_of(base_).mean);
    const int least = std::max(1, static_cast<int>(std::ceil(short_of * area / std::max(lumens, 1e-9))));
    std::optional<Trial> found;
    int count = least;
    int failed = least - 1;
    for (; count <= most && !found; count = std::max(count + 1, count + count / 4)) {
        found = best_of_patterns(type, count, tall);
        if (!found)
            failed = count;
        else
            break;
    }
    for (--count; found && count > failed; --count) {
        std::optional<Trial> fewer = best_of_patterns(type, count, tall);
        if (!fewer) break;
        found = std::move(fewer);
    }
    return found;
}

/// How much closer to the target some light more brings the walk; each point counts up to what it needs.
double WalkPlanner::gain(const std::vector<double>& lux, const std::vector<double>& more) const {
    const double mean = std::max(target_.mean.value_or(Lux(1)).value(), 1e-6);
    const double dark =
        std::max(target_.minimum.value_or(Lux(0)).value(), limits::walk_uniformity.value * mean);
    double sum = 0;
    for (std::size_t i = 0; i < lux.size(); ++i) {
        const auto worth = [&](double value) {
            return std::min(value, mean) / mean + 3 * std::min(value, dark) / dark;
        };
        if (more[i] > 0) sum += worth(lux[i] + more[i]) - worth(lux[i]);
    }
    return sum;
}

std::optional<Trial> WalkPlanner::into_dark_spots(const FixtureType& type, std::size_t most,
                                                  bool tall) const {
    struct Candidate {
        WalkSlot slot;
        std::vector<double> lux;
    };
    std::vector<Candidate> candidates;
    for (double along = 0.3; along < length_; along += 0.5)
        for (const int side : {1, -1}) {
            const auto slot = free_slot(type, along, side, 0, tall);
            if (!slot) continue;
            LitPoints lit{points_, straight_up, std::vector<double>(points_.size(), 0.0)};
            add_light(bench_.light_of(fixture(type, slot->at, tall)), bench_.scene().obstacles, lit);
            candidates.push_back({*slot, std::move(lit.lux)});
        }
    Trial trial;
    trial.type = &type;
    trial.pattern = "in the dark spots";
    std::vector<double> lux = base_;
    while (!meets(spread_of(lux))) {
        if (trial.fixtures.size() >= most || candidates.empty()) return {};
        const auto best =
            std::max_element(candidates.begin(), candidates.end(), [&](const auto& a, const auto& b) {
                return gain(lux, a.lux) < gain(lux, b.lux);
            });
        if (gain(lux, best->lux) <= 1e-6) return {};
        std::transform(lux.begin(), lux.end(), best->lux.begin(), lux.begin(), std::plus<>());
        trial.fixtures.push_back(fixture(type, best->slot.at, tall));
        trial.remarks.push_back(
            fmt::format("{} along, on the {}, where it is darkest",
                        decimal_length_text(Metres(best->slot.along), bench_.site().settings.units, 1),
                        best->slot.side > 0 ? "left" : "right"));
        candidates.erase(best);
    }
    finish(trial, lux);
    if (trial.fixtures.empty()) return {};
    return trial;
}

/// How many lights of a type can still be better than what was found.
int WalkPlanner::most_worth_trying(const Trial& found, const FixtureType& type, int cap) const {
    if (!bench_.cheapest()) return std::min(cap, static_cast<int>(found.fixtures.size()));
    const double price = type.price.value_or(Money(0)).value();
    return price > 0 ? std::min(cap, static_cast<int>(found.cost() / price)) : cap;
}

std::optional<Trial> WalkPlanner::best() const {
    const int cap = static_cast<int>(length_ / closest_spacing) + 2;
    const bool partly_lit = spread_of(base_).mean > 0.1 * target_.mean.value_or(Lux(1)).value();
    std::optional<Trial> best;
    for (const bool tall : {false, true}) {
        for (const FixtureType* type : bench_.offer(Purpose::walk)) {
            if (tall && type->kind != FixtureKind::path) continue;
            const int most = best ? most_worth_trying(*best, *type, cap) : cap;
            if (most < 1) continue;
            std::optional<Trial> trial = fewest_evenly(*type, most, tall);
            if (trial && (!best || preferred(*trial, *best, bench_.cheapest()))) best = std::move(trial);
            if (!partly_lit) continue;
            trial = into_dark_spots(*type, static_cast<std::size_t>(most), tall);
            if (trial && (!best || preferred(*trial, *best, bench_.cheapest()))) best = std::move(trial);
        }
        if (best) break; // a usual stem does
    }
    return best;
}

std::string asked_words(const WalkTarget& target) {
    std::string words;
    if (target.mean) words = lux_text(*target.mean) + " on average";
    if (target.minimum)
        words += (words.empty() ? "" : " and ") + lux_text(*target.minimum) + " at the darkest spot";
    return words.empty() ? "an even light" : words;
}

} // namespace

std::optional<WalkTarget> wanted_on(const Walk& walk, const LuxSpread& now) {
    WalkTarget target = walk_target(walk);
    if (!target.mean && !target.minimum) {
        if (walk.target || now.greatest > 0) return {};
        return walk_class("P5");
    }
    const bool mean = !target.mean || now.mean >= target.mean->value() * (1 - 1e-9);
    const bool least = !target.minimum || now.least >= target.minimum->value() * (1 - 1e-9);
    if (mean && least) return {};
    return target;
}

void propose_for_walk(Workbench& bench, const Walk& walk, PlacingProposal& proposal) {
    LitPoints lit;
    lit.points = walk_points(walk);
    illuminate(bench.scene(), lit);
    const std::optional<WalkTarget> target = wanted_on(walk, spread_of(lit.lux));
    if (!target || lit.points.empty()) return;
    const std::optional<Trial> trial = WalkPlanner(bench, walk, *target, lit.points, lit.lux).best();
    if (!trial) {
        const bool none = bench.offer(Purpose::walk).empty();
        proposal.unmet.push_back(
            {walk.id, walk.location,
             none ? "no type on offer lights walks; name some with --model or put path lights into [stock]"
                  : fmt::format(
                        "no number of the types on offer gives {} with free ground beside the walk; offer "
                        "brighter or taller ones",
                        asked_words(*target))});
        return;
    }
    proposal.reasons.push_back(fmt::format(
        "{} gets {} {}{}: {} on average, {} at the darkest spot; asked are {}.", walk.id,
        trial->fixtures.size(), trial->type->id, trial->pattern.empty() ? "" : " " + trial->pattern,
        lux_text(Lux(trial->spread.mean)), lux_text(Lux(trial->spread.least)), asked_words(*target)));
    for (std::size_t i = 0; i < trial->fixtures.size(); ++i) {
        Fixture fixture = trial->fixtures[i];
        fixture.id = bench.new_id(walk.id);
        bench.accept({std::move(fixture), fmt::format("{}, {} of {}: {}", walk.id, i + 1,
                                                      trial->fixtures.size(), trial->remarks[i])});
    }
}

} // namespace rillwatt
