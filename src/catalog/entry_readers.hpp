#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/document/value_reader.hpp"

namespace rillwatt {

/// One `[kind.id]` of a catalog file.
struct EntryText {
    std::string id;
    int line;
    const Table& table;
    const std::string& source; ///< of the file, for entries that name none
};

// One reader for each kind of entry. Each puts the entry into the catalog unless something is wrong with it.

void read_conductor_table(ValueReader& reader, const EntryText& entry, Catalog& catalog);
void read_cable(ValueReader& reader, const EntryText& entry, Catalog& catalog);
void read_fixture(ValueReader& reader, const EntryText& entry, Catalog& catalog);
void read_transformer(ValueReader& reader, const EntryText& entry, Catalog& catalog);
void read_pump(ValueReader& reader, const EntryText& entry, Catalog& catalog);
void read_accessory(ValueReader& reader, const EntryText& entry, Catalog& catalog);

DistributionSpec read_distribution(ValueReader& reader, const Value& value);

std::vector<FieldSpec> conductor_table_keys();
std::vector<FieldSpec> cable_keys();
std::vector<FieldSpec> fixture_keys();
std::vector<FieldSpec> distribution_keys();
std::vector<FieldSpec> transformer_keys();
std::vector<FieldSpec> pump_keys();
std::vector<FieldSpec> accessory_keys();

/// Fills in what every entry carries.
template<class Entry>
void describe(Entry& entry, const ValueReader& reader, const EntryText& text) {
    entry.id = text.id;
    entry.location = {reader.document().file(), text.line};
    if (entry.source.empty()) entry.source = text.source;
}

} // namespace rillwatt
