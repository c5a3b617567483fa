#include "rillwatt/report/rules_text.hpp"

#include "rillwatt/report/json_writer.hpp"

namespace rillwatt {

namespace {

const char* group_name(RuleGroup group) {
    switch (group) {
    case RuleGroup::low_voltage:
        return "low voltage";
    case RuleGroup::plan:
        return "plan";
    case RuleGroup::mains:
        return "line voltage";
    case RuleGroup::light:
        break;
    }
    return "light";
}

} // namespace

std::string rules_text(const std::vector<Rule>& rules, const TextStyle& style) {
    std::string out;
    const Rule* before = nullptr;
    for (const Rule& rule : rules) {
        if (before == nullptr || before->group != rule.group)
            out += (out.empty() ? "" : "\n") + inked(style, Ink::heading, group_name(rule.group)) + "\n";
        before = &rule;
        out += '\n' + inked(style, Ink::heading, rule.id) + '\n';
        out += wrapped(rule.summary, style.width, "  ", "  ");
        out += wrapped("severity: " + std::string(rule.severity), style.width, "  ", "    ");
        out += wrapped(rule.explanation, style.width, "  ", "  ");
        out += wrapped("source: " + rule.source.text(), style.width, "  ", "    ");
    }
    return out;
}

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
