#include "rillwatt/conductor/conductor_table.hpp"

#include "part_readers.hpp"
#include "site_names.hpp"

namespace rillwatt {
namespace {

struct CircuitDraft : BranchCircuit {
    std::optional<bool> outdoors_given;
};

void read_conductor(ValueReader& reader, const FieldSpec& field, const Value& value, CircuitDraft& draft) {
    assign(draft.conductor, reader.text(field, value));
    if (draft.conductor && !section_mm2(*draft.conductor))
        reader.error(value.line, "conductor " + shown_id(*draft.conductor),
                     "a size of copper conductor, such as \"12 AWG\" or \"2.5 mm2\"");
}

using C = CircuitDraft;

constexpr Field<C> circuit_fields[] = {
    id_field<C>(),
    number_field<C, &C::volts>(number_spec("volts", above_zero(greatest_volts), "V")),
    number_field<C, &C::breaker>(number_spec("breaker", above_zero(1000), "A")),
    boolean_field<C, &C::gfci>("gfci"),
    {{.key = "conductor", .kind = FieldKind::id}, read_conductor},
    length_field<C, &C::length>("length", length_from_zero()),
    choice_field<C, &C::wiring>("wiring", wiring_names),
    length_field<C, &C::cover>("cover", between(0, deepest_cover)),
    choice_field<C, &C::crosses>("crosses", crossing_names),
    point_field<C, &C::at>("at"),
    choice_field<C, &C::outlet>("outlet", outlet_names),
    boolean_field<C, &C::outdoors_given>("outdoors"),
    boolean_field<C, &C::wet_cover>("wet_cover"),
};

constexpr Field<Pump> pump_fields[] = {
    id_field<Pump>(),
    catalog_field<Pump, &Pump::model>("model", true),
    reference_field<Pump, &Pump::circuit>({.key = "circuit",
                                           .kind = FieldKind::reference,
                                           .targets = circuit_part,
                                           .target_words = "a circuit"}),
    point_field<Pump, &Pump::at>("at"),
    number_field<Pump, &Pump::hours_per_day>(number_spec("hours_per_day", between(0, 24), "h")),
};

} // namespace

void read_circuit(ValueReader& reader, const Table& table, int line, Site& site) {
    CircuitDraft draft;
    read_fields(reader, table, line, "[[circuit]]", circuit_fields, draft);
    draft.outdoors = draft.outdoors_given.value_or(draft.wiring != Wiring::indoor);
    draft.location = location_of(reader, line);
    site.circuits.push_back(std::move(draft));
}

void read_pump_part(ValueReader& reader, const Table& table, int line, Site& site) {
    Pump& pump = site.pumps.emplace_back();
    read_fields(reader, table, line, "[[pump]]", pump_fields, pump);
    pump.location = location_of(reader, line);
}

std::vector<FieldSpec> circuit_part_keys() { return field_specs(circuit_fields); }
std::vector<FieldSpec> pump_part_keys() { return field_specs(pump_fields); }

} // namespace rillwatt
