#pragma once

#include "rillwatt/light/scene_index.hpp"

#include <vector>

namespace rillwatt {

/// Lights farther than this do not dazzle a viewer in a garden: common practice, no source.
inline constexpr double glare_reach = 20; ///< metres

/// Where a viewer's eye is.
SpacePoint eye_of(const Viewpoint& viewpoint);

/// Which of a face is seen from a viewpoint over whatever stands high. A building the viewer is in is looked
/// out of. Visible: at least half of the face.
Sightline sightline(const Site& site, const Obstacles& obstacles, const Viewpoint& viewpoint,
                    std::size_t falls);
Sightline sightline(const Site& site, const SceneIndex& scene, const Viewpoint& viewpoint, std::size_t falls);

/// The lights that shine into a viewer's eye, directly or mirrored in a still surface: the eye (or its mirror
/// image) is within the light's field angle and within reach, and nothing stands between.
std::vector<Glare> glare_at(const Site& site, const LightScene& scene, const Viewpoint& viewpoint);

std::vector<Glare> glare_at(const Site& site, const SceneIndex& scene, const Viewpoint& viewpoint);

/// Sightlines to the falls a viewpoint looks at (all of them when it names none), and glare.
ViewpointLight viewpoint_light(const Site& site, const SceneIndex& scene, std::size_t viewpoint);

} // namespace rillwatt
