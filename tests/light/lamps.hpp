#pragma once

#include "rillwatt/light/illuminance.hpp"

#include <fmt/format.h>

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace rillwatt::test {

/// A lamp with nothing lost, pointing straight down unless turned.
inline PlacedLight lamp(const LightDistribution& distribution, SpacePoint at, Degrees tilt = Degrees(0),
                        Degrees bearing = Degrees(0)) {
    PlacedLight light;
    light.photometry = std::make_shared<const TypePhotometry>(TypePhotometry{distribution, {}});
    light.pose = pose_at(at, bearing, tilt, distribution.type());
    return light;
}

inline PlacedLight aimed_lamp(const LightDistribution& distribution, SpacePoint at, SpacePoint target) {
    PlacedLight light = lamp(distribution, at);
    light.pose = pose_towards(at, target, {}, distribution.type());
    return light;
}

inline LightDistribution isotropic(double candela) {
    return LightDistribution::web(std::make_shared<const PhotometricWeb>(
        PhotometricType::c, std::vector<double>{0, 180}, std::vector<double>{0},
        std::vector<double>{candela, candela}));
}

/// I0 cos θ: the beam model at 120 degrees.
inline LightDistribution lambertian(double centre_candela) {
    return LightDistribution::beam(Degrees(120), Lumens(pi * centre_candela));
}

/// Level lux straight from the lamp.
inline double level_lux(const PlacedLight& light, SpacePoint point) {
    return unblocked_lux(light, point, straight_up);
}

/// A photometric file under construction: everything a test may want to get wrong.
struct Lm63 {
    std::string version = "IESNA:LM-63-2002\r\n[TEST] T1\r\n[TESTLAB] none\r\n";
    std::string tilt = "TILT=NONE\r\n";
    std::string lamps = "1 -1 1";
    std::string kind = "1 2 0 0 0"; ///< type, units, opening
    std::string factors = "1 1 10";
    std::vector<double> vertical;
    std::vector<double> horizontal{0};
    std::function<double(double, double)> candela = [](double, double) { return 100.0; };
    std::string tail;

    std::string text() const {
        std::string t = version + tilt;
        t += fmt::format("{} {} {} {}\r\n{}\r\n", lamps, vertical.size(), horizontal.size(), kind, factors);
        t += fmt::format("{}\r\n{}\r\n", fmt::join(vertical, " "), fmt::join(horizontal, " "));
        for (const double h : horizontal) {
            for (std::size_t v = 0; v < vertical.size(); ++v)
                t += fmt::format("{:.9g}{}", candela(vertical[v], h), v % 10 == 9 ? "\r\n" : " ");
            t += "\r\n";
        }
        return t + tail;
    }
};

inline std::vector<double> angles(double first, double last, double step) {
    std::vector<double> result;
    for (int i = 0; first + i * step <= last + 1e-9; ++i)
        result.push_back(first + i * step);
    return result;
}

} // namespace rillwatt::test
