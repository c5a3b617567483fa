#include "rillwatt/exchange/errors_json.hpp"

#include "rillwatt/exchange/json_writer.hpp"

namespace rillwatt {

namespace {

void write_error(JsonWriter& json, const InputError& error) {
    json.begin_object(JsonWriter::Set::line);
    json.member_or_null("file", error.location.file);
    json.key("line");
    if (error.location.line > 0)
        json.value(error.location.line);
    else
        json.null();
    json.member("found", error.found);
    json.member_or_null("expected", error.expected);
    json.member_or_null("source_line", error.source_line);
    json.end();
}

} // namespace

std::string errors_json(std::string_view command, const std::vector<InputError>& errors) {
    JsonWriter json;
    json.begin_object();
    json.member("schema", "rillwatt/1");
    json.member("command", command);
    json.key("errors");
    json.begin_array();
    for (const InputError& error : errors)
        write_error(json, error);
    json.end();
    json.end();
    return json.take();
}

} // namespace rillwatt
