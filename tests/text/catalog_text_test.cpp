#include "rillwatt/exchange/catalog_json.hpp"
#include "rillwatt/text/catalog_text.hpp"

#include <catch2/catch.hpp>

#include "support/sample_assessment.hpp"

using namespace rillwatt;
using Catch::Matchers::Contains;

TEST_CASE("a catalog is listed by kind, in the unit asked for, with sources") {
    const Assessment garden = samples::small_garden();
    const std::string text = catalog_text(*garden.catalog, {}, LengthUnit::feet, {});
    CHECK_THAT(
        text,
        Contains(
            "CABLES\n  from generic stock\n  12/2                  12 AWG, table nec-8-stranded, 20 A,"));
    CHECK_THAT(text, Contains("0.62\n                        per ft\n"));
    CHECK_THAT(text, Contains("lead 20 ft of 18/2"));
    CHECK_THAT(catalog_text(*garden.catalog, {}, LengthUnit::metres, {}), Contains("lead 6.1 m of 18/2"));
}

TEST_CASE("every word searched for must occur, in any case") {
    const Assessment garden = samples::small_garden();
    const Catalog& catalog = *garden.catalog;
    const std::string text = catalog_text(catalog, {"", {"SUBMERSIBLE", "3w"}}, LengthUnit::feet, {});
    CHECK_THAT(text, Contains("sub-3w"));
    CHECK_THAT(text, !Contains("path-2w"));
    CHECK(catalog_text(catalog, {"pump", {"sub-3w"}}, LengthUnit::feet, {}) ==
          "nothing in the catalogs matches\n");
}

TEST_CASE("programs get the same entries in SI units") {
    const std::string json = catalog_json(*samples::small_garden().catalog, {"transformer", {}});
    CHECK_THAT(
        json,
        Contains("\"id\": \"mag-150\", \"source\": \"generic stock\", \"va\": 150, \"primary_volts\": 120, "
                 "\"taps\": [12, 13, 14], \"regulation_percent\": 4,"));
    CHECK_THAT(json, Contains("\"cables\": []"));
}
