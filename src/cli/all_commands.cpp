#include "rillwatt/cli/command.hpp"
#include "rillwatt/cli/commands.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

/// A command's name and what makes it: a start of the program makes the one command it runs.
struct CommandMaker {
    std::string_view name;
    Command (*make)();
};

constexpr CommandMaker makers[] = {
    {"new", new_command},           {"check", check_command},
    {"explain", explain_command},   {"plan", plan_command},
    {"light", light_command},       {"place", place_command},
    {"size", size_command},         {"headroom", headroom_command},
    {"circuits", circuits_command}, {"report", report_command},
    {"watch", watch_command},       {"catalog", catalog_command},
    {"rules", rules_command},       {"schema", schema_command},
    {"manual", manual_command},     {"completions", completions_command},
};

} // namespace

const std::vector<Command>& all_commands() {
    static const std::vector<Command> commands = [] {
        std::vector<Command> made;
        for (const CommandMaker& maker : makers)
            made.push_back(maker.make());
        return made;
    }();
    return commands;
}

std::optional<Command> command_named(std::string_view name) {
    const auto* maker = std::find_if(std::begin(makers), std::end(makers),
                                     [name](const CommandMaker& each) { return each.name == name; });
    if (maker == std::end(makers)) return std::nullopt;
    return maker->make();
}

} // namespace rillwatt
