#include "rillwatt/mains/code_limits.hpp"
#include "rillwatt/mains/limit_source.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

SiteSettings edition(int year) {
    SiteSettings settings;
    settings.code_edition = year;
    return settings;
}

} // namespace

TEST_CASE("a source names the edition the site works to and its article there") {
    CHECK(source_text(code_limits::lighting_branch.source, edition(2017)) == "NFPA 70 (2017) 411.7");
    CHECK(source_text(code_limits::lighting_branch.source, edition(2020)) == "NFPA 70 (2020) 411.7");
    CHECK(source_text(code_limits::lighting_branch.source, edition(2023)) == "NFPA 70 (2023) 411.8");
}

TEST_CASE("an edition whose text was not read says so and names those that were") {
    CHECK(source_text(code_limits::fountain_gfci, edition(2020)) == "NFPA 70 (2020) 680.51(A)");
    CHECK(source_text(code_limits::fountain_gfci, edition(2023)) ==
          "NFPA 70 (2023) 680.51(A), read in 2017 and 2020, confirm for 2023");
    CHECK(source_text(code_limits::nameplate, edition(2020)) ==
          "NFPA 70 (2020) 110.3(B), 110.4, text not at hand, confirm");
}

TEST_CASE("an article that came with a later edition is not claimed for an earlier one") {
    CHECK(source_text(code_limits::dry_pump_gfci, edition(2017)) == "not in NFPA 70 (2017)");
    CHECK(source_text(code_limits::dry_pump_gfci, edition(2020)) == "NFPA 70 (2020) 680.59");
}

TEST_CASE("international sites cite the international clause, marked as remembered") {
    auto settings = edition(2020);
    settings.code = CodeFamily::iec;
    CHECK(source_text(code_limits::wet_contact_iec.source, settings) ==
          "IEC 60364-7-702 702.410.3.4.2, SELV not over 12 V AC, text not at hand, confirm");
}

TEST_CASE("a habit of the trade is called one") {
    CHECK(source_text(code_limits::gfci_leakage_ma.source, edition(2020)) == "common practice, no source");
}

TEST_CASE("the list of rules names every edition's article once") {
    CHECK(source_of_all_editions(code_limits::lighting_branch.source) ==
          "NFPA 70 (2017, 2020) 411.7, (2023) 411.8");
    CHECK(source_of_all_editions(code_limits::cord_in_water.source) ==
          "NFPA 70 (2017, 2020, 2023) 680.51(E)");
    CHECK(source_of_all_editions(code_limits::gfci_leakage_ma.source) == "common practice, no source");
    CHECK(
        source_of_all_editions(code_limits::dry_pump_gfci).starts_with("NFPA 70 (2020, 2023) 680.59; code"));
}
