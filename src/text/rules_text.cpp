#include "rillwatt/text/rules_text.hpp"

namespace rillwatt {

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

} // namespace rillwatt
