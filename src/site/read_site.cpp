#include "rillwatt/site/read_site.hpp"

#include <fmt/format.h>

#include "part_index.hpp"
#include "part_readers.hpp"
#include "taped_points.hpp"
#include <algorithm>
#include <unordered_map>

namespace rillwatt {
namespace {

constexpr FieldSpec version_spec{
    .key = "rillwatt", .kind = FieldKind::whole_number, .required = true, .range = between(1, 1)};

/// Marks are read by `TapedPoints`, before everything that may be taped from them.
void skip_mark(ValueReader&, const Table&, int, Site&) {}

constexpr PartTable part_tables[] = {
    {"circuit", circuit_part, read_circuit, circuit_part_keys},
    {"pump", pump_part, read_pump_part, pump_part_keys},
    {"transformer", transformer_part, read_transformer_part, transformer_part_keys},
    {"run", run_part, read_run, run_keys},
    {"splice", splice_part, read_splice, splice_keys},
    {"fixture", fixture_part, read_fixture_part, fixture_part_keys},
    {"link", link_part, read_link, link_keys},
    {"area", area_part, read_area, area_keys},
    {"sleeve", sleeve_part, read_sleeve, sleeve_keys},
    {"mark", mark_part, skip_mark, mark_keys},
    {"walk", walk_part, read_walk, walk_keys},
    {"falls", falls_part, read_falls, falls_keys},
    {"viewpoint", viewpoint_part, read_viewpoint, viewpoint_keys},
};

const PartTable* table_named(std::string_view name) {
    for (const PartTable& table : part_tables)
        if (table.name == name) return &table;
    return nullptr;
}

std::vector<std::string> top_level_keys() {
    std::vector<std::string> keys{"rillwatt", "site", "stock"};
    for (const PartTable& table : part_tables)
        keys.emplace_back(table.name);
    return keys;
}

/// The tables of `[[name]]`, or null after reporting what stands there instead.
const Array* repeated_tables(ValueReader& reader, const Entry& entry) {
    const Array* tables = entry.value.array();
    const bool is_list_of_tables =
        tables != nullptr && std::all_of(tables->begin(), tables->end(),
                                         [](const Value& value) { return value.table() != nullptr; });
    if (is_list_of_tables) return tables;
    reader.error(entry.line, fmt::format("`{}` is {}", entry.key, shown_value(entry.value)),
                 fmt::format("`[[{}]]` in double brackets, once for each", entry.key));
    return nullptr;
}

void read_version(ValueReader& reader, const Table& root) {
    if (const Value* version = root.find(version_spec.key))
        reader.number(version_spec, *version);
    else
        reader.missing_key(1, "site file", version_spec);
}

void read_site_table(ValueReader& reader, const Table& root, Site& site) {
    const Value* value = root.find("site");
    const Table* table = value != nullptr ? value->table() : nullptr;
    if (table == nullptr) {
        reader.error(value != nullptr ? value->line : 1,
                     value != nullptr ? fmt::format("`site` is {}", shown_value(*value))
                                      : "a site file without `[site]`",
                     "`[site]` with at least `name`");
        return;
    }
    // What a bare length means must be known before the first one is read, wherever it is written.
    if (const Value* units = table->find("units");
        units != nullptr && units->text() != nullptr && *units->text() == "m")
        reader.set_bare_lengths(LengthUnit::metres);
    read_settings(reader, *table, value->line, site.settings);
}

void read_stock_table(ValueReader& reader, const Entry& entry, Site& site) {
    if (const Table* table = entry.value.table())
        read_stock(reader, *table, entry.line, site.stock);
    else
        reader.error(entry.line, fmt::format("`stock` is {}", shown_value(entry.value)), "`[stock]`");
}

void read_parts(ValueReader& reader, const Table& root, Site& site) {
    for (const Entry& entry : root.entries) {
        if (entry.key == "rillwatt" || entry.key == "site") continue;
        if (entry.key == "stock") {
            read_stock_table(reader, entry, site);
        } else if (const PartTable* kind = table_named(entry.key)) {
            const Array* tables = repeated_tables(reader, entry);
            if (tables == nullptr) continue;
            if (kind->kind == fixture_part) site.fixtures.reserve(tables->size()); // by far the most
            for (const Value& value : *tables)
                kind->read(reader, *value.table(), value.line, site);
        } else {
            reader.unknown_key(entry, top_level_keys());
        }
    }
}

/// The id of a part as it is written.
struct WrittenId {
    const Value* value;
    PartKind kind;
};

/// All ids by line.
std::vector<WrittenId> written_ids(const Table& root) {
    const auto before = [](const WrittenId& a, const WrittenId& b) { return a.value->line < b.value->line; };
    std::vector<WrittenId> found;
    for (const Entry& entry : root.entries) {
        const PartTable* kind = table_named(entry.key);
        if (kind == nullptr || entry.value.array() == nullptr) continue;
        const auto known = static_cast<std::ptrdiff_t>(found.size());
        for (const Value& value : *entry.value.array())
            if (const Table* table = value.table())
                if (const Value* id = table->find("id")) found.push_back({id, kind->kind});
        std::inplace_merge(found.begin(), found.begin() + known, found.end(), before);
    }
    return found;
}

/// A link may go without an id of its own: it is then called by its ends.
void name_links(Site& site, const PartIndex& index) {
    std::unordered_map<std::string, int> taken; // and how many are called so already
    for (Link& link : site.links) {
        if (!link.id.empty()) continue;
        const std::string ends = fmt::format("{} - {}", link.a, link.b);
        int& same = taken[ends];
        do {
            ++same;
            link.id = same == 1 ? ends
                                : fmt::format("{} (link{})", ends, same == 2 ? "" : fmt::format(" {}", same));
        } while (index.contains(link.id));
    }
}

} // namespace

SiteDraft read_site_draft(std::string_view text, const std::string& file) {
    const LoadResult<Document> document = parse_document(text, file);
    if (!document) return {std::nullopt, document.errors};
    const Table& root = document.value->root();
    ValueReader reader(*document.value, LengthUnit::feet);
    Site site;
    site.file = file;
    read_version(reader, root);
    read_site_table(reader, root, site);
    TapedPoints taped_points;
    reader.set_point_source(&taped_points);
    if (const Value* marks = root.find("mark"); marks != nullptr && marks->array() != nullptr)
        taped_points.read_marks(reader, *marks->array(), site);
    read_parts(reader, root, site);
    const std::vector<WrittenId> ids = written_ids(root);
    PartIndex index(ids.size());
    for (const WrittenId& id : ids)
        index.add(reader, *id.value, id.kind);
    for (const PendingReference& reference : reader.references())
        index.check(reader, reference);
    name_links(site, index);
    return {std::move(site), reader.take_errors()};
}

LoadResult<Site> read_site(std::string_view text, const std::string& file) {
    SiteDraft draft = read_site_draft(text, file);
    if (!draft.errors.empty()) return {std::nullopt, std::move(draft.errors)};
    return {std::move(draft.site), {}};
}

std::vector<TableSpec> site_tables() {
    std::vector<TableSpec> tables{{"", false, false, {version_spec}},
                                  {"site", false, false, settings_keys()},
                                  {"stock", false, false, stock_keys()}};
    for (const PartTable& table : part_tables)
        tables.push_back({table.name, true, false, table.keys()});
    tables.push_back({"taped point", false, false, taped_point_keys(), true});
    return tables;
}

} // namespace rillwatt
