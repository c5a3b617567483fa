#include "rillwatt/document/document_edit.hpp"
#include "rillwatt/layout/places.hpp"
#include "rillwatt/light/falls_light.hpp"
#include "rillwatt/light/walk_light.hpp"
#include "rillwatt/placing/propose_lights.hpp"
#include "rillwatt/site/read_site.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "light/gardens.hpp"
#include <set>

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

FixtureType priced(FixtureType type, double price) {
    type.price = Money(price);
    type.rating = type.kind == FixtureKind::submersible ? WaterRating::submersible : WaterRating::wet;
    return type;
}

Catalog stock() {
    return catalog_of(
        {priced(light_type("hat", FixtureKind::path, HatDistribution{}, 120), 55),
         priced(light_type("even", FixtureKind::path, BatwingDistribution{Degrees(76)}, 130), 65),
         priced(light_type("sub", FixtureKind::submersible, BeamDistribution{Degrees(40)}, 210), 48),
         priced(light_type("sub wide", FixtureKind::submersible, BeamDistribution{Degrees(60)}, 380), 66),
         priced(light_type("spot", FixtureKind::accent, BeamDistribution{Degrees(36)}, 230), 49)});
}

Site metric_site() {
    Site site;
    site.settings.units = LengthUnit::metres;
    return site;
}

Walk p4_walk(std::vector<PlanPoint> line) {
    Walk walk = walk_of("garden walk", std::move(line), 1.2);
    walk.target = "P4";
    return walk;
}

PlacingProposal proposal_for(const Site& site, const Catalog& catalog, const PlacingOptions& options = {}) {
    LoadResult<PlacingProposal> result = propose_lights(site, catalog, nullptr, {}, options);
    for (const InputError& error : result.errors)
        UNSCOPED_INFO(error.found);
    REQUIRE(result);
    return std::move(*result.value);
}

/// The site with the proposed lights in place, computed.
LightResult light_with(Site site, const Catalog& catalog, const PlacingProposal& proposal) {
    for (const ProposedLight& light : proposal.lights)
        site.fixtures.push_back(light.fixture);
    return *compute_light(site, catalog, nullptr, {}).value;
}

} // namespace

TEST_CASE("a dark walk gets lights beside it that meet its class") {
    Site site = metric_site();
    site.walks.push_back(p4_walk({{0, 0}, {9, 0}, {12, 4}}));
    const PlacingProposal proposal = proposal_for(site, stock());
    CHECK(proposal.unmet.empty());
    REQUIRE(proposal.lights.size() >= 3);
    CHECK(proposal.lights.size() <= 8);
    const WalkLight light = light_with(site, stock(), proposal).walks[0];
    CHECK(light.meets);
    CHECK(light.uniformity >= 0.2);
    // No fewer can do: lumens times light loss over the area bound the mean from above.
    const double area = 14 * 1.2;
    CHECK(130 * 0.8 * static_cast<double>(proposal.lights.size()) / area >= 5);
    std::set<std::string> ids;
    for (const ProposedLight& proposed : proposal.lights) {
        const PlanPoint at = *proposed.fixture.at;
        const double off = distance_to_line({{0, 0}, {9, 0}, {12, 4}}, at);
        CHECK(off >= 0.6 + 0.1);
        CHECK(off <= 0.6 + 0.75);
        CHECK(ids.insert(proposed.fixture.id).second);
        CHECK(*proposed.fixture.lights == "garden walk");
        CHECK(proposed.why.find("garden walk") != std::string::npos);
        CHECK_FALSE(proposed.fixture.from);
    }
}

TEST_CASE("lights keep out of water, paving and buildings and off a viewer's seat") {
    Site site = metric_site();
    site.walks.push_back(p4_walk({{0, 0}, {8, 0}}));
    site.areas.push_back(area_of("pond", AreaKind::water, -1, 0.6, 4, 4));
    site.areas.push_back(area_of("terrace", AreaKind::paving, 4, -4, 9, -0.6));
    site.areas.push_back(area_of("shed", AreaKind::building, 5, 0.9, 9, 4, 2.5));
    site.viewpoints.push_back(viewpoint_of("bench", 2, -1, 1.2));
    const PlacingProposal proposal = proposal_for(site, stock());
    REQUIRE_FALSE(proposal.lights.empty());
    for (const ProposedLight& light : proposal.lights) {
        for (const Area& area : site.areas)
            CHECK_FALSE(covers(area, *light.fixture.at));
        CHECK(distance(*light.fixture.at, site.viewpoints[0].at).value() >= 1);
    }
    const LightResult light = light_with(site, stock(), proposal);
    CHECK(light.walks[0].meets);
    CHECK(light.viewpoints[0].glare.empty());
}

TEST_CASE("a walk with enough light gets none, one with too little gets only what is missing") {
    Site site = metric_site();
    site.walks.push_back(p4_walk({{0, 0}, {9, 0}}));
    const PlacingProposal all = proposal_for(site, stock());
    for (const ProposedLight& light : all.lights)
        site.fixtures.push_back(light.fixture);
    CHECK(proposal_for(site, stock()).lights.empty());
    site.fixtures.pop_back();
    const PlacingProposal rest = proposal_for(site, stock());
    CHECK(rest.lights.size() == 1);
    CHECK(light_with(site, stock(), rest).walks[0].meets);
    for (const ProposedLight& light : rest.lights)
        for (const Fixture& fixture : site.fixtures)
            CHECK(light.fixture.id != fixture.id);
}

TEST_CASE("walks without a class are lit to P5 when dark, P7 asks for nothing") {
    Site site = metric_site();
    site.walks.push_back(walk_of("w", {{0, 0}, {5, 0}}, 1));
    const LightResult light = light_with(site, stock(), proposal_for(site, stock()));
    CHECK(light.walks[0].mean.value() >= 3);
    CHECK(light.walks[0].minimum.value() >= 0.6);
    site.walks[0].target = "P7";
    CHECK(proposal_for(site, stock()).lights.empty());
}

TEST_CASE("falls over a basin get lights under water at their foot that light the face") {
    Site site = metric_site();
    site.areas.push_back(area_of("basin", AreaKind::water, -1, -3, 3, 0));
    site.areas[0].level = Metres(0.3);
    site.falls.push_back(falls_of("upper", {0, 0}, {1.8, 0}, 0.6, 0.3));
    site.falls[0].pool_depth = Metres(0.3);
    site.viewpoints.push_back(viewpoint_of("window", 1, -8, 1.6));
    const PlacingProposal proposal = proposal_for(site, stock());
    REQUIRE(proposal.lights.size() >= 2); // wider than 1 m: two at least
    for (const ProposedLight& light : proposal.lights) {
        const FixtureType type = stock().fixtures.at(light.fixture.model); // the catalog is a temporary
        CHECK(type.kind == FixtureKind::submersible);
        CHECK(water_at(site, *light.fixture.at) != nullptr);
        CHECK(light.fixture.mounting->value() < 0.3 - 0.04);
        CHECK(light.fixture.mounting->value() > 0.0);
        CHECK(light.fixture.at->y < 0); // in front of the sheet
    }
    const LightResult light = light_with(site, stock(), proposal);
    CHECK(light.falls[0].lit_share >= 0.8);
    CHECK(light.viewpoints[0].glare.empty());
}

TEST_CASE("falls without water drawn at their foot are lit by dry lights aimed at the face") {
    Site site = metric_site();
    site.falls.push_back(falls_of("spill", {0, 0}, {0.8, 0}, 0.5));
    const PlacingProposal proposal = proposal_for(site, stock());
    REQUIRE_FALSE(proposal.lights.empty());
    CHECK(proposal.lights[0].fixture.model == "spot");
    CHECK(proposal.lights[0].fixture.aim.at);
    CHECK(light_with(site, stock(), proposal).falls[0].lit_share >= 0.8);
}

TEST_CASE("what cannot be done is said, not forced") {
    Site site = metric_site();
    site.walks.push_back(p4_walk({{0, 0}, {9, 0}}));
    site.areas.push_back(area_of("lake", AreaKind::water, -9, -9, 20, 9)); // no dry ground anywhere near
    const PlacingProposal drowned = proposal_for(site, stock());
    CHECK(drowned.lights.empty());
    REQUIRE(drowned.unmet.size() == 1);
    CHECK(drowned.unmet[0].part == "garden walk");
    site.areas.clear();
    const PlacingProposal nothing_on_offer =
        proposal_for(site, stock(), {.models = {"sub"}, .kinds = {}, .cheapest = false});
    REQUIRE(nothing_on_offer.unmet.size() == 1);
    CHECK(nothing_on_offer.unmet[0].reason.find("no type on offer") != std::string::npos);
    CHECK_FALSE(
        propose_lights(site, stock(), nullptr, {}, {.models = {"hatt"}, .kinds = {}, .cheapest = false}));
}

TEST_CASE("cheapest may take more lights of a cheaper type, never more money") {
    Site site = metric_site();
    site.walks.push_back(p4_walk({{0, 0}, {12, 0}}));
    Catalog catalog = stock();
    catalog.fixtures["hat"].price = Money(10);
    const auto cost = [&](const PlacingProposal& proposal) {
        double sum = 0;
        for (const ProposedLight& light : proposal.lights)
            sum += catalog.fixtures.at(light.fixture.model).price->value();
        return sum;
    };
    const PlacingProposal fewest = proposal_for(site, catalog);
    const PlacingProposal cheapest =
        proposal_for(site, catalog, {.models = {}, .kinds = {}, .cheapest = true});
    CHECK(cost(cheapest) <= cost(fewest));
    CHECK(cheapest.lights.size() >= fewest.lights.size());
    CHECK(light_with(site, catalog, cheapest).walks[0].meets);
}

TEST_CASE("the text to paste reads back as the lights that were proposed") {
    for (const LengthUnit unit : {LengthUnit::metres, LengthUnit::feet}) {
        Site site = metric_site();
        site.settings.units = unit;
        site.walks.push_back(p4_walk({{0, 0}, {6, 1}}));
        site.walks[0].elevation = Metres(0.6096);
        site.falls.push_back(falls_of("spill", {0, 9}, {0.8, 9}, 0.5));
        const PlacingProposal proposal = proposal_for(site, stock());
        const std::string head =
            fmt::format("rillwatt = 1\n[site]\nname = \"n\"\nunits = \"{}\"\n"
                        "[[walk]]\nid = \"garden walk\"\nline = [[0, 0], [6, 1]]\nwidth = 1\n"
                        "[[falls]]\nid = \"spill\"\nlip = [[0, 9], [1, 9]]\ndrop = 0.5\n",
                        unit == LengthUnit::feet ? "ft" : "m");
        const LoadResult<Site> read = read_site(head + proposal_toml(proposal, site.settings), "site.toml");
        for (const InputError& error : read.errors)
            UNSCOPED_INFO(error.found << "; " << error.expected);
        REQUIRE(read);
        REQUIRE(read.value->fixtures.size() == proposal.lights.size());
        for (std::size_t i = 0; i < proposal.lights.size(); ++i) {
            const Fixture& wanted = proposal.lights[i].fixture;
            const Fixture& found = read.value->fixtures[i];
            CHECK(found.id == wanted.id);
            CHECK(found.model == wanted.model);
            CHECK(found.at->x == Approx(wanted.at->x).margin(1e-4));
            CHECK(found.at->y == Approx(wanted.at->y).margin(1e-4));
            CHECK(found.elevation.value_or(Metres(0)).value() ==
                  Approx(wanted.elevation.value_or(Metres(0)).value()).margin(1e-3));
            CHECK(found.aim.at.has_value() == wanted.aim.at.has_value());
        }
    }
}

TEST_CASE("ids of any spelling stay data in the text to paste") {
    Site site = metric_site();
    site.walks.push_back(p4_walk({{0, 0}, {3, 0}}));
    site.walks[0].id = "walk \"]\n[[fixture]]\nid = \"evil";
    const std::string toml = proposal_toml(proposal_for(site, stock()), site.settings);
    const LoadResult<Site> read = read_site("rillwatt = 1\n[site]\nname = \"n\"\n" + toml, "site.toml");
    std::size_t tables = 0;
    for (std::size_t at = toml.find("\n[[fixture]]"); at != std::string::npos;
         at = toml.find("\n[[fixture]]", at + 1))
        ++tables;
    CHECK(tables == proposal_for(site, stock()).lights.size());
    for (const InputError& error : read.errors) // the walk itself is not in this text
        CHECK(error.found.find("evil") != std::string::npos);
}
