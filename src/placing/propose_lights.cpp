#include "rillwatt/placing/propose_lights.hpp"

#include <fmt/format.h>

#include "walk_need.hpp"
#include "workbench.hpp"
#include <algorithm>
#include <tuple>
#include <utility>

namespace rillwatt {
namespace {

std::vector<InputError> unknown_models(const Catalog& catalog, const PlacingOptions& options) {
    std::vector<std::string> known;
    for (const auto& [id, type] : catalog.fixtures)
        known.push_back(id);
    std::vector<InputError> errors;
    for (const std::string& model : options.models) {
        if (catalog.fixtures.count(model) > 0) continue;
        const std::optional<std::string> nearest = nearest_spelling(model, known);
        errors.push_back(
            {{"--model", 0},
             fmt::format("no fixture `{}` in the catalogs", model),
             nearest ? fmt::format("a catalog key; the nearest is `{}`", *nearest) : "a catalog key",
             {}});
    }
    return errors;
}

constexpr int settling_rounds = 3;

/// Plans part after part, each with the lights of the others in place.
class Planner {
  public:
    Planner(Workbench& bench) : bench_(bench), walks_(bench.site().walks.size()) {}

    PlacingProposal propose();

  private:
    void plan_again(std::size_t walk, bool& changed);
    std::size_t faults() const;
    std::vector<std::string> patchy() const;
    void gather(const std::string& part, const std::optional<PartProposal>& plan,
                PlacingProposal& proposal) const;

    Workbench& bench_;
    std::vector<std::optional<PartProposal>> walks_;
};

/// Walks that the lights in place leave too dark or patchy.
std::vector<std::string> Planner::patchy() const {
    std::vector<std::string> found;
    for (const Walk& walk : bench_.site().walks) {
        LitPoints lit;
        lit.points = walk_points(walk);
        illuminate(bench_.scene(), lit);
        const LuxSpread spread = spread_of(lit.lux);
        if (spread.greatest > 0 && !need_of(walk_target(walk)).met_by(spread)) found.push_back(walk.id);
    }
    return found;
}

std::size_t Planner::faults() const { return patchy().size(); }

/// Lights of a walk that was planned later may stand near: with them in place fewer may do, or others.
void Planner::plan_again(std::size_t walk, bool& changed) {
    const Walk& part = bench_.site().walks[walk];
    const std::size_t faults_before = faults();
    std::vector<ProposedLight> before = bench_.withdraw(part.id);
    std::optional<PartProposal> plan = plan_walk(bench_, part, true);
    const std::size_t count = plan ? plan->lights.size() : 0;
    if (plan) bench_.accept(part.id, plan->lights);
    const std::size_t faults_after = plan && plan->unmet ? faults_before + 1 : faults();
    if (std::make_pair(faults_after, count) < std::make_pair(faults_before, before.size())) {
        walks_[walk] = std::move(plan);
        changed = true;
        return;
    }
    bench_.withdraw(part.id);
    bench_.accept(part.id, std::move(before));
}

void Planner::gather(const std::string& part, const std::optional<PartProposal>& plan,
                     PlacingProposal& proposal) const {
    if (!plan) return;
    for (const ProposedLight& light : bench_.accepted())
        if (light.fixture.lights == part) proposal.lights.push_back(light);
    if (!plan->reason.empty()) proposal.reasons.push_back(plan->reason);
    if (plan->number) proposal.numbers.push_back(*plan->number);
    if (plan->unmet) proposal.unmet.push_back(*plan->unmet);
}

PlacingProposal Planner::propose() {
    const Site& site = bench_.site();
    const std::vector<std::string> before = patchy();
    std::vector<std::optional<PartProposal>> falls;
    for (const Falls& part : site.falls) {
        falls.push_back(plan_falls(bench_, part));
        if (falls.back()) bench_.accept(part.id, falls.back()->lights);
    }
    for (std::size_t i = 0; i < site.walks.size(); ++i) {
        walks_[i] = plan_walk(bench_, site.walks[i]);
        if (walks_[i]) bench_.accept(site.walks[i].id, walks_[i]->lights);
    }
    bool changed = site.walks.size() > 1;
    for (int round = 0; round < settling_rounds && changed; ++round) {
        changed = false;
        for (std::size_t i = 0; i < site.walks.size(); ++i)
            if (walks_[i] && !walks_[i]->lights.empty()) plan_again(i, changed);
    }
    PlacingProposal proposal;
    for (const std::string& walk : patchy())
        if (std::find(before.begin(), before.end(), walk) == before.end())
            proposal.reasons.push_back(fmt::format(
                "{} is patchy with these lights in place: too much spills over from others.", walk));
    for (std::size_t i = 0; i < site.walks.size(); ++i)
        gather(site.walks[i].id, walks_[i], proposal);
    for (std::size_t i = 0; i < site.falls.size(); ++i)
        gather(site.falls[i].id, falls[i], proposal);
    return proposal;
}

} // namespace

LoadResult<PlacingProposal> propose_lights(const Site& site, const Catalog& catalog,
                                           const SiteSolution* solution, const PhotometricFiles& files,
                                           const PlacingOptions& options) {
    std::vector<InputError> errors = unknown_models(catalog, options);
    LoadResult<LightScene> scene = load_light_scene(site, catalog, solution, files);
    LoadResult<Photometry> offer = prepare_photometry(catalog, types_on_offer(site, catalog, options), files);
    errors.insert(errors.end(), scene.errors.begin(), scene.errors.end());
    if (scene) errors.insert(errors.end(), offer.errors.begin(), offer.errors.end());
    if (!errors.empty()) return {std::nullopt, std::move(errors)};
    Workbench bench(site, catalog, std::move(*scene.value), std::move(*offer.value), options);
    return {Planner(bench).propose(), {}};
}

} // namespace rillwatt
