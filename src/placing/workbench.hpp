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

/// A garden with the lights it has and those proposed so far, where more can be tried.
class Workbench {
  public:
    Workbench(const Site& site, const Catalog& catalog, LightScene scene, Photometry photometry,
              const PlacingOptions& options);

    const Site& site() const { return site_; }
    const LightScene& scene() const { return scene_; }
    bool cheapest() const { return options_.cheapest; }

    /// Types on offer for a purpose, cheaper first.
    std::vector<const FixtureType*> offer(Purpose purpose) const;

    /// A fixture as a light at rated volts.
    PlacedLight light_of(const Fixture& fixture) const;

    /// Whether the ground there is free for a light on a stake: no water, paving, building or walk, no
    /// viewer.
    bool free_ground(PlanPoint at) const;

    /// Whether someone at a viewpoint would look into it, directly or mirrored in water.
    bool dazzles(const PlacedLight& light) const;

    /// An id that nothing has yet: the part's with a number behind it.
    std::string new_id(const std::string& part);

    /// A length rounded to what a crew can tape: 0.1 ft or 0.02 m.
    double taped(double metres) const;

    /// A height rounded to half an inch or 0.01 m.
    double taped_height(double metres) const;

    void accept(ProposedLight light);
    std::vector<ProposedLight> take_lights() { return std::move(accepted_); }

  private:
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
    double excess = 0;  ///< how far beyond what was asked; 0 within 1.5 times
    double quality = 0; ///< more is better

    double cost() const;
};

/// Whether `a` is to be preferred to `b`: fewer lights (or less money), less excess, less money, better
/// light.
bool preferred(const Trial& a, const Trial& b, bool cheapest);

// Each finds lights for one part and puts them on the bench, or says in `unmet` why nothing does.
void propose_for_walk(Workbench& bench, const Walk& walk, PlacingProposal& proposal);
void propose_for_falls(Workbench& bench, const Falls& falls, PlacingProposal& proposal);

/// What a walk is to be lit to by a proposal; empty when it needs nothing.
std::optional<WalkTarget> wanted_on(const Walk& walk, const LuxSpread& now);

} // namespace rillwatt
