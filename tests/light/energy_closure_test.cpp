// Flux through a closed surface round each light equals its lumens.
#include "rillwatt/light/photometric_file.hpp"

#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

constexpr SpacePoint centre{1.5, -0.7, 0.9};

/// Lux times area over one face of the box.
double flux_through_face(const PlacedLight& light, const double* low, const double* high, int axis,
                         bool far_side, int n) {
    const int a = (axis + 1) % 3;
    const int b = (axis + 2) % 3;
    double p[3];
    double normal[3] = {0, 0, 0};
    p[axis] = far_side ? high[axis] : low[axis];
    normal[axis] = far_side ? -1 : 1;
    double lux = 0;
    for (int i = 0; i < n; ++i)
        for (int k = 0; k < n; ++k) {
            p[a] = low[a] + (high[a] - low[a]) * (i + 0.5) / n;
            p[b] = low[b] + (high[b] - low[b]) * (k + 0.5) / n;
            lux += unblocked_lux(light, {p[0], p[1], p[2]}, {normal[0], normal[1], normal[2]});
        }
    return lux * (high[a] - low[a]) * (high[b] - low[b]) / n / n;
}

/// Over the six faces of a box that the lamp stands off-centre in.
double flux_through_box(const PlacedLight& light, int n) {
    const double low[3] = {centre.x - 0.9, centre.y - 1.1, centre.z - 0.8};
    const double high[3] = {centre.x + 1.2, centre.y + 0.8, centre.z + 1.0};
    double flux = 0;
    for (int axis = 0; axis < 3; ++axis)
        flux += flux_through_face(light, low, high, axis, false, n) +
                flux_through_face(light, low, high, axis, true, n);
    return flux;
}

LightDistribution from_file(const Lm63& file) {
    LoadResult<PhotometricFile> read = read_lm63(file.text(), "made.ies");
    REQUIRE(read);
    return LightDistribution::web(std::make_shared<const PhotometricWeb>(read.value->web));
}

/// Smooth, different all round, symmetric in both planes.
double lobe(double v, double h) {
    return 100 + 60 * std::cos(v * degree) + 30 * std::sin(v * degree) * std::cos(2 * h * degree);
}

Lm63 symmetric_file(double first, double last, double cosine_part, double sine_part) {
    Lm63 file;
    file.vertical = angles(0, 180, 5);
    file.horizontal = angles(first, last, 15);
    file.candela = [=](double v, double h) {
        return lobe(v, h) +
               std::sin(v * degree) * (cosine_part * std::cos(h * degree) + sine_part * std::sin(h * degree));
    };
    return file;
}

Lm63 floodlight_file(const char* kind) {
    Lm63 file;
    file.kind = kind;
    file.vertical = angles(-90, 90, 5);
    file.horizontal = angles(-90, 90, 5);
    file.candela = [](double v, double h) { return 200 * std::cos(v * degree) * std::cos(h * degree); };
    return file;
}

} // namespace

TEST_CASE("flux through a closed box equals the lumens within 0.1 %") {
    struct Row {
        const char* what;
        LightDistribution light;
        double lumens; ///< 0: what the file's own integral says
        double tilt;
    };
    const Row rows[] = {
        {"beam 10", LightDistribution::beam(Degrees(10), Lumens(300)), 300, 30},
        {"beam 36", LightDistribution::beam(Degrees(36), Lumens(300)), 300, 75},
        {"beam 90", LightDistribution::beam(Degrees(90), Lumens(300)), 300, 160},
        {"beam 180", LightDistribution::beam(Degrees(180), Lumens(300)), 300, 65},
        {"hat", LightDistribution::hat(Degrees(10), Degrees(75), Lumens(120)), 120, 0},
        {"hat, all of the lower half", LightDistribution::hat(Degrees(0), Degrees(90), Lumens(120)), 120, 20},
        {"batwing", LightDistribution::batwing(Degrees(65), Lumens(120)), 120, 10},
        {"isotropic", isotropic(10), 40 * pi, 0},
        {"file, no symmetry", from_file(symmetric_file(0, 360, 20, 20)), 0, 40},
        {"file, quadrants", from_file(symmetric_file(0, 90, 0, 0)), 0, 100},
        {"file, mirrored about 0-180", from_file(symmetric_file(0, 180, 20, 0)), 0, 100},
        {"file, mirrored about 90-270", from_file(symmetric_file(90, 270, 0, 20)), 0, 100},
        {"file, type A", from_file(floodlight_file("3 2 0 0 0")), 0, 70},
        {"file, type B", from_file(floodlight_file("2 2 0 0 0")), 0, 70},
    };
    for (const Row& row : rows) {
        INFO(row.what);
        if (row.lumens > 0) CHECK(row.light.flux() == Approx(row.lumens).epsilon(1e-9));
        CHECK(flux_through_box(lamp(row.light, centre, Degrees(row.tilt), Degrees(25)), 240) ==
              Approx(row.light.flux()).epsilon(1e-3));
    }
}

TEST_CASE("a file's flux is the integral of what it was written from") {
    Lm63 file;
    file.vertical = angles(0, 90, 1);
    file.candela = [](double v, double) { return 300 * std::pow(std::cos(v * degree), 2); };
    CHECK(from_file(file).flux() == Approx(2 * pi * 300 / 3).epsilon(2e-4)); // 2 pi Imax / (n + 1)
    // cos of the angle off the axis in both floodlight systems: a Lambertian emitter, pi I0.
    CHECK(from_file(floodlight_file("2 2 0 0 0")).flux() == Approx(pi * 200).epsilon(5e-3));
    CHECK(from_file(floodlight_file("3 2 0 0 0")).flux() == Approx(pi * 200).epsilon(5e-3));
}
