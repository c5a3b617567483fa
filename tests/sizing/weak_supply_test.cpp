// A choice that holds at nominal supply, and what it takes to hold on a weak one. The lamp draws 1 A at any
// voltage, so every figure follows by hand.

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/check/assessment.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/sizing/weak_supply.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

namespace rillwatt {

namespace {

std::shared_ptr<const Catalog> catalog_with_window(double low) {
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
window = [{}, 15]
watts = 12
load = "constant-current"
rating = "wet"
[transformer.t]
va = 60
taps = [12]
price = 50
)",
                                         low);
    LoadResult<Catalog> read = read_catalog(text, "catalog.toml");
    for (const InputError& error : read.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(read);
    REQUIRE(check_catalog(*read.value).empty());
    return std::make_shared<const Catalog>(std::move(*read.value));
}

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

std::string cable_of(const SizeResult& result) {
    return result.status == SizeStatus::infeasible ? "none" : result.sized->runs.front().cable.value_or("");
}

} // namespace

TEST_CASE("the margin a weak supply takes is what a lamp loses from nominal to weak") {
    struct Row {
        double low;
        const char* nominal;          ///< cable chosen for nominal supply alone
        std::optional<double> missed; ///< volts
        const char* weak;             ///< cable chosen for a weak supply too
        double margin;
    };
    for (const Row& row :
         {Row{9.3, "thin", std::nullopt, "thin", 0}, Row{9.4, "thin", std::nullopt, "thin", 0},
          Row{9.41, "thin", 0.6, "thick", 0.6}, Row{10.0, "thin", 0.6, "thick", 0.6},
          Row{10.01, "thick", std::nullopt, "thick", 0}, Row{10.9, "thick", std::nullopt, "thick", 0},
          Row{10.91, "thick", 0.6, "none", 0.6}}) {
        INFO(row.low);
        const auto catalog = catalog_with_window(row.low);
        const LoadResult<SizeResult> plain = size_site(site(), catalog, {});
        REQUIRE(plain);
        CHECK(cable_of(*plain.value) == row.nominal);
        const LoadResult<Assessment> assessed = assess(plain.value->sized, catalog);
        REQUIRE(assessed);
        const auto missed = margin_missed(assessed.value->solution, *plain.value->sized, *catalog);
        REQUIRE(missed.has_value() == row.missed.has_value());
        if (missed) CHECK(missed->value() == Approx(*row.missed));
        const LoadResult<WeakSupplySizing> weak = size_for_weak_supply(site(), catalog, {});
        REQUIRE(weak);
        CHECK(cable_of(weak.value->result) == row.weak);
        CHECK(weak.value->margin.value() == Approx(row.margin));
    }
}

TEST_CASE("a margin asked for counts at the low end also where a weak supply takes less") {
    SizeOptions options;
    options.margin = Volts(1.2);
    const LoadResult<WeakSupplySizing> weak = size_for_weak_supply(site(), catalog_with_window(9.3), options);
    REQUIRE(weak);
    CHECK(cable_of(weak.value->result) == "thick");
    CHECK(weak.value->margin.value() == Approx(1.2));
}

} // namespace rillwatt
