// A choice that holds at nominal supply, and what it takes to hold on a weak one. The lamp draws 1 A at any
// voltage, so every figure follows by hand.

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/check/assessment.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/sizing/weak_supply.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

namespace {

std::shared_ptr<const Catalog> catalog_with(double low, double high, const char* taps) {
    const std::string text = fmt::format(R"(rillwatt_catalog = 1
source = "made for this test"
[conductor_table.t]
source = "made for this test"
reference_temperature = "75 C"
temperature_coefficient = 0
unit = "ohm/km"
sizes = {{ "14 AWG" = 10, "10 AWG" = 2.5 }}
[cable.thin]
table = "t"
size = "14 AWG"
ampacity = 15
direct_burial = true
price_per_metre = 1
[cable.thick]
table = "t"
size = "10 AWG"
ampacity = 30
direct_burial = true
price_per_metre = 3
[fixture.lamp]
kind = "path"
rated_volts = 12
window = [{}, {}]
watts = 12
load = "constant-current"
rating = "wet"
[transformer.t]
va = 60
taps = [{}]
price = 50
)",
                                         low, high, taps);
    LoadResult<Catalog> read = read_catalog(text, "catalog.toml");
    for (const InputError& error : read.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(read);
    REQUIRE(check_catalog(*read.value).empty());
    return std::make_shared<const Catalog>(std::move(*read.value));
}

std::shared_ptr<const Catalog> catalog_with_window(double low) { return catalog_with(low, 15, "12"); }

// T, 12 V ---- 100 m, out and back 2 ohm of thin or 0.5 ohm of thick cable ---- lamp, 1 A
//   thin:  10.0 V at nominal, 9.4 V on a supply 5 % low
//   thick: 11.5 V at nominal, 10.9 V
std::shared_ptr<const Site> site() {
    LoadResult<Site> read = read_site(R"(rillwatt = 1
[site]
name = "weak supply"
units = "m"
[[transformer]]
id = "T"
model = "t"
[[run]]
id = "A"
from = "T"
tap = 12
[[fixture]]
id = "lamp"
model = "lamp"
from = "A"
length = 100
)",
                                      "site.toml");
    REQUIRE(read);
    return std::make_shared<const Site>(std::move(*read.value));
}

// The same with taps open, and so many runs with a lamp each.
std::shared_ptr<const Site> open_site(int runs, bool water) {
    std::string text = "rillwatt = 1\n[site]\nname = \"open taps\"\nunits = \"m\"\n"
                       "[[transformer]]\nid = \"T\"\nmodel = \"t\"\n";
    for (int r = 1; r <= runs; ++r)
        text += fmt::format("[[run]]\nid = \"A{0}\"\nfrom = \"T\"\n[[fixture]]\nid = \"lamp-{0}\"\n"
                            "model = \"lamp\"\nfrom = \"A{0}\"\nlength = 100\nin_water = {1}\n",
                            r, water);
    LoadResult<Site> read = read_site(text, "site.toml");
    REQUIRE(read);
    return std::make_shared<const Site>(std::move(*read.value));
}

/// How many findings there are on the volts of a strong supply.
std::size_t findings_on_strong(const SizeResult& result, const std::shared_ptr<const Catalog>& catalog) {
    const LoadResult<Assessment> assessed = assess(result.sized, catalog);
    REQUIRE(assessed);
    const auto& findings = assessed.value->findings;
    return static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(), [](const Finding& finding) {
            return finding.message.find("supply is 5 % high") != std::string::npos;
        }));
}

std::string cable_of(const SizeResult& result) {
    return result.status == SizeStatus::infeasible ? "none" : result.sized->runs.front().cable.value_or("");
}

} // namespace

TEST_CASE("what is chosen for a weak supply is the cheapest that does on it") {
    struct Row {
        double low;
        const char* nominal;             ///< cable chosen for nominal supply alone
        std::optional<double> shortfall; ///< volts that its lamp then lacks on a weak supply
        const char* weak;                ///< cable chosen for a weak supply too
    };
    for (const Row& row : {Row{9.3, "thin", std::nullopt, "thin"}, Row{9.4, "thin", std::nullopt, "thin"},
                           Row{9.41, "thin", 0.01, "thick"}, Row{10.0, "thin", 0.6, "thick"},
                           Row{10.01, "thick", std::nullopt, "thick"},
                           Row{10.9, "thick", std::nullopt, "thick"}, Row{10.91, "thick", 0.01, "none"}}) {
        INFO(row.low);
        const auto catalog = catalog_with_window(row.low);
        const LoadResult<SizeResult> plain = size_site(site(), catalog, {});
        REQUIRE(plain);
        CHECK(cable_of(*plain.value) == row.nominal);
        const LoadResult<Assessment> assessed = assess(plain.value->sized, catalog);
        REQUIRE(assessed);
        const auto shortfall = weak_shortfall(assessed.value->solution, *plain.value->sized, *catalog);
        REQUIRE(shortfall.has_value() == row.shortfall.has_value());
        if (shortfall) CHECK(shortfall->value() == Approx(*row.shortfall));
        const LoadResult<SizeResult> weak = size_for_weak_supply(site(), catalog, {});
        REQUIRE(weak);
        CHECK(cable_of(*weak.value) == row.weak);
        if (weak.value->infeasible)
            CHECK(weak.value->infeasible->proven);
        else
            CHECK(weak.value->status == SizeStatus::optimal);
    }
}

// Supply 5 % low and high, every tap open. Thin cable loses 2 V, thick 0.5 V.
//   tap  12: at most 12.6  V; weak  9.4  thin, 10.9  thick
//   tap  13: at most 13.65 V; weak 10.35 thin, 11.85 thick
//   tap  14: at most 14.7  V; weak 11.3  thin, 12.8  thick
//   tap  15: at most 15.75 V; weak 12.25 thin, 13.75 thick
TEST_CASE("for a weak supply a tap that is too high on a strong one is the last resort") {
    struct Row {
        double low, high;
        bool water;
        const char* cable;
        double tap;
        const char* beyond; ///< end of what is said of a tap too high; empty: nothing
    };
    for (const Row& row :
         {Row{9.41, 13.65, false, "thin", 13, ""}, Row{9.41, 13.6, false, "thick", 12, ""},
          Row{9.4, 13.6, false, "thin", 12, ""}, Row{10.9, 12.6, false, "thick", 12, ""},
          Row{10.91, 13.6, false, "thin", 14, "above the most of lamp-1, 13.6 V"},
          Row{12.0, 16.0, false, "thin", 15, ""}, Row{12.0, 16.0, true, "thick", 14, ""},
          Row{12.81, 16.0, true, "thick", 15, "above the contact limit for its lights in water, 15 V"}}) {
        INFO(row.low << " to " << row.high << (row.water ? " in water" : ""));
        const auto catalog = catalog_with(row.low, row.high, "12, 13, 14, 15");
        const auto open = open_site(1, row.water);
        const LoadResult<SizeResult> sized = size_for_weak_supply(open, catalog, {});
        REQUIRE(sized);
        const SizeResult& result = *sized.value;
        CHECK(cable_of(result) == row.cable);
        REQUIRE(result.status == SizeStatus::optimal);
        CHECK(result.sized->runs.front().tap == Volts(row.tap));
        REQUIRE_FALSE(result.reasons.empty());
        CHECK((result.reasons.front().binds.find("on a supply 5 % high, above") != std::string::npos) ==
              (*row.beyond != 0));
        CHECK(result.reasons.front().binds.find(row.beyond) != std::string::npos);
        CHECK(findings_on_strong(result, catalog) == (*row.beyond == 0 ? 0U : 1U));
    }
}

TEST_CASE("one run that needs a tap too high does not free the others") {
    // lamp-1 takes 1 A and bears 13.6 V: 12 V and thick cable; lamp-2 needs 10.91 V on a weak supply: 13 V
    auto catalog = std::make_shared<Catalog>(*catalog_with(9.41, 13.6, "12, 13"));
    catalog->fixtures["needy"] = catalog->fixtures.at("lamp");
    catalog->fixtures["needy"].window_low = Volts(10.91);
    auto open = std::make_shared<Site>(*open_site(2, false));
    open->fixtures[1].model = "needy";
    const LoadResult<SizeResult> sized = size_for_weak_supply(open, catalog, {});
    REQUIRE(sized);
    const Site& site = *sized.value->sized;
    CHECK(site.runs[0].tap == Volts(12));
    CHECK(site.runs[0].cable == "thick");
    CHECK(site.runs[1].tap == Volts(13));
    CHECK(site.runs[1].cable == "thick");
    // without regard to a weak supply nothing is said of a strong one
    const LoadResult<SizeResult> plain = size_site(open, catalog, {});
    REQUIRE(plain);
    CHECK(plain.value->sized->runs[0].cable == "thin");
    for (const SizeReason& reason : plain.value->reasons)
        CHECK(reason.binds.find("high, above") == std::string::npos);
}

TEST_CASE("what nothing serves on a weak supply is explained by what there is on it") {
    const auto catalog = catalog_with(13.76, 16, "12, 13, 14, 15");
    const LoadResult<SizeResult> sized = size_for_weak_supply(open_site(1, true), catalog, {});
    REQUIRE(sized);
    REQUIRE(sized.value->infeasible);
    CHECK(sized.value->infeasible->best->value() ==
          Approx(13.75)); // thick cable on 15 V, the strong case lifted
    CHECK(sized.value->infeasible->needed == Volts(13.76));
    CHECK(sized.value->infeasible->proven);
    CHECK(sized.value->infeasible->reason.find("on a weak supply") != std::string::npos);
}

TEST_CASE("a margin asked for counts at the low end also where a weak supply takes less") {
    SizeOptions options;
    options.margin = Volts(1.2);
    const LoadResult<SizeResult> weak = size_for_weak_supply(site(), catalog_with_window(9.3), options);
    REQUIRE(weak);
    CHECK(cable_of(*weak.value) == "thick");
}

} // namespace rillwatt
