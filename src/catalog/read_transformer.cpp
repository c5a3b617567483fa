#include <fmt/format.h>

#include "entry_fields.hpp"
#include "entry_readers.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

void read_taps(ValueReader& reader, const FieldSpec& field, const Value& value, TransformerType& type) {
    assign_list(type.taps, reader.numbers(field, value));
    std::sort(type.taps.begin(), type.taps.end());
    const auto twice = std::adjacent_find(type.taps.begin(), type.taps.end());
    if (twice != type.taps.end())
        reader.error(value.line, fmt::format("tap {} twice", twice->value()), "each tap once");
}

constexpr FieldSpec number_spec(std::string_view key, FieldRange range, std::string_view unit,
                                bool required = false) {
    return {.key = key, .kind = FieldKind::number, .required = required, .range = range, .unit = unit};
}

using Type = TransformerType;

constexpr Field<Type> fields[] = {
    number_field<Type, &Type::va>(number_spec("va", above_zero(greatest_watts), "VA", true)),
    number_field<Type, &Type::primary_volts>(number_spec("primary_volts", above_zero(greatest_volts), "V")),
    {{.key = "taps",
      .kind = FieldKind::number_list,
      .required = true,
      .range = above_zero(greatest_volts),
      .unit = "V",
      .least_items = 1},
     read_taps},
    percent_field<Type, &Type::regulation>("regulation_percent", 0, 50),
    number_field<Type, &Type::secondary_limit>(number_spec("secondary_limit_amps", above_zero(1000), "A")),
    number_field<Type, &Type::no_load>(number_spec("no_load_watts", at_least_zero(greatest_watts), "W")),
    boolean_field<Type, &Type::water_listed>("water_listed"),
    price_field<Type>(),
    source_field<Type>(),
    note_field<Type>(),
};

} // namespace

void read_transformer(ValueReader& reader, const EntryText& entry, Catalog& catalog) {
    TransformerType type;
    read_fields(reader, entry.table, entry.line, "[transformer." + entry.id + "]", fields, type);
    describe(type, reader, entry);
    catalog.transformers.insert_or_assign(entry.id, std::move(type));
}

std::vector<FieldSpec> transformer_keys() { return field_specs(fields); }

} // namespace rillwatt
