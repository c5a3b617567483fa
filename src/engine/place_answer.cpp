#include "rillwatt/exchange/place_json.hpp"
#include "rillwatt/plan/place_report.hpp"
#include "rillwatt/text/place_text.hpp"

#include <fmt/format.h>

#include "answers.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

PlacingOptions placing_options(const Arguments& arguments) {
    PlacingOptions options;
    options.models = arguments.all("--model");
    const std::vector<std::string>& asked = arguments.all("--kind");
    for (const FixtureKind kind : placed_kinds)
        if (std::find(asked.begin(), asked.end(), fixture_kind_name(kind)) != asked.end())
            options.kinds.push_back(kind);
    options.cheapest = arguments.has("--cheapest");
    return options;
}

std::string lights_added(std::size_t count) {
    return fmt::format("{} light{} added", count, count == 1 ? "" : "s");
}

} // namespace

Answer place_answer(const Request& request, FileSource& files) {
    const LoadResult<LoadedSite> loaded = load_site(site_files(request), files);
    if (!loaded) return refused(request, loaded.errors);
    const LoadResult<PlaceReport> placed =
        report_placing(*loaded.value, placing_options(request.arguments), files);
    if (!placed) return refused(request, placed.errors);
    const PlaceReport& report = *placed.value;
    Answer answer{.status = report.proposal.unmet.empty() ? ExitStatus::ok : ExitStatus::findings,
                  .out = wants_json(request) ? place_json(report) : place_text(report, text_style(request))};
    if (request.arguments.has("--write") && !report.toml.empty())
        answer.edit = SiteEdit{loaded.value->text,
                               report.text,
                               {{}, appended_text(report.toml), {}},
                               lights_added(report.proposal.lights.size())};
    return answer;
}

} // namespace rillwatt
