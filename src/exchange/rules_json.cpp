#include "rillwatt/exchange/rules_json.hpp"

#include "rillwatt/exchange/json_writer.hpp"
#include "rillwatt/text/rules_text.hpp"

namespace rillwatt {

std::string rules_json(const std::vector<Rule>& rules) {
    JsonWriter json;
    json.begin_object();
    json.member("schema", "rillwatt/1");
    json.member("command", "rules");
    json.key("rules");
    json.begin_array();
    for (const Rule& rule : rules) {
        json.begin_object(JsonWriter::Set::line);
        json.member("id", rule.id);
        json.member("group", group_name(rule.group));
        json.member("severity", rule.severity);
        json.member("summary", rule.summary);
        json.member("explanation", rule.explanation);
        json.member("source", rule.source.text());
        json.end();
    }
    json.end();
    json.end();
    return json.take();
}

} // namespace rillwatt
