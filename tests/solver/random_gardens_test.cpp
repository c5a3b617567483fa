#include "rillwatt/solver/network.hpp"

#include <catch2/catch.hpp>

#include "support/random_garden.hpp"
#include <algorithm>
#include <cmath>
#include <map>

using namespace rillwatt;
using rillwatt::test::Garden;
using rillwatt::test::random_garden;

// Laws that hold on every circuit, tried on random ones of fixed seeds. They are computed here from the
// result alone, not with the solver's own check.

namespace {

constexpr unsigned seeds = 60;

test::RandomGardenSpec spec_of(unsigned seed) {
    return {.runs = static_cast<int>(seed % 4) + 1,
            .lamps = static_cast<int>(seed % 37) + 3,
            .links = seed % 5 == 0 ? 2 : 0,
            .regulation = 0.02 * (seed % 4),
            .load_share = 0.35};
}

/// Where each part sends its amperes and what volts it stands at, from the printed results.
struct PartBook {
    std::map<std::string, double> volts; ///< of splices too, walked from the run heads
    std::map<std::string, double> into;  ///< amperes in less amperes out
};

PartBook book_of(const Garden& garden, const CaseResult& result) {
    PartBook book;
    for (const RunResult& run : result.runs) {
        const std::string& id = garden.site.runs[run.run].id;
        book.volts[id] = run.volts.value();
        book.into[id] += run.amps.value();
    }
    for (const SegmentResult& segment : result.segments) {
        book.into[std::string(segment.from)] -= segment.amps.value();
        book.into[std::string(segment.to)] += segment.amps.value();
        if (segment.link.empty())
            book.volts[std::string(segment.to)] =
                book.volts.at(std::string(segment.from)) - segment.amps.value() * segment.ohms.value();
    }
    for (const LampResult& lamp : result.lamps)
        book.into[garden.site.fixtures[lamp.fixture].id] -= lamp.amps.value();
    return book;
}

double lead_ohms(const Garden& garden, const LampResult& lamp) {
    const FixtureType& type = garden.catalog.fixtures.at(garden.site.fixtures[lamp.fixture].model);
    if (type.lead.value() == 0) return 0;
    return 2 * type.lead.value() *
           garden.catalog.cables.at(type.lead_cable).resistance_at(Celsius(75)).value();
}

double draw(const FixtureType& type, double volts) {
    const double va = type.va.value();
    const double rated = type.rated_volts.value();
    switch (type.load) {
    case LoadModel::constant_power:
        return va / volts;
    case LoadModel::constant_current:
        return va / rated;
    case LoadModel::filament:
        return va / rated * std::pow(volts / rated, 0.55);
    case LoadModel::resistance:
        return va * volts / (rated * rated);
    }
    return 0;
}

} // namespace

TEST_CASE("Kirchhoff's laws hold at every part, in the nominal and the weak case") {
    for (unsigned seed = 0; seed < seeds; ++seed) {
        const Garden garden = random_garden(seed, spec_of(seed));
        const SiteSolution solution = garden.solve();
        for (const CaseResult* result : {&solution.nominal(), &solution.weak()}) {
            CAPTURE(seed, result->conditions.name);
            REQUIRE(result->solved);
            const PartBook book = book_of(garden, *result);
            double worst = 0;
            for (const auto& [part, amps] : book.into)
                worst = std::max(worst, std::abs(amps));
            CHECK(worst < 1e-9);
            worst = 0;
            for (const SegmentResult& segment : result->segments)
                worst = std::max(worst, std::abs(book.volts.at(std::string(segment.from)) -
                                                 book.volts.at(std::string(segment.to)) -
                                                 segment.amps.value() * segment.ohms.value()));
            for (const LampResult& lamp : result->lamps) {
                const Fixture& fixture = garden.site.fixtures[lamp.fixture];
                const double at_lamp = lamp.volts.value();
                const double splice = book.volts.at(fixture.id);
                worst = std::max(worst, std::abs(splice - lamp.splice_volts.value()));
                worst =
                    std::max(worst, std::abs(splice - lead_ohms(garden, lamp) * lamp.amps.value() - at_lamp));
                const double amps = draw(garden.catalog.fixtures.at(fixture.model), at_lamp);
                worst = std::max(worst, std::abs(amps - lamp.amps.value()));
            }
            CHECK(worst < 2e-9);
        }
    }
}

TEST_CASE("the run heads fall with the load of all runs of their transformer") {
    for (unsigned seed = 0; seed < seeds; ++seed) {
        CAPTURE(seed);
        const Garden garden = random_garden(seed, spec_of(seed));
        const CaseResult result = garden.solve().nominal();
        const double g = spec_of(seed).regulation;
        double pull = 0;
        for (const RunResult& run : result.runs)
            pull += run.tap.value() * run.amps.value();
        for (const RunResult& run : result.runs)
            CHECK(std::abs(run.volts.value() - run.tap.value() * (1 - g * pull / 300)) < 1e-9);
        CHECK(result.transformers.at(0).primary_amps.value() == Approx(pull / 120));
    }
}

TEST_CASE("the energy put in is what lamps, cables and winding take") {
    for (unsigned seed = 0; seed < seeds; ++seed) {
        CAPTURE(seed);
        const Garden garden = random_garden(seed, spec_of(seed));
        const SiteSolution solution = garden.solve();
        for (const CaseResult* result : {&solution.nominal(), &solution.weak()}) {
            const double supply = result->conditions.supply_factor;
            double source = 0;
            for (const RunResult& run : result->runs)
                source += run.tap.value() * supply * run.amps.value();
            double taken = result->cable_loss.value() + result->transformers.at(0).winding_loss.value();
            for (const LampResult& lamp : result->lamps)
                taken += lamp.va.value();
            CHECK(taken == Approx(source).epsilon(1e-10));
        }
    }
}

TEST_CASE("the order of parts in the file does not matter") {
    for (unsigned seed = 0; seed < seeds; ++seed) {
        CAPTURE(seed);
        const Garden garden = random_garden(seed, spec_of(seed));
        Garden shuffled = garden;
        std::mt19937 source(seed + 1000);
        std::shuffle(shuffled.site.fixtures.begin(), shuffled.site.fixtures.end(), source);
        std::shuffle(shuffled.site.splices.begin(), shuffled.site.splices.end(), source);
        std::reverse(shuffled.site.runs.begin(), shuffled.site.runs.end());
        int line = 0;
        for (Fixture& fixture : shuffled.site.fixtures)
            fixture.location.line = ++line;
        for (Splice& splice : shuffled.site.splices)
            splice.location.line = ++line;
        for (Run& run : shuffled.site.runs)
            run.location.line = ++line;
        const SiteSolution first = garden.solve();
        const SiteSolution second = shuffled.solve();
        double worst = 0;
        for (const Fixture& fixture : garden.site.fixtures)
            worst =
                std::max(worst, std::abs(test::lamp(garden, first.nominal(), fixture.id).volts.value() -
                                         test::lamp(shuffled, second.nominal(), fixture.id).volts.value()));
        CHECK(worst < 1e-9);
    }
}

//  T --A-- s0 -- s1 -- ... -- s7 -- lamp
TEST_CASE("a longer cable never raises the lamp of a run with a single load") {
    for (unsigned seed = 0; seed < seeds; ++seed) {
        CAPTURE(seed);
        std::mt19937 source(seed);
        const LoadModel models[] = {LoadModel::constant_power, LoadModel::constant_current,
                                    LoadModel::filament, LoadModel::resistance};
        Garden garden;
        garden.cable("c", 0.0065).lamp_type("l", {.load = models[seed % 4], .va = 40});
        garden.transformer("T", 100, 0.05, {13}).run("A", "T", 13, "c");
        std::string feed = "A";
        for (int k = 0; k < 8; ++k) {
            garden.splice("s" + std::to_string(k), feed, test::random_between(source, 0, 5));
            feed = "s" + std::to_string(k);
        }
        garden.fixture("f", feed, 3, "l");
        double volts = 1e9;
        for (int step = 0; step < 12; ++step) {
            const SiteSolution solution = garden.solve();
            if (!solution.nominal().solved) break;
            CHECK(solution.nominal().lamps.at(0).volts.value() < volts);
            volts = solution.nominal().lamps.at(0).volts.value();
            auto& splice = garden.site.splices[source() % 8];
            splice.length = *splice.length + Metres(test::random_between(source, 0.01, 3));
        }
        CHECK(volts < 13);
    }
}

TEST_CASE("a solve started from the volts of a smaller load ends where one from scratch does") {
    for (unsigned seed = 0; seed < seeds; ++seed) {
        CAPTURE(seed);
        Network network =
            make_network(random_garden(seed, spec_of(seed)).circuit(), {"", 1, Celsius(75), true});
        Workspace workspace;
        NetworkSolution solution;
        REQUIRE(solve(network, workspace, solution));
        for (double& power : network.power)
            power *= 1.2;
        for (double& current : network.current)
            current *= 1.1;
        REQUIRE(solve_from(network, workspace, solution));
        const NetworkSolution fresh = solve(network);
        double worst = 0;
        for (std::size_t i = 0; i < fresh.lamp_volts.size(); ++i)
            worst = std::max(worst, std::abs(fresh.lamp_volts[i] - solution.lamp_volts[i]));
        CHECK(worst < 1e-9);
    }
}

// Every lamp the same, evenly spread, 12 V: watts times feet to the last lamp at 10 % drop, for 12 AWG about
// 7500 at 20 C (common practice, no source). The end drop of a uniform load is half of that at its end.
TEST_CASE("the trade's watt-feet constant of 12 AWG comes out near 7500") {
    constexpr double feet = 100;
    constexpr int lamps = 20;
    Garden garden;
    garden.cable("12/2", 1.588e-3 / 0.3048); // NBS Handbook 100, 12 AWG at 20 C, ohm per 1000 ft
    garden.lamp_type("l", {.load = LoadModel::constant_current, .va = 7500 / feet / lamps});
    garden.ideal_transformer("T").run("A", "T", 12, "12/2");
    for (int k = 0; k < lamps; ++k)
        garden.fixture("f" + std::to_string(k), k == 0 ? "A" : "f" + std::to_string(k - 1),
                       feet / lamps * 0.3048, "l");
    const double drop = garden.solve().nominal().lamps.back().drop_ratio;
    CHECK(drop > 0.075);
    CHECK(drop < 0.10);
}
