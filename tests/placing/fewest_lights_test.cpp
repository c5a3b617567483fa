// How few lights a walk gets, held against plain enumeration and against sets found by hand.
#include "rillwatt/light/walk_light.hpp"
#include "rillwatt/placing/propose_lights.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "light/gardens.hpp"
#include <functional>

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

/// A type on offer for a walk, and the walk.
struct Case {
    const char* name;
    DistributionSpec distribution;
    double lumens;
    double length;
    double width;
    const char* target;
};

FixtureType type_of(const Case& c) {
    FixtureType type = light_type("lamp", FixtureKind::path, c.distribution, c.lumens);
    type.price = Money(50);
    type.rating = WaterRating::wet;
    return type;
}

Site site_of(const Case& c) {
    Site site;
    site.settings.units = LengthUnit::metres;
    site.walks.push_back(walk_of("walk", {{0, 0}, {c.length, 0}}, c.width));
    site.walks[0].target = c.target;
    return site;
}

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

/// Places on both sides of a straight walk along x, at the set-backs and stations that the proposal may use.
std::vector<PlanPoint> all_places(const Case& c) {
    std::vector<PlanPoint> places;
    const auto taped = [](double metres) { return std::round(metres / 0.02) * 0.02; };
    for (int k = 0; 0.125 * k <= c.length; ++k)
        for (const double back : {0.2, 0.35, 0.5, 0.7})
            for (const int side : {1, -1})
                places.push_back({taped(0.125 * k), taped(side * (c.width / 2 + back))});
    return places;
}

/// Every set of so many places is added up; whether one lights the walk well.
class Enumeration {
  public:
    Enumeration(const Case& c, const Site& site, const Catalog& catalog) {
        const LightScene scene;
        const auto photometry = *prepare_photometry(catalog, {"lamp"}, {}).value;
        for (const PlanPoint at : all_places(c)) {
            LitPoints lit;
            lit.points = walk_points(site.walks[0]);
            const Fixture fixture = light_at("L", "lamp", at.x, at.y);
            add_light(
                *place_light(site, fixture, catalog.fixtures.at("lamp"), photometry.types.at("lamp"), 1),
                scene.obstacles, lit);
            lux_.push_back(lit.lux);
        }
        need_ = walk_target(site.walks[0]);
    }

    bool any(std::size_t count) const { return any(count, 0, std::vector<double>(lux_[0].size(), 0)); }

  private:
    bool any(std::size_t left, std::size_t first, const std::vector<double>& sum) const {
        if (left == 0) {
            const LuxSpread spread = spread_of(sum);
            return spread.mean >= need_.mean->value() && spread.least >= need_.minimum->value() &&
                   spread.least >= 0.2 * spread.mean;
        }
        for (std::size_t i = first; i + left <= lux_.size(); ++i) {
            std::vector<double> more = sum;
            for (std::size_t k = 0; k < more.size(); ++k)
                more[k] += lux_[i][k];
            if (any(left - 1, i + 1, more)) return true;
        }
        return false;
    }

    std::vector<std::vector<double>> lux_;
    WalkTarget need_;
};

} // namespace

TEST_CASE("a walk of 12 by 3 m gets no more lights than eight in pairs, which do") {
    const Case c{"", HatDistribution{Degrees(10), Degrees(80)}, 300, 12, 3, "P5"};
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
    const HatDistribution hat{Degrees(10), Degrees(75)};
    const Case cases[] = {{"narrow", hat, 150, 3, 0.9, "P5"},
                          {"hats", hat, 140, 4, 1.2, "P4"},
                          {"wide", HatDistribution{Degrees(10), Degrees(80)}, 300, 3, 2.4, "P5"},
                          {"even", BatwingDistribution{Degrees(72)}, 130, 4.5, 1.0, "P5"},
                          {"bright", BatwingDistribution{Degrees(78)}, 105, 5, 1.2, "P3"},
                          {"beam", BeamDistribution{Degrees(120)}, 200, 3, 1.0, "P4"}};
    for (const Case& c : cases) {
        CAPTURE(c.name);
        const Catalog catalog = catalog_of({type_of(c)});
        const Site site = site_of(c);
        const PlacingProposal proposal = proposal_for(site, catalog);
        REQUIRE(proposal.numbers.size() == 1);
        CHECK(lit_well(light_with(site, catalog, places_of(proposal))));
        const Enumeration enumeration(c, site, catalog);
        std::size_t fewest = 1;
        while (fewest < proposal.lights.size() && fewest < 4 && !enumeration.any(fewest))
            ++fewest;
        CHECK(proposal.lights.size() == fewest);
        CHECK(proposal.numbers[0].lower_bound <= fewest);
    }
}

TEST_CASE("the number of lights on a long walk grows with its length") {
    Case c{"", BatwingDistribution{Degrees(76)}, 200, 60, 1.2, "P4"};
    const Catalog catalog = catalog_of({type_of(c)});
    const std::size_t sixty = proposal_for(site_of(c), catalog).lights.size();
    c.length = 240;
    const PlacingProposal proposal = proposal_for(site_of(c), catalog);
    CHECK(proposal.lights.size() <= 4 * sixty);
    CHECK(lit_well(light_with(site_of(c), catalog, places_of(proposal))));
    CHECK(3 * proposal.numbers[0].lower_bound >= 2 * proposal.lights.size());
}

TEST_CASE("lights for a walk by a pond keep 10 ft from the water") {
    const Case c{"", BatwingDistribution{Degrees(76)}, 200, 6, 1.2, "P5"};
    const Catalog catalog = catalog_of({type_of(c)});
    Site site = site_of(c);
    site.areas.push_back(area_of("pond", AreaKind::water, -5, 3.4, 11, 9)); // 2.8 m from the near edge
    const PlacingProposal proposal = proposal_for(site, catalog);
    REQUIRE_FALSE(proposal.lights.empty());
    for (const PlanPoint at : places_of(proposal))
        CHECK(3.4 - at.y >= 3.048); // NEC 2020 411.5(B): 10 ft
}

TEST_CASE("where all ground is near water, only a supply listed for it gets lights") {
    const Case c{"", BatwingDistribution{Degrees(76)}, 200, 6, 1.2, "P5"};
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
    const Case c{"", HatDistribution{Degrees(10), Degrees(80)}, 300, 6, 1.2, "P5"};
    const Catalog catalog = catalog_of({type_of(c)});
    Site site = site_of(c);
    site.walks.push_back(walk_of("other", {{0, 2.2}, {6, 2.2}}, 1.2));
    site.walks[1].target = "P5";
    const PlacingProposal proposal = proposal_for(site, catalog);
    for (const ProposedLight& light : proposal.lights)
        site.fixtures.push_back(light.fixture);
    for (const WalkLight& light : compute_light(site, catalog, nullptr, {}).value->walks)
        CHECK(lit_well(light));
    const Site alone = site_of(c);
    CHECK(proposal.lights.size() < 2 * proposal_for(alone, catalog).lights.size());
}

TEST_CASE("a bend gets its light from the outside corner too") {
    const Case c{"", BatwingDistribution{Degrees(74)}, 200, 4, 1.2, "P5"};
    const Catalog catalog = catalog_of({type_of(c)});
    Site site = site_of(c);
    site.walks[0].line = {{0, 0}, {4, 0}, {4, 4}};
    const PlacingProposal proposal = proposal_for(site, catalog);
    CHECK(lit_well(light_with(site, catalog, places_of(proposal))));
    CHECK(proposal.lights.size() <= 4);
}
