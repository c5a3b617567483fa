#include "rillwatt/plan/lamp_rows.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"

namespace rillwatt {

namespace {

std::string number_or_dash(const LampResult* lamp) {
    return lamp == nullptr ? "none" : fixed_text(lamp->volts.value(), 2);
}

std::string volts_cell(const LampRow& row) {
    if (row.nominal == nullptr) return "<td class=\"n\">none</td>";
    return fmt::format("<td class=\"n volts\">{}{}</td>", volts_text(row.nominal->volts),
                       sub_line(fmt::format("weak&nbsp;{}, strong&nbsp;{}", number_or_dash(row.weak),
                                            number_or_dash(row.strong))));
}

std::string state_html(LampState state) {
    switch (state) {
    case LampState::good:
        return state_word("good", "good");
    case LampState::unknown:
        return state_word("note", lamp_state_text(state));
    case LampState::low:
    case LampState::high:
        return state_word("error", lamp_state_text(state));
    case LampState::low_when_weak:
    case LampState::high_when_strong:
        break;
    }
    return state_word("warning", lamp_state_text(state));
}

std::string gauge_cell(const LampRow& row) {
    const std::string state = state_html(row.state);
    if (row.type == nullptr || row.nominal == nullptr || row.weak == nullptr || row.strong == nullptr)
        return fmt::format("<td class=\"gauge\">{}</td>", state);
    const WindowGauge gauge{
        row.type->window_low, row.type->window_high,
        row.nominal->volts,   row.weak->volts,
        row.strong->volts,    row.state == LampState::low || row.state == LampState::high};
    const std::string words =
        fmt::format("{}{} to {} V, margin {}", state, trimmed_text(row.type->window_low.value(), 2),
                    trimmed_text(row.type->window_high.value(), 2), volts_text(*row.margin));
    return fmt::format("<td class=\"gauge\">{}{}</td>", window_gauge(gauge), sub_line(words));
}

std::string lamp_row(const Site& site, const LampRow& row) {
    std::string about = html_text(row.fixture->model);
    if (row.run) about += ", run " + html_text(site.runs[*row.run].id);
    return fmt::format("<tr{}><th scope=\"row\">{}{}</th>{}{}</tr>\n", part_attribute(row.fixture->id),
                       part_link(row.fixture->id), sub_line(about), volts_cell(row), gauge_cell(row));
}

} // namespace

std::string lamps_section(const ReportPageParts& parts) {
    const std::vector<LampRow>& rows = parts.site.lamps;
    if (rows.empty()) return "";
    std::string out = section_open("lamps", "Lamps");
    out += "<p>Volts at each lamp, after its own lead. In the bar the shaded field is the window in which "
           "the lamp works, "
           "the thick mark is nominal supply, the thin line spans from a weak supply to a strong one without "
           "load.</p>\n";
    out += table_open("Every lamp with its volts and where they lie in its window",
                      {"Lamp", "#Volts", "In its window"});
    for (const LampRow& row : rows)
        out += lamp_row(*parts.site.assessment.site, row);
    return out + "</tbody></table>\n</section>\n";
}

} // namespace rillwatt
