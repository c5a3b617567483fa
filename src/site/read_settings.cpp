#include "rillwatt/conductor/conductor_table.hpp"

#include "part_readers.hpp"
#include "site_names.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

constexpr int known_editions[] = {2017, 2020, 2023};

void read_edition(ValueReader& reader, const FieldSpec& field, const Value& value, SiteSettings& settings) {
    const std::optional<double> number = value.number();
    const auto* edition = std::find(std::begin(known_editions), std::end(known_editions), number.value_or(0));
    if (edition != std::end(known_editions))
        settings.code_edition = *edition;
    else
        reader.error(value.line, "`" + std::string(field.key) + "` is " + shown_value(value),
                     "2017, 2020 or 2023, an edition of the US code that is known");
}

using S = SiteSettings;

constexpr Field<S> fields[] = {
    text_field<S, &S::name>({.key = "name", .kind = FieldKind::id, .required = true}),
    choice_field<S, &S::units>("units", length_unit_names),
    texts_field<S, &S::catalogs>("catalogs", longest_path),
    text_field<S, &S::currency>({.key = "currency", .kind = FieldKind::id}),
    temperature_field<S, &S::conductor_temperature>(
        "conductor_temperature", between(coldest_conductor.value(), hottest_conductor.value())),
    number_field<S, &S::supply_voltage>(number_spec("supply_voltage", above_zero(greatest_volts), "V")),
    percent_field<S, &S::supply_band>("supply_band_percent", 0, 50),
    percent_field<S, &S::cable_allowance>("cable_allowance_percent", 0, 100),
    number_field<S, &S::hours_per_night>(number_spec("hours_per_night", between(0, 24), "h")),
    choice_field<S, &S::code>("code", code_family_names),
    {{.key = "code_edition", .kind = FieldKind::whole_number, .range = between(2017, 2023)}, read_edition},
    boolean_field<S, &S::dwelling>("dwelling"),
    number_field<S, &S::energy_price>(number_spec("energy_price", at_least_zero(1e6), "per kWh")),
    number_field<S, &S::nights_per_year>(number_spec("nights_per_year", between(0, 366), "nights")),
    length_field<S, &S::cable_cover>("cable_cover", between(0, deepest_cover)),
    number_field<S, &S::water_attenuation>(number_spec("water_attenuation", at_least_zero(1000), "1/m")),
    number_field<S, &S::light_loss_factor>(number_spec("light_loss_factor", above_zero(1), "")),
    number_field<S, &S::light_loss_factor_water>(number_spec("light_loss_factor_water", above_zero(1), "")),
    number_field<S, &S::north>(number_spec("north", between(-360, 360), "degrees")),
};

constexpr Field<Stock> stock_fields[] = {
    texts_field<Stock, &Stock::cables>("cables"),
    texts_field<Stock, &Stock::transformers>("transformers"),
    texts_field<Stock, &Stock::fixtures>("fixtures"),
};

} // namespace

void read_settings(ValueReader& reader, const Table& table, int line, SiteSettings& settings) {
    read_fields(reader, table, line, "[site]", fields, settings);
}

void read_stock(ValueReader& reader, const Table& table, int line, Stock& stock) {
    read_fields(reader, table, line, "[stock]", stock_fields, stock);
}

std::vector<FieldSpec> settings_keys() { return field_specs(fields); }
std::vector<FieldSpec> stock_keys() { return field_specs(stock_fields); }

} // namespace rillwatt
