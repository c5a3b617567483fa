#include "rillwatt/exchange/catalog_json.hpp"

#include "rillwatt/exchange/json_writer.hpp"
#include "rillwatt/text/catalog_match.hpp"
#include "rillwatt/text/catalog_text.hpp"

namespace rillwatt {

namespace {

using Set = JsonWriter::Set;

template<class Q>
std::optional<double> number(const std::optional<Q>& quantity) {
    return quantity ? std::optional<double>(quantity->value()) : std::nullopt;
}

void write_common(JsonWriter& json, const CatalogEntry& entry) {
    json.member("id", entry.id);
    json.member_or_null("source", entry.source);
    if (!entry.note.empty()) json.member("note", entry.note);
}

void write_facts(JsonWriter& json, const CableType& cable) {
    write_common(json, cable);
    json.member("table", cable.table);
    json.member("size", cable.size);
    json.member("ampacity", cable.ampacity.value());
    json.member("direct_burial", cable.direct_burial);
    json.member("ohms_per_m", cable.resistance.value());
    json.member("reference_celsius", cable.reference_temperature.value());
    json.member("temperature_coefficient", cable.temperature_coefficient);
    json.member("price_per_m", number(cable.price));
    json.key("spools_m");
    json.begin_array();
    for (Metres spool : cable.spools)
        json.value(spool.value());
    json.end();
}

void write_facts(JsonWriter& json, const FixtureType& fixture) {
    write_common(json, fixture);
    json.member("kind", fixture_kind_name(fixture.kind));
    json.member("rated_volts", fixture.rated_volts.value());
    json.key("window");
    json.begin_array();
    json.value(fixture.window_low.value());
    json.value(fixture.window_high.value());
    json.end();
    json.member("watts", fixture.watts.value());
    json.member("va", fixture.va.value());
    json.member("load", load_model_name(fixture.load));
    json.member("lead_m", fixture.lead.value());
    json.member_or_null("lead_cable", fixture.lead_cable);
    json.member("rating", water_rating_name(fixture.rating));
    json.member("lumens", fixture.lumens.value());
    json.member("price", number(fixture.price));
}

void write_facts(JsonWriter& json, const TransformerType& transformer) {
    write_common(json, transformer);
    json.member("va", transformer.va.value());
    json.member("primary_volts", transformer.primary_volts.value());
    json.key("taps");
    json.begin_array();
    for (Volts tap : transformer.taps)
        json.value(tap.value());
    json.end();
    json.member("regulation_percent", 100 * transformer.regulation);
    json.member("secondary_limit_amps", transformer.secondary_limit.value());
    json.member("no_load_watts", transformer.no_load.value());
    json.member("water_listed", transformer.water_listed);
    json.member("price", number(transformer.price));
}

void write_facts(JsonWriter& json, const PumpType& pump) {
    write_common(json, pump);
    json.member("volts", pump.volts.value());
    json.member("amps", pump.amps.value());
    json.member("watts", pump.watts.value());
    json.member("horsepower", pump.horsepower);
    json.member("submersible", pump.submersible);
    json.member("cord_m", pump.cord.value());
    json.member("cord_and_plug", pump.cord_and_plug);
    json.member("leakage_ma", pump.leakage_ma);
    json.member("price", number(pump.price));
}

void write_facts(JsonWriter& json, const AccessoryType& accessory) {
    write_common(json, accessory);
    json.member("use", accessory.use);
    json.member("price", number(accessory.price));
}

void write_facts(JsonWriter& json, const ConductorTable& table) {
    json.member("id", table.id);
    json.member_or_null("source", table.source);
    json.member("reference_celsius", table.reference_temperature.value());
    json.member("temperature_coefficient", table.temperature_coefficient);
    json.key("ohms_per_m");
    json.begin_object();
    for (const ConductorRow& row : table.rows)
        json.member(row.size, row.resistance.value());
    json.end();
}

template<class Entries>
void write_list(JsonWriter& json, std::string_view key, const Entries& entries) {
    json.key(key);
    json.begin_array();
    for (const auto* entry : entries) {
        json.begin_object(Set::line);
        write_facts(json, *entry);
        json.end();
    }
    json.end();
}

} // namespace

std::string catalog_json(const Catalog& catalog, const CatalogQuery& query) {
    JsonWriter json;
    json.begin_object();
    json.member("schema", "rillwatt/1");
    json.member("command", "catalog");
    write_list(json, "cables", matching(catalog.cables, query, "cable"));
    write_list(json, "fixtures", matching(catalog.fixtures, query, "fixture"));
    write_list(json, "transformers", matching(catalog.transformers, query, "transformer"));
    write_list(json, "pumps", matching(catalog.pumps, query, "pump"));
    write_list(json, "accessories", matching(catalog.accessories, query, "accessory"));
    write_list(json, "conductor_tables", matching(catalog.tables, query, "conductor-table"));
    json.end();
    return json.take();
}

} // namespace rillwatt
