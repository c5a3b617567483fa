#include "rillwatt/cli/completions.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace rillwatt {

namespace {

std::string command_names(const std::vector<Command>& commands) {
    std::vector<std::string> names;
    for (const Command& command : commands)
        names.push_back(command.name);
    return fmt::format("{}", fmt::join(names, " "));
}

std::string option_names(const Command& command) {
    std::vector<std::string> names;
    for (const OptionSpec& option : command.options)
        names.push_back(option.name);
    names.emplace_back("--help");
    return fmt::format("{}", fmt::join(names, " "));
}

/// Text inside single quotes of a POSIX shell.
std::string quoted(const std::string& text) {
    std::string out;
    for (const char c : text)
        out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out;
}

/// zsh's _arguments takes brackets and colons as its own.
std::string zsh_words(const std::string& text) {
    std::string out;
    for (const char c : quoted(text)) {
        if (c == '[' || c == ']' || c == ':') out += '\\';
        out += c;
    }
    return out;
}

std::string bash_case(const Command& command) {
    std::string text = fmt::format("    {})\n      case \"$previous\" in\n", command.name);
    for (const OptionSpec& option : command.options)
        if (!option.choices.empty())
            text += fmt::format("        {}) COMPREPLY=($(compgen -W '{}' -- \"$word\")); return ;;\n",
                                option.name, fmt::join(option.choices, " "));
    for (const ArgumentSpec& argument : command.arguments)
        if (!argument.choices.empty())
            text += fmt::format("        {}) COMPREPLY=($(compgen -W '{}' -- \"$word\")) ;;\n", command.name,
                                fmt::join(argument.choices, " "));
    text += fmt::format(
        "      esac\n      [[ $word == -* ]] && COMPREPLY=($(compgen -W '{}' -- \"$word\"))\n      ;;\n",
        option_names(command));
    return text;
}

std::string zsh_value(const OptionSpec& option) {
    if (option.value.empty()) return {};
    if (!option.choices.empty()) return fmt::format(":{}:({})", option.value, fmt::join(option.choices, " "));
    return fmt::format(":{}:_files", option.value);
}

std::string zsh_case(const Command& command) {
    std::string text = fmt::format("    {})\n      _arguments", command.name);
    for (const OptionSpec& option : command.options)
        text += fmt::format(" \\\n        '{}{}[{}]{}'", option.repeatable ? "*" : "", option.name,
                            zsh_words(option.help), zsh_value(option));
    for (const ArgumentSpec& argument : command.arguments)
        text += fmt::format(" \\\n        ':{}:{}'", zsh_words(argument.name),
                            argument.choices.empty() ? "_files"
                                                     : fmt::format("({})", fmt::join(argument.choices, " ")));
    return text + "\n      ;;\n";
}

std::string fish_option(const Command& command, const OptionSpec& option) {
    std::string line = fmt::format("complete -c rillwatt -n '__fish_seen_subcommand_from {}' -l {} -d '{}'",
                                   command.name, option.name.substr(2), quoted(option.help));
    if (!option.value.empty()) line += " -r";
    if (!option.choices.empty()) line += fmt::format(" -f -a '{}'", fmt::join(option.choices, " "));
    return line + "\n";
}

} // namespace

std::string bash_completions(const std::vector<Command>& commands) {
    std::string text =
        "_rillwatt() {\n  local word=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD-1]}\n"
        "  COMPREPLY=()\n";
    text += fmt::format(
        "  if [[ $COMP_CWORD -eq 1 ]]; then\n    COMPREPLY=($(compgen -W '{} --help --version' -- "
        "\"$word\"))\n    return\n  fi\n  case \"${{COMP_WORDS[1]}}\" in\n",
        command_names(commands));
    for (const Command& command : commands)
        text += bash_case(command);
    return text + "  esac\n}\ncomplete -o default -F _rillwatt rillwatt\n";
}

std::string zsh_completions(const std::vector<Command>& commands) {
    std::string text = "#compdef rillwatt\n_rillwatt() {\n  local -a commands=(\n";
    for (const Command& command : commands)
        text += fmt::format("    '{}:{}'\n", command.name, zsh_words(command.summary));
    text += "  )\n  if (( CURRENT == 2 )); then\n    _describe command commands\n    return\n  fi\n"
            "  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n  case $command in\n";
    for (const Command& command : commands)
        text += zsh_case(command);
    return text + "  esac\n}\n_rillwatt \"$@\"\n";
}

std::string fish_completions(const std::vector<Command>& commands) {
    std::string text;
    for (const Command& command : commands)
        text += fmt::format("complete -c rillwatt -n __fish_use_subcommand -f -a {} -d '{}'\n", command.name,
                            quoted(command.summary));
    for (const Command& command : commands) {
        for (const ArgumentSpec& argument : command.arguments)
            if (!argument.choices.empty())
                text += fmt::format("complete -c rillwatt -n '__fish_seen_subcommand_from {}' -f -a '{}'\n",
                                    command.name, fmt::join(argument.choices, " "));
        for (const OptionSpec& option : command.options)
            text += fish_option(command, option);
    }
    return text;
}

} // namespace rillwatt
