// How few lights a walk gets, held against plain enumeration and against sets found by hand.
#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "walk_cases.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

PlacingProposal proposal_for(const Site& site, const Catalog& catalog) {
    LoadResult<PlacingProposal> result = propose_lights(site, catalog, nullptr, {}, {});
    REQUIRE(result);
    return std::move(*result.value);
}

/// Whether the command `light` finds nothing wrong with the walk.
bool lit_well(const WalkLight& light) { return light.meets && light.uniformity >= 0.2; }

WalkLight light_with(Site site, const Catalog& catalog, const std::vector<PlanPoint>& places) {
    for (const PlanPoint at : places)
        site.fixtures.push_back(light_at(fmt::format("L{}", site.fixtures.size()), "lamp", at.x, at.y));
    return compute_light(site, catalog, nullptr, {}).value->walks[0];
}

std::vector<PlanPoint> places_of(const PlacingProposal& proposal) {
    std::vector<PlanPoint> places;
    for (const ProposedLight& light : proposal.lights)
        places.push_back(*light.fixture.at);
    return places;
}

} // namespace

TEST_CASE("a walk of 12 by 3 m gets no more lights than eight in pairs, which do") {
    const WalkCase c{"", HatDistribution{Degrees(10), Degrees(80)}, 300, 12, 3, "P5"};
    const Catalog catalog = catalog_of({type_of(c)});
    const Site site = site_of(c);
    std::vector<PlanPoint> pairs;
    for (const double x : {1.5, 4.5, 7.5, 10.5})
        for (const double y : {-1.7, 1.7})
            pairs.push_back({x, y});
    REQUIRE(lit_well(light_with(site, catalog, pairs)));
    const PlacingProposal proposal = proposal_for(site, catalog);
    CHECK(proposal.lights.size() <= 8);
    CHECK(lit_well(light_with(site, catalog, places_of(proposal))));
    REQUIRE(proposal.numbers.size() == 1);
    CHECK(proposal.numbers[0].lights == proposal.lights.size());
    CHECK(proposal.numbers[0].lower_bound >= 5);
    CHECK(proposal.numbers[0].lower_bound <= proposal.lights.size());
}

TEST_CASE("short walks get the fewest lights that enumeration finds") {
    for (const WalkCase& c : short_walks()) {
        CAPTURE(c.name);
        const Catalog catalog = catalog_of({type_of(c)});
        const PlacingProposal proposal = proposal_for(site_of(c), catalog);
        REQUIRE(proposal.numbers.size() == 1);
        CHECK(lit_well(light_with(site_of(c), catalog, places_of(proposal))));
        CHECK(proposal.lights.size() == Enumeration(c).fewest(4));
        const bool all_tried = !std::holds_alternative<BeamDistribution>(c.distribution); // a beam has no end
        if (all_tried) CHECK(proposal.numbers[0].lower_bound == proposal.lights.size());
    }
}

TEST_CASE("the number of lights on a long walk grows with its length") {
    WalkCase c{"", BatwingDistribution{Degrees(76)}, 200, 60, 1.2, "P4"};
    const Catalog catalog = catalog_of({type_of(c)});
    const std::size_t sixty = proposal_for(site_of(c), catalog).lights.size();
    c.length = 240;
    const PlacingProposal proposal = proposal_for(site_of(c), catalog);
    CHECK(proposal.lights.size() <= 4 * sixty);
    CHECK(lit_well(light_with(site_of(c), catalog, places_of(proposal))));
    CHECK(3 * proposal.numbers[0].lower_bound >= 2 * proposal.lights.size());
}

TEST_CASE("lights for a walk by a pond keep 10 ft from the water") {
    const WalkCase c{"", BatwingDistribution{Degrees(76)}, 200, 6, 1.2, "P5"};
    const Catalog catalog = catalog_of({type_of(c)});
    Site site = site_of(c);
    site.areas.push_back(area_of("pond", AreaKind::water, -5, 3.4, 11, 9)); // 2.8 m from the near edge
    const PlacingProposal proposal = proposal_for(site, catalog);
    REQUIRE_FALSE(proposal.lights.empty());
    for (const PlanPoint at : places_of(proposal))
        CHECK(3.4 - at.y >= 3.048); // NEC 2020 411.5(B): 10 ft
}

TEST_CASE("where all ground is near water, only a supply listed for it gets lights") {
    const WalkCase c{"", BatwingDistribution{Degrees(76)}, 200, 6, 1.2, "P5"};
    Catalog catalog = catalog_of({type_of(c)});
    catalog.transformers["dry"].id = "dry";
    catalog.transformers["listed"].id = "listed";
    catalog.transformers["listed"].water_listed = true;
    Site site = site_of(c);
    site.areas.push_back(area_of("pond", AreaKind::water, -5, 1.6, 11, 9));
    site.transformers.resize(1);
    site.transformers[0].id = "T";
    site.transformers[0].model = "dry";
    const PlacingProposal refused = proposal_for(site, catalog);
    CHECK(refused.lights.empty());
    REQUIRE(refused.unmet.size() == 1);
    CHECK(refused.unmet[0].reason.find("from water") != std::string::npos);
    site.transformers[0].model = "listed";
    const PlacingProposal taken = proposal_for(site, catalog);
    CHECK_FALSE(taken.lights.empty());
    REQUIRE(taken.reasons.size() == 1);
    CHECK(taken.reasons[0].find("listed for water") != std::string::npos);
}

TEST_CASE("walks side by side do not spoil each other's light") {
    const WalkCase c{"", HatDistribution{Degrees(10), Degrees(80)}, 300, 6, 1.2, "P5"};
    const Catalog catalog = catalog_of({type_of(c)});
    Site site = site_of(c);
    site.walks.push_back(walk_of("other", {{0, 2.2}, {6, 2.2}}, 1.2));
    site.walks[1].target = "P5";
    const PlacingProposal proposal = proposal_for(site, catalog);
    for (const ProposedLight& light : proposal.lights)
        site.fixtures.push_back(light.fixture);
    const LightResult lit = *compute_light(site, catalog, nullptr, {}).value;
    for (const WalkLight& light : lit.walks)
        CHECK(lit_well(light));
    const Site alone = site_of(c);
    CHECK(proposal.lights.size() < 2 * proposal_for(alone, catalog).lights.size());
}

TEST_CASE("a walk that the light of another leaves patchy is named first") {
    const WalkCase c{"", HatDistribution{Degrees(10), Degrees(80)}, 300, 6, 1.2, "P6"};
    const Catalog catalog = catalog_of({type_of(c)});
    Site site = site_of(c);
    site.walks.push_back(walk_of("brighter", {{0, 1.7}, {6, 1.7}}, 1.2));
    site.walks[1].target = "P1";
    const PlacingProposal proposal = proposal_for(site, catalog);
    for (const ProposedLight& light : proposal.lights)
        site.fixtures.push_back(light.fixture);
    std::string patchy;
    const LightResult lit = *compute_light(site, catalog, nullptr, {}).value;
    for (const WalkLight& light : lit.walks) {
        CHECK(light.meets);
        if (!lit_well(light)) patchy = site.walks[light.walk].id;
    }
    if (!patchy.empty()) CHECK(proposal.reasons.at(0).find(patchy + " is patchy") == 0);
}

TEST_CASE("a bend gets its light from the outside corner too") {
    const WalkCase c{"", BatwingDistribution{Degrees(74)}, 200, 4, 1.2, "P5"};
    const Catalog catalog = catalog_of({type_of(c)});
    Site site = site_of(c);
    site.walks[0].line = {{0, 0}, {4, 0}, {4, 4}};
    const PlacingProposal proposal = proposal_for(site, catalog);
    CHECK(lit_well(light_with(site, catalog, places_of(proposal))));
    CHECK(proposal.lights.size() <= 4);
}

TEST_CASE("lights that a check finds too cool are offered only where they are asked for") {
    const WalkCase c{"", BatwingDistribution{Degrees(76)}, 150, 8, 1.2, "P5"};
    FixtureType warm = type_of(c);
    warm.colour_temperature = 2700;
    FixtureType cool = type_of(c);
    cool.id = "cool";
    cool.colour_temperature = 4000; // over 3000 K: rule warm-colour
    cool.price = Money(5);
    const Catalog catalog = catalog_of({warm, cool});
    for (const ProposedLight& light : proposal_for(site_of(c), catalog).lights)
        CHECK(light.fixture.model == "lamp");
    const LoadResult<PlacingProposal> asked = propose_lights(
        site_of(c), catalog, nullptr, {}, {.models = {"cool"}, .kinds = {}, .cheapest = false});
    CHECK(asked.value->lights.at(0).fixture.model == "cool");
}

TEST_CASE("dry lights for falls stand near water only on a supply that is listed for it") {
    Site site;
    site.settings.units = LengthUnit::metres;
    site.falls.push_back(falls_of("spill", {0, 0}, {0.8, 0}, 0.5));
    site.areas.push_back(area_of("pond", AreaKind::water, -3, -5, 3, -2.5));
    Catalog catalog =
        catalog_of({light_type("spot", FixtureKind::accent, BeamDistribution{Degrees(36)}, 230)});
    catalog.fixtures["spot"].price = Money(50);
    catalog.transformers["dry"].id = "dry";
    CHECK(proposal_for(site, catalog).reasons.at(0).find("listed for water") != std::string::npos);
    site.transformers.resize(1);
    site.transformers[0].model = "dry";
    const PlacingProposal refused = proposal_for(site, catalog);
    CHECK(refused.lights.empty());
    CHECK(refused.unmet.at(0).reason.find("from water") != std::string::npos);
}
