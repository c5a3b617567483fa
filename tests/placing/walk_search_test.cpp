// The search for the fewest lights from within: its bound against enumeration, its answers against a
// mixed-integer program.
#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "exact_search.hpp"
#include "lower_bound.hpp"
#include "sizing/milp.hpp"
#include "walk_cases.hpp"
#include "walk_search.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

/// All that a search on one walk needs.
struct Setting {
    explicit Setting(const WalkCase& c)
        : site(site_of(c)), catalog(catalog_of({type_of(c)})),
          bench(site, catalog, LightScene{}, *prepare_photometry(catalog, {"lamp"}, {}).value, options),
          ground(walk_points(site.walks[0])), places(bench, site.walks[0], WaterRule::keep_clear),
          need(need_of(walk_target(site.walks[0]))), base(ground.points.size(), 0.0),
          table(bench, places, ground, light_at("", "lamp", 0, 0), need) {}

    PlacingOptions options;
    Site site;
    Catalog catalog;
    Workbench bench;
    WalkGround ground;
    PlacesBeside places;
    WalkNeed need;
    std::vector<double> base;
    LightTable table;
};

void sum_line(std::string& text, const std::vector<double>& factors) {
    for (std::size_t j = 0; j < factors.size(); ++j)
        if (factors[j] > 0) text += fmt::format(" + {:.9g} x{}\n", factors[j], j);
}

/// Fewest lamps as a program in LP format: one binary for each place, one row for each point, one for the
/// mean and one for each point's share of it.
std::string program_of(const WalkCase& c) {
    const std::vector<std::vector<double>> lux = lux_from(all_places(c), c);
    const WalkTarget target = walk_target(site_of(c).walks[0]);
    const std::size_t points = lux[0].size();
    std::vector<double> mean(lux.size(), 0);
    for (std::size_t j = 0; j < lux.size(); ++j)
        mean[j] = spread_of(lux[j]).mean;
    std::string text = "Minimize\n obj:\n";
    sum_line(text, std::vector<double>(lux.size(), 1));
    text += "Subject To\n mean:\n";
    sum_line(text, mean);
    text += fmt::format(" - m = 0\n asked: m >= {}\n", target.mean->value());
    for (std::size_t i = 0; i < points; ++i) {
        std::vector<double> here(lux.size());
        for (std::size_t j = 0; j < lux.size(); ++j)
            here[j] = lux[j][i];
        text += fmt::format(" least{}:\n", i);
        sum_line(text, here);
        text += fmt::format(" >= {}\n share{}:\n", target.minimum->value(), i);
        sum_line(text, here);
        text += " - 0.2 m >= 0\n"; // EN 13201-2:2015 table 3: what the P classes imply
    }
    text += "Binary\n";
    for (std::size_t j = 0; j < lux.size(); ++j)
        text += fmt::format(" x{}\n", j);
    return text + "End\n";
}

} // namespace

TEST_CASE("the lower bound is never above the fewest lights that enumeration finds, and seldom far below") {
    std::size_t bounds = 0;
    std::size_t fewest = 0;
    for (const WalkCase& c : short_walks()) {
        CAPTURE(c.name);
        const Setting s(c);
        Effort effort{100'000'000};
        const std::size_t bound = fewest_possible(s.table, s.need, s.base, 100, effort);
        const std::size_t enumerated = Enumeration(c).fewest(4);
        CHECK(bound <= enumerated);
        CHECK(bound >= lights_for_mean(s.table, s.need, s.base));
        bounds += bound;
        fewest += enumerated;
    }
    CHECK(3 * bounds >= 2 * fewest);
}

TEST_CASE("the exhaustive search says of each number what enumeration says") {
    for (const WalkCase& c : short_walks()) {
        const Setting s(c);
        if (s.table.beyond_reach() > 0) continue; // what little a lamp gives there is left out
        const Enumeration enumeration(c);
        for (const std::size_t count : {1U, 2U}) {
            CAPTURE(c.name, count);
            Effort effort{1'000'000'000};
            std::vector<std::size_t> lamps;
            const Exhaustive answer = search_all(s.table, s.need, s.base, count, effort, lamps);
            CHECK((answer == Exhaustive::found) == enumeration.any(count));
            if (answer == Exhaustive::found) CHECK(lamps.size() == count);
        }
    }
}

TEST_CASE("lights that are not missed are taken away, the others moved") {
    const Setting s({"", HatDistribution{Degrees(10), Degrees(80)}, 300, 12, 3, "P5"});
    LightSum sum(s.table, s.need, s.base);
    std::vector<std::size_t> many;
    for (std::size_t place = 0; place < s.table.size(); place += 12)
        many.push_back(place);
    sum.put(many);
    REQUIRE(sum.met());
    Effort effort{100'000'000};
    take_away(sum, effort);
    CHECK(sum.met());
    CHECK(sum.lamps().size() <= 9); // of 32
}

TEST_CASE("a regular row that falls short is moved until it does") {
    const Setting s({"", HatDistribution{Degrees(10), Degrees(80)}, 300, 12, 3, "P5"});
    LightSum sum(s.table, s.need, s.base);
    std::size_t short_before = 0;
    std::size_t met_after = 0;
    for (const Pattern& pattern : all_patterns()) {
        sum.put(set_out(s.table, pattern, 8));
        short_before += sum.met() ? 0 : 1;
        Effort effort{20'000'000};
        const double before = sum.shortfall();
        met_after += move_until_met(sum, effort) ? 1 : 0;
        if (!sum.met()) CHECK(sum.shortfall() <= before);
    }
    CHECK(short_before > 0);
    CHECK(met_after > all_patterns().size() - short_before);
}

TEST_CASE("at a bend the mesh has places outside, as far from both of its stretches") {
    WalkCase c{"", HatDistribution{}, 100, 4, 1.2, "P5"};
    Setting s(c);
    s.site.walks[0].line = {{0, 0}, {4, 0}, {4, 4}};
    const PlacesBeside places(s.bench, s.site.walks[0], WaterRule::keep_clear);
    std::size_t at_tip = 0;
    for (const WalkSlot& slot : places.mesh())
        if (std::abs((slot.at.x - 4) + slot.at.y) < 1e-9 && slot.at.x > 4.7) ++at_tip;
    CHECK(at_tip == 4); // one for each set-back
}

TEST_CASE("walks of 10 to 15 m get as few lights as a mixed-integer program proves") {
    const WalkCase cases[] = {{"hats", HatDistribution{Degrees(10), Degrees(75)}, 140, 12, 1.2, "P4"},
                              {"even", BatwingDistribution{Degrees(78)}, 105, 15, 1.5, "P4"},
                              {"lawn", HatDistribution{Degrees(10), Degrees(78)}, 195, 11, 1.0, "P5"}};
    for (const WalkCase& c : cases) {
        CAPTURE(c.name);
        Setting s(c);
        WalkSearch search(s.table, s.need, s.base, 40);
        const std::optional<LampSet>& found = search.fewest();
        REQUIRE(found);
        const auto proven = solve_with_cbc(program_of(c), 120);
        if (!proven) continue; // not installed, or not within the time
        CHECK(static_cast<double>(found->lamps.size()) == Approx(proven->cost));
        CHECK(static_cast<double>(search.lower_bound()) <= proven->cost + 1e-6);
    }
}
