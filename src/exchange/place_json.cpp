#include "rillwatt/exchange/place_json.hpp"

#include "rillwatt/exchange/json_writer.hpp"
#include "rillwatt/exchange/light_json.hpp"
#include "rillwatt/light/light_pose.hpp"

namespace rillwatt {

namespace {

using Set = JsonWriter::Set;

/// Bearing (0 to 360) and tilt of a light's axis, in degrees.
std::pair<double, double> turned(Vector3 axis) {
    const double tilt = std::acos(std::max(-1.0, std::min(1.0, -axis.z))) / degree;
    const double bearing = std::hypot(axis.x, axis.y) < 1e-9 ? 0 : std::atan2(axis.y, axis.x) / degree;
    return {bearing < 0 ? bearing + 360 : bearing, tilt};
}

void write_fixture(JsonWriter& json, const ProposedLight& light, const Catalog& catalog) {
    const Fixture& f = light.fixture;
    const FixtureKind kind = find_entry(catalog.fixtures, f.model)->kind;
    const SpacePoint centre = *light_centre(f, kind, nullptr);
    const auto [bearing, tilt] = turned(fixture_pose(f, kind, centre, PhotometricType::c).axis);
    json.begin_object(Set::line);
    json.member("id", f.id);
    json.member("model", f.model);
    json.member("x_m", f.at->x);
    json.member("y_m", f.at->y);
    json.member("mounting_m", f.mounting.value_or(default_mounting(kind)).value());
    if (f.elevation) json.member("elevation_m", f.elevation->value());
    json.member("bearing", f.aim.bearing ? f.aim.bearing->value() : bearing);
    json.member("tilt", tilt);
    json.member("lights", f.lights.value_or(""));
    json.member("why", light.why);
    json.end();
}

void write_number(JsonWriter& json, const LightNumber& number) {
    json.begin_object(Set::line);
    json.member("id", number.walk);
    json.member("model", number.model);
    json.member("lights", number.lights);
    json.member("lower_bound", number.lower_bound);
    json.end();
}

} // namespace

std::string place_json(const PlaceReport& report) {
    JsonWriter json;
    json.begin_object();
    json.member("schema", "rillwatt/1");
    json.member("command", "place");
    json.key("fixtures");
    json.begin_array();
    for (const ProposedLight& light : report.proposal.lights)
        write_fixture(json, light, *report.with_lights.catalog);
    json.end();
    json.key("walks");
    json.begin_array();
    for (const LightNumber& number : report.proposal.numbers)
        write_number(json, number);
    json.end();
    json.key("unmet");
    json.begin_array();
    for (const UnmetTarget& unmet : report.proposal.unmet) {
        json.begin_object(Set::line);
        json.member("part", unmet.part);
        json.member("reason", unmet.reason);
        json.end();
    }
    json.end();
    json.member("toml", report.toml);
    json.key("light");
    write_light(json, report.with_lights);
    json.end();
    return json.take();
}

} // namespace rillwatt
