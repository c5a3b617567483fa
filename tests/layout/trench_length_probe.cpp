// Reads plans from standard input and prints the shortest trench of each, for comparison with another
// geometry library. One plan: "from_x from_y to_x to_y areas sleeves", then each area as "kind points x y
// ...", then each sleeve as "ax ay bx by". Prints the length in metres, or "none".

#include <fmt/format.h>

#include "sketch.hpp"
#include <iostream>

namespace {

rillwatt::PlanPoint read_point() {
    rillwatt::PlanPoint p;
    std::cin >> p.x >> p.y;
    return p;
}

rillwatt::Area read_area() {
    std::string kind;
    std::size_t count = 0;
    std::cin >> kind >> count;
    sketch::Outline outline;
    for (std::size_t i = 0; i < count; ++i)
        outline.push_back(read_point());
    const auto area_kind = kind == "water"      ? rillwatt::AreaKind::water
                           : kind == "building" ? rillwatt::AreaKind::building
                                                : rillwatt::AreaKind::paving;
    return sketch::area(area_kind, outline, kind);
}

} // namespace

int main() {
    double x = 0;
    while (std::cin >> x) {
        rillwatt::PlanPoint from{x, 0};
        std::cin >> from.y;
        const rillwatt::PlanPoint to = read_point();
        std::size_t areas = 0;
        std::size_t sleeves = 0;
        std::cin >> areas >> sleeves;
        rillwatt::Site plan = sketch::site(from, to, {});
        for (std::size_t i = 0; i < areas; ++i)
            plan.areas.push_back(read_area());
        for (std::size_t i = 0; i < sleeves; ++i) {
            const rillwatt::PlanPoint a = read_point();
            plan.sleeves.push_back(sketch::sleeve("S", a, read_point()));
        }
        const double length = sketch::metres(plan);
        fmt::print("{}\n", length < 0 ? "none" : fmt::format("{:.9f}", length));
    }
}
