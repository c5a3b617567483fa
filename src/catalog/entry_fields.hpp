#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/document/fields.hpp"

#include "catalog_names.hpp"

namespace rillwatt {

/// A row of a conductor table as it is written.
struct WrittenSize {
    std::string size;
    double section_mm2 = 0;
    double ohms = 0; ///< in the unit of the table
    int line = 0;
};

/// What an entry needs while it is read and not afterwards.
struct TableDraft : ConductorTable {
    std::size_t unit = 0; ///< index into `resistance_unit_names`
    std::vector<WrittenSize> sizes;
    SourceLocation location;
};

struct CableDraft : CableType {
    std::optional<double> price_per_foot;
    std::optional<double> price_per_metre;
};

struct FixtureDraft : FixtureType {
    std::optional<double> apparent;
};

inline constexpr double highest_price = 1e6;
inline constexpr double greatest_watts = 1e5;

/// The keys that every entry may have besides its own.
template<class Draft>
constexpr Field<Draft> source_field() {
    return text_field<Draft, &Draft::source>({.key = "source"});
}

template<class Draft>
constexpr Field<Draft> note_field() {
    return text_field<Draft, &Draft::note>({.key = "note"});
}

template<class Draft>
constexpr Field<Draft> price_field() {
    return number_field<Draft, &Draft::price>(
        {.key = "price", .kind = FieldKind::number, .range = at_least_zero(highest_price)});
}

} // namespace rillwatt
