#include "rillwatt/exchange/light_json.hpp"

#include "rillwatt/exchange/check_json.hpp"
#include "rillwatt/text/light_text.hpp"

namespace rillwatt {

namespace {

using Set = JsonWriter::Set;

std::optional<double> number(const std::optional<Lux>& lux) {
    return lux ? std::optional<double>(lux->value()) : std::nullopt;
}

void write_walks(JsonWriter& json, const Site& site, const LightResult& light) {
    json.key("walks");
    json.begin_array();
    for (const WalkLight& walk : light.walks) {
        json.begin_object(Set::line);
        json.member("id", site.walks[walk.walk].id);
        json.member("mean_lux", walk.mean.value());
        json.member("min_lux", walk.minimum.value());
        json.member("max_lux", walk.maximum.value());
        json.member("uniformity", walk.uniformity);
        json.member("target_mean_lux", number(walk.target_mean));
        json.member("target_min_lux", number(walk.target_minimum));
        json.member("meets", walk.meets);
        json.member("cell_m", walk.cell.value());
        json.end();
    }
    json.end();
}

void write_falls(JsonWriter& json, const Site& site, const LightResult& light) {
    json.key("falls");
    json.begin_array();
    for (const FallsLight& falls : light.falls) {
        json.begin_object(Set::line);
        json.member("id", site.falls[falls.falls].id);
        json.member("mean_lux", falls.mean.value());
        json.member("min_lux", falls.minimum.value());
        json.member("max_lux", falls.maximum.value());
        json.member("lit_percent", 100 * falls.lit_share);
        json.member("through_water", falls.through_water);
        json.member("cell_m", falls.cell.value());
        json.end();
    }
    json.end();
}

void write_points(JsonWriter& json, const LightResult& light) {
    json.key("points");
    json.begin_array();
    for (const PointLight& point : light.points) {
        json.begin_object(Set::line);
        json.member("x_m", point.point.x);
        json.member("y_m", point.point.y);
        json.member("z_m", point.point.z);
        json.member("horizontal_lux", point.horizontal.value());
        json.end();
    }
    json.end();
}

void write_glare(JsonWriter& json, const Site& site, const ViewpointLight& viewpoint) {
    json.key("glare");
    json.begin_array();
    for (const Glare& glare : viewpoint.glare) {
        json.begin_object(Set::line);
        json.member("fixture", site.fixtures[glare.fixture].id);
        json.member("angle_degrees", glare.angle.value());
        json.member("mirrored", glare.mirrored);
        json.member("turn_by_degrees", glare.turn_by.value());
        json.end();
    }
    json.end();
}

void write_viewpoints(JsonWriter& json, const Site& site, const LightResult& light) {
    json.key("viewpoints");
    json.begin_array();
    for (const ViewpointLight& viewpoint : light.viewpoints) {
        json.begin_object();
        json.member("id", site.viewpoints[viewpoint.viewpoint].id);
        json.key("sees");
        json.begin_array();
        for (const Sightline& line : viewpoint.sees) {
            json.begin_object(Set::line);
            json.member("falls", site.falls[line.falls].id);
            json.member("visible", line.visible);
            json.member_or_null("blocked_by", line.blocked_by);
            json.member("seen_percent", 100 * line.seen_share);
            json.member("from_behind", line.from_behind);
            json.end();
        }
        json.end();
        write_glare(json, site, viewpoint);
        json.end();
    }
    json.end();
}

void write_fixtures(JsonWriter& json, const Site& site, const LightResult& light) {
    json.key("fixtures");
    json.begin_array();
    for (const FixtureLight& fixture : light.fixtures) {
        json.begin_object(Set::line);
        json.member("id", site.fixtures[fixture.fixture].id);
        json.member("z_m", fixture.at.z);
        json.member("lumens", fixture.lumens.value());
        json.member("wasted_upward_percent", 100 * fixture.wasted_upward);
        json.end();
    }
    json.end();
}

} // namespace

void write_light(JsonWriter& json, const Assessment& assessment) {
    const Site& site = *assessment.site;
    const LightResult& light = *assessment.light;
    json.begin_object();
    json.member("schema", "rillwatt/1");
    json.member("command", "light");
    json.member("site", site.settings.name);
    json.member("file", site.file);
    write_walks(json, site, light);
    write_falls(json, site, light);
    write_points(json, light);
    write_viewpoints(json, site, light);
    write_fixtures(json, site, light);
    json.key("findings");
    write_findings(json, light_findings(assessment.findings));
    json.end();
}

std::string light_json(const Assessment& assessment) {
    JsonWriter json;
    write_light(json, assessment);
    return json.take();
}

} // namespace rillwatt
