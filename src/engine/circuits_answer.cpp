#include "rillwatt/exchange/circuits_json.hpp"
#include "rillwatt/plan/assess_site.hpp"
#include "rillwatt/text/circuits_text.hpp"

#include "answers.hpp"

namespace rillwatt {

Answer circuits_answer(const Request& request, FileSource& files) {
    const LoadResult<Assessment> assessed = assess_site(site_files(request), files);
    if (!assessed) return refused(request, assessed.errors);
    const Assessment& assessment = *assessed.value;
    const CircuitProposal proposal = propose_circuits(*assessment.site, assessment.mains);
    return {.out = wants_json(request) ? circuits_json(*assessment.site, proposal)
                                       : circuits_text(*assessment.site, proposal, text_style(request))};
}

} // namespace rillwatt
