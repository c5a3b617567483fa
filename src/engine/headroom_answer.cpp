#include "rillwatt/exchange/size_json.hpp"
#include "rillwatt/plan/assess_site.hpp"
#include "rillwatt/sizing/headroom.hpp"
#include "rillwatt/text/size_text.hpp"

#include "answers.hpp"
#include "size_request.hpp"

namespace rillwatt {

Answer headroom_answer(const Request& request, FileSource& files) {
    const SizeOptions options = size_options(request);
    if (const std::string fault = option_fault(request, options); !fault.empty())
        return refused(request, "rillwatt", fault);
    const LoadResult<Assessment> assessed = assess_site(site_files(request), files);
    if (!assessed) return refused(request, assessed.errors);
    const Assessment& assessment = *assessed.value;
    const std::vector<Headroom> rooms = find_headroom(assessment, options);
    return {.status = status_of(assessment.findings),
            .out = wants_json(request) ? headroom_json(rooms, assessment)
                                       : headroom_text(rooms, assessment, options, text_style(request))};
}

} // namespace rillwatt
