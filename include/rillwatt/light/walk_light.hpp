#pragma once

#include "rillwatt/light/scene_index.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace rillwatt {

/// Maintained lux a walk is to have. Empty: nothing asked.
struct WalkTarget {
    std::optional<Lux> mean;
    std::optional<Lux> minimum;
};

/// A lighting class for walks, EN 13201-2:2015 table 3 (P classes): P1 15/3, P2 10/2, P3 7.5/1.5, P4 5/1,
/// P5 3/0.6, P6 2/0.4 lx mean/minimum; P7 asks nothing. Empty for any other name.
std::optional<WalkTarget> walk_class(std::string_view name);

/// What a walk asks for: its class, with `mean_lux` and `min_lux` in place of the class's where given.
WalkTarget walk_target(const Walk& walk);

/// The largest cell that a walk is cut into: 0.25 m, or more where it would take over 100,000 of them.
Metres walk_cell(const Walk& walk);

/// Centres of the cells of a walk on the ground: each straight stretch is cut into equal cells no larger than
/// `walk_cell` along it and across its width.
std::vector<SpacePoint> walk_points(const Walk& walk);

/// Light on a walk from its lux, in the order of walk_points.
WalkLight walk_light_of(const Walk& walk, const LitPoints& lit);

WalkLight walk_light(const SceneIndex& scene, const Walk& walk);

} // namespace rillwatt
