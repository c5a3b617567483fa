#include "rillwatt/plan/site_report.hpp"

#include "rillwatt/plan/assess_site.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

std::optional<std::size_t> worst_lamp(const std::vector<LampRow>& lamps) {
    std::optional<std::size_t> worst;
    for (std::size_t i = 0; i < lamps.size(); ++i)
        if (lamps[i].margin && (!worst || *lamps[i].margin < *lamps[*worst].margin)) worst = i;
    return worst;
}

std::optional<std::size_t> fullest(const std::vector<TransformerResult>& transformers) {
    if (transformers.empty()) return std::nullopt;
    const auto hardest = std::max_element(
        transformers.begin(), transformers.end(),
        [](const TransformerResult& a, const TransformerResult& b) { return a.loading < b.loading; });
    return static_cast<std::size_t>(hardest - transformers.begin());
}

SiteSummary summary_of(const SiteReport& report) {
    SiteSummary summary;
    summary.worst_lamp = worst_lamp(report.lamps);
    summary.fullest = fullest(report.assessment.solution.nominal().transformers);
    for (const CablePiece& piece : report.cuts.pieces)
        summary.cable += piece.length;
    return summary;
}

} // namespace

SiteReport report_site(Assessment assessment) {
    SiteReport report;
    report.assessment = std::move(assessment); // whatever points into it is made after it has come to rest
    const Assessment& of = report.assessment;
    report.lamps = lamp_rows(of);
    report.run_loads = run_loads(of);
    report.circuits = solved_circuits(of, of.solution.nominal());
    report.cuts = plan_cuts(*of.site, of.circuits);
    report.bill = make_bill(*of.site, *of.catalog, of.lengths, of.circuits);
    report.sheet = electrician_sheet(of);
    report.summary = summary_of(report);
    return report;
}

LoadResult<SiteReport> report_site(const LoadedSite& loaded, FileSource& files) {
    LoadResult<Assessment> assessed = assess_with_light(loaded, files);
    if (!assessed) return {std::nullopt, std::move(assessed.errors)};
    return {report_site(std::move(*assessed.value)), {}};
}

} // namespace rillwatt
