#pragma once

#include "rillwatt/finding/finding.hpp"
#include "rillwatt/quantity/point.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// Text of each photometric file a catalog names, by the path the catalog reader resolved.
using PhotometricFiles = std::map<std::string, std::string, std::less<>>;

struct WalkLight {
    std::size_t walk = 0; ///< index into Site::walks
    Lux mean;
    Lux minimum;
    Lux maximum;
    double uniformity = 0; ///< minimum over mean
    SpacePoint darkest;    ///< where the minimum is
    std::optional<Lux> target_mean;
    std::optional<Lux> target_minimum;
    bool meets = true;
    Metres cell;         ///< the largest cell that the walk was cut into
    bool coarse = false; ///< more than the usual one: the walk is too large for that
};

struct FallsLight {
    std::size_t falls = 0; ///< index into Site::falls
    Lux mean;
    Lux minimum;
    Lux maximum;
    double lit_share = 0; ///< of the face at the lit limit or more
    Metres cell;          ///< the largest cell that the face was cut into
    bool coarse = false;  ///< more than the usual one: the face is too large for that
    bool through_water =
        false; ///< some of it comes from under a surface: a best case, falls break the surface
};

struct PointLight {
    SpacePoint point;
    Lux horizontal;
};

struct Sightline {
    std::size_t falls = 0;
    bool visible = true;
    std::string blocked_by;   ///< area id, empty when visible
    double seen_share = 1;    ///< of the face
    bool from_behind = false; ///< the viewpoint is on the far side of the face
};

struct Glare {
    std::size_t fixture = 0;
    Degrees angle;         ///< between the light's axis and the line to the eye
    bool mirrored = false; ///< by way of the mirror image in still water
    Degrees turn_by;       ///< how far to turn the axis away until it is out of the field angle
};

struct ViewpointLight {
    std::size_t viewpoint = 0;
    std::vector<Sightline> sees;
    std::vector<Glare> glare;
};

/// One light on the plan and where its lumens go.
struct FixtureLight {
    std::size_t fixture = 0;  ///< index into Site::fixtures
    SpacePoint at;            ///< light centre
    Lumens lumens;            ///< at its solved voltage, before light-loss factors
    double wasted_upward = 0; ///< share of them that goes above level and meets neither falls nor wall
    bool dark = false;        ///< gives no light: below its window, no operating point, or no distribution
};

/// A photometric file whose lumens are not those of the catalog entry that names it.
struct LumenMismatch {
    std::string type;
    SourceLocation location;
    Lumens stated;
    Lumens measured;
};

/// A remark on a photometric file that was read all the same.
struct LightRemark {
    SourceLocation location;
    std::string text;
};

/// Level lux on the ground on a square mesh, rows upwards.
struct LuxMap {
    PlanPoint corner;   ///< of the lowest row's first point
    double step = 0.25; ///< metres
    std::size_t columns = 0;
    std::size_t rows = 0;
    std::vector<double> lux; ///< `columns` for each row

    double at(std::size_t column, std::size_t row) const { return lux[row * columns + column]; }
};

/// Light on walks and falls, and what is seen from the viewpoints.
struct LightResult {
    std::vector<WalkLight> walks;
    std::vector<FallsLight> falls;
    std::vector<PointLight> points;
    std::vector<ViewpointLight> viewpoints;
    std::vector<FixtureLight> fixtures;
    std::vector<LumenMismatch> mismatches;
    std::vector<LightRemark> remarks;
    std::optional<LuxMap> map; ///< for drawings; computed on request
};

} // namespace rillwatt
