#include "rillwatt/text/check_text.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/cautions.hpp"
#include "rillwatt/text/findings_words.hpp"
#include "rillwatt/text/utf8.hpp"

#include <fmt/format.h>

#include "check_sections.hpp"
#include "circuit_tree_text.hpp"
#include "open_values_text.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

Ink ink_of(Severity severity) {
    switch (severity) {
    case Severity::error:
        return Ink::error;
    case Severity::warning:
        return Ink::warning;
    case Severity::note:
        break;
    }
    return Ink::note;
}

std::string case_text(const CaseResult& result, const SiteSettings& settings) {
    const OperatingCase& conditions = result.conditions;
    const std::string supply = nominal_volts_text(settings.supply_voltage * conditions.supply_factor);
    if (!conditions.loaded) return fmt::format("{} {} with no load", conditions.name, supply);
    return fmt::format("{} {}, conductor at {}", conditions.name, supply, celsius_text(conditions.conductor));
}

/// What an open value is: no mistake, but something left to be chosen.
std::string open_verdict(std::size_t left_open) {
    if (left_open == 0) return "";
    if (left_open == 1) return " One of the errors is a value left open, for `rillwatt size` to choose.";
    return fmt::format(" {} of the errors are values left open, for `rillwatt size` to choose.", left_open);
}

std::string head_text(const Assessment& assessment, const TextStyle& style) {
    const Site& site = *assessment.site;
    const std::string file = clipped(printable(site.file), style.width / 2);
    const std::size_t room = style.width - display_width(file) - 2;
    std::string out =
        inked(style, Ink::heading, padded_right(clipped(printable(site.settings.name), room), room));
    out += "  " + file + '\n';
    std::string cases;
    for (const CaseResult& result : assessment.solution.cases)
        cases += (cases.empty() ? "" : "; ") + case_text(result, site.settings);
    out += wrapped("Supply: " + cases + ".", style.width, "", "        ");
    out += wrapped("Verdict: " + findings_count_text(assessment.findings) +
                       (assessment.findings.empty() ? "." : ", listed below.") +
                       open_verdict(count_left_to_sizing(assessment.findings)),
                   style.width, "", "         ");
    return out;
}

std::string cautions_text(const TextStyle& style) {
    std::string out = inked(style, Ink::heading, "CAUTIONS") + '\n';
    for (std::string_view sentence : cautions())
        out += wrapped(sentence, style.width, "  ", "  ");
    return out;
}

std::string place_text(const Finding& finding) {
    if (finding.location.line <= 0) return "";
    return fmt::format("{}:{}: ", printable(finding.location.file), finding.location.line);
}

// The severity is coloured after wrapping, so that colour codes do not count as columns.
std::string finding_text(const Finding& finding, const TextStyle& style) {
    const std::string severity = std::string(severity_name(finding.severity)) + ":";
    const std::string place = place_text(finding);
    std::string out =
        wrapped(fmt::format("{}{} {} [{}]", place, severity, printable(finding.message), finding.rule),
                style.width, "", "    ");
    const std::size_t at = out.find(severity, display_width(place) <= style.width ? place.size() : 0);
    if (at != std::string::npos)
        out.replace(at, severity.size(), inked(style, ink_of(finding.severity), severity));
    return out;
}

std::string advice_text(const Finding& finding, const TextStyle& style) {
    std::string out;
    if (!finding.hint.empty())
        out += wrapped("fix: " + printable(finding.hint), style.width, "    ", "         ");
    if (!finding.source.empty())
        out += wrapped("source: " + printable(finding.source), style.width, "    ", "            ");
    return out;
}

/// Findings of one rule that follow each other share what there is to say about them.
bool same_advice(const Finding& a, const Finding& b) {
    return a.rule == b.rule && a.hint == b.hint && a.source == b.source;
}

std::string counted(std::ptrdiff_t count, const char* severity) {
    return fmt::format("{} {}{}", count, severity, count == 1 ? "" : "s");
}

} // namespace

std::string findings_count_text(const std::vector<Finding>& findings) {
    std::string text;
    for (Severity severity : {Severity::error, Severity::warning, Severity::note}) {
        const auto count = std::count_if(findings.begin(), findings.end(), [&](const Finding& finding) {
            return finding.severity == severity;
        });
        if (count == 0) continue;
        if (!text.empty()) text += ", ";
        text += counted(count, severity_name(severity));
    }
    return text.empty() ? "no findings" : text;
}

std::string findings_text(const std::vector<Finding>& findings, const TextStyle& style) {
    std::string out = inked(style, Ink::heading, "FINDINGS") + "  " + findings_count_text(findings) + '\n';
    bool open_told = false;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        if (left_to_sizing(findings[i])) {
            if (!open_told) out += left_to_sizing_text(findings, style);
            open_told = true;
            continue;
        }
        out += finding_text(findings[i], style);
        const bool more_to_come = i + 1 < findings.size() && same_advice(findings[i], findings[i + 1]);
        if (!more_to_come) out += advice_text(findings[i], style);
    }
    return out;
}

std::string check_text(const Assessment& assessment, const TextStyle& style) {
    constexpr std::size_t lines_of_a_lamp = 2;
    constexpr std::size_t other_bytes = 1u << 14;
    std::string out;
    out.reserve(lines_of_a_lamp * (style.width + 8) * assessment.site->fixtures.size() + other_bytes);
    out += head_text(assessment, style) + '\n';
    append_circuit_trees(out, assessment, style);
    const auto add = [&out](const std::string& section) {
        if (!section.empty()) (out += '\n') += section;
    };
    if (!assessment.site->fixtures.empty()) append_lamp_table(out += '\n', assessment, style);
    add(transformer_table_text(assessment, style));
    add(run_table_text(assessment, style));
    add(branch_circuits_text(assessment, style));
    add(running_cost_text(assessment, style));
    add(findings_text(assessment.findings, style) + light_elsewhere_text(assessment));
    add(cautions_text(style));
    return out;
}

} // namespace rillwatt
