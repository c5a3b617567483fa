#include "rillwatt/catalog/read_catalog.hpp"

#include "rillwatt/document/fields.hpp"

#include <fmt/format.h>

#include "entry_readers.hpp"

namespace rillwatt {
namespace {

struct EntryKind {
    std::string_view name;
    void (*read)(ValueReader&, const EntryText&, Catalog&);
    std::vector<FieldSpec> (*keys)();
};

constexpr EntryKind entry_kinds[] = {
    {"conductor_table", read_conductor_table, conductor_table_keys},
    {"cable", read_cable, cable_keys},
    {"fixture", read_fixture, fixture_keys},
    {"transformer", read_transformer, transformer_keys},
    {"pump", read_pump, pump_keys},
    {"accessory", read_accessory, accessory_keys},
};

constexpr FieldSpec version_spec{
    .key = "rillwatt_catalog", .kind = FieldKind::whole_number, .required = true, .range = between(1, 1)};
constexpr FieldSpec source_spec{.key = "source"};
constexpr FieldSpec id_spec{.key = "id", .kind = FieldKind::id};

const EntryKind* kind_named(std::string_view name) {
    for (const EntryKind& kind : entry_kinds)
        if (kind.name == name) return &kind;
    return nullptr;
}

std::vector<std::string> top_level_keys() {
    std::vector<std::string> keys{std::string(version_spec.key), std::string(source_spec.key)};
    for (const EntryKind& kind : entry_kinds)
        keys.emplace_back(kind.name);
    return keys;
}

void read_entries(ValueReader& reader, const EntryKind& kind, const Entry& all, const std::string& source,
                  Catalog& catalog) {
    const Table* entries = all.value.table();
    if (entries == nullptr) {
        reader.error(all.line, fmt::format("`{}` is {}", kind.name, shown_value(all.value)),
                     fmt::format("tables of the form `[{}.id]`", kind.name));
        return;
    }
    for (const Entry& entry : entries->entries) {
        const Value id{entry.key, entry.line};
        if (!reader.text(id_spec, id)) continue;
        if (const Table* table = entry.value.table())
            kind.read(reader, {std::string(entry.key), entry.line, *table, source}, catalog);
        else
            reader.error(
                entry.line,
                fmt::format("{} of `{}` is {}", shown_id(entry.key), kind.name, shown_value(entry.value)),
                fmt::format("a table of the form `[{}.id]`", kind.name));
    }
}

void read_root(ValueReader& reader, const Table& root, Catalog& catalog) {
    const Value* version = root.find(version_spec.key);
    if (version == nullptr) reader.missing_key(1, "catalog", version_spec);
    if (version != nullptr) reader.number(version_spec, *version);
    std::string source;
    if (const Value* value = root.find(source_spec.key))
        source = reader.text(source_spec, *value).value_or("");
    for (const Entry& entry : root.entries) {
        if (entry.key == version_spec.key || entry.key == source_spec.key) continue;
        if (const EntryKind* kind = kind_named(entry.key))
            read_entries(reader, *kind, entry, source, catalog);
        else
            reader.unknown_key(entry, top_level_keys());
    }
}

} // namespace

LoadResult<Catalog> read_catalog(std::string_view text, const std::string& file, Catalog base) {
    const LoadResult<Document> document = parse_document(text, file);
    if (!document) return {{}, document.errors};
    ValueReader reader(*document.value, std::nullopt);
    read_root(reader, document.value->root(), base);
    if (reader.failed()) return {{}, reader.take_errors()};
    return {std::move(base), {}};
}

LoadResult<Catalog> read_built_in_catalog() {
    LoadResult<Catalog> result{Catalog{}, {}};
    for (const BuiltInFile& file : built_in_files()) {
        result = read_catalog(file.text, std::string(file.name), std::move(*result.value));
        if (!result) return result;
    }
    return result;
}

std::vector<TableSpec> catalog_tables() {
    std::vector<TableSpec> tables{{"", false, false, {version_spec, source_spec}}};
    for (const EntryKind& kind : entry_kinds)
        tables.push_back({kind.name, false, true, kind.keys()});
    tables.push_back({"distribution", false, false, distribution_keys(), true});
    return tables;
}

} // namespace rillwatt
