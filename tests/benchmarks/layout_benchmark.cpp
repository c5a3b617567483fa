// Prints how long it takes to measure the cables of random gardens and of drawn ones, and how the time grows
// with the number of obstacle corners and of lights.

#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/layout/trench.hpp"
#include "rillwatt/site/read_site.hpp"

#include <fmt/format.h>

#include "support/placed_garden.hpp"
#include <chrono>
#include <cmath>
#include <random>

namespace {

using rillwatt::AreaKind;
using rillwatt::PlanPoint;

constexpr double pi = 3.14159265358979323846;

/// An area of five corners, no two alike, of about 2 m across.
rillwatt::Area random_area(std::mt19937& random, PlanPoint middle, AreaKind kind) {
    std::uniform_real_distribution<double> radius(0.5, 1.3);
    std::uniform_real_distribution<double> turn(0, 2 * pi);
    rillwatt::Area area;
    area.kind = kind;
    const double start = turn(random);
    for (int k = 0; k < 5; ++k) {
        const double angle = start + 2 * pi * k / 5;
        const double r = radius(random);
        area.outline.push_back({middle.x + r * std::cos(angle), middle.y + r * std::sin(angle)});
    }
    return area;
}

/// Areas in a jittered grid 2.6 m apart, so that they nearly touch and some overlap; parts anywhere.
rillwatt::Site random_garden(int areas, int parts) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> jitter(-0.5, 0.5);
    const int columns = static_cast<int>(std::ceil(std::sqrt(areas)));
    std::uniform_real_distribution<double> anywhere(0, 2.6 * columns);
    rillwatt::Site site;
    for (int k = 0; k < areas; ++k) {
        const PlanPoint middle{2.6 * (k % columns) + jitter(random), 2.6 * (k / columns) + jitter(random)};
        const AreaKind kind = k % 3 == 0   ? AreaKind::water
                              : k % 3 == 1 ? AreaKind::paving
                                           : AreaKind::building;
        site.areas.push_back(random_area(random, middle, kind));
    }
    rillwatt::Transformer transformer;
    transformer.id = "T";
    transformer.at = PlanPoint{-2, -2};
    site.transformers = {transformer};
    rillwatt::Run run;
    run.id = "A";
    run.from = "T";
    site.runs = {run};
    for (int k = 0; k < parts; ++k) {
        rillwatt::Fixture light;
        light.id = fmt::format("L{}", k);
        light.from = k % 4 == 0 ? run.id : fmt::format("L{}", k - 1);
        light.at = PlanPoint{anywhere(random), anywhere(random)};
        site.fixtures.push_back(light);
    }
    return site;
}

double seconds_to_measure(const rillwatt::Site& site, int& without_way) {
    const auto start = std::chrono::steady_clock::now();
    const rillwatt::SiteLengths lengths = measure_lengths(site);
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    without_way = 0;
    for (const rillwatt::PartLength& length : lengths.fixtures)
        without_way += length.length ? 0 : 1;
    return taken.count();
}

/// Areas, walks and streets as they are drawn, 25 lights to a plot.
rillwatt::Site plots(const rillwatt::test::PlacedGardenSpec& spec) {
    return *rillwatt::read_site(rillwatt::test::placed_garden(spec), "plots.toml").value;
}

void print_plots() {
    fmt::print("\ncables and trenches of plots on paved streets\n");
    fmt::print("{:>10} {:>12} {:>14} {:>14} {:>8}\n", "lights", "cables, s", "us a light", "trenches, s",
               "no way");
    for (const int lights : {250, 1000, 4000, 10000}) {
        const rillwatt::Site site = plots({.lights = lights});
        int without_way = 0;
        const double cables = seconds_to_measure(site, without_way);
        const rillwatt::SiteLengths lengths = measure_lengths(site);
        const auto start = std::chrono::steady_clock::now();
        trench_stretches(site, lengths);
        const std::chrono::duration<double> trenches = std::chrono::steady_clock::now() - start;
        fmt::print("{:>10} {:>12.4f} {:>14.1f} {:>14.4f} {:>8}\n", lights, cables, 1e6 * cables / lights,
                   trenches.count(), without_way);
    }
}

/// One pond of many corners among 25 lights.
void print_corners() {
    fmt::print("\ncables round a pond of many corners, 25 lights\n");
    fmt::print("{:>10} {:>10} {:>8}\n", "corners", "seconds", "power");
    double before = 0;
    for (const int corners : {250, 500, 1000, 2000}) { // an outline may have 2,000
        int without_way = 0;
        const double seconds =
            seconds_to_measure(plots({.lights = 25, .pond_corners = corners}), without_way);
        fmt::print("{:>10} {:>10.4f} {:>8.2f}\n", corners, seconds,
                   before > 0 ? std::log2(seconds / before) : 0);
        before = seconds;
    }
}

} // namespace

int main() {
    fmt::print("cables measured on the plan, 60 parts\n");
    fmt::print("{:>10} {:>10} {:>10} {:>8} {:>8}\n", "obstacles", "corners", "seconds", "ratio", "no way");
    double before = 0;
    for (const int areas : {25, 50, 100, 200, 400}) {
        int without_way = 0;
        const double seconds = seconds_to_measure(random_garden(areas, 60), without_way);
        fmt::print("{:>10} {:>10} {:>10.4f} {:>8.2f} {:>8}\n", areas, areas * 5, seconds,
                   before > 0 ? seconds / before : 0, without_way);
        before = seconds;
    }
    print_plots();
    print_corners();
}
