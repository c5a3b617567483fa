#include "rillwatt/cli/manual_page.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace rillwatt {

const char* const program_summary =
    "Plans low-voltage garden lighting and the electrical side of water features.";

const char* const program_cautions =
    "Figures are planning aids. Line-voltage work belongs to a licensed electrician under local code; the\n"
    "authority having jurisdiction decides.\n";

namespace {

/// Text as man(7) takes it: backslashes and hyphens escaped, a leading dot or quote kept from being a
/// request.
std::string roff(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '\\') {
            out += "\\e";
        } else if (c == '-') {
            out += "\\-";
        } else {
            if ((c == '.' || c == '\'') && (out.empty() || out.back() == '\n')) out += "\\&";
            out += c;
        }
    }
    return out;
}

std::string option_line(const OptionSpec& option) {
    if (option.value.empty()) return fmt::format(".TP\n.B {}\n{}.\n", roff(option.name), roff(option.help));
    std::string text =
        fmt::format(".TP\n.BI {} \" {}\"\n{}", roff(option.name), roff(option.value), roff(option.help));
    if (!option.choices.empty())
        text += fmt::format("; one of {}", roff(fmt::format("{}", fmt::join(option.choices, ", "))));
    if (!option.fallback.empty()) text += fmt::format("; default {}", roff(option.fallback));
    if (option.repeatable) text += "; may be given more than once";
    return text + ".\n";
}

std::string synopsis(const Command& command) {
    std::string line = "rillwatt " + command.name;
    for (const ArgumentSpec& argument : command.arguments)
        line += argument.required ? " " + argument.name : " [" + argument.name + "]";
    if (!command.options.empty()) line += " [OPTIONS]";
    return line;
}

std::string command_section(const Command& command) {
    std::string text = fmt::format(".SS {}\n{}.\n", roff(synopsis(command)), roff(command.summary));
    if (!command.description.empty()) text += fmt::format(".PP\n{}\n", roff(command.description));
    for (const ArgumentSpec& argument : command.arguments)
        text += fmt::format(".TP\n.I {}\n{}.\n", roff(argument.name), roff(argument.help));
    for (const OptionSpec& option : command.options)
        text += option_line(option);
    for (const CommandExample& example : command.examples)
        text += fmt::format(".PP\n.EX\n{}\n.EE\n.RS\n{}\n.RE\n", roff(example.line), roff(example.does));
    return text;
}

} // namespace

std::string manual_page(const std::vector<Command>& commands, const std::string& version) {
    std::string text = fmt::format(".TH RILLWATT 1 \"\" \"rillwatt {}\" \"User commands\"\n", roff(version));
    text += fmt::format(
        ".SH NAME\nrillwatt \\- plan garden lighting and the electrical side of water features\n");
    text += ".SH SYNOPSIS\n.B rillwatt\n.I COMMAND\n[\\fIARGUMENTS\\fR] [\\fIOPTIONS\\fR]\n";
    text += fmt::format(".SH DESCRIPTION\n{}\n", roff(program_summary));
    text += ".SH COMMANDS\n";
    for (const Command& command : commands)
        text += command_section(command);
    text += ".SH EXIT STATUS\n.TP\n.B 0\nNo error finding.\n.TP\n.B 1\nAt least one error finding, or sizing "
            "has no "
            "solution.\n.TP\n.B 2\nThe command line or an input file is wrong.\n.TP\n.B 3\nA fault of the "
            "program "
            "itself.\n";
    text += ".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nWhen set and not empty, no colour is written.\n"
            ".TP\n.B TERM\nWhen \\(lqdumb\\(rq, empty or not set, no colour is written.\n";
    text += fmt::format(".SH CAUTIONS\n{}", roff(program_cautions));
    return text;
}

} // namespace rillwatt
