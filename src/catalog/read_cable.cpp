#include <fmt/format.h>

#include "entry_fields.hpp"
#include "entry_readers.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

void read_spools(ValueReader& reader, const FieldSpec& field, const Value& value, CableDraft& draft) {
    assign_list(draft.spools, reader.lengths(field, value));
    std::sort(draft.spools.begin(), draft.spools.end());
    if (std::adjacent_find(draft.spools.begin(), draft.spools.end()) != draft.spools.end())
        reader.error(value.line, "the same spool length twice", "each length once");
}

constexpr FieldSpec price_spec(std::string_view key) {
    return {.key = key, .kind = FieldKind::number, .range = at_least_zero(highest_price)};
}

constexpr Field<CableDraft> fields[] = {
    text_field<CableDraft, &CableDraft::table>({.key = "table", .kind = FieldKind::id, .required = true}),
    text_field<CableDraft, &CableDraft::size>({.key = "size", .kind = FieldKind::id, .required = true}),
    number_field<CableDraft, &CableDraft::ampacity>({.key = "ampacity",
                                                     .kind = FieldKind::number,
                                                     .required = true,
                                                     .range = above_zero(1000),
                                                     .unit = "A"}),
    boolean_field<CableDraft, &CableDraft::direct_burial>("direct_burial"),
    number_field<CableDraft, &CableDraft::price_per_foot>(price_spec("price_per_foot")),
    number_field<CableDraft, &CableDraft::price_per_metre>(price_spec("price_per_metre")),
    {{.key = "spools", .kind = FieldKind::length_list, .range = above_zero(longest_metres), .least_items = 1},
     read_spools},
    source_field<CableDraft>(),
    note_field<CableDraft>(),
};

} // namespace

void read_cable(ValueReader& reader, const EntryText& entry, Catalog& catalog) {
    CableDraft draft;
    read_fields(reader, entry.table, entry.line, "[cable." + entry.id + "]", fields, draft);
    if (draft.price_per_foot && draft.price_per_metre)
        reader.error(
            line_of(entry.table, "price_per_metre", entry.line),
            fmt::format("cable {} with both `price_per_foot` and `price_per_metre`", shown_id(entry.id)),
            "one of them");
    if (draft.price_per_foot) draft.price = MoneyPerMetre(*draft.price_per_foot / metres_per_foot);
    if (draft.price_per_metre) draft.price = MoneyPerMetre(*draft.price_per_metre);
    describe(draft, reader, entry);
    catalog.cables.insert_or_assign(entry.id, static_cast<CableType>(draft));
}

std::vector<FieldSpec> cable_keys() { return field_specs(fields); }

} // namespace rillwatt
