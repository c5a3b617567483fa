#include "rillwatt/light/isolux.hpp"

#include "gardens.hpp"
#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

double area_of_ring(const std::vector<PlanPoint>& ring) {
    double twice = 0;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
        twice += ring[j].x * ring[i].y - ring[i].x * ring[j].y;
    return twice / 2;
}

LuxMap map_of(std::size_t columns, std::size_t rows, double step,
              const std::function<double(double, double)>& lux) {
    LuxMap map;
    map.corner = {-step * static_cast<double>(columns - 1) / 2, -step * static_cast<double>(rows - 1) / 2};
    map.step = step;
    map.columns = columns;
    map.rows = rows;
    for (std::size_t j = 0; j < rows; ++j)
        for (std::size_t i = 0; i < columns; ++i)
            map.lux.push_back(lux(map.corner.x + step * static_cast<double>(i),
                                  map.corner.y + step * static_cast<double>(j)));
    return map;
}

} // namespace

TEST_CASE("isolux lines of a cone are circles of the right size, brighter inside on their left") {
    const LuxMap map =
        map_of(81, 81, 0.1, [](double x, double y) { return std::max(0.0, 10 - 3 * std::hypot(x, y)); });
    for (const double level : {1.0, 4.0, 7.0}) {
        const std::vector<Isolux> lines = isolux_lines(map, {level});
        REQUIRE(lines[0].rings.size() == 1);
        const double radius = (10 - level) / 3;
        CHECK(area_of_ring(lines[0].rings[0]) ==
              Approx(pi * radius * radius).epsilon(0.01)); // counter-clockwise
        for (const PlanPoint p : lines[0].rings[0])
            CHECK(std::hypot(p.x, p.y) == Approx(radius).margin(0.01));
    }
}

TEST_CASE("a dark hole in a bright ring is a ring of its own, turned the other way") {
    const LuxMap map =
        map_of(81, 81, 0.1, [](double x, double y) { return 10 - 8 * std::abs(std::hypot(x, y) - 2); });
    const std::vector<Isolux> lines = isolux_lines(map, {6});
    REQUIRE(lines[0].rings.size() == 2);
    CHECK(area_of_ring(lines[0].rings[0]) * area_of_ring(lines[0].rings[1]) < 0);
    CHECK(area_of_ring(lines[0].rings[0]) + area_of_ring(lines[0].rings[1]) ==
          Approx(pi * (2.5 * 2.5 - 1.5 * 1.5)).epsilon(0.02));
}

TEST_CASE("rings close at the edge of the map and at saddles") {
    const LuxMap everywhere = map_of(5, 4, 1, [](double, double) { return 3.0; });
    REQUIRE(isolux_lines(everywhere, {2})[0].rings.size() == 1);
    const LuxMap saddle = map_of(2, 2, 1, [](double x, double y) { return x * y > 0 ? 4.0 : 0.0; });
    CHECK(isolux_lines(saddle, {1})[0].rings.size() == 1); // the middle, 2 lx, joins the two
    CHECK(isolux_lines(saddle, {3})[0].rings.size() == 2);
    CHECK(isolux_lines(saddle, {5})[0].rings.empty());
    CHECK(isolux_levels(saddle) == std::vector<double>{0.5, 1, 2});
    CHECK(isolux_levels(LuxMap{}).empty());
}

TEST_CASE("the map of a garden has the lux of its points, none inside a building") {
    Site site = loss_free_site();
    site.fixtures.push_back(light_at("L", "even", 0, 0));
    site.fixtures[0].mounting = Metres(1);
    site.areas.push_back(area_of("house", AreaKind::building, 0.55, -1, 1.1, 1, 3));
    const Catalog catalog = catalog_of(
        {light_type("even", FixtureKind::path, BatwingDistribution{Degrees(60)}, 3 * pi)}); // 1 cd down
    const LightScene scene = *load_light_scene(site, catalog, nullptr, {}).value;
    const LuxMap map = lux_map(site, scene);
    REQUIRE_FALSE(map.lux.empty());
    for (std::size_t j = 0; j < map.rows; ++j)
        for (std::size_t i = 0; i < map.columns; ++i) {
            const double x = map.corner.x + map.step * static_cast<double>(i);
            const double y = map.corner.y + map.step * static_cast<double>(j);
            if (x < 0.54 && std::hypot(x, y) < 1.7) CHECK(map.at(i, j) == Approx(1));
            if (x > 0.56 && std::abs(y) < 0.9) CHECK(map.at(i, j) == 0); // in the house or in its shadow
        }
}
