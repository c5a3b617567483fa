#include <fmt/format.h>

#include "entry_fields.hpp"
#include "entry_readers.hpp"

namespace rillwatt {
namespace {

constexpr FieldSpec number_spec(std::string_view key, FieldRange range, std::string_view unit,
                                bool required = false) {
    return {.key = key, .kind = FieldKind::number, .required = required, .range = range, .unit = unit};
}

constexpr Field<PumpType> fields[] = {
    number_field<PumpType, &PumpType::volts>(number_spec("volts", above_zero(greatest_volts), "V", true)),
    number_field<PumpType, &PumpType::amps>(number_spec("amps", above_zero(1000), "A", true)),
    number_field<PumpType, &PumpType::watts>(number_spec("watts", above_zero(greatest_watts), "W", true)),
    number_field<PumpType, &PumpType::horsepower>(number_spec("horsepower", above_zero(200), "hp")),
    boolean_field<PumpType, &PumpType::submersible>("submersible"),
    length_field<PumpType, &PumpType::cord>("cord", at_least_zero(longest_metres)),
    boolean_field<PumpType, &PumpType::cord_and_plug>("cord_and_plug"),
    number_field<PumpType, &PumpType::leakage_ma>(number_spec("leakage_ma", at_least_zero(1000), "mA")),
    price_field<PumpType>(),
    source_field<PumpType>(),
    note_field<PumpType>(),
};

} // namespace

void read_pump(ValueReader& reader, const EntryText& entry, Catalog& catalog) {
    PumpType type;
    read_fields(reader, entry.table, entry.line, "[pump." + entry.id + "]", fields, type);
    constexpr double rounding =
        1.1; // nameplate amperes are rounded; more watts than volts times amperes are a slip
    if (type.amps > Amperes(0) && type.watts.value() > rounding * (type.volts * type.amps).value())
        reader.error(line_of(entry.table, "watts", entry.line),
                     fmt::format("pump {} of {} W at {} V and {} A", shown_id(entry.id), type.watts.value(),
                                 type.volts.value(), type.amps.value()),
                     "watts not above volts times amperes: a power factor is never above 1");
    describe(type, reader, entry);
    catalog.pumps.insert_or_assign(entry.id, std::move(type));
}

std::vector<FieldSpec> pump_keys() { return field_specs(fields); }

} // namespace rillwatt
