#include <fmt/format.h>

#include "entry_fields.hpp"
#include "entry_readers.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

struct DistributionDraft {
    std::optional<std::size_t> model;
    std::optional<Degrees> degrees;
    std::optional<Degrees> shadow;
    std::optional<Degrees> cutoff;
    std::optional<std::string> file;
};

constexpr FieldSpec angle(std::string_view key, FieldRange range) {
    return {.key = key, .kind = FieldKind::number, .range = range, .unit = "degrees"};
}

constexpr FieldRange inside(double low, double high) { return {low, high, true}; }

constexpr Field<DistributionDraft> fields[] = {
    choice_field<DistributionDraft, &DistributionDraft::model>("model", distribution_model_names),
    number_field<DistributionDraft, &DistributionDraft::degrees>(angle("degrees", inside(0, 179))),
    number_field<DistributionDraft, &DistributionDraft::shadow>(angle("shadow", between(0, 89))),
    number_field<DistributionDraft, &DistributionDraft::cutoff>(angle("cutoff", inside(0, 180))),
    text_field<DistributionDraft, &DistributionDraft::file>(
        {.key = "file", .kind = FieldKind::id, .most_bytes = longest_path}),
};

/// Reports the first key that the model does not use; empty text when there is none.
void refuse_others(ValueReader& reader, const Table& table, std::string_view model,
                   std::initializer_list<std::string_view> used) {
    for (const Entry& entry : table.entries)
        if (std::find(used.begin(), used.end(), entry.key) == used.end())
            reader.error(entry.line, fmt::format("{} in a distribution by {}", shown_id(entry.key), model),
                         "only keys that it uses");
}

DistributionSpec hat_of(ValueReader& reader, const Table& table, int line, const DistributionDraft& draft) {
    HatDistribution hat;
    hat.shadow = draft.shadow.value_or(hat.shadow);
    hat.cutoff = draft.cutoff.value_or(hat.cutoff);
    if (!(hat.shadow < hat.cutoff))
        reader.error(line_of(table, "shadow", line_of(table, "cutoff", line)),
                     fmt::format("`shadow` {} not below `cutoff` {}", hat.shadow.value(), hat.cutoff.value()),
                     "the shadow angle below the cutoff angle");
    return hat;
}

DistributionSpec batwing_of(ValueReader& reader, const Table& table, int line,
                            const DistributionDraft& draft) {
    constexpr Degrees widest(89); // the even pool has no end at 90 degrees
    if (!draft.cutoff || *draft.cutoff > widest) {
        reader.error(line_of(table, "cutoff", line),
                     draft.cutoff ? fmt::format("`cutoff` of {} for a batwing", draft.cutoff->value())
                                  : "a batwing without `cutoff`",
                     "`cutoff`: above 0 and at most 89 degrees");
        return {};
    }
    return BatwingDistribution{*draft.cutoff};
}

DistributionSpec modelled(ValueReader& reader, const Table& table, int line, const DistributionDraft& draft) {
    switch (*draft.model) {
    case 0:
        refuse_others(reader, table, "beam", {"model", "degrees"});
        if (draft.degrees) return BeamDistribution{*draft.degrees};
        if (table.find("degrees") == nullptr)
            reader.error(line, "a beam without `degrees`", "`degrees`: above 0 and at most 179 degrees");
        return {};
    case 1:
        refuse_others(reader, table, "hat", {"model", "shadow", "cutoff"});
        return hat_of(reader, table, line, draft);
    default:
        refuse_others(reader, table, "batwing", {"model", "cutoff"});
        return batwing_of(reader, table, line, draft);
    }
}

} // namespace

DistributionSpec read_distribution(ValueReader& reader, const Value& value) {
    const Table* table = value.table();
    if (table == nullptr) {
        reader.wrong_value({.key = "distribution", .kind = FieldKind::table}, value);
        return {};
    }
    DistributionDraft draft;
    read_fields(reader, *table, value.line, "distribution", fields, draft);
    if (draft.file) {
        refuse_others(reader, *table, "file", {"file"});
        return FileDistribution{beside(reader.document().file(), *draft.file)};
    }
    if (draft.model) return modelled(reader, *table, value.line, draft);
    if (table->find("model") == nullptr && table->find("file") == nullptr)
        reader.error(value.line, "a distribution without `model` or `file`",
                     "`model`: \"beam\", \"hat\" or \"batwing\", or `file`: a photometric file");
    return {};
}

std::vector<FieldSpec> distribution_keys() { return field_specs(fields); }

} // namespace rillwatt
