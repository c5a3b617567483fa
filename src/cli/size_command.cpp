#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/cli/site_update.hpp"
#include "rillwatt/cli/text_difference.hpp"
#include "rillwatt/document/document_edit.hpp"
#include "rillwatt/exchange/size_json.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/sizing/weak_supply.hpp"
#include "rillwatt/text/size_text.hpp"

#include <fmt/format.h>

#include "size_options.hpp"
#include <chrono>
#include <ostream>

namespace rillwatt {

namespace {

std::function<bool()> clock_of(const Arguments& arguments) {
    const std::optional<double> seconds = arguments.number("--time");
    if (!seconds) return {};
    const auto end = std::chrono::steady_clock::now() + std::chrono::duration<double>(*seconds);
    return [end] { return std::chrono::steady_clock::now() >= end; };
}

/// Where in a site file a part stands: the name of its table.
std::string table_of(const Site& site, const std::string& part) {
    const auto holds = [&](const auto& parts) {
        return std::any_of(parts.begin(), parts.end(), [&](const auto& each) { return each.id == part; });
    };
    if (holds(site.transformers)) return "transformer";
    if (holds(site.runs)) return "run";
    if (holds(site.splices)) return "splice";
    return holds(site.links) ? "link" : "fixture";
}

/// What the choices were not made from.
constexpr std::string_view no_bearing[] = {"pump", "walk", "falls", "viewpoint"};

SiteUpdate update_of(const LoadedSite& loaded, const std::vector<SizeChoice>& choices) {
    SiteUpdate update{{}, {}, no_bearing};
    for (const SizeChoice& choice : choices)
        update.values.push_back(
            {table_of(*loaded.site, choice.part), choice.part, choice.what,
             choice.volts ? toml_number(choice.volts->value()) : toml_string(choice.value)});
    return update;
}

/// Writes the choices into the user's file, or shows what that would change. False: that went wrong.
bool put_into_file(const Arguments& arguments, const LoadedSite& loaded, const SizeResult& result,
                   Console& console) {
    const SiteUpdate update = update_of(loaded, result.choices);
    const LoadResult<std::string> edited = edited_document(loaded.text, loaded.path, update.values);
    print_errors(edited.errors, console);
    if (!edited) return false;
    if (arguments.has("--diff")) {
        console.out << text_difference(loaded.text, *edited.value, loaded.path);
        return true;
    }
    if (*edited.value == loaded.text) return true;
    if (!update_site_file(loaded, update, console)) return false;
    console.err << fmt::format("{}: {} value{} written\n", printable(loaded.path), result.choices.size(),
                               result.choices.size() == 1 ? "" : "s");
    return true;
}

/// Sizes the site; for a weak supply the options then hold the margin that was needed.
LoadResult<SizeResult> choose(const LoadedSite& loaded, bool weak_supply, SizeOptions& options) {
    if (!weak_supply) return size_site(loaded.site, loaded.catalog, options);
    LoadResult<WeakSupplySizing> sized = size_for_weak_supply(loaded.site, loaded.catalog, options);
    if (!sized) return {std::nullopt, std::move(sized.errors)};
    options.low_margin = sized.value->margin;
    return {std::move(sized.value->result), {}};
}

/// The site with the choices in place and all that is computed about it.
LoadResult<SizeReport> make_report(const LoadedSite& loaded, SizeResult result, const SizeOptions& options) {
    LoadResult<Assessment> before = assess(loaded.site, loaded.catalog);
    if (!before) return {std::nullopt, before.errors};
    LoadResult<Assessment> after = assess(result.sized, loaded.catalog);
    if (!after) return {std::nullopt, after.errors};
    Bill bill = make_bill(*result.sized, *loaded.catalog, after.value->lengths, after.value->circuits);
    return {SizeReport{std::move(result), options, std::move(*before.value), std::move(*after.value),
                       std::move(bill)},
            {}};
}

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<SizeOptions> asked = size_options(arguments, console);
    if (!asked) return ExitStatus::wrong_input;
    const std::optional<LoadedSite> loaded = load_site(arguments, console);
    if (!loaded) return ExitStatus::wrong_input;
    SizeOptions options = *asked;
    options.out_of_time = clock_of(arguments);
    LoadResult<SizeResult> sized = choose(*loaded, arguments.has("--weak-supply"), options);
    if (!sized) {
        print_errors(std::move(sized.errors), *loaded, console);
        return ExitStatus::wrong_input;
    }
    LoadResult<SizeReport> report = make_report(*loaded, std::move(*sized.value), options);
    if (!report) {
        print_errors(std::move(report.errors), *loaded, console);
        return ExitStatus::wrong_input;
    }
    const SizeResult& result = report.value->result;
    const bool whole = result.status != SizeStatus::infeasible;
    if (arguments.text("--format") == "json")
        console.out << size_json(*report.value);
    else if (!arguments.has("--diff") || !whole)
        console.out << size_text(*report.value, {.colour = console.colour});
    if (whole && (arguments.has("--write") || arguments.has("--diff")))
        if (!put_into_file(arguments, *loaded, result, console)) return ExitStatus::wrong_input;
    return !whole || any_error(report.value->after.findings) ? ExitStatus::findings : ExitStatus::ok;
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
