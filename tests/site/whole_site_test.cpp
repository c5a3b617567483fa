#include "rillwatt/site/read_site.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

/// The site file of the format's description, every table of it.
constexpr const char* described_site = R"toml(
rillwatt = 1
[site]
name = "Fernhollow terrace"
units = "ft"
catalogs = ["stock.toml"]
conductor_temperature = "75 C"
supply_voltage = 120
supply_band_percent = 5
cable_allowance_percent = 10
hours_per_night = 5
code = "nec"
code_edition = 2020
dwelling = true
energy_price = 0.17
nights_per_year = 365
cable_cover = "6 in"
water_attenuation = 0
light_loss_factor = 0.8
[stock]
cables = ["14/2", "12/2", "10/2"]
transformers = ["mag-150", "mag-300"]
fixtures = ["sub-3w", "path-2w"]
[[circuit]]
id = "C1"
volts = 120
breaker = 20
gfci = true
conductor = "12 AWG"
length = "60 ft"
wiring = "direct-burial"
cover = "24 in"
crosses = "lawn"
at = [0, 0]
outlet = "receptacle"
outdoors = true
wet_cover = true
[[circuit]]
id = "C2"
wiring = "indoor"
[[pump]]
id = "P1"
model = "pump-180w"
circuit = "C1"
at = [22, 9]
hours_per_day = 24
[[transformer]]
id = "T1"
model = "mag-300"
circuit = "C2"
at = [1, 0]
control = "photocell on, timer off"
[[run]]
id = "A"
from = "T1"
tap = 13
cable = "12/2"
[[splice]]
id = "H1"
from = "A"
length = "40 ft"
cable = "10/2"
at = [12, 6]
[[fixture]]
id = "falls-1"
model = "sub-3w"
from = "H1"
length = "15 ft"
at = [20, 8]
in_water = true
aim = [21, 10, "6 in"]
lights = "upper"
[[fixture]]
id = "path-1"
model = "path-2w"
bearing = -90
tilt = 0
mounting = "-4 in"
elevation = 2
[[link]]
between = ["H1", "falls-1"]
cable = "12/2"
[[area]]
id = "pond"
kind = "water"
outline = [[18, 6], [26, 6], [26, 11], [18, 11], [18, 6]]
height = 0
level = -0.5
[[area]]
id = "house"
kind = "building"
outline = [[0, 0], [10, 0], [10, -10]]
[[sleeve]]
id = "S1"
between = [[10, 3], [14, 3]]
[[mark]]
id = "house corner"
at = [0, 0]
[[walk]]
id = "garden-walk"
line = [[0, 4], [12, 4], [20, 2]]
width = "4 ft"
target = "P5"
[[falls]]
id = "upper"
lip = [[21, 10], [24, 10]]
drop = "18 in"
pool_depth = "10 in"
base = 0
faces = 270
[[viewpoint]]
id = "kitchen window"
at = [-6, 20]
eye = "5 ft"
looks_at = ["upper"]
)toml";

Site read(std::string_view text) {
    LoadResult<Site> result = read_site(text, "site.toml");
    for (const InputError& error : result.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(result);
    return std::move(*result.value);
}

} // namespace

TEST_CASE("every table of the described format arrives where it belongs") {
    const Site site = read(described_site);
    CHECK(site.file == "site.toml");
    CHECK(site.settings.name == "Fernhollow terrace");
    CHECK(site.settings.catalogs == std::vector<std::string>{"stock.toml"});
    CHECK(site.settings.supply_band == 0.05);
    CHECK(site.settings.cable_allowance == 0.1);
    CHECK(site.settings.cable_cover == inches(6));
    CHECK(site.stock.cables == std::vector<std::string>{"14/2", "12/2", "10/2"});

    REQUIRE(site.circuits.size() == 2);
    CHECK(site.circuits[0].breaker == Amperes(20));
    CHECK(site.circuits[0].length == feet(60));
    CHECK(site.circuits[0].wiring == Wiring::direct_burial);
    CHECK(site.circuits[0].wet_cover);
    CHECK(site.circuits[0].outdoors);
    CHECK_FALSE(site.circuits[1].outdoors);
    CHECK_FALSE(site.circuits[1].volts);

    CHECK(site.pumps.at(0).circuit == "C1");
    CHECK(site.transformers.at(0).control == "photocell on, timer off");
    CHECK(site.runs.at(0).tap == Volts(13));
    CHECK(site.splices.at(0).at->x == feet(12).value());
    CHECK(site.splices.at(0).location.line == 58);

    REQUIRE(site.fixtures.size() == 2);
    CHECK(site.fixtures[0].aim.at->z == inches(6).value());
    CHECK(site.fixtures[0].in_water == true);
    CHECK(site.fixtures[0].lights == "upper");
    CHECK_FALSE(site.fixtures[1].from);
    CHECK(site.fixtures[1].aim.bearing == Degrees(-90));
    CHECK(site.fixtures[1].mounting == inches(-4));
    CHECK(site.fixtures[1].elevation == feet(2));
    CHECK_FALSE(site.fixtures[1].in_water);

    CHECK(site.links.at(0).a == "H1");
    CHECK(site.links.at(0).id == "H1 - falls-1");
    CHECK(site.areas.at(0).outline.size() == 4);
    CHECK(site.areas.at(0).level == feet(-0.5));
    CHECK(site.areas.at(1).height == feet(10));
    CHECK(site.sleeves.at(0).b == PlanPoint{feet(14).value(), feet(3).value()});
    CHECK(site.marks.at(0).id == "house corner");
    CHECK(site.walks.at(0).target == "P5");
    CHECK(site.falls.at(0).drop == inches(18));
    CHECK(site.falls.at(0).faces == Degrees(270));
    CHECK(site.viewpoints.at(0).looks_at == std::vector<std::string>{"upper"});
}

TEST_CASE("what is left out is open or has its default") {
    const Site site = read(
        "rillwatt = 1\nsite.name = \"x\"\n[[transformer]]\nid = \"T\"\n[[run]]\nid = \"A\"\nfrom = \"T\"\n"
        "[[fixture]]\nid = \"L\"\nmodel = \"m\"\nfrom = \"A\"\n[[viewpoint]]\nid = \"v\"\nat = [1, 1]\n");
    CHECK(site.settings.units == LengthUnit::feet);
    CHECK(site.settings.currency == "USD");
    CHECK(site.settings.conductor_temperature == Celsius(75));
    CHECK(site.settings.hours_per_night == Hours(5));
    CHECK(site.settings.code_edition == 2020);
    CHECK(site.settings.light_loss_factor_water == 0.65);
    CHECK_FALSE(site.stock.cables);
    CHECK_FALSE(site.transformers[0].model);
    CHECK_FALSE(site.runs[0].tap);
    CHECK_FALSE(site.runs[0].cable);
    CHECK_FALSE(site.fixtures[0].length);
    CHECK(site.viewpoints[0].eye == feet(5));
}

TEST_CASE("a bare length is in the site's units, also where the units are written last") {
    const char* text = "rillwatt = 1\n[[splice]]\nid = \"S\"\nfrom = \"A\"\nlength = 10\nat = [1, \"3 ft\"]\n"
                       "[[run]]\nid = \"A\"\nfrom = \"T\"\n[[transformer]]\nid = \"T\"\n[site]\nname = "
                       "\"x\"\nunits = \"m\"\n";
    const Site site = read(text);
    CHECK(site.splices[0].length == Metres(10));
    CHECK(site.splices[0].at == PlanPoint{1, feet(3).value()});
}
