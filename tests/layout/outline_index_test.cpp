// The indexes give the answers of the plain loops they stand for.
#include "rillwatt/layout/outline_index.hpp"
#include "rillwatt/layout/places.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

namespace {

using rillwatt::Location;
using rillwatt::PlanPoint;

double between(std::mt19937& random, double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
}

/// A star with many corners, so that the index and not the loop answers.
std::vector<PlanPoint> star(std::mt19937& random, PlanPoint middle, int corners, double radius) {
    std::vector<PlanPoint> outline;
    for (int k = 0; k < corners; ++k) {
        const double angle = 2 * 3.14159265358979323846 * k / corners;
        const double r = radius * between(random, 0.6, 1);
        outline.push_back({middle.x + r * std::cos(angle), middle.y + r * std::sin(angle)});
    }
    return outline;
}

} // namespace

TEST_CASE("an outline of many corners says of every point what the plain loop over its sides says") {
    std::mt19937 random(11);
    for (int round = 0; round < 20; ++round) {
        std::vector<std::vector<PlanPoint>> outlines;
        for (int k = 0; k < 6; ++k)
            outlines.push_back(
                star(random, {between(random, 0, 8), between(random, 0, 8)}, 20 + 60 * (k % 2), 3));
        const rillwatt::OutlineIndex index(outlines);
        std::vector<PlanPoint> asked;
        for (int k = 0; k < 200; ++k)
            asked.push_back({between(random, -3, 11), between(random, -3, 11)});
        for (const auto& side : index.sides()) { // corners, and level with a corner
            asked.push_back(side.a);
            asked.push_back({side.a.x - 0.5, side.a.y});
            asked.push_back({(side.a.x + side.b.x) / 2, (side.a.y + side.b.y) / 2});
        }
        for (const PlanPoint p : asked) {
            std::vector<std::size_t> covering;
            for (std::size_t i = 0; i < outlines.size(); ++i) {
                const Location plain = rillwatt::locate(outlines[i], p);
                REQUIRE(index.locate(i, p) == plain);
                if (plain != Location::outside) covering.push_back(i);
            }
            REQUIRE(index.covering(p) == covering);
        }
    }
}

TEST_CASE("an index of areas knows water as the questions about one part do") {
    std::mt19937 random(12);
    for (int round = 0; round < 20; ++round) {
        rillwatt::Site site;
        for (int k = 0; k < 8; ++k) {
            rillwatt::Area area;
            area.id = std::to_string(k);
            area.kind = k % 3 == 0 ? rillwatt::AreaKind::paving : rillwatt::AreaKind::water;
            area.outline = star(random, {between(random, 0, 20), between(random, 0, 20)}, 7, 3);
            if (round > 0 || area.kind != rillwatt::AreaKind::water) site.areas.push_back(area);
        }
        const rillwatt::AreaIndex index(site);
        CHECK(index.has_water() == (round > 0));
        for (int k = 0; k < 200; ++k) {
            const PlanPoint p{between(random, -5, 25), between(random, -5, 25)};
            REQUIRE(index.water_at(p) == rillwatt::water_at(site, p));
            REQUIRE(index.distance_to_water(p) == rillwatt::distance_to_water(site, p));
        }
    }
}
