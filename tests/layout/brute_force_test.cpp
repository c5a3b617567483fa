#include <catch2/catch.hpp>

#include "sketch.hpp"
#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

// The shortest trench among a few triangles, found the slow way by other means: every pair of points is
// clipped against the half-planes of every triangle, and every path is tried (Floyd and Warshall).

using rillwatt::PlanPoint;

namespace {

using Triangle = std::vector<PlanPoint>;

double side(PlanPoint a, PlanPoint b, PlanPoint p) {
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

/// Share of the straight line p to q inside an anticlockwise triangle.
double share_inside(const Triangle& t, PlanPoint p, PlanPoint q) {
    double low = 0;
    double high = 1;
    for (std::size_t i = 0; i < 3; ++i) {
        const double at_p = side(t[i], t[(i + 1) % 3], p);
        const double at_q = side(t[i], t[(i + 1) % 3], q);
        if (at_p <= 1e-12 && at_q <= 1e-12) return 0;
        if (at_p < 0) low = std::max(low, at_p / (at_p - at_q));
        if (at_q < 0) high = std::min(high, at_p / (at_p - at_q));
    }
    return std::max(0.0, high - low);
}

double brute_force(const std::vector<Triangle>& triangles, PlanPoint from, PlanPoint to) {
    std::vector<PlanPoint> points{from, to};
    for (const Triangle& t : triangles)
        points.insert(points.end(), t.begin(), t.end());
    const std::size_t n = points.size();
    std::vector<std::vector<double>> d(n, std::vector<double>(n, std::numeric_limits<double>::infinity()));
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            const bool barred = std::any_of(triangles.begin(), triangles.end(), [&](const Triangle& t) {
                return share_inside(t, points[i], points[j]) > 1e-9;
            });
            if (!barred) d[i][j] = std::hypot(points[i].x - points[j].x, points[i].y - points[j].y);
        }
    }
    for (std::size_t k = 0; k < n; ++k)
        for (std::size_t i = 0; i < n; ++i)
            for (std::size_t j = 0; j < n; ++j)
                d[i][j] = std::min(d[i][j], d[i][k] + d[k][j]);
    return d[0][1];
}

} // namespace

TEST_CASE("among random triangles, overlapping or not, the trench is as long as the slow way finds it") {
    std::mt19937 random(20240607);
    std::uniform_real_distribution<double> anywhere(0, 10);
    int bent = 0;
    for (int round = 0; round < 300; ++round) {
        std::vector<Triangle> triangles;
        std::vector<rillwatt::Area> areas;
        for (int k = 0; k < 2 + round % 6; ++k) {
            Triangle t{{anywhere(random), anywhere(random)},
                       {anywhere(random), anywhere(random)},
                       {anywhere(random), anywhere(random)}};
            const double twice_area = side(t[0], t[1], t[2]);
            if (std::abs(twice_area) < 1 || std::abs(twice_area) > 25) continue;
            areas.push_back(sketch::area(rillwatt::AreaKind::paving, t));
            if (twice_area < 0) std::reverse(t.begin(), t.end());
            triangles.push_back(t);
        }
        const PlanPoint from{-1, anywhere(random)};
        const PlanPoint to{11, anywhere(random)};
        const double expected = brute_force(triangles, from, to);
        INFO("round " << round << " with " << triangles.size() << " triangles");
        CHECK(sketch::metres(sketch::site(from, to, areas)) == Approx(expected).margin(1e-6));
        if (expected > std::hypot(12, from.y - to.y) + 1e-6) ++bent;
    }
    CHECK(bent > 100);
}
