#include "rillwatt/cli/command_line.hpp"

#include "rillwatt/cli/manual_page.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/text/text_style.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cmath>
#include <deque>
#include <ostream>
#include <span>

namespace rillwatt {

namespace {

/// What CLI11 fills while it parses: one list of values for each name of a command.
struct Slots {
    std::map<std::string, std::vector<std::string>> values;
    std::map<std::string, bool> flags;
};

std::string check_number(const std::string& word, bool whole) {
    Arguments one;
    one.set("n", {word});
    const std::optional<double> value = one.number("n");
    if (!value || !std::isfinite(*value)) return fmt::format("`{}` is no number", printable(word));
    if (whole && *value != std::floor(*value)) return fmt::format("`{}` is no whole number", printable(word));
    return {};
}

void add_option(CLI::App& app, const OptionSpec& spec, Slots& slots) {
    if (spec.value.empty()) {
        app.add_flag(spec.name, slots.flags[spec.name], spec.help);
        return;
    }
    CLI::Option* option = app.add_option(spec.name, slots.values[spec.name], spec.help);
    option->type_name(spec.value);
    option->required(spec.required);
    option->expected(1, spec.repeatable ? CLI::detail::expected_max_vector_size : 1);
    option->multi_option_policy(spec.repeatable ? CLI::MultiOptionPolicy::TakeAll
                                                : CLI::MultiOptionPolicy::Throw);
    option->allow_extra_args(false); // the next word is the next option's or an argument
    if (!spec.choices.empty()) option->check(CLI::IsMember(spec.choices));
    if (!spec.fallback.empty()) option->default_str(spec.fallback);
    if (spec.kind == ValueKind::number || spec.kind == ValueKind::whole_number) {
        const bool whole = spec.kind == ValueKind::whole_number;
        option->check([whole](const std::string& word) { return check_number(word, whole); });
    }
}

std::string footer(const Command& command) {
    std::string text;
    if (!command.description.empty()) text += wrapped(command.description, 80, "", "") + "\n";
    if (!command.examples.empty()) text += "Examples:\n";
    for (const CommandExample& example : command.examples)
        text += fmt::format("  {}\n      {}\n", example.line, example.does);
    if (!text.empty()) text += "\n";
    return text + program_cautions;
}

CLI::App* add_command(CLI::App& program, const Command& command, Slots& slots) {
    CLI::App* app = program.add_subcommand(command.name, command.summary);
    app->group("Commands");
    for (const ArgumentSpec& spec : command.arguments) {
        CLI::Option* option = app->add_option(spec.name, slots.values[spec.name], spec.help);
        option->type_name("");
        option->expected(1);
        option->multi_option_policy(CLI::MultiOptionPolicy::Throw);
        option->allow_extra_args(false); // the next word is the next argument's
        option->required(spec.required);
        if (!spec.choices.empty()) option->check(CLI::IsMember(spec.choices));
    }
    for (const OptionSpec& spec : command.options)
        add_option(*app, spec, slots);
    app->footer(footer(command));
    return app;
}

Arguments collect(const Command& command, const Slots& slots) {
    Arguments arguments;
    for (const auto& [name, values] : slots.values)
        if (!values.empty()) arguments.set(name, values);
    for (const auto& [name, given] : slots.flags)
        if (given) arguments.set(name, {});
    for (const OptionSpec& spec : command.options)
        if (!spec.fallback.empty() && !arguments.has(spec.name)) arguments.set(spec.name, {spec.fallback});
    return arguments;
}

/// CLI11 numbers its exits from 100; ours are few: asked for help, or a wrong command line.
ExitStatus explain_exit(const CLI::App& program, const CLI::ParseError& stop, Console& console) {
    const bool wrong = program.exit(stop, console.out, console.err) != 0;
    return wrong ? ExitStatus::wrong_input : ExitStatus::ok;
}

/// "there is no command `chek`; nearest is `check`".
std::string unknown_command_text(const std::string& word) {
    std::vector<std::string> names;
    for (const Command& command : all_commands())
        names.push_back(command.name);
    const std::optional<std::string> nearest = nearest_spelling(word, names);
    return fmt::format("rillwatt: there is no command `{}`{}\n`rillwatt --help` lists the commands.\n",
                       printable(word), nearest ? fmt::format("; nearest is `{}`", *nearest) : "");
}

} // namespace

std::string program_version() { return RILLWATT_VERSION; }

ExitStatus run_command_line(const std::vector<std::string>& words, Console& console) {
    CLI::App program("Plans low-voltage garden lighting and the electrical side of water features.",
                     "rillwatt");
    program.set_version_flag("--version", "rillwatt " + program_version(), "print the version and leave");
    program.set_help_flag("--help,-h", "print this help and leave");
    program.require_subcommand(1);
    program.get_formatter()->column_width(28);
    program.get_formatter()->label("SUBCOMMAND", "COMMAND");
    program.footer(std::string("`rillwatt COMMAND --help` shows a command's options and examples.\n\n") +
                   program_cautions);
    program.failure_message([](const CLI::App*, const CLI::Error& error) {
        return fmt::format(
            "rillwatt: {}\n`rillwatt --help` lists the commands, `rillwatt COMMAND --help` its options.\n",
            printable(error.what()));
    });

    // A word that names a command leaves no room for the others.
    const std::optional<Command> named = words.empty() ? std::nullopt : command_named(words.front());
    if (!named && !words.empty() && !words.front().starts_with('-')) {
        console.err << unknown_command_text(words.front());
        return ExitStatus::wrong_input;
    }
    const std::span<const Command> commands = named ? std::span(&*named, 1) : std::span(all_commands());
    std::deque<Slots> slots;
    std::vector<CLI::App*> apps;
    for (const Command& command : commands)
        apps.push_back(add_command(program, command, slots.emplace_back()));

    try {
        program.parse(std::vector<std::string>(words.rbegin(), words.rend()));
    } catch (const CLI::ParseError& stop) {
        return explain_exit(program, stop, console);
    }
    for (std::size_t i = 0; i < apps.size(); ++i) {
        if (!apps[i]->parsed()) continue;
        return commands[i].run(collect(commands[i], slots[i]), console);
    }
    return ExitStatus::wrong_input;
}

} // namespace rillwatt
