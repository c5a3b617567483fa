#pragma once

#include "rillwatt/light/light_pose.hpp"
#include "rillwatt/light/obstacles.hpp"
#include "rillwatt/light/type_photometry.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace rillwatt {

/// One light of the garden, ready to be computed.
struct PlacedLight {
    std::size_t fixture = 0; ///< index into Site::fixtures
    LightPose pose;
    std::shared_ptr<const TypePhotometry> photometry;
    double factor = 1;       ///< of the candela: light loss and tilt of a discharge lamp
    double lumen_factor = 1; ///< of the lumens: what the solved voltage makes of them; within `factor`
    std::optional<double> water_level;  ///< height of the surface above a light that is under water
    double attenuation = 0;             ///< of the water, 1/m
    std::vector<std::size_t> own_areas; ///< planting it stands in: does not block it
};

/// All lights of a garden and what stands between.
struct LightScene {
    std::vector<PlacedLight> lights;
    Obstacles obstacles;
};

/// Lumens at a lamp voltage over lumens at rated volts: (V / rated)^3.4 for filament and resistance lamps;
/// for LEDs 0 below their window and 1 within and above it. No voltage: rated volts.
double lumen_factor(const FixtureType& type, std::optional<Volts> volts);

/// Volts of a fixture in the nominal case. A light without feed, or whose circuit is still open, has none; a
/// light whose circuit has no operating point gets 0 V.
std::optional<Volts> nominal_volts(const Site& site, const SiteSolution* solution, std::size_t fixture);

/// A fixture as a light. Empty when it is not on the plan.
std::optional<PlacedLight> place_light(const Site& site, const Fixture& fixture, const FixtureType& type,
                                       std::shared_ptr<const TypePhotometry> photometry,
                                       double lumens_factor);

/// Every fixture on the plan whose type is in `photometry`.
LightScene build_light_scene(const Site& site, const Catalog& catalog, const SiteSolution* solution,
                             const Photometry& photometry);

} // namespace rillwatt
