#include "shore.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

namespace rillwatt {

namespace {

namespace geometry = boost::geometry;
using Point = geometry::model::d2::point_xy<double>;
using Line = geometry::model::linestring<Point>;
using Polygon = geometry::model::polygon<Point>;

Point boost_point(PlanPoint point) { return {point.x, point.y}; }

Polygon polygon_of(const Area& area) {
    Polygon polygon;
    for (const PlanPoint corner : area.outline)
        geometry::append(polygon.outer(), boost_point(corner));
    geometry::correct(polygon);
    return polygon;
}

} // namespace

Metres distance_to_edge(const Area& area, PlanPoint point) {
    const Polygon polygon = polygon_of(area);
    const Line edge(polygon.outer().begin(), polygon.outer().end());
    return Metres(geometry::distance(boost_point(point), edge));
}

Metres length_inside(const Area& area, PlanPoint from, PlanPoint to) {
    const Line way{boost_point(from), boost_point(to)};
    geometry::model::multi_linestring<Line> inside;
    geometry::intersection(way, polygon_of(area), inside);
    return Metres(static_cast<double>(geometry::length(inside)));
}

} // namespace rillwatt
