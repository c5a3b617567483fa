#include <fmt/format.h>

#include "part_readers.hpp"
#include "shape_checks.hpp"
#include "site_names.hpp"

namespace rillwatt {
namespace {

struct AreaDraft : Area {
    std::optional<Metres> height_given;
};

constexpr Field<AreaDraft> area_fields[] = {
    id_field<AreaDraft>(),
    choice_field<AreaDraft, &AreaDraft::kind>("kind", area_kind_names, true),
    points_field<AreaDraft, &AreaDraft::outline>("outline", 3, 2000),
    length_field<AreaDraft, &AreaDraft::height_given>("height", length_from_zero()),
    length_field<AreaDraft, &AreaDraft::level>("level", any_length()),
};

struct SleeveDraft : Sleeve {
    std::vector<PlanPoint> between;
};

constexpr Field<SleeveDraft> sleeve_fields[] = {
    id_field<SleeveDraft>(),
    points_field<SleeveDraft, &SleeveDraft::between>("between", 2, 2),
};

void read_class(ValueReader& reader, const FieldSpec& field, const Value& value, Walk& walk) {
    if (const std::optional<std::size_t> index = reader.choice(field, value))
        walk.target = field.choices[*index];
}

constexpr Field<Walk> walk_fields[] = {
    id_field<Walk>(),
    points_field<Walk, &Walk::line>("line", 2, 2000),
    length_field<Walk, &Walk::width>("width", length_above_zero(), true),
    length_field<Walk, &Walk::elevation>("elevation", any_length()),
    {{.key = "target", .kind = FieldKind::choice, .choices = walk_class_names}, read_class},
    number_field<Walk, &Walk::mean_lux>(number_spec("mean_lux", above_zero(1e5), "lx")),
    number_field<Walk, &Walk::min_lux>(number_spec("min_lux", above_zero(1e5), "lx")),
};

struct FallsDraft : Falls {
    std::vector<PlanPoint> lip;
    std::optional<Degrees> faces_given;
};

constexpr Field<FallsDraft> falls_fields[] = {
    id_field<FallsDraft>(),
    points_field<FallsDraft, &FallsDraft::lip>("lip", 2, 2),
    length_field<FallsDraft, &FallsDraft::drop>("drop", length_above_zero(), true),
    length_field<FallsDraft, &FallsDraft::pool_depth>("pool_depth", length_from_zero()),
    length_field<FallsDraft, &FallsDraft::base>("base", any_length()),
    number_field<FallsDraft, &FallsDraft::faces_given>(number_spec("faces", between(-360, 360), "degrees")),
};

struct ViewpointDraft : Viewpoint {
    ViewpointDraft() { eye = feet(5); }
};

void read_looks_at(ValueReader& reader, const FieldSpec& field, const Value& value,
                   ViewpointDraft& viewpoint) {
    assign_list(viewpoint.looks_at, reader.texts(field, value));
    if (const Array* items = value.array())
        for (const Value& item : *items)
            reader.references().push_back({&field, &item});
}

constexpr Field<ViewpointDraft> viewpoint_fields[] = {
    id_field<ViewpointDraft>(),
    point_field<ViewpointDraft, &ViewpointDraft::at>("at", true),
    length_field<ViewpointDraft, &ViewpointDraft::eye>("eye", any_length()),
    {{.key = "looks_at", .kind = FieldKind::reference_list, .targets = falls_part, .target_words = "falls"},
     read_looks_at},
};

void check_walk_target(ValueReader& reader, const Table& table, const Walk& walk) {
    if (walk.target && (walk.mean_lux || walk.min_lux))
        reader.error(line_of(table, "target", walk.location.line),
                     fmt::format("walk {} with a `target` class and lux of its own", shown_id(walk.id)),
                     "either `target`, or `mean_lux` and `min_lux`");
    if (walk.mean_lux && walk.min_lux && *walk.mean_lux < *walk.min_lux)
        reader.error(
            line_of(table, "mean_lux", walk.location.line),
            fmt::format("`mean_lux` {} below `min_lux` {}", walk.mean_lux->value(), walk.min_lux->value()),
            "a mean not below the minimum");
}

} // namespace

void read_area(ValueReader& reader, const Table& table, int line, Site& site) {
    AreaDraft draft;
    read_fields(reader, table, line, "[[area]]", area_fields, draft);
    const Metres usual_height = draft.kind == AreaKind::building ? feet(10) : Metres(0);
    draft.height = draft.height_given.value_or(usual_height);
    if (draft.level != Metres(0) && draft.kind != AreaKind::water)
        reader.error(line_of(table, "level", line),
                     fmt::format("`level` of {} that is no water", shown_id(draft.id)),
                     "`level` only where `kind` is \"water\"");
    check_outline(reader, line_of(table, "outline", line), draft.outline);
    draft.location = location_of(reader, line);
    site.areas.push_back(std::move(draft));
}

void read_sleeve(ValueReader& reader, const Table& table, int line, Site& site) {
    SleeveDraft draft;
    read_fields(reader, table, line, "[[sleeve]]", sleeve_fields, draft);
    check_line(reader, line_of(table, "between", line), draft.between);
    if (draft.between.size() == 2) {
        draft.a = draft.between[0];
        draft.b = draft.between[1];
    }
    draft.location = location_of(reader, line);
    site.sleeves.push_back(std::move(draft));
}

void read_walk(ValueReader& reader, const Table& table, int line, Site& site) {
    Walk& walk = site.walks.emplace_back();
    read_fields(reader, table, line, "[[walk]]", walk_fields, walk);
    check_line(reader, line_of(table, "line", line), walk.line);
    walk.location = location_of(reader, line);
    check_walk_target(reader, table, walk);
}

void read_falls(ValueReader& reader, const Table& table, int line, Site& site) {
    FallsDraft draft;
    read_fields(reader, table, line, "[[falls]]", falls_fields, draft);
    check_line(reader, line_of(table, "lip", line), draft.lip);
    if (draft.lip.size() == 2) {
        draft.lip_left = draft.lip[0];
        draft.lip_right = draft.lip[1];
        draft.faces = facing_of_lip(draft.lip_left, draft.lip_right);
        if (draft.faces_given)
            check_facing(reader, line_of(table, "faces", line), *draft.faces_given, draft.faces);
    }
    if (draft.faces_given) draft.faces = full_circle(*draft.faces_given);
    draft.location = location_of(reader, line);
    site.falls.push_back(std::move(draft));
}

void read_viewpoint(ValueReader& reader, const Table& table, int line, Site& site) {
    ViewpointDraft draft;
    read_fields(reader, table, line, "[[viewpoint]]", viewpoint_fields, draft);
    draft.location = location_of(reader, line);
    site.viewpoints.push_back(std::move(draft));
}

std::vector<FieldSpec> area_keys() { return field_specs(area_fields); }
std::vector<FieldSpec> sleeve_keys() { return field_specs(sleeve_fields); }
std::vector<FieldSpec> walk_keys() { return field_specs(walk_fields); }
std::vector<FieldSpec> falls_keys() { return field_specs(falls_fields); }
std::vector<FieldSpec> viewpoint_keys() { return field_specs(viewpoint_fields); }

} // namespace rillwatt
