#include "entry_fields.hpp"
#include "entry_readers.hpp"

namespace rillwatt {
namespace {

constexpr Field<AccessoryType> fields[] = {
    text_field<AccessoryType, &AccessoryType::use>({.key = "use", .kind = FieldKind::id, .required = true}),
    price_field<AccessoryType>(),
    source_field<AccessoryType>(),
    note_field<AccessoryType>(),
};

} // namespace

void read_accessory(ValueReader& reader, const EntryText& entry, Catalog& catalog) {
    AccessoryType type;
    read_fields(reader, entry.table, entry.line, "[accessory." + entry.id + "]", fields, type);
    describe(type, reader, entry);
    catalog.accessories.insert_or_assign(entry.id, std::move(type));
}

std::vector<FieldSpec> accessory_keys() { return field_specs(fields); }

} // namespace rillwatt
