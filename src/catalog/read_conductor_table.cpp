#include <fmt/format.h>

#include "entry_fields.hpp"
#include "entry_readers.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

constexpr double per_kft = 1 / (1000 * metres_per_foot);
constexpr double per_km = 1 / 1000.0;

void read_sizes(ValueReader& reader, const FieldSpec& field, const Value& value, TableDraft& draft) {
    const Table* sizes = value.table();
    if (sizes == nullptr || sizes->entries.empty()) {
        reader.wrong_value(field, value);
        return;
    }
    for (const Entry& entry : sizes->entries) {
        const FieldSpec row{.key = entry.key, .kind = FieldKind::number, .range = field.range};
        const std::optional<double> section = section_mm2(entry.key);
        if (!section)
            reader.error(entry.line, fmt::format("conductor size {}", shown_id(entry.key)),
                         "a size such as `12 AWG`, `1/0 AWG` or `2.5 mm2`");
        if (const std::optional<double> ohms = reader.number(row, entry.value))
            draft.sizes.push_back({std::string(entry.key), section.value_or(0), *ohms, entry.value.line});
    }
}

constexpr Field<TableDraft> fields[] = {
    text_field<TableDraft, &TableDraft::source>({.key = "source", .required = true}),
    temperature_field<TableDraft, &TableDraft::reference_temperature>(
        "reference_temperature", between(coldest_conductor.value(), hottest_conductor.value()), true),
    number_field<TableDraft, &TableDraft::temperature_coefficient>({.key = "temperature_coefficient",
                                                                    .kind = FieldKind::number,
                                                                    .required = true,
                                                                    .range = at_least_zero(0.01),
                                                                    .unit = "per C"}),
    choice_field<TableDraft, &TableDraft::unit>("unit", resistance_unit_names, true),
    {{.key = "sizes", .kind = FieldKind::table, .required = true, .range = above_zero(greatest_ohms_per_km)},
     read_sizes},
};

/// At a temperature cold enough a large coefficient would have a conductor drive its own current.
void check_coefficient(ValueReader& reader, const EntryText& entry, const TableDraft& draft) {
    const double least =
        1 + draft.temperature_coefficient * (coldest_conductor.value() - draft.reference_temperature.value());
    if (least > 0) return;
    reader.error(line_of(entry.table, "temperature_coefficient", entry.line),
                 fmt::format("a temperature coefficient of {} per C from {} C on",
                             draft.temperature_coefficient, draft.reference_temperature.value()),
                 fmt::format("one that leaves some resistance at {} C", coldest_conductor.value()));
}

} // namespace

void read_conductor_table(ValueReader& reader, const EntryText& entry, Catalog& catalog) {
    TableDraft draft;
    read_fields(reader, entry.table, entry.line, "[conductor_table." + entry.id + "]", fields, draft);
    const double scale = draft.unit == 0 ? per_kft : per_km;
    draft.id = entry.id;
    check_coefficient(reader, entry, draft);
    std::stable_sort(draft.sizes.begin(), draft.sizes.end(), [](const WrittenSize& a, const WrittenSize& b) {
        return a.section_mm2 < b.section_mm2;
    });
    for (const auto& [size, section, ohms, line] : draft.sizes) {
        if (ohms * scale > greatest_ohms_per_km * per_km)
            reader.error(line,
                         fmt::format("{} of {} {}", shown_id(size), ohms, resistance_unit_names[draft.unit]),
                         "at most 10000 ohm/km");
        draft.rows.push_back({size, OhmsPerMetre(ohms * scale)});
    }
    catalog.tables.insert_or_assign(entry.id, static_cast<ConductorTable>(draft));
}

std::vector<FieldSpec> conductor_table_keys() { return field_specs(fields); }

} // namespace rillwatt
