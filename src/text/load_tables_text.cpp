#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/plan/run_loads.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/utf8.hpp"

#include <fmt/format.h>

#include "check_sections.hpp"
#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

std::string transformer_line(const Assessment& assessment, const TransformerResult& result) {
    const Transformer& transformer = assessment.site->transformers[result.transformer];
    const TransformerCircuit& circuit = assessment.circuits.transformers[result.transformer];
    return "  " + padded_right(clipped(printable(transformer.id), 12), 12) + ' ' +
           padded_right(clipped(printable(circuit.type->id), 18), 18) +
           padded_left(fmt::format("{} of {}", va_text(result.load), va_text(circuit.type->va)), 20) +
           padded_left(percent_text(result.loading), 7) + ' ' + bar_text(result.loading) + '\n';
}

std::string transformer_details(const Assessment& assessment, const TransformerResult& result,
                                const TextStyle& style) {
    const Transformer& transformer = assessment.site->transformers[result.transformer];
    const TransformerCircuit& circuit = assessment.circuits.transformers[result.transformer];
    std::string details =
        fmt::format("draws {} at {}", amps_text(result.primary_amps), nominal_volts_text(circuit.supply));
    if (transformer.circuit) details += " from circuit " + printable(*transformer.circuit);
    if (!transformer.control.empty()) details += "; control: " + printable(transformer.control);
    return wrapped(details, style.width, "               ", "               ");
}

} // namespace

std::string bar_text(double ratio) {
    const double clamped = std::clamp(ratio, 0.0, 1.0);
    const auto full = static_cast<std::size_t>(std::lround(clamped * 10));
    constexpr std::string_view full_blocks = "██████████";
    constexpr std::string_view empty_blocks = "░░░░░░░░░░";
    constexpr std::size_t bytes = full_blocks.size() / 10; // of one block
    std::string bar(full_blocks.substr(0, full * bytes));
    bar += empty_blocks.substr(full * bytes);
    return bar;
}

std::string transformer_table_text(const Assessment& assessment, const TextStyle& style) {
    const CaseResult& nominal = assessment.solution.nominal();
    if (nominal.transformers.empty()) return "";
    std::string out = inked(style, Ink::heading, "TRANSFORMERS") + '\n';
    for (const TransformerResult& result : nominal.transformers) {
        out += transformer_line(assessment, result);
        out += transformer_details(assessment, result, style);
    }
    return out;
}

std::string run_table_text(const Assessment& assessment, const TextStyle& style) {
    const std::vector<RunLoad> loads = run_loads(assessment);
    if (loads.empty()) return "";
    const Site& site = *assessment.site;
    std::string out = inked(style, Ink::heading, "RUNS") + '\n';
    for (const RunLoad& load : loads) {
        const RunResult& run = *load.result;
        out += "  ";
        append_padded_right(out, clipped(printable(site.runs[run.run].id), 12), 12);
        out += ' ';
        append_padded_right(out, volts_text(run.volts) + " of " + nominal_volts_text(run.tap), 18);
        append_padded_left(out, amps_text(load.amps) + " of " + nominal_amps_text(load.limit), 20);
        append_padded_left(out, percent_text(load.loading), 7);
        ((out += ' ') += bar_text(load.loading)) += '\n';
        std::string details = "from " + printable(site.transformers[run.transformer].id) +
                              "; nearest limit: " + printable(load.where);
        if (run.worst_fixture)
            details += "; lowest lamp: " + printable(site.fixtures[*run.worst_fixture].id) + " at " +
                       volts_text(run.worst_volts);
        out += wrapped(details, style.width, "               ", "               ");
    }
    return out;
}

} // namespace rillwatt
