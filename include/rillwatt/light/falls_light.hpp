#pragma once

#include "rillwatt/light/scene_index.hpp"

namespace rillwatt {

/// Lux at which a cell of a falls face counts as lit: common practice, no source.
inline constexpr double falls_lit_lux = 20;

/// Level direction out of a falls face: to someone who stands in front of it and has the left end of the lip
/// on the left.
Vector3 falls_normal(const Falls& falls);

/// A point of the face: `across` from the left end (0) to the right (1), `up` from the base (0) to the lip
/// (1).
SpacePoint falls_point(const Falls& falls, double across, double up);

/// The largest cell that a face is cut into: 0.1 m, or more where it would take over 100,000 of them.
Metres falls_cell(const Falls& falls);

/// Where the rows of a face's cells have their middles, from the base (0) to the lip (1).
std::vector<double> falls_rows(const Falls& falls);

/// The upright face between the ends of the lip, from base to lip, in equal cells no larger than
/// `falls_cell`.
LitPoints falls_face(const Falls& falls);

/// Light on a face from its lux.
FallsLight falls_light_of(const LitPoints& lit);

FallsLight falls_light(const SceneIndex& scene, const Falls& falls);

} // namespace rillwatt
