#pragma once

#include "rillwatt/light/compute_light.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// What a proposal may choose from.
struct PlacingOptions {
    std::vector<std::string> models; ///< catalog keys; empty: the site's stock, else every priced entry
    std::vector<FixtureKind> kinds;  ///< empty: path lights for walks, submersible or accent lights for falls
    bool cheapest = false;           ///< least money instead of fewest lights
};

/// One light that is not there yet, and why it should be.
struct ProposedLight {
    Fixture fixture; ///< without a feed
    std::string why;
};

/// A walk or falls for which nothing on offer does.
struct UnmetTarget {
    std::string part;
    SourceLocation location;
    std::string reason;
};

/// How many lights a walk gets, and how many of that type it takes at least. The bound holds for lights on
/// the mesh of places that are tried: it is the light needed over the most that one lamp can put on the walk,
/// and more where weighing the dark points or trying all sets shows more.
struct LightNumber {
    std::string walk;
    std::string model;
    std::size_t lights = 0;
    std::size_t lower_bound = 1;
};

struct PlacingProposal {
    std::vector<ProposedLight> lights;
    std::vector<LightNumber> numbers; ///< of each walk that gets lights
    std::vector<std::string> reasons; ///< one sentence for each walk and falls that gets lights
    std::vector<UnmetTarget> unmet;
};

/// Proposes lights for walks that miss their target and falls that are unlit: fewest (or cheapest) lights of
/// the types on offer that meet it, existing lights counted in. A walk that asks for nothing and has no light
/// at all is lit to class P5, unless it says P7. Positions are off the walk's edge and not in water, on
/// paving or in a building, nearer to water than the supply allows only where no others do, and no eye at a
/// viewpoint is dazzled; lights for falls stand in front of the sheet and look at it. Each proposal is
/// verified by computing the light with it in place. A catalog key that does not exist and a photometric file
/// that cannot be read are input errors.
LoadResult<PlacingProposal> propose_lights(const Site& site, const Catalog& catalog,
                                           const SiteSolution* solution, const PhotometricFiles& files,
                                           const PlacingOptions& options);

/// Types on offer for a proposal; their photometric files have to be read first.
std::vector<std::string> types_on_offer(const Site& site, const Catalog& catalog,
                                        const PlacingOptions& options);

/// The lights as `[[fixture]]` tables to paste into the site file, each with its reason as a comment.
std::string proposal_toml(const PlacingProposal& proposal, const SiteSettings& settings);

} // namespace rillwatt
