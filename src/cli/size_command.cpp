#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/site_update.hpp"
#include "rillwatt/finding/input_error.hpp"

#include <fmt/format.h>

#include "size_options.hpp"
#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    const Answer answer = ask("size", arguments, console);
    const ExitStatus status = say(answer, console);
    if (!answer.edit) return status;
    const std::string& path = arguments.text("SITE");
    if (!update_site_file(path, answer.edit->as_read, answer.edit->update, console))
        return ExitStatus::wrong_input;
    console.err << fmt::format("{}: {}\n", printable(path), answer.edit->changes);
    return status;
}

} // namespace

Command size_command() {
    return {
        .name = "size",
        .summary = "Choose cable, taps and transformers at the least cost, and prove it",
        .description =
            "Chooses every cable, tap and transformer model the site file leaves open so that cable and "
            "transformers cost the least while every lamp keeps its window at nominal supply. With "
            "--weak-supply it keeps it on a weak one too, and a tap that on a strong supply without load "
            "gives a lamp more than its window, or a light in water more than the contact limit, is chosen "
            "only where nothing else is found, and its reason says so. What is typed stays. Candidates are "
            "the entries of [stock], or every priced entry of the catalogs. Exit status 1: nothing works, or "
            "the site has an error finding even so.",
        .arguments = {site_argument()},
        .options = size_option_specs(),
        .examples = {{"rillwatt size garden.toml", "what to use, why, and what it costs"},
                     {"rillwatt size garden.toml --diff", "what would change in the file"},
                     {"rillwatt size garden.toml --write", "write the choices into the file"},
                     {"rillwatt size garden.toml --all --weak-supply",
                      "choose what is typed as well, so that the lamps keep their windows on a weak supply"},
                     {"rillwatt size garden.toml --per-length", "each length with its own cable"}},
        .run = run};
}

} // namespace rillwatt
