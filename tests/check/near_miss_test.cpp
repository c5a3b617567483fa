// Values just inside, at and just outside a limit. The limits are inclusive: at the limit a site keeps the
// rule.

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/check/assessment.hpp"
#include "rillwatt/limits/limits.hpp"
#include "rillwatt/site/read_site.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

namespace rillwatt {

namespace {

/// A catalog made for the purpose: a lamp of a plain resistance, a cable of 1 ohm per 100 m each way, no
/// regulation.
std::string catalog_text(double window_low, double window_high, double ampacity, double limit_amps,
                         double va) {
    return fmt::format(R"(rillwatt_catalog = 1
source = "made for this test"
[conductor_table.t]
source = "made for this test"
reference_temperature = "75 C"
temperature_coefficient = 0
unit = "ohm/km"
sizes = {{ "12 AWG" = 10 }}
[cable.c]
table = "t"
size = "12 AWG"
ampacity = {}
direct_burial = true
[fixture.lamp]
kind = "path"
rated_volts = 12
window = [{}, {}]
watts = 12
load = "constant-current"
rating = "wet"
[transformer.t]
va = {}
taps = [12]
secondary_limit_amps = {}
)",
                       ampacity, window_low, window_high, va, limit_amps);
}

// T ---- 100 m of 10 ohm/km: 2 ohm out and back ---- lamp that draws 1 A: 10 V at the lamp, exactly
const char* const site_text = R"(rillwatt = 1
[site]
name = "near misses"
units = "m"
supply_band_percent = 0
[[transformer]]
id = "T"
model = "t"
[[run]]
id = "A"
from = "T"
tap = 12
cable = "c"
[[fixture]]
id = "lamp"
model = "lamp"
from = "A"
length = 100
)";

std::vector<Finding> findings_of(const std::string& rule, const std::string& catalog,
                                 const std::string& text) {
    LoadResult<Catalog> read = read_catalog(catalog, "catalog.toml");
    for (const InputError& error : read.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(read);
    REQUIRE(check_catalog(*read.value).empty());
    LoadResult<Site> site = read_site(text, "site.toml");
    for (const InputError& error : site.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(site);
    const LoadResult<Assessment> result = assess(std::make_shared<const Site>(std::move(*site.value)),
                                                 std::make_shared<const Catalog>(std::move(*read.value)));
    REQUIRE(result);
    std::vector<Finding> found;
    for (const Finding& finding : result.value->findings)
        if (finding.rule == rule) found.push_back(finding);
    return found;
}

/// Severity of a rule's first finding, empty when it keeps quiet.
std::string verdict(const std::string& rule, const std::string& catalog) {
    const std::vector<Finding> found = findings_of(rule, catalog, site_text);
    return found.empty() ? std::string() : severity_name(found.front().severity);
}

struct Row {
    double limit;
    const char* expected;
};

} // namespace

TEST_CASE("a lamp at 10 V against the low end of its window") {
    for (const Row& row : {Row{9.99, ""}, Row{10.0, ""}, Row{10.01, "error"}}) {
        INFO(row.limit);
        CHECK(verdict("lamp-undervoltage", catalog_text(row.limit, 15, 20, 25, 300)) == row.expected);
    }
}

TEST_CASE("a lamp at 10 V loaded and 12 V unloaded against the high end of its window") {
    for (const Row& row :
         {Row{12.01, ""}, Row{12.0, ""}, Row{11.99, "warning"}, Row{10.0, "warning"}, Row{9.99, "error"}}) {
        INFO(row.limit);
        CHECK(verdict("lamp-overvoltage", catalog_text(9, row.limit, 20, 25, 300)) == row.expected);
    }
}

TEST_CASE("a cable that carries 1 A against its ampacity") {
    for (const Row& row : {Row{1.01, ""}, Row{1.0, ""}, Row{0.99, "error"}}) {
        INFO(row.limit);
        CHECK(verdict("cable-overloaded", catalog_text(9, 15, row.limit, 25, 300)) == row.expected);
    }
}

TEST_CASE("a run that draws 1 A against the limit of one output") {
    for (const Row& row : {Row{1.01, ""}, Row{1.0, ""}, Row{0.99, "error"}}) {
        INFO(row.limit);
        CHECK(verdict("secondary-overloaded", catalog_text(9, 15, 20, row.limit, 300)) == row.expected);
    }
}

TEST_CASE("a run that a joined tap drives backwards counts against the limit of its output too") {
    // 2 V more on B, over 15 m of 10 ohm/km out and back, 0.3 ohm: some 6.7 A round the ring, the lamp's 1 A
    // aside
    const std::string ring = std::string(site_text, std::string(site_text).find("[[fixture]]")) + R"([[run]]
id = "B"
from = "T"
tap = 14
cable = "c"
[[fixture]]
id = "lamp"
model = "lamp"
from = "A"
length = 5
[[splice]]
id = "hub"
from = "B"
length = 5
[[link]]
between = ["lamp", "hub"]
length = 5
cable = "c"
)";
    std::string catalog = catalog_text(9, 15, 20, 5, 300);
    catalog.replace(catalog.find("[12]"), 4, "[12, 14]");
    std::vector<std::string> runs;
    for (const Finding& finding : findings_of("secondary-overloaded", catalog, ring))
        runs.push_back(finding.part);
    CHECK(runs == std::vector<std::string>{"A", "B"});
}

TEST_CASE("a transformer that carries 12 VA against its rating and the margin of 80 %") {
    for (const Row& row : {Row{12.01, ""}, Row{12.0, ""}, Row{11.99, "error"}}) {
        INFO(row.limit);
        CHECK(verdict("transformer-overloaded", catalog_text(9, 15, 20, 25, row.limit)) == row.expected);
    }
    // 12 VA / 0.8 = 15 VA
    for (const Row& row :
         {Row{15.01, ""}, Row{15.0, ""}, Row{14.99, "warning"}, Row{12.0, "warning"}, Row{11.99, ""}}) {
        INFO(row.limit);
        CHECK(verdict("transformer-margin", catalog_text(9, 15, 20, 25, row.limit)) == row.expected);
    }
}

TEST_CASE("rounding in the last digits does not break a limit, a real breach does") {
    CHECK_FALSE(below(Volts(9.0 - 1e-10), Volts(9)));
    CHECK(below(Volts(9.0 - 1e-6), Volts(9)));
    CHECK_FALSE(above(Amperes(20 + 1e-10), Amperes(20)));
    CHECK(above(Amperes(20 + 1e-6), Amperes(20)));
}

} // namespace rillwatt
