#include <fmt/format.h>

#include "part_readers.hpp"

namespace rillwatt {
namespace {

constexpr std::uint32_t feeding_parts = run_part | splice_part | fixture_part;

constexpr FieldSpec fed_from(bool required) {
    return {.key = "from",
            .kind = FieldKind::reference,
            .required = required,
            .targets = feeding_parts,
            .target_words = "a run, a splice or a fixture"};
}

constexpr Field<Transformer> transformer_fields[] = {
    id_field<Transformer>(),
    catalog_field<Transformer, &Transformer::model>("model"),
    reference_field<Transformer, &Transformer::circuit>({.key = "circuit",
                                                         .kind = FieldKind::reference,
                                                         .targets = circuit_part,
                                                         .target_words = "a circuit"}),
    point_field<Transformer, &Transformer::at>("at"),
    text_field<Transformer, &Transformer::control>({.key = "control"}),
};

constexpr Field<Run> run_fields[] = {
    id_field<Run>(),
    reference_field<Run, &Run::from>({.key = "from",
                                      .kind = FieldKind::reference,
                                      .required = true,
                                      .targets = transformer_part,
                                      .target_words = "a transformer"}),
    number_field<Run, &Run::tap>(number_spec("tap", above_zero(greatest_volts), "V")),
    catalog_field<Run, &Run::cable>("cable"),
};

constexpr Field<Splice> splice_fields[] = {
    id_field<Splice>(),
    reference_field<Splice, &Splice::from>(fed_from(true)),
    length_field<Splice, &Splice::length>("length", length_from_zero()),
    catalog_field<Splice, &Splice::cable>("cable"),
    point_field<Splice, &Splice::at>("at"),
};

void read_aim(ValueReader& reader, const FieldSpec& field, const Value& value, Fixture& fixture) {
    fixture.aim.at = reader.space_point(field, value);
}

void read_bearing(ValueReader& reader, const FieldSpec& field, const Value& value, Fixture& fixture) {
    assign(fixture.aim.bearing, reader.number(field, value));
}

void read_tilt(ValueReader& reader, const FieldSpec& field, const Value& value, Fixture& fixture) {
    assign(fixture.aim.tilt, reader.number(field, value));
}

constexpr Field<Fixture> fixture_fields[] = {
    id_field<Fixture>(),
    catalog_field<Fixture, &Fixture::model>("model", true),
    reference_field<Fixture, &Fixture::from>(fed_from(false)),
    length_field<Fixture, &Fixture::length>("length", length_from_zero()),
    catalog_field<Fixture, &Fixture::cable>("cable"),
    point_field<Fixture, &Fixture::at>("at"),
    boolean_field<Fixture, &Fixture::in_water>("in_water"),
    {{.key = "aim", .kind = FieldKind::space_point, .range = any_length()}, read_aim},
    {number_spec("bearing", between(-360, 360), "degrees"), read_bearing},
    {number_spec("tilt", between(0, 180), "degrees"), read_tilt},
    length_field<Fixture, &Fixture::mounting>("mounting", any_length()),
    length_field<Fixture, &Fixture::elevation>("elevation", any_length()),
    reference_field<Fixture, &Fixture::lights>({.key = "lights",
                                                .kind = FieldKind::reference,
                                                .targets = falls_part | walk_part,
                                                .target_words = "falls or a walk"}),
};

struct LinkDraft : Link {
    std::optional<std::string> id_given;
};

void read_ends(ValueReader& reader, const FieldSpec& field, const Value& value, LinkDraft& link) {
    const Array* ends = value.array();
    if (ends == nullptr || ends->size() != 2) {
        reader.wrong_value(field, value);
        return;
    }
    const FieldSpec end_spec{
        .key = field.key, .kind = FieldKind::reference, .target_words = field.target_words};
    assign(link.a, reader.text(end_spec, (*ends)[0]));
    assign(link.b, reader.text(end_spec, (*ends)[1]));
    for (const Value& end : *ends)
        reader.references().push_back({&field, &end});
    if (link.a == link.b && !link.a.empty())
        reader.error(value.line, fmt::format("a link from {} to itself", shown_id(link.a)),
                     "two different parts");
}

constexpr Field<LinkDraft> link_fields[] = {
    text_field<LinkDraft, &LinkDraft::id_given>({.key = "id", .kind = FieldKind::id}),
    {{.key = "between",
      .kind = FieldKind::reference_list,
      .required = true,
      .least_items = 2,
      .most_items = 2,
      .targets = feeding_parts,
      .target_words = "a run, a splice or a fixture"},
     read_ends},
    length_field<LinkDraft, &LinkDraft::length>("length", length_from_zero()),
    catalog_field<LinkDraft, &LinkDraft::cable>("cable"),
};

} // namespace

void read_transformer_part(ValueReader& reader, const Table& table, int line, Site& site) {
    Transformer& transformer = site.transformers.emplace_back();
    read_fields(reader, table, line, "[[transformer]]", transformer_fields, transformer);
    transformer.location = location_of(reader, line);
}

void read_run(ValueReader& reader, const Table& table, int line, Site& site) {
    Run& run = site.runs.emplace_back();
    read_fields(reader, table, line, "[[run]]", run_fields, run);
    run.location = location_of(reader, line);
}

void read_splice(ValueReader& reader, const Table& table, int line, Site& site) {
    Splice& splice = site.splices.emplace_back();
    read_fields(reader, table, line, "[[splice]]", splice_fields, splice);
    splice.location = location_of(reader, line);
}

void read_fixture_part(ValueReader& reader, const Table& table, int line, Site& site) {
    Fixture& fixture = site.fixtures.emplace_back();
    read_fields(reader, table, line, "[[fixture]]", fixture_fields, fixture);
    fixture.location = location_of(reader, line);
}

void read_link(ValueReader& reader, const Table& table, int line, Site& site) {
    LinkDraft draft;
    read_fields(reader, table, line, "[[link]]", link_fields, draft);
    draft.id = draft.id_given.value_or("");
    draft.location = location_of(reader, line);
    site.links.push_back(std::move(draft));
}

std::vector<FieldSpec> transformer_part_keys() { return field_specs(transformer_fields); }
std::vector<FieldSpec> run_keys() { return field_specs(run_fields); }
std::vector<FieldSpec> splice_keys() { return field_specs(splice_fields); }
std::vector<FieldSpec> fixture_part_keys() { return field_specs(fixture_fields); }
std::vector<FieldSpec> link_keys() { return field_specs(link_fields); }

} // namespace rillwatt
