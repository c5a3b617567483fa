#pragma once

#include "rillwatt/document/fields.hpp"
#include "rillwatt/site/site.hpp"

#include <cstdint>

namespace rillwatt {

/// Kinds of parts as bits, so that a key can say which of them it may name.
enum PartKind : std::uint32_t {
    circuit_part = 1u << 0,
    pump_part = 1u << 1,
    transformer_part = 1u << 2,
    run_part = 1u << 3,
    splice_part = 1u << 4,
    fixture_part = 1u << 5,
    link_part = 1u << 6,
    area_part = 1u << 7,
    sleeve_part = 1u << 8,
    mark_part = 1u << 9,
    walk_part = 1u << 10,
    falls_part = 1u << 11,
    viewpoint_part = 1u << 12,
};

/// One kind of repeated table: `[[name]]`.
struct PartTable {
    std::string_view name;
    PartKind kind;
    void (*read)(ValueReader&, const Table&, int line, Site&);
    std::vector<FieldSpec> (*keys)();
};

void read_settings(ValueReader& reader, const Table& table, int line, SiteSettings& settings);
void read_stock(ValueReader& reader, const Table& table, int line, Stock& stock);
std::vector<FieldSpec> settings_keys();
std::vector<FieldSpec> stock_keys();

void read_circuit(ValueReader& reader, const Table& table, int line, Site& site);
void read_pump_part(ValueReader& reader, const Table& table, int line, Site& site);
std::vector<FieldSpec> circuit_part_keys();
std::vector<FieldSpec> pump_part_keys();

void read_transformer_part(ValueReader& reader, const Table& table, int line, Site& site);
void read_run(ValueReader& reader, const Table& table, int line, Site& site);
void read_splice(ValueReader& reader, const Table& table, int line, Site& site);
void read_fixture_part(ValueReader& reader, const Table& table, int line, Site& site);
void read_link(ValueReader& reader, const Table& table, int line, Site& site);
std::vector<FieldSpec> transformer_part_keys();
std::vector<FieldSpec> run_keys();
std::vector<FieldSpec> splice_keys();
std::vector<FieldSpec> fixture_part_keys();
std::vector<FieldSpec> link_keys();

void read_area(ValueReader& reader, const Table& table, int line, Site& site);
void read_sleeve(ValueReader& reader, const Table& table, int line, Site& site);
void read_walk(ValueReader& reader, const Table& table, int line, Site& site);
void read_falls(ValueReader& reader, const Table& table, int line, Site& site);
void read_viewpoint(ValueReader& reader, const Table& table, int line, Site& site);
std::vector<FieldSpec> area_keys();
std::vector<FieldSpec> sleeve_keys();
std::vector<FieldSpec> walk_keys();
std::vector<FieldSpec> falls_keys();
std::vector<FieldSpec> viewpoint_keys();

template<class P>
constexpr Field<P> id_field() {
    return text_field<P, &P::id>({.key = "id", .kind = FieldKind::id, .required = true});
}

/// A key of the catalogs: looked up when those are read.
template<class P, auto Member>
constexpr Field<P> catalog_field(std::string_view key, bool required = false) {
    return text_field<P, Member>(
        {.key = key, .kind = FieldKind::id, .required = required, .target_words = "a catalog entry"});
}

constexpr FieldSpec number_spec(std::string_view key, FieldRange range, std::string_view unit) {
    return {.key = key, .kind = FieldKind::number, .range = range, .unit = unit};
}

constexpr FieldRange any_length() { return between(-longest_metres, longest_metres); }
constexpr FieldRange length_from_zero() { return at_least_zero(longest_metres); }
/// Of earth over a cable, in metres: inches written as bare feet go beyond it.
inline constexpr double deepest_cover = 1.5;

constexpr FieldRange length_above_zero() { return above_zero(longest_metres); }

inline SourceLocation location_of(const ValueReader& reader, int line) {
    return {reader.document().file(), line};
}

} // namespace rillwatt
