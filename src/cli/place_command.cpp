#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/file_access.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/cli/site_update.hpp"
#include "rillwatt/document/document_edit.hpp"
#include "rillwatt/exchange/place_json.hpp"
#include "rillwatt/placing/propose_lights.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/text/place_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace rillwatt {

namespace {

const FixtureKind all_kinds[] = {FixtureKind::path,   FixtureKind::step,        FixtureKind::downlight,
                                 FixtureKind::accent, FixtureKind::submersible, FixtureKind::other};

std::vector<std::string> kind_names() {
    std::vector<std::string> names;
    for (const FixtureKind kind : all_kinds)
        names.emplace_back(fixture_kind_name(kind));
    return names;
}

PlacingOptions options_of(const Arguments& arguments) {
    PlacingOptions options;
    options.models = arguments.all("--model");
    for (const FixtureKind kind : all_kinds) {
        const std::vector<std::string>& asked = arguments.all("--kind");
        if (std::find(asked.begin(), asked.end(), fixture_kind_name(kind)) != asked.end())
            options.kinds.push_back(kind);
    }
    options.cheapest = arguments.has("--cheapest");
    return options;
}

/// Photometric files of the lights that stand and of those on offer.
std::optional<PhotometricFiles> photometry_for(const LoadedSite& loaded, const PlacingOptions& options,
                                               Console& console) {
    std::optional<PhotometricFiles> files = load_photometry(loaded, console);
    if (!files) return {};
    for (const std::string& path :
         photometric_paths(*loaded.catalog, types_on_offer(*loaded.site, *loaded.catalog, options))) {
        FileText text = read_file(path);
        if (text.text)
            files->emplace(path, std::move(*text.text)); // a missing one is told with its catalog line
    }
    return files;
}

/// The site file with the proposal behind it, computed.
std::optional<Assessment> outcome_of(const LoadedSite& loaded, const std::string& appended,
                                     const PhotometricFiles& files, Console& console) {
    LoadResult<std::string> text = edited_document(loaded.text, loaded.path, {}, appended);
    print_errors(text.errors, console);
    if (!text) return {};
    LoadResult<Site> site = read_site(*text.value, loaded.path);
    print_errors(site.errors, console);
    if (!site) return {};
    LoadResult<Assessment> assessed =
        assess(std::make_shared<const Site>(std::move(*site.value)), loaded.catalog, &files);
    print_errors(assessed.errors, console);
    if (!assessed) return {};
    return std::move(assessed.value);
}

bool written(const LoadedSite& loaded, const std::string& addition, std::size_t lights, Console& console) {
    if (!update_site_file(loaded, {{}, addition, {}}, console)) return false;
    console.err << fmt::format("{} light{} added to {}\n", lights, lights == 1 ? "" : "s",
                               printable(loaded.path));
    return true;
}

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<LoadedSite> loaded = load_site(arguments, console);
    if (!loaded) return ExitStatus::wrong_input;
    const PlacingOptions options = options_of(arguments);
    const std::optional<PhotometricFiles> files = photometry_for(*loaded, options, console);
    if (!files) return ExitStatus::wrong_input;
    LoadResult<Assessment> now = assess(loaded->site, loaded->catalog);
    print_errors(std::move(now.errors), *loaded, console);
    if (!now) return ExitStatus::wrong_input;
    const LoadResult<PlacingProposal> proposal =
        propose_lights(*loaded->site, *loaded->catalog, &now.value->solution, *files, options);
    print_errors(proposal.errors, console);
    if (!proposal) return ExitStatus::wrong_input;
    const std::string toml = proposal_toml(*proposal.value, loaded->site->settings);
    const std::string addition = toml.empty() ? "" : "\n" + toml;
    const std::optional<Assessment> outcome = outcome_of(*loaded, addition, *files, console);
    if (!outcome) return ExitStatus::wrong_input;
    const PlaceReport report{*proposal.value, toml, *outcome};
    if (arguments.text("--format") == "json")
        console.out << place_json(report);
    else
        console.out << place_text(report, {.colour = console.colour});
    if (arguments.has("--write") && !toml.empty() &&
        !written(*loaded, addition, proposal.value->lights.size(), console))
        return ExitStatus::wrong_input;
    return proposal.value->unmet.empty() ? ExitStatus::ok : ExitStatus::findings;
}

} // namespace

Command place_command() {
    return {
        .name = "place",
        .summary = "Propose lights for walks and falls that have none or too few",
        .description =
            "Finds the fewest lights (or the cheapest) that give each walk its class and light each falls "
            "face: staggered or along one side, set back from the edge, not in water, on paving or in a "
            "building, not into a viewer's eye; for falls at the foot of the sheet, looking up at it. "
            "Lights that are there count. Every proposal is verified by computing the light with it in "
            "place. Exit status 1: some walk or falls cannot be lit with what is on offer.",
        .arguments = {site_argument()},
        .options = {{.name = "--model",
                     .value = "MODEL",
                     .help = "Only this catalog entry; without it the site's stock, else every priced light",
                     .repeatable = true},
                    {.name = "--kind",
                     .value = "KIND",
                     .help = "Only lights of this kind",
                     .choices = kind_names(),
                     .repeatable = true},
                    {.name = "--cheapest", .help = "Least money instead of fewest lights"},
                    {.name = "--write",
                     .help = "Add the lights to the site file; the rest of it stays as it is"},
                    format_option(),
                    catalog_option()},
        .examples = {{"rillwatt place garden.toml", "where lights should go, and why"},
                     {"rillwatt place garden.toml --model path-2w-wide --write", "add them to the file"}},
        .run = run};
}

} // namespace rillwatt
