#include "rillwatt/exchange/check_json.hpp"
#include "rillwatt/plan/assess_site.hpp"
#include "rillwatt/text/check_text.hpp"

#include "answers.hpp"

namespace rillwatt {

Answer check_answer(const Request& request, FileSource& files) {
    const LoadResult<Assessment> assessed = assess_site(site_files(request), files);
    if (!assessed) return refused(request, assessed.errors);
    const Assessment& assessment = *assessed.value;
    return {.status = status_of(assessment.findings),
            .out =
                wants_json(request) ? check_json(assessment) : check_text(assessment, text_style(request))};
}

} // namespace rillwatt
