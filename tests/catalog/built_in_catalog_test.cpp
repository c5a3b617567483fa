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
