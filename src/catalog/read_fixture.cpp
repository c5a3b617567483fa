#include <fmt/format.h>

#include "entry_fields.hpp"
#include "entry_readers.hpp"

namespace rillwatt {
namespace {

void read_window(ValueReader& reader, const FieldSpec& field, const Value& value, FixtureDraft& draft) {
    const std::optional<std::vector<double>> window = reader.numbers(field, value);
    if (!window) return;
    draft.window_low = Volts(window->at(0));
    draft.window_high = Volts(window->at(1));
    if (!(draft.window_low < draft.window_high))
        reader.error(value.line, fmt::format("`window` from {} to {}", window->at(0), window->at(1)),
                     "[lowest volts, highest volts], the lower first");
}

void read_spread(ValueReader& reader, const FieldSpec&, const Value& value, FixtureDraft& draft) {
    draft.distribution = read_distribution(reader, value);
}

constexpr FieldSpec number_spec(std::string_view key, FieldRange range, std::string_view unit,
                                bool required = false) {
    return {.key = key, .kind = FieldKind::number, .required = required, .range = range, .unit = unit};
}

constexpr Field<FixtureDraft> fields[] = {
    choice_field<FixtureDraft, &FixtureDraft::kind>("kind", fixture_kind_names, true),
    number_field<FixtureDraft, &FixtureDraft::rated_volts>(
        number_spec("rated_volts", above_zero(greatest_volts), "V")),
    {{.key = "window",
      .kind = FieldKind::number_list,
      .required = true,
      .range = above_zero(greatest_volts),
      .unit = "V",
      .least_items = 2,
      .most_items = 2},
     read_window},
    number_field<FixtureDraft, &FixtureDraft::watts>(
        number_spec("watts", above_zero(greatest_watts), "W", true)),
    number_field<FixtureDraft, &FixtureDraft::apparent>(number_spec("va", above_zero(greatest_watts), "VA")),
    choice_field<FixtureDraft, &FixtureDraft::load>("load", load_model_names),
    length_field<FixtureDraft, &FixtureDraft::lead>("lead", at_least_zero(longest_metres)),
    text_field<FixtureDraft, &FixtureDraft::lead_cable>({.key = "lead_cable", .kind = FieldKind::id}),
    choice_field<FixtureDraft, &FixtureDraft::rating>("rating", water_rating_names),
    number_field<FixtureDraft, &FixtureDraft::lumens>(number_spec("lumens", at_least_zero(1e7), "lm")),
    {{.key = "distribution", .kind = FieldKind::table}, read_spread},
    number_field<FixtureDraft, &FixtureDraft::colour_temperature>(
        number_spec("colour_temperature", between(1000, 20000), "K")),
    price_field<FixtureDraft>(),
    source_field<FixtureDraft>(),
    note_field<FixtureDraft>(),
};

void check_lead(ValueReader& reader, const EntryText& entry, const FixtureDraft& draft) {
    const bool has_lead = draft.lead > Metres(0);
    if (has_lead && draft.lead_cable.empty() && entry.table.find("lead_cable") == nullptr)
        reader.error(line_of(entry.table, "lead", entry.line),
                     fmt::format("fixture {} with a `lead` but no `lead_cable`", shown_id(entry.id)),
                     "`lead_cable`: the id of the cable that the lead is made of");
    if (!draft.lead_cable.empty() && entry.table.find("lead") == nullptr)
        reader.error(line_of(entry.table, "lead_cable", entry.line),
                     fmt::format("fixture {} with a `lead_cable` but no `lead`", shown_id(entry.id)),
                     "`lead`: the length of the lead, such as \"20 ft\"");
}

} // namespace

void read_fixture(ValueReader& reader, const EntryText& entry, Catalog& catalog) {
    FixtureDraft draft;
    read_fields(reader, entry.table, entry.line, "[fixture." + entry.id + "]", fields, draft);
    draft.va = VoltAmperes(draft.apparent.value_or(draft.watts.value()));
    if (draft.va.value() < draft.watts.value())
        reader.error(entry.table.find("va")->line,
                     fmt::format("`va` of {} below `watts` of {}", draft.va.value(), draft.watts.value()),
                     "at least the watts: a power factor is never above 1");
    check_lead(reader, entry, draft);
    describe(draft, reader, entry);
    catalog.fixtures.insert_or_assign(entry.id, static_cast<FixtureType>(draft));
}

std::vector<FieldSpec> fixture_keys() { return field_specs(fields); }

} // namespace rillwatt
