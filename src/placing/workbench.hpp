#pragma once

#include "rillwatt/light/illuminance.hpp"
#include "rillwatt/light/walk_light.hpp"
#include "rillwatt/placing/propose_lights.hpp"

#include <memory>
#include <set>
#include <string>
#include <vector>

namespace rillwatt {

/// What a light is wanted for: it decides which kinds are on offer.
enum class Purpose { walk, falls };

/// Whether lights on dry ground have to keep the distance from water that a supply not listed for it asks.
enum class WaterRule { keep_clear, may_be_near };

/// A garden with the lights it has and those proposed so far, where more can be tried.
class Workbench {
  public:
    Workbench(const Site& site, const Catalog& catalog, LightScene scene, Photometry photometry,
              const PlacingOptions& options);

    const Site& site() const { return site_; }
    const LightScene& scene() const { return scene_; }
    bool cheapest() const { return options_.cheapest; }

    /// Types on offer for a purpose, cheaper first; cool ones only where they are asked for or nothing else
    /// is there.
    std::vector<const FixtureType*> offer(Purpose purpose) const;

    /// A fixture as a light at rated volts.
    PlacedLight light_of(const Fixture& fixture) const;

    /// Whether the ground there is free for a light on a stake: no water, paving, building or walk, no
    /// viewer, no other light; not too near to water.
    bool free_ground(PlanPoint at, WaterRule water) const;

    /// Whether the supply lets lights stand near water: one on the site is listed for it, or none is chosen
    /// yet.
    bool near_water_allowed() const;

    /// The distance from water that `near_water` asks for, and the words for keeping it.
    std::string near_water_limit_text() const;
    std::string clear_of_water_words() const;

    /// What to say of lights that stand near water all the same; empty where none does.
    std::string near_water_words(const std::vector<Fixture>& fixtures) const;

    /// Whether a place is nearer to water than a light may be whose supply is not listed for it.
    bool near_water(PlanPoint at) const;

    /// Whether someone at a viewpoint would look into it, directly or mirrored in water.
    bool dazzles(const PlacedLight& light) const;

    /// An id that nothing has yet: the part's with a number behind it.
    std::string new_id(const std::string& part);

    /// A length rounded to what a crew can tape: 0.1 ft or 0.02 m.
    double taped(double metres) const;

    /// A height rounded to half an inch or 0.01 m.
    double taped_height(double metres) const;

    /// Puts lights in place and gives each an id.
    void accept(const std::string& part, std::vector<ProposedLight> lights);

    /// Takes back what was accepted for a part.
    std::vector<ProposedLight> withdraw(const std::string& part);

    const std::vector<ProposedLight>& accepted() const { return accepted_; }

  private:
    bool offered(const FixtureType& type, const std::vector<FixtureKind>& kinds) const;
    bool someone_at(PlanPoint at) const;
    bool light_at(PlanPoint at) const;

    const Site& site_;
    const Catalog& catalog_;
    LightScene scene_;
    Photometry photometry_;
    const PlacingOptions& options_;
    mutable LightScene probe_; ///< one light at a time, for glare
    std::set<std::string> ids_;
    std::vector<ProposedLight> accepted_;
};

/// Lights that together do what was asked, and how to rank them.
struct Trial {
    const FixtureType* type = nullptr;
    std::vector<Fixture> fixtures;
    std::vector<std::string> remarks; ///< one for each fixture
    std::string pattern;
    LuxSpread spread;
    std::size_t lower_bound = 1; ///< lights of this type that it takes at least, as far as is known
    double excess = 0;           ///< how far beyond what was asked; 0 within 1.5 times
    double quality = 0;          ///< more is better

    double cost() const;
};

/// Whether `a` is to be preferred to `b`: fewer lights (or less money), less excess, less money, better
/// light.
bool preferred(const Trial& a, const Trial& b, bool cheapest);

/// What is proposed for one walk or falls.
struct PartProposal {
    std::vector<ProposedLight> lights; ///< without ids
    std::string reason;
    std::optional<LightNumber> number;
    std::optional<UnmetTarget> unmet;
};

// Each finds lights for one part, or says in `unmet` why nothing does; nothing where the part needs none.
// `make_even`: a walk that has its lux but is patchy needs some too.
std::optional<PartProposal> plan_walk(const Workbench& bench, const Walk& walk, bool make_even = false);
std::optional<PartProposal> plan_falls(const Workbench& bench, const Falls& falls);

/// What a walk is to be lit to by a proposal; empty when it needs nothing.
std::optional<WalkTarget> wanted_on(const Walk& walk, const LuxSpread& now);

} // namespace rillwatt
