#include "rillwatt/catalog/read_catalog.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

Catalog built_in() {
    LoadResult<Catalog> result = read_built_in_catalog();
    for (const InputError& error : result.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(result);
    const std::vector<InputError> errors = check_catalog(*result.value);
    for (const InputError& error : errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(errors.empty());
    return std::move(*result.value);
}

} // namespace

TEST_CASE("the built-in catalogs hold something of every kind, without an error") {
    const Catalog catalog = built_in();
    CHECK(catalog.tables.size() >= 4);
    CHECK(catalog.cables.size() >= 6);
    CHECK(catalog.fixtures.size() >= 10);
    CHECK(catalog.transformers.size() >= 5);
    CHECK(catalog.pumps.size() >= 5);
    for (const auto& [id, cable] : catalog.cables) {
        INFO(id);
        CHECK_FALSE(cable.source.empty());
        CHECK(cable.resistance > OhmsPerMetre(0));
    }
}

TEST_CASE("the built-in catalogs read for a few names hold those entries as the whole ones do") {
    const Catalog whole = built_in();
    for (const auto& [id, fixture] : whole.fixtures) {
        INFO(id);
        const LoadResult<Catalog> part = read_built_in_catalog(EntryNames{id});
        REQUIRE(part);
        CHECK(part.value->cables.contains(fixture.lead_cable) != fixture.lead_cable.empty());
        REQUIRE(part.value->fixtures.size() == 1);
        const FixtureType& read = part.value->fixtures.at(id);
        CHECK(read.location.file == fixture.location.file);
        CHECK(read.location.line == fixture.location.line);
        CHECK(read.watts == fixture.watts);
        CHECK(read.note == fixture.note);
        CHECK(read.source == fixture.source);
    }
    for (const auto& [id, transformer] : whole.transformers) {
        INFO(id);
        const LoadResult<Catalog> part = read_built_in_catalog(EntryNames{id});
        REQUIRE(part);
        REQUIRE(part.value->transformers.size() == 1);
        CHECK(part.value->transformers.at(id).location.line == transformer.location.line);
        CHECK(part.value->transformers.at(id).taps == transformer.taps);
    }
    for (const auto& [id, pump] : whole.pumps) {
        INFO(id);
        const LoadResult<Catalog> part = read_built_in_catalog(EntryNames{id});
        REQUIRE(part);
        REQUIRE(part.value->pumps.size() == 1);
        CHECK(part.value->pumps.at(id).location.line == pump.location.line);
    }
    for (const auto& [id, cable] : whole.cables) {
        INFO(id);
        LoadResult<Catalog> part = read_built_in_catalog(EntryNames{id});
        REQUIRE(part);
        CHECK(part.value->cables.size() == 1);
        CHECK(part.value->tables.size() == 1);
        REQUIRE(check_catalog(*part.value).empty());
        CHECK(part.value->cables.at(id).location.line == cable.location.line);
        CHECK(part.value->cables.at(id).resistance == cable.resistance);
    }
    const LoadResult<Catalog> none = read_built_in_catalog(EntryNames{});
    REQUIRE(none);
    CHECK(none.value->fixtures.empty());
    CHECK(none.value->cables.empty());
    CHECK(none.value->tables.empty());
    CHECK(none.value->accessories.empty());
}
