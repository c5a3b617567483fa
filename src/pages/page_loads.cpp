#include "rillwatt/limits/standing.hpp"
#include "rillwatt/plan/run_loads.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"

namespace rillwatt {

namespace {

std::string bar_cell(double loading, bool over, double limit, const std::string& remark) {
    return fmt::format("<td class=\"gauge\">{}{}</td>", loading_bar(loading, over, limit),
                       sub_line(percent_text(loading) + remark));
}

std::string transformer_row(const Assessment& assessment, const TransformerResult& result) {
    const Transformer& transformer = assessment.site->transformers[result.transformer];
    const TransformerCircuit& circuit = assessment.circuits.transformers[result.transformer];
    std::string about = html_text(circuit.type->id);
    if (transformer.circuit) about += ", circuit " + html_text(*transformer.circuit);
    if (!transformer.control.empty()) about += "<br>" + html_text(transformer.control);
    const std::string draws =
        fmt::format("; draws {} at {}", amps_text(result.primary_amps), nominal_volts_text(circuit.supply));
    return fmt::format("<tr{}><th scope=\"row\">{}{}</th><td class=\"n\">{}{}</td>{}</tr>\n",
                       part_attribute(transformer.id), part_link(transformer.id), sub_line(about),
                       va_text(result.load), sub_line("of&nbsp;" + va_text(circuit.type->va)),
                       bar_cell(result.loading, against_rating(result.loading).broken(),
                                limits::transformer_margin.value, draws));
}

std::string run_row(const Assessment& assessment, const RunLoad& load) {
    const Site& site = *assessment.site;
    const RunResult& run = *load.result;
    const std::string about = fmt::format("{}, tap {}", html_text(site.transformers[run.transformer].id),
                                          nominal_volts_text(run.tap));
    std::string remark = " of " + html_text(load.where);
    if (run.worst_fixture)
        remark += fmt::format("; lowest lamp {} at {}", html_text(site.fixtures[*run.worst_fixture].id),
                              volts_text(run.worst_volts));
    return fmt::format("<tr{}><th scope=\"row\">{}{}</th><td class=\"n\">{}{}</td>{}</tr>\n",
                       part_attribute(site.runs[run.run].id), part_link(site.runs[run.run].id),
                       sub_line(about), amps_text(load.amps),
                       sub_line("of&nbsp;" + nominal_amps_text(load.limit)),
                       bar_cell(load.loading, load.over, 0, "<span class=\"free\">" + remark + "</span>"));
}

} // namespace

std::string loads_section(const ReportPageParts& parts) {
    const CaseResult& nominal = parts.site.assessment.solution.nominal();
    if (nominal.transformers.empty()) return "";
    std::string out = section_open("loads", "Transformers and runs");
    out += table_open(fmt::format("Transformers; the dashed mark is {} of the rating",
                                  percent_text(limits::transformer_margin.value)),
                      {"Transformer", "#Load", "Of its rating"});
    for (const TransformerResult& result : nominal.transformers)
        out += transformer_row(parts.site.assessment, result);
    out += "</tbody></table>\n";
    out += table_open("Runs, each at the place that is nearest to its limit",
                      {"Run", "#Amperes", "Of the limit"});
    for (const RunLoad& load : parts.site.run_loads)
        out += run_row(parts.site.assessment, load);
    return out + "</tbody></table>\n</section>\n";
}

} // namespace rillwatt
