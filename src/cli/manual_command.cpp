#include "rillwatt/cli/command_line.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/completions.hpp"
#include "rillwatt/cli/manual_page.hpp"

#include <ostream>

namespace rillwatt {

namespace {

std::vector<std::string> shells() { return {"bash", "zsh", "fish"}; }

ExitStatus print_manual(const Arguments&, Console& console) {
    console.out << manual_page(all_commands(), program_version());
    return ExitStatus::ok;
}

ExitStatus print_completions(const Arguments& arguments, Console& console) {
    const std::string& shell = arguments.has("SHELL") ? arguments.text("SHELL") : arguments.text("--shell");
    if (shell == "bash") console.out << bash_completions(all_commands());
    if (shell == "zsh") console.out << zsh_completions(all_commands());
    if (shell == "fish") console.out << fish_completions(all_commands());
    return ExitStatus::ok;
}

} // namespace

Command manual_command() {
    return {.name = "manual",
            .summary = "Print the manual page, for man(1)",
            .examples = {{"rillwatt manual | man -l -", "read it here and now"}},
            .run = print_manual};
}

Command completions_command() {
    return {
        .name = "completions",
        .summary = "Print the completion script for a shell",
        .arguments = {{.name = "SHELL", .help = "bash, zsh or fish", .required = false, .choices = shells()}},
        .options = {{.name = "--shell",
                     .value = "SHELL",
                     .help = "the same as an option",
                     .choices = shells(),
                     .fallback = "bash"}},
        .examples = {{"source <(rillwatt completions bash)", "complete in this shell"}},
        .run = print_completions};
}

} // namespace rillwatt
