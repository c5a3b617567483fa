#include "rillwatt/exchange/size_json.hpp"
#include "rillwatt/plan/size_report.hpp"
#include "rillwatt/text/size_text.hpp"
#include "rillwatt/text/text_difference.hpp"

#include <fmt/format.h>

#include "answers.hpp"
#include "size_request.hpp"

namespace rillwatt {

namespace {

std::string values_written(std::size_t count) {
    return fmt::format("{} value{} written", count, count == 1 ? "" : "s");
}

/// Puts the choices into the text of the site file, or shows what that would change.
void add_choices(const Request& request, const LoadedSite& loaded, const SizeResult& result, Answer& answer) {
    SiteUpdate update = update_with_choices(loaded, result.choices);
    LoadResult<std::string> edited = edited_document(loaded.text, loaded.path, update.values);
    if (!edited)
        answer = refused(request, edited.errors);
    else if (request.arguments.has("--diff"))
        answer.out = text_difference(loaded.text, *edited.value, loaded.path);
    else if (*edited.value != loaded.text)
        answer.edit = SiteEdit{loaded.text, std::move(*edited.value), std::move(update),
                               values_written(result.choices.size())};
}

std::string written(const Request& request, const SizeReport& report) {
    return wants_json(request) ? size_json(report) : size_text(report, text_style(request));
}

} // namespace

Answer size_answer(const Request& request, FileSource& files) {
    const SizeOptions options = size_options(request);
    if (const std::string fault = option_fault(request, options); !fault.empty())
        return refused(request, "rillwatt", fault);
    const LoadResult<LoadedSite> loaded = load_site(site_files(request), files);
    if (!loaded) return refused(request, loaded.errors);
    const LoadResult<SizeReport> report =
        report_sizing(*loaded.value, options, request.arguments.has("--weak-supply"));
    if (!report) return refused(request, report.errors);
    const SizeResult& result = report.value->result;
    Answer answer{.status = status_of(report.value->after.findings), .out = written(request, *report.value)};
    if (result.status == SizeStatus::infeasible)
        answer.status = ExitStatus::findings;
    else if (request.arguments.has("--write") || request.arguments.has("--diff"))
        add_choices(request, *loaded.value, result, answer);
    return answer;
}

} // namespace rillwatt
