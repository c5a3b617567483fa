// Lights beside a walk: as few (or as cheap) as are found of each type on offer, verified by computing the
// light with them in place.
#include "rillwatt/light/walk_light.hpp"
#include "rillwatt/quantity/figure_text.hpp"

#include <fmt/format.h>

#include "walk_search.hpp"
#include "workbench.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

constexpr double closest_spacing = 0.6;                 ///< metres; more lights than that are no proposal
constexpr double tall_stem = 24 * metres_per_foot / 12; ///< metres: the longest usual stem
constexpr double generous = 1.5;                        ///< EN 13201-2: not more than 1.5 times the class
constexpr double tighter = 1.01; ///< margin of a second search where the first one's light fell short
constexpr std::size_t types_searched_on = 2; ///< those best with a regular pattern
constexpr std::size_t few_points = 1500;     ///< of a short walk, on which every type is searched on

/// One walk and what is tried on it.
class WalkPlanner {
  public:
    WalkPlanner(const Workbench& bench, const Walk& walk, const WalkNeed& need, const WalkGround& ground,
                const std::vector<double>& base, WaterRule water)
        : bench_(bench), walk_(walk), need_(need), ground_(ground), base_(base), places_(bench, walk, water) {
    }

    std::optional<Trial> best() const;

  private:
    Fixture model(const FixtureType& type, bool tall) const;
    std::optional<Trial> best_on(bool tall) const;
    std::optional<Trial> search(const FixtureType& type, bool tall, std::size_t most, bool on) const;
    std::optional<Trial> verified(const FixtureType& type, const LightTable& table, const LampSet& set) const;
    void add_within_reach(const PlacedLight& light, const LightTable& table, LitPoints& lit) const;
    std::string remark(const WalkSlot& slot, const WalkSlot* before) const;
    std::size_t most_worth_trying(const std::optional<Trial>& found, const FixtureType& type) const;

    const Workbench& bench_;
    const Walk& walk_;
    WalkNeed need_;
    const WalkGround& ground_;
    const std::vector<double>& base_;
    PlacesBeside places_;
};

Fixture WalkPlanner::model(const FixtureType& type, bool tall) const {
    Fixture f;
    f.model = type.id;
    f.lights = walk_.id;
    if (walk_.elevation.value() != 0) f.elevation = walk_.elevation;
    if (tall) f.mounting = Metres(tall_stem);
    return f;
}

std::string WalkPlanner::remark(const WalkSlot& slot, const WalkSlot* before) const {
    const LengthUnit unit = bench_.site().settings.units;
    std::string words = fmt::format("{} along, on the {}", decimal_length_text(Metres(slot.along), unit, 1),
                                    slot.side > 0 ? "left" : "right");
    if (before == nullptr) return words;
    const double gap = slot.along - before->along;
    if (gap < 0.01) return words + ", opposite the one before";
    return words + fmt::format(", {} after the one before", decimal_length_text(Metres(gap), unit, 1));
}

/// A light that gives nothing beyond its reach need not be asked there.
void WalkPlanner::add_within_reach(const PlacedLight& light, const LightTable& table, LitPoints& lit) const {
    if (table.beyond_reach() > 0) return add_light(light, bench_.scene().obstacles, lit);
    const auto near = ground_.tree.within(on_plan(light.pose.at), table.reach());
    LitPoints some;
    for (const std::uint32_t point : near)
        some.points.push_back(lit.points[point]);
    add_light(light, bench_.scene().obstacles, some);
    for (std::size_t i = 0; i < near.size(); ++i)
        lit.lux[near[i]] += some.lux[i];
}

/// The lights as they will stand in the site file, judged by the light that the command `light` computes.
std::optional<Trial> WalkPlanner::verified(const FixtureType& type, const LightTable& table,
                                           const LampSet& set) const {
    Trial trial;
    trial.type = &type;
    trial.pattern = set.pattern;
    LitPoints lit{ground_.points, straight_up, base_};
    for (std::size_t i = 0; i < set.lamps.size(); ++i) {
        trial.fixtures.push_back(table.fixture(set.lamps[i]));
        trial.remarks.push_back(
            remark(table[set.lamps[i]].slot, i > 0 ? &table[set.lamps[i - 1]].slot : nullptr));
        add_within_reach(bench_.light_of(trial.fixtures.back()), table, lit);
    }
    trial.spread = spread_of(lit.lux);
    if (!need_.met_by(trial.spread)) return {};
    const double asked = need_.mean > 0 ? need_.mean : trial.spread.mean;
    trial.excess = std::max(0.0, trial.spread.mean / std::max(asked, 1e-9) - generous);
    trial.quality = trial.spread.mean > 0 ? trial.spread.least / trial.spread.mean : 0;
    return trial;
}

/// What lies beyond a light's reach is left out of the search: where that spoils its answer, a second one
/// asks for a little more.
std::optional<Trial> WalkPlanner::search(const FixtureType& type, bool tall, std::size_t most,
                                         bool on) const {
    std::size_t bound = 0;
    for (const double margin : {1.0, tighter}) {
        WalkNeed need = need_;
        need.margin = margin;
        const LightTable table(bench_, places_, ground_, model(type, tall), need);
        WalkSearch search(table, need, base_, most);
        const std::optional<LampSet>& found = on ? search.fewest() : search.regular();
        if (bound == 0) bound = search.lower_bound();
        if (!found) return {};
        std::optional<Trial> trial = verified(type, table, *found);
        if (!trial) continue;
        trial->lower_bound = bound;
        return trial;
    }
    return {};
}

/// How many lights of a type can still be better than what was found.
std::size_t WalkPlanner::most_worth_trying(const std::optional<Trial>& found, const FixtureType& type) const {
    const auto cap = static_cast<std::size_t>(2 * places_.length() / closest_spacing) + 2;
    if (!found) return cap;
    if (!bench_.cheapest()) return std::min(cap, found->fixtures.size());
    const double price = type.price.value_or(Money(0)).value();
    return price > 0 ? std::min(cap, static_cast<std::size_t>(found->cost() / price + 1e-9)) : cap;
}

/// Regular patterns of every type first; then the local search on the best of them, on short walks on all.
std::optional<Trial> WalkPlanner::best_on(bool tall) const {
    struct Start {
        const FixtureType* type;
        std::optional<Trial> trial;
    };
    std::vector<Start> starts;
    std::optional<Trial> best;
    const auto take = [&](std::optional<Trial> trial) {
        if (!trial) return;
        const std::size_t known = best && best->type == trial->type
                                      ? std::max(best->lower_bound, trial->lower_bound)
                                      : 0; // a later search knows more, even where it finds no fewer
        if (!best || preferred(*trial, *best, bench_.cheapest())) best = std::move(trial);
        best->lower_bound = std::max(best->lower_bound, known);
    };
    for (const FixtureType* type : bench_.offer(Purpose::walk)) {
        if (tall && type->kind != FixtureKind::path) continue;
        starts.push_back({type, search(*type, tall, most_worth_trying(best, *type), false)});
        take(starts.back().trial);
    }
    std::stable_sort(starts.begin(), starts.end(), [&](const Start& a, const Start& b) {
        if (!a.trial || !b.trial) return a.trial.has_value() && !b.trial;
        return preferred(*a.trial, *b.trial, bench_.cheapest());
    });
    if (best && ground_.points.size() > few_points) starts.resize(std::min(starts.size(), types_searched_on));
    for (const Start& start : starts)
        take(search(*start.type, tall, most_worth_trying(best, *start.type), true));
    return best;
}

/// A usual stem where that does.
std::optional<Trial> WalkPlanner::best() const {
    std::optional<Trial> usual = best_on(false);
    return usual ? usual : best_on(true);
}

std::string asked_words(const WalkNeed& need) {
    std::string words;
    if (need.mean > 0) words = lux_text(Lux(need.mean)) + " on average";
    if (need.least > 0)
        words += (words.empty() ? "" : " and ") + lux_text(Lux(need.least)) + " at the darkest spot";
    return words.empty() ? "an even light" : words;
}

std::string number_words(const Trial& trial) {
    if (trial.lower_bound >= trial.fixtures.size()) return "no fewer can do";
    return fmt::format("at least {} are needed", trial.lower_bound);
}

std::string reason_words(const Workbench& bench, const Walk& walk, const Trial& trial, const WalkNeed& need) {
    return fmt::format("{} gets {} {}{} ({}): {} on average, {} at the darkest spot; asked are {}.{}",
                       walk.id, trial.fixtures.size(), trial.type->id,
                       trial.pattern.empty() ? "" : ", " + trial.pattern, number_words(trial),
                       lux_text(Lux(trial.spread.mean)), lux_text(Lux(trial.spread.least)), asked_words(need),
                       bench.near_water_words(trial.fixtures));
}

std::string unmet_words(const Workbench& bench, const WalkNeed& need) {
    if (bench.offer(Purpose::walk).empty())
        return "no type on offer lights walks; name some with --model or put path lights into [stock]";
    const bool near = bench.near_water_allowed();
    return fmt::format("no number of the types on offer gives {} with free ground beside the walk{}; offer "
                       "brighter or taller ones{}",
                       asked_words(need), near ? "" : " and " + bench.clear_of_water_words(),
                       near ? "" : ", or feed them from a transformer listed for water");
}

std::vector<ProposedLight> lights_of(const Walk& walk, const Trial& trial) {
    std::vector<ProposedLight> lights;
    for (std::size_t i = 0; i < trial.fixtures.size(); ++i)
        lights.push_back({trial.fixtures[i], fmt::format("{}, {} of {}: {}", walk.id, i + 1,
                                                         trial.fixtures.size(), trial.remarks[i])});
    return lights;
}

/// Clear of water where that can be done; near it only where the supply may be.
std::optional<Trial> best_trial(const Workbench& bench, const Walk& walk, const WalkNeed& need,
                                const LitPoints& lit) {
    const WalkGround ground(lit.points);
    for (const WaterRule water : {WaterRule::keep_clear, WaterRule::may_be_near}) {
        if (water == WaterRule::may_be_near && !bench.near_water_allowed()) break;
        std::optional<Trial> trial = WalkPlanner(bench, walk, need, ground, lit.lux, water).best();
        if (trial) return trial;
    }
    return {};
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

std::optional<PartProposal> plan_walk(const Workbench& bench, const Walk& walk, bool make_even) {
    LitPoints lit;
    lit.points = walk_points(walk);
    illuminate(bench.scene(), lit);
    const LuxSpread now = spread_of(lit.lux);
    std::optional<WalkTarget> target = wanted_on(walk, now);
    if (!target && make_even && !need_of(walk_target(walk)).met_by(now)) target = walk_target(walk);
    if (!target || lit.points.empty()) return {};
    const WalkNeed need = need_of(*target);
    PartProposal proposal;
    const std::optional<Trial> trial = best_trial(bench, walk, need, lit);
    if (!trial) {
        proposal.unmet = UnmetTarget{walk.id, walk.location, unmet_words(bench, need)};
        return proposal;
    }
    proposal.lights = lights_of(walk, *trial);
    proposal.reason = reason_words(bench, walk, *trial, need);
    proposal.number = LightNumber{walk.id, trial->type->id, trial->fixtures.size(), trial->lower_bound};
    return proposal;
}

} // namespace rillwatt
