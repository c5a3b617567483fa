#pragma once

#include "rillwatt/light/compute_light.hpp"

#include <string>
#include <vector>

namespace rillwatt::test {

inline FixtureType light_type(const std::string& id, FixtureKind kind, DistributionSpec distribution,
                              double lumens = 200) {
    FixtureType type;
    type.id = id;
    type.kind = kind;
    type.lumens = Lumens(lumens);
    type.window_low = Volts(9);
    type.window_high = Volts(15);
    type.distribution = std::move(distribution);
    return type;
}

inline Fixture light_at(const std::string& id, const std::string& model, double x, double y) {
    Fixture fixture;
    fixture.id = id;
    fixture.model = model;
    fixture.at = PlanPoint{x, y};
    return fixture;
}

inline Area area_of(const std::string& id, AreaKind kind, double x0, double y0, double x1, double y1,
                    double height = 0) {
    Area area;
    area.id = id;
    area.kind = kind;
    area.outline = {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
    area.height = Metres(height);
    return area;
}

inline Falls falls_of(const std::string& id, PlanPoint left, PlanPoint right, double drop, double base = 0) {
    Falls falls;
    falls.id = id;
    falls.lip_left = left;
    falls.lip_right = right;
    falls.drop = Metres(drop);
    falls.base = Metres(base);
    return falls;
}

inline Walk walk_of(const std::string& id, std::vector<PlanPoint> line, double width) {
    Walk walk;
    walk.id = id;
    walk.line = std::move(line);
    walk.width = Metres(width);
    return walk;
}

inline Viewpoint viewpoint_of(const std::string& id, double x, double y, double eye) {
    Viewpoint viewpoint;
    viewpoint.id = id;
    viewpoint.at = {x, y};
    viewpoint.eye = Metres(eye);
    return viewpoint;
}

/// Nothing lost on the way: what comes out can be worked by hand.
inline Site loss_free_site() {
    Site site;
    site.settings.light_loss_factor = 1;
    site.settings.light_loss_factor_water = 1;
    return site;
}

inline Catalog catalog_of(const std::vector<FixtureType>& types) {
    Catalog catalog;
    for (const FixtureType& type : types)
        catalog.fixtures[type.id] = type;
    return catalog;
}

} // namespace rillwatt::test
