#include "rillwatt/plan/site_report.hpp"
#include "rillwatt/text/check_text.hpp"
#include "rillwatt/text/findings_words.hpp"

#include <fmt/format.h>

#include "answers.hpp"

namespace rillwatt {

Answer report_answer(const Request& request, FileSource& files) {
    const LoadResult<LoadedSite> loaded = load_site(site_files(request), files);
    if (!loaded) return refused(request, loaded.errors);
    const LoadResult<SiteReport> report = report_site(*loaded.value, files);
    if (!report) return refused(request, report.errors);
    const std::vector<Finding>& findings = report.value->assessment.findings;
    const std::string light = about_light_text(findings);
    return {.status = status_of(findings),
            .err = fmt::format("findings: {}{}\n", findings_count_text(findings),
                               light.empty() ? "" : ", " + light),
            .report = report_files(*report.value)};
}

} // namespace rillwatt
