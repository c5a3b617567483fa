#include "rillwatt/exchange/schema_json.hpp"

#include "rillwatt/exchange/json_writer.hpp"
#include "rillwatt/text/schema_text.hpp"

#include <charconv>
#include <cmath>

namespace rillwatt {

namespace {

void write_type(JsonWriter& json, const char* type) { json.member("type", type); }

void write_number(JsonWriter& json, const FieldSpec& field, const char* type) {
    write_type(json, type);
    if (std::isfinite(field.range.low))
        json.member(field.range.above_low ? "exclusiveMinimum" : "minimum", field.range.low);
    if (std::isfinite(field.range.high)) json.member("maximum", field.range.high);
}

/// A length or temperature: a bare number or text with its unit.
void write_measure(JsonWriter& json) {
    json.key("type");
    json.begin_array(JsonWriter::Set::line);
    json.value("number");
    json.value("string");
    json.end();
}

void write_items(JsonWriter& json, const FieldSpec& field, void (*item)(JsonWriter&)) {
    write_type(json, "array");
    if (field.least_items > 0) json.member("minItems", field.least_items);
    if (field.most_items < 1'000'000) json.member("maxItems", field.most_items);
    json.key("items");
    json.begin_object(JsonWriter::Set::line);
    item(json);
    json.end();
}

void write_text_item(JsonWriter& json) { write_type(json, "string"); }
void write_number_item(JsonWriter& json) { write_type(json, "number"); }
void write_point_item(JsonWriter& json) {
    json.key("type");
    json.begin_array(JsonWriter::Set::line);
    json.value("array");  // [x, y]
    json.value("object"); // taped from two marks
    json.end();
}

void write_choices(JsonWriter& json, const FieldSpec& field) {
    json.key("enum");
    json.begin_array(JsonWriter::Set::line);
    for (const std::string_view choice : field.choices)
        json.value(choice);
    json.end();
}

void write_value_schema(JsonWriter& json, const FieldSpec& field) {
    switch (field.kind) {
    case FieldKind::id:
    case FieldKind::text:
    case FieldKind::reference:
        return write_type(json, "string");
    case FieldKind::boolean:
        return write_type(json, "boolean");
    case FieldKind::whole_number:
        return write_number(json, field, "integer");
    case FieldKind::number:
    case FieldKind::percent:
        return write_number(json, field, "number");
    case FieldKind::length:
    case FieldKind::temperature:
        return write_measure(json);
    case FieldKind::choice:
        return write_choices(json, field);
    case FieldKind::point:
    case FieldKind::space_point:
        return write_point_item(json);
    case FieldKind::id_list:
    case FieldKind::reference_list:
        return write_items(json, field, write_text_item);
    case FieldKind::number_list:
        return write_items(json, field, write_number_item);
    case FieldKind::length_list:
        return write_items(json, field, [](JsonWriter& items) { write_measure(items); });
    case FieldKind::point_list:
        return write_items(json, field, write_point_item);
    case FieldKind::table:
        return write_type(json, "object");
    }
}

/// A value as it is written in the file.
void write_default(JsonWriter& json, std::string_view value) {
    if (value == "true" || value == "false") return json.member("default", value == "true");
    if (value.starts_with('"')) return json.member("default", value.substr(1, value.size() - 2));
    double number = 0;
    const auto [end, fault] = std::from_chars(value.data(), value.data() + value.size(), number);
    if (fault == std::errc() && end == value.data() + value.size()) json.member("default", number);
}

void write_field(JsonWriter& json, const TableSpec& table, const FieldSpec& field) {
    const KeyWords* words = key_words(table_heading(table), field.key);
    json.key(field.key);
    json.begin_object(JsonWriter::Set::line);
    write_value_schema(json, field);
    const std::string says = words == nullptr ? "" : std::string(words->says) + ": ";
    json.member("description", says + expected_words(field, true));
    if (words != nullptr && words->is_value) write_default(json, words->otherwise);
    json.end();
}

void write_required(JsonWriter& json, const std::vector<FieldSpec>& fields) {
    json.key("required");
    json.begin_array(JsonWriter::Set::line);
    for (const FieldSpec& field : fields)
        if (field.required) json.value(field.key);
    json.end();
}

void write_table(JsonWriter& json, const TableSpec& table) {
    json.begin_object();
    write_type(json, "object");
    json.member("additionalProperties", false);
    json.key("properties");
    json.begin_object();
    for (const FieldSpec& field : table.fields)
        write_field(json, table, field);
    json.end();
    write_required(json, table.fields);
    json.end();
}

void write_property(JsonWriter& json, const TableSpec& table) {
    json.key(table.name);
    if (!table.repeated && !table.named) return write_table(json, table);
    json.begin_object();
    write_type(json, table.repeated ? "array" : "object");
    json.key(table.repeated ? "items" : "additionalProperties");
    write_table(json, table);
    json.end();
}

/// Keys at the top of the file and the tables below it.
void write_top(JsonWriter& json, const std::vector<TableSpec>& tables) {
    json.key("properties");
    json.begin_object();
    for (const TableSpec& table : tables) {
        if (table.nested) continue;
        if (!table.name.empty()) {
            write_property(json, table);
            continue;
        }
        for (const FieldSpec& field : table.fields)
            write_field(json, table, field);
    }
    json.end();
    for (const TableSpec& table : tables)
        if (table.name.empty()) write_required(json, table.fields);
}

} // namespace

std::string schema_json(const std::vector<TableSpec>& tables, const std::string& title) {
    JsonWriter json;
    json.begin_object();
    json.member("$schema", "https://json-schema.org/draft/2020-12/schema");
    json.member("title", title);
    write_type(json, "object");
    json.member("additionalProperties", false);
    write_top(json, tables);
    json.end();
    return json.take();
}

} // namespace rillwatt
