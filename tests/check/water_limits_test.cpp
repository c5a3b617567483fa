#include <catch2/catch.hpp>

#include "check/mains_bench.hpp"

using namespace rillwatt;
using samples::MainsBench;

namespace {

MainsBench light_in_pond(const char* transformer, double tap) {
    MainsBench bench;
    bench.site.transformers[0].model = transformer;
    bench.site.runs[0].tap = Volts(tap);
    bench.light().model = "submersible";
    bench.light().at = MainsBench::at(41, 10);
    return bench;
}

} // namespace

TEST_CASE("lights keep 10 ft from water unless their supply is listed for it") {
    struct Row {
        double x_feet;
        const char* verdict;
    };
    // NFPA 70 (2017, 2020) 411.5(B): not less than 10 ft; the pond begins at x = 40 ft.
    const auto row = GENERATE(Row{29.9, "silent"}, Row{30, "silent"}, Row{30.1, "warning"});
    CAPTURE(row.x_feet);
    MainsBench bench;
    bench.light().at = MainsBench::at(row.x_feet, 10);
    CHECK(bench.verdict("near-water") == row.verdict);
    bench.site.transformers[0].model = "pool";
    CHECK(bench.verdict("near-water") == "silent");
}

TEST_CASE("a listed supply does not help a light near water on a tap above 15 V") {
    MainsBench bench;
    bench.site.transformers[0].model = "pool";
    bench.light().at = MainsBench::at(35, 10);
    bench.site.runs[0].tap = Volts(15);
    CHECK(bench.verdict("near-water") == "silent");
    bench.site.runs[0].tap = Volts(16);
    CHECK(bench.verdict("near-water") == "warning");
}

TEST_CASE("a transformer keeps 10 ft from water unless it is listed for it") {
    struct Row {
        double x_feet;
        const char* verdict;
    };
    const auto row = GENERATE(Row{29.9, "silent"}, Row{30, "silent"}, Row{30.1, "warning"});
    CAPTURE(row.x_feet);
    MainsBench bench;
    bench.site.transformers[0].at = MainsBench::at(row.x_feet, 10);
    CHECK(bench.verdict("near-water") == row.verdict);
    if (std::string(row.verdict) == "warning") CHECK(bench.findings_of("near-water")[0].part == "T1");
    bench.site.transformers[0].model = "pool";
    CHECK(bench.verdict("near-water") == "silent");
}

TEST_CASE("what is not on the plan, or a plan without water, gives a note that says what to write") {
    MainsBench bench;
    bench.light().at.reset();
    CHECK(bench.verdict("near-water") == "note");
    MainsBench dry;
    dry.site.areas.clear();
    REQUIRE(dry.verdict("near-water") == "note");
    CHECK(dry.findings_of("near-water")[0].hint.find("water") != std::string::npos);
    dry.site.pumps.clear();
    CHECK(dry.verdict("near-water") == "silent"); // a garden without any water
}

TEST_CASE("a light in water hangs on at most 15 V") {
    struct Row {
        double tap;
        const char* verdict;
    };
    // NFPA 70 (2017, 2020) 411.1(2): 15 V AC; a tap of 15 V shows 15.75 V with a supply 5 % high.
    const auto row = GENERATE(Row{14, "silent"}, Row{15, "note"}, Row{16, "error"});
    CAPTURE(row.tap);
    CHECK(light_in_pond("pool", row.tap).verdict("wet-contact-voltage") == row.verdict);
    MainsBench dry;
    dry.site.runs[0].tap = Volts(row.tap);
    CHECK(dry.verdict("wet-contact-voltage") == "silent");
}

TEST_CASE("international basins allow 12 V, and one of them only with a strong supply is a note") {
    // IEC 60364-7-702, from memory: SELV 12 V AC.
    auto bench = light_in_pond("pool", 12);
    bench.site.settings.code = CodeFamily::iec;
    CHECK(bench.verdict("wet-contact-voltage") == "note");
    bench.site.runs[0].tap = Volts(14);
    CHECK(bench.verdict("wet-contact-voltage") == "error");
}

TEST_CASE("lights in water need a supply that is listed for it") {
    CHECK(light_in_pond("pool", 12).verdict("supply-not-listed-for-water") == "silent");
    const auto bench = light_in_pond("landscape", 12);
    REQUIRE(bench.verdict("supply-not-listed-for-water") == "error");
    CHECK(bench.findings_of("supply-not-listed-for-water")[0].part == "T1");
    auto open = light_in_pond("pool", 12);
    open.site.transformers[0].model.reset();
    CHECK(open.verdict("supply-not-listed-for-water") == "note");
}

TEST_CASE("only submersible lights stand in water, by the plan or as written") {
    MainsBench bench;
    bench.light().at = MainsBench::at(40, 10); // on the outline counts as inside
    CHECK(bench.verdict("fixture-not-submersible") == "error");
    bench.light().at = MainsBench::at(39.9, 10);
    CHECK(bench.verdict("fixture-not-submersible") == "silent");
    bench.light().in_water = true;
    CHECK(bench.verdict("fixture-not-submersible") == "error");
    bench.light().model = "submersible";
    CHECK(bench.verdict("fixture-not-submersible") == "silent");
}

TEST_CASE("a receptacle keeps 6 ft from water") {
    struct Row {
        double x_feet;
        const char* verdict;
    };
    // NFPA 70 680.22(A).
    const auto row = GENERATE(Row{33.9, "silent"}, Row{34, "silent"}, Row{34.1, "warning"});
    CAPTURE(row.x_feet);
    MainsBench bench;
    bench.c1().at = MainsBench::at(row.x_feet, 10);
    CHECK(bench.verdict("receptacle-near-water") == row.verdict);
    bench.c1().outlet = Outlet::hardwired;
    CHECK(bench.verdict("receptacle-near-water") == "silent");
}

TEST_CASE("at most 10 ft of cord lies in the water") {
    struct Row {
        double x_feet;
        const char* verdict;
    };
    // NFPA 70 680.51(E). A pond 30 ft square from (40, -5): the nearest edge is x - 40 away.
    const auto row = GENERATE(Row{49.9, "silent"}, Row{50, "silent"}, Row{50.1, "error"});
    CAPTURE(row.x_feet);
    MainsBench bench;
    bench.site.areas[0].outline = {MainsBench::at(40, -5), MainsBench::at(70, -5), MainsBench::at(70, 25),
                                   MainsBench::at(40, 25)};
    bench.site.pumps[0].at = MainsBench::at(row.x_feet, 10);
    CHECK(bench.verdict("cord-in-water") == row.verdict);
}

TEST_CASE("a cord that is short enough by the nearest edge but not straight to its outlet is a warning") {
    // The pump stands 4 ft from the pond's south edge and 15 ft from the west edge, where its outlet is.
    MainsBench bench;
    bench.site.pumps[0].at = MainsBench::at(55, 4);
    bench.c1().at = MainsBench::at(30, 4);
    CHECK(bench.verdict("cord-in-water") == "warning");
    bench.c1().at = MainsBench::at(55, -10);
    CHECK(bench.verdict("cord-in-water") == "silent");
}

TEST_CASE(
    "a pump that is not on the plan, or whose cord is not known, gives a note that says what to write") {
    MainsBench bench;
    bench.site.pumps[0].at.reset();
    REQUIRE(bench.verdict("cord-in-water") == "note");
    CHECK(bench.findings_of("cord-in-water")[0].hint.find("at = ") != std::string::npos);
    MainsBench unknown;
    unknown.pump_type().cord = Metres(0);
    REQUIRE(unknown.verdict("cord-too-short") == "note");
    CHECK(unknown.findings_of("cord-too-short")[0].hint.find("cord = ") != std::string::npos);
    unknown.pump_type().cord = feet(3);
    CHECK(unknown.verdict("cord-too-short") == "warning");
}

TEST_CASE("a distance is told in the units of the site") {
    MainsBench bench;
    bench.light().at = MainsBench::at(39, 10);
    CHECK(bench.findings_of("near-water")[0].message == "light is 1 ft from the water, nearer than 10 ft");
    bench.site.settings.units = LengthUnit::metres;
    CHECK(bench.findings_of("near-water")[0].message == "light is 0.3 m from the water, nearer than 3.05 m");
}

TEST_CASE("many lights on one unlisted supply are told by the first few and the number of the rest") {
    auto bench = light_in_pond("landscape", 12);
    const auto message = [&] { return bench.findings_of("supply-not-listed-for-water")[0].message; };
    CHECK(message().find("and light in water hangs on it") != std::string::npos);
    for (const char* id : {"b", "c", "d"}) {
        bench.site.fixtures.push_back(bench.light());
        bench.site.fixtures.back().id = id;
    }
    CHECK(message().find("and light, b, c and d in water hang on it") != std::string::npos);
    bench.site.fixtures.push_back(bench.light());
    bench.site.fixtures.back().id = "e";
    CHECK(message().find("and light, b, c and 2 more in water hang on it") != std::string::npos);
}

TEST_CASE("a cord reaches as far as it is long") {
    struct Row {
        double x_feet;
        const char* verdict;
    };
    // A cord of 20 ft from (45, 10).
    const auto row = GENERATE(Row{25.1, "silent"}, Row{25, "silent"}, Row{24.9, "warning"});
    CAPTURE(row.x_feet);
    MainsBench bench;
    bench.c1().at = MainsBench::at(row.x_feet, 10);
    CHECK(bench.verdict("cord-too-short") == row.verdict);
    bench.c1().outlet = Outlet::hardwired;
    CHECK(bench.verdict("cord-too-short") == "silent");
}

TEST_CASE("a receptacle in the middle of a pond is nearer than 6 ft to water, and stands in it") {
    MainsBench bench;
    bench.c1().at = MainsBench::at(50, 10); // 10 ft from every edge
    REQUIRE(bench.verdict("receptacle-near-water") == "warning");
    CHECK(bench.findings_of("receptacle-near-water")[0].message ==
          "the receptacle of C1 is 0 ft from the water, nearer than 6 ft");
    REQUIRE(bench.verdict("supply-in-water") == "error");
    CHECK(bench.findings_of("supply-in-water")[0].part == "C1");
}

TEST_CASE("an outlet that is said to be indoors stands in water all the same") {
    MainsBench bench;
    bench.c1().at = MainsBench::at(50, 10);
    bench.c1().outdoors = false;
    bench.c1().gfci = false;
    CHECK(bench.verdict("supply-in-water") == "error");
    CHECK(bench.verdict("receptacle-near-water") == "warning");
    CHECK(bench.verdict("receptacle-without-gfci") == "error"); // within 20 ft of the water: 680.58
}

TEST_CASE("near water a tap counts with its supply") {
    // 12 V on twice the primary volts: 24 V at the light; 16 V on 110 V: 14.67 V
    MainsBench bench;
    bench.site.transformers[0].model = "pool";
    bench.light().at = MainsBench::at(35, 10);
    bench.c2().volts = Volts(240);
    CHECK(bench.verdict("near-water") == "warning");
    bench.c2().volts = Volts(110);
    bench.site.runs[0].tap = Volts(16);
    CHECK(bench.verdict("near-water") == "silent");
}
