#include <fmt/format.h>

#include "all_rules.hpp"

namespace rillwatt {

namespace {

/// Whether the plan itself says why a length is missing: then no-route speaks, and this rule keeps quiet.
bool told_by_no_route(const RuleContext& context, const OpenValue& open) {
    if (open.what != "length") return false;
    for (std::size_t i = 0; i < context.site.splices.size(); ++i)
        if (context.site.splices[i].id == open.part) return !context.lengths.splices[i].blocked_by.empty();
    for (std::size_t i = 0; i < context.site.fixtures.size(); ++i)
        if (context.site.fixtures[i].id == open.part) return !context.lengths.fixtures[i].blocked_by.empty();
    for (std::size_t i = 0; i < context.site.links.size(); ++i)
        if (context.site.links[i].id == open.part) return !context.lengths.links[i].blocked_by.empty();
    return false;
}

Finding describe(const OpenValue& open) {
    std::string message = fmt::format("`{}` of {} is open", open.what, open.part);
    if (!open.transformer.empty())
        message += fmt::format("; everything on transformer {} is left out of the numbers", open.transformer);
    return {.severity = Severity::error,
            .part = open.part,
            .location = open.location,
            .message = std::move(message),
            .hint = "filled by " + open.filled_by};
}

std::vector<Finding> find(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const OpenValue& open : context.circuits.open)
        if (!told_by_no_route(context, open)) findings.push_back(describe(open));
    return findings;
}

} // namespace

Rule open_value_rule() {
    return {.id = "open-value",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A value of the low-voltage side was left out",
            .explanation =
                "What is left out is open, not wrong: the program can choose it. Until it is there, the "
                "transformer it belongs to cannot be computed.",
            .source = "site file",
            .find = find};
}

} // namespace rillwatt
