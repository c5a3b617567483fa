#pragma once

#include "rillwatt/cli/console.hpp"
#include "rillwatt/engine/arguments.hpp"
#include "rillwatt/engine/exit_status.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What an option's value must look like; checked before the command runs.
enum class ValueKind { text, file, number, whole_number };

/// One option of a command. Without `value` it is a flag.
struct OptionSpec {
    std::string name;  ///< "--format"
    std::string value; ///< placeholder of its value, "FORMAT"; empty: a flag
    std::string help;  ///< one sentence, no full stop
    ValueKind kind = ValueKind::text;
    std::vector<std::string> choices; ///< the only values taken; empty: any
    std::string fallback;             ///< value when not given; empty: none
    bool repeatable = false;
    bool required = false;
};

/// One positional argument of a command.
struct ArgumentSpec {
    std::string name; ///< "SITE"
    std::string help;
    bool required = true;
    std::vector<std::string> choices = {}; ///< the only values taken; empty: any
};

/// An example for `--help`, the man page and the tests.
struct CommandExample {
    std::string line; ///< as typed: "rillwatt check garden.toml"
    std::string does; ///< what it does, in words
};

/// One command: the single source of its help, its man page, its completions and its parsing.
struct Command {
    std::string name;
    std::string summary;     ///< one line
    std::string description; ///< a paragraph; may be empty
    std::vector<ArgumentSpec> arguments;
    std::vector<OptionSpec> options;
    std::vector<CommandExample> examples;
    ExitStatus (*run)(const Arguments&, Console&) = nullptr;
};

/// Every command there is. A new command is one file in src/cli and one line in src/cli/all_commands.cpp.
const std::vector<Command>& all_commands();

/// The command of that name, made without the others; empty when there is none.
std::optional<Command> command_named(std::string_view name);

/// `--format text|json`, for commands with a result that programs read.
OptionSpec format_option();

/// `--catalog FILE`, repeatable, for commands that read a site.
OptionSpec catalog_option();

/// `SITE`, the site file.
ArgumentSpec site_argument();

} // namespace rillwatt
