#include "rillwatt/cli/commands.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/report/rules_text.hpp"

#include <fmt/format.h>

#include <ostream>

namespace rillwatt {

namespace {

/// The rule of that id, or every rule when none is named.
std::vector<Rule> chosen_rules(const std::string& id) {
    std::vector<Rule> chosen;
    for (const Rule& rule : all_rules())
        if (id.empty() || rule.id == id) chosen.push_back(rule);
    return chosen;
}

ExitStatus no_such_rule(const std::string& id, Console& console) {
    std::vector<std::string> ids;
    for (const Rule& rule : all_rules())
        ids.push_back(rule.id);
    const std::optional<std::string> near = nearest_spelling(id, ids);
    console.err << fmt::format("rillwatt: there is no rule `{}`{}\n", printable(id),
                               near ? "; nearest is `" + *near + "`" : "; `rillwatt rules` lists them all");
    return ExitStatus::wrong_input;
}

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::string& id = arguments.text("RULE");
    const std::vector<Rule> rules = chosen_rules(id);
    if (rules.empty()) return no_such_rule(id, console);
    const bool json = arguments.text("--format") == "json";
    console.out << (json ? rules_json(rules) : rules_text(rules, {.colour = console.colour, .width = 80}));
    return ExitStatus::ok;
}

} // namespace

Command rules_command() {
    return {.name = "rules",
            .summary = "List every rule with its explanation and the source of its limit",
            .description = "",
            .arguments = {{.name = "RULE", .help = "only the rule with this id", .required = false}},
            .options = {format_option()},
            .examples = {{"rillwatt rules", "every rule the program knows"},
                         {"rillwatt rules lamp-undervoltage",
                          "one rule: why it is there and how to mend what it finds"}},
            .run = run};
}

} // namespace rillwatt
