#include "remedies.hpp"

#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/search/site_search.hpp"

#include <fmt/format.h>

#include "choices.hpp"
#include "gather_problem.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt::sizing {

namespace {

constexpr std::size_t trial_effort = 60000;
constexpr std::size_t steps_per_part = 10; ///< to build and gather a changed site
constexpr int most_transformers = 8;
constexpr int most_runs = 8;
constexpr double small_shortening = 0.35; ///< of a way: beyond it, a split comes first

/// Tries changes on one transformer.
class Remedies {
  public:
    Remedies(const PartSite& part, const Catalog& catalog, const SizeOptions& options, const Trouble& trouble,
             Effort& effort)
        : part_(part), catalog_(catalog), options_(options), trouble_(trouble), effort_(effort) {
        options_.all = false;
    }

    Remedied find() {
        const bool by_lamp = trouble_.breach == BreachKind::lamp_low ||
                             trouble_.breach == BreachKind::lamp_high ||
                             trouble_.breach == BreachKind::no_operating_point;
        reopen();
        take_from_catalogs();
        if (by_lamp) {
            move_hub();
            shorten(small_shortening);
        }
        if (trouble_.breach != BreachKind::loading) split();
        if (by_lamp) shorten(1);
        add_transformers();
        if (trouble_.breach == BreachKind::loading) load_higher();
        return {std::move(ways_), !cut_short_};
    }

  private:
    /// What sizing chooses for a changed site, as far as it differs from what is written; empty when nothing
    /// works. Both sites have the same parts.
    std::optional<std::vector<SizeChoice>> sized(const PartSite& changed, Site written) {
        cut_short_ = cut_short_ || effort_.spent();
        if (cut_short_) return std::nullopt;
        effort_.spend(steps_per_part * (changed.site.splices.size() + changed.site.fixtures.size()));
        const auto circuits = build_circuits(changed.site, catalog_, changed.lengths);
        if (!circuits) return std::nullopt;
        const SizeProblem problem = gather(changed.site, catalog_, *circuits.value, options_);
        Effort effort = effort_.part(std::max(trial_effort, usual_effort(problem) / 20));
        effort.make_firm();
        const SiteAnswer answer = search_site(problem, effort);
        effort_.spend(effort.used());
        if (!std::isfinite(answer.cost)) return std::nullopt;
        return put_in_place(problem, answer.proposals, written);
    }

    bool works(const PartSite& changed) { return sized(changed, changed.site).has_value(); }

    void offer(std::string way) {
        if (std::find(ways_.begin(), ways_.end(), way) == ways_.end()) ways_.push_back(std::move(way));
    }

    void reopen();
    void take_from_catalogs();
    void shorten(double most);
    void move_hub();
    void split();
    void add_transformers();
    void load_higher();
    std::string fed_words(const PartSite& changed, const std::string& feed) const;
    std::string new_runs_words(const PartSite& changed) const;
    std::string length_words(Metres length) const { return length_text(length, part_.site.settings.units); }

    const PartSite& part_;
    const Catalog& catalog_;
    SizeOptions options_;
    const Trouble& trouble_;
    Effort& effort_;
    bool cut_short_ = false;
    std::vector<std::string> ways_;
};

std::string chosen_words(const std::vector<SizeChoice>& choices, const std::string& what) {
    std::string words;
    for (const SizeChoice& choice : choices) {
        if (choice.what != what) continue;
        if (!words.empty()) words += ", ";
        words += fmt::format("{} {}{} on {}", what, choice.value, what == "tap" ? " V" : "", choice.part);
    }
    return words;
}

/// The parts of the file that a run which is not in it feeds.
std::string Remedies::fed_words(const PartSite& changed, const std::string& feed) const {
    std::string words;
    for (const std::string& part : changed.fed_by(feed)) {
        const std::string fed = part_.feed_of(part) ? part : fed_words(changed, part);
        words += (words.empty() ? "" : ", ") + fed;
    }
    return words;
}

/// What the runs are that the file does not have; empty when there are none.
std::string Remedies::new_runs_words(const PartSite& changed) const {
    std::string words;
    for (const Run& run : changed.site.runs) {
        const auto& written = part_.site.runs;
        if (std::any_of(written.begin(), written.end(), [&](const Run& old) { return old.id == run.id; }))
            continue;
        words += fmt::format("{}{} feeds {}", words.empty() ? "" : "; ", run.id, fed_words(changed, run.id));
    }
    return words.empty() ? "" : ". New runs, each a further cable along the same way: " + words;
}

/// Typed values, one kind at a time, then all of them.
void Remedies::reopen() {
    const auto offer_if_it_works = [&](const PartSite& changed, const std::string& what) {
        const auto choices = sized(changed, part_.site); // what is typed so already needs no word
        if (!choices) return false;
        const std::string words = chosen_words(*choices, what);
        if (!words.empty()) offer(words + ", instead of what is typed");
        return true;
    };
    PartSite taps = part_;
    bool typed_tap = false;
    for (Run& run : taps.site.runs) {
        typed_tap = typed_tap || run.tap;
        run.tap.reset();
    }
    const bool by_tap = typed_tap && offer_if_it_works(taps, "tap");
    PartSite model = part_;
    const bool typed_model = model.site.transformers.front().model.has_value();
    model.site.transformers.front().model.reset();
    const bool by_model = typed_model && offer_if_it_works(model, "model");
    PartSite cables = part_;
    const Site open = reopened(part_.site);
    cables.site.splices = open.splices;
    cables.site.fixtures = open.fixtures;
    bool typed_cable = false;
    for (Run& run : cables.site.runs) {
        typed_cable = typed_cable || run.cable;
        run.cable.reset();
    }
    const bool by_cable = typed_cable && offer_if_it_works(cables, "cable");
    if (by_tap || by_model || by_cable) return;
    const PartSite all{open, part_.lengths};
    if ((typed_tap || typed_model || typed_cable) && works(all))
        offer("let `rillwatt size --all` choose what is typed as well");
}

/// What the catalogs hold beyond the stock.
void Remedies::take_from_catalogs() {
    PartSite changed = part_;
    changed.site.stock.cables.reset();
    if (part_.site.stock.cables)
        if (const auto choices = sized(changed, changed.site))
            offer(chosen_words(*choices, "cable") + ", which the catalogs have and [stock] has not");
    changed = part_;
    changed.site.stock.transformers.reset();
    if (part_.site.stock.transformers && !part_.site.transformers.front().model)
        if (const auto choices = sized(changed, changed.site))
            offer(chosen_words(*choices, "model") + ", which the catalogs have and [stock] has not");
}

/// The least shortening of the way to the worst lamp, or of every length of its run where that is not enough.
void Remedies::shorten(double most) {
    const std::vector<std::string> way = part_.way_to(trouble_.part);
    const auto scaled = [&](double factor) {
        PartSite changed = part_;
        for (const std::string& step : way)
            if (auto* length = changed.length_to(step); length != nullptr && *length) **length *= factor;
        return changed;
    };
    if (way.empty() || !works(scaled(1 - most))) return;
    double works_at = 1 - most;
    double fails_at = 1;
    while (fails_at - works_at > 1e-7) {
        const double middle = (works_at + fails_at) / 2;
        (works(scaled(middle)) ? works_at : fails_at) = middle;
    }
    PartSite whole = part_;
    const Metres now = whole.way_length(trouble_.part);
    const double step = part_.site.settings.units == LengthUnit::feet ? feet(0.5).value() : 0.1;
    Metres less(std::ceil(now.value() * (1 - works_at) / step - 1e-4) * step);
    if (!works(scaled(1 - less / now))) less += Metres(step); // rounded off a hair too much
    if (less >= now || !works(scaled(1 - less / now))) return;
    offer(fmt::format("make the way from {} to {} shorter by {} (it is {})", part_.run_of(trouble_.part),
                      trouble_.part, length_words(less), length_words(now)));
}

/// Moves the splice nearest to the transformer on the way to the worst lamp towards it; every length from it
/// on grows by as much.
void Remedies::move_hub() {
    const std::vector<std::string> way = part_.way_to(trouble_.part);
    if (way.empty()) return;
    const std::string hub = way.front();
    const std::vector<std::string> legs = part_.fed_by(hub);
    PartSite probe = part_;
    const Metres trunk = probe.length_to(hub)->value_or(Metres(0));
    if (legs.size() < 2 || trunk <= Metres(0)) return;
    constexpr int steps = 20;
    for (int step = 1; step < steps; ++step) {
        const Metres nearer = trunk * (static_cast<double>(step) / steps);
        PartSite changed = part_;
        **changed.length_to(hub) -= nearer;
        for (const std::string& leg : legs)
            if (auto* length = changed.length_to(leg); *length) **length += nearer;
        if (!works(changed)) continue;
        offer(fmt::format(
            "move {} {} nearer to the transformer and lay the {} lengths from it that much longer", hub,
            length_words(nearer), legs.size()));
        return;
    }
}

/// Splits the run concerned, again and again, until it works.
void Remedies::split() {
    PartSite changed = part_;
    std::vector<std::string> runs{trouble_.run};
    if (trouble_.run.empty()) return;
    while (static_cast<int>(runs.size()) < most_runs) {
        Loads loads = changed.loads(catalog_);
        const auto largest = *std::max_element(
            runs.begin(), runs.end(), [&](const auto& a, const auto& b) { return loads[a] < loads[b]; });
        const std::string added = changed.split_run(catalog_, largest);
        if (added.empty()) return;
        runs.push_back(added);
        if (!works(changed)) continue;
        const std::string moved = fed_words(changed, added);
        offer(runs.size() == 2
                  ? fmt::format("split run {} in two: a second cable along the same way that feeds {}",
                                trouble_.run, moved)
                  : fmt::format("split run {} into {} cables of about the same load", trouble_.run,
                                runs.size()));
        return;
    }
}

void Remedies::add_transformers() {
    for (int count = 2; count <= most_transformers; ++count) {
        PartSite changed = part_;
        if (!changed.add_transformer(catalog_, count)) return;
        const auto choices = sized(changed, changed.site);
        if (!choices) continue;
        std::string groups;
        for (const Transformer& transformer : changed.site.transformers) {
            std::string runs;
            for (const Run& run : changed.site.runs)
                if (run.from == transformer.id) runs += (runs.empty() ? "" : ", ") + run.id;
            groups += (groups.empty() ? "" : "; ") + runs;
        }
        std::string models;
        for (const SizeChoice& choice : *choices)
            if (choice.what == "model") models += (models.empty() ? "" : " and ") + choice.value;
        offer(fmt::format("{} transformers in place of {}{}{}: runs {}{}", count,
                          part_.site.transformers.front().id, models.empty() ? "" : ", ", models, groups,
                          new_runs_words(changed)));
        return;
    }
}

void Remedies::load_higher() {
    if (against_rating(options_.loading).beyond() >= 0) return;
    const double asked = options_.loading;
    options_.loading = limits::transformer_rating.value;
    if (works(part_)) {
        double works_at = options_.loading;
        double fails_at = asked;
        while (works_at - fails_at > 0.005) {
            options_.loading = (works_at + fails_at) / 2;
            (works(part_) ? works_at : fails_at) = options_.loading;
        }
        offer(fmt::format("accept a loading of {} % (--loading {})", std::ceil(works_at * 100),
                          std::ceil(works_at * 100)));
    }
    options_.loading = asked;
}

} // namespace

Remedied find_remedies(const PartSite& part, const Catalog& catalog, const SizeOptions& options,
                       const Trouble& trouble, Effort& effort) {
    return Remedies(part, catalog, options, trouble, effort).find();
}

} // namespace rillwatt::sizing
