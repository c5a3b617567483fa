#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/text/schema_text.hpp"
#include "rillwatt/text/utf8.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <sstream>

using namespace rillwatt;
using Catch::Matchers::Contains;

TEST_CASE("every key of both files has its words, and no words are left of a key that is gone") {
    std::set<std::pair<std::string, std::string>> keys;
    for (const auto& tables : {site_tables(), catalog_tables()})
        for (const TableSpec& table : tables)
            for (const FieldSpec& field : table.fields) {
                const std::string heading = table_heading(table);
                keys.emplace(heading, field.key);
                CAPTURE(heading, field.key);
                const KeyWords* words = key_words(heading, field.key);
                REQUIRE(words != nullptr);
                CHECK_FALSE(words->says.empty());
                CHECK((!field.required || words->otherwise.empty()));
            }
    for (const KeyWords& words : all_key_words()) {
        CAPTURE(words.table, words.key);
        CHECK(keys.contains({std::string(words.table), std::string(words.key)}));
    }
}

TEST_CASE("the page of keys says what a key takes and what counts without it, in eighty columns") {
    const std::string site = schema_text(site_tables(), {});
    CHECK_THAT(site, Contains("[[splice]]  once for each\n"));
    CHECK_THAT(site,
               Contains("  units                   What a bare length means, and what reports print. One\n"
                        "                          of \"ft\", \"m\"; else \"ft\".\n"));
    CHECK_THAT(site,
               Contains("  gfci                    Whether it has ground-fault protection. True or false;\n"
                        "                          else false.\n"));
    CHECK_THAT(site, Contains("  name                    What the garden is called, on every sheet. Text;\n"
                              "                          required.\n"));
    const std::string catalog = schema_text(catalog_tables(), {});
    CHECK_THAT(catalog, Contains("[cable.ID]\n"));
    for (const std::string& page : {site, catalog}) {
        std::istringstream lines(page);
        for (std::string line; std::getline(lines, line);)
            CHECK(display_width(line) <= 80);
    }
}
