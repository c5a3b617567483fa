#include "rillwatt/check/limits.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/report/utf8.hpp"

#include <fmt/format.h>

#include "check_sections.hpp"
#include "lamp_rows.hpp"

namespace rillwatt {

namespace {

constexpr std::size_t name_columns = 20;
constexpr std::size_t run_columns = 6;

bool outside(const FixtureType* type, Volts volts) {
    return type != nullptr && (below(volts, type->window_low) || above(volts, type->window_high));
}

/// Volts as a cell of eight columns, the last for the mark of a figure outside the window.
void add_volts_cell(std::string& out, const LampResult* lamp, const FixtureType* type) {
    append_padded_left(out, lamp == nullptr ? "-" : fixed_text(lamp->volts.value(), 2), 7);
    out += lamp != nullptr && outside(type, lamp->volts) ? '!' : ' ';
}

std::string window_text(const FixtureType* type) {
    if (type == nullptr) return "-";
    return fmt::format("{} to {}", trimmed_text(type->window_low.value(), 2),
                       trimmed_text(type->window_high.value(), 2));
}

void add_row(std::string& out, const Site& site, const LampRow& row, const std::string& window,
             const TextStyle& style) {
    const std::string name = printable(row.fixture->id);
    const bool fits = display_width(name) <= name_columns;
    if (!fits) out += "  " + clipped(name, style.width - 2) + '\n';
    const std::string run = row.run ? printable(site.runs[*row.run].id) : "-";
    out += "  ";
    append_padded_right(out, fits ? name : "", name_columns);
    out += ' ';
    append_padded_right(out, clipped(run, run_columns), run_columns);
    out += ' ';
    for (const LampResult* lamp : {row.nominal, row.weak, row.strong})
        add_volts_cell(out, lamp, row.type);
    out += ' ';
    append_padded_right(out, window, 12);
    append_padded_left(out, row.margin ? fixed_text(row.margin->value(), 2) : "-", 7);
    if (row.state == LampState::low) out += ' ' + inked(style, Ink::error, "LOW");
    if (row.state == LampState::high) out += ' ' + inked(style, Ink::error, "HIGH");
    out += '\n';
}

} // namespace

std::string lamp_table_text(const Assessment& assessment, const TextStyle& style) {
    const std::vector<LampRow> rows = lamp_rows(assessment);
    if (rows.empty()) return "";
    std::string out = inked(style, Ink::heading, "LAMPS") +
                      "  volts at the lamp; ! is outside the window; margin is to its nearer end\n";
    out += inked(style, Ink::faint,
                 "  lamp                 run    nominal    weak  strong  window V     margin");
    out += '\n';
    out.reserve(out.size() + rows.size() * style.width);
    const FixtureType* type = nullptr;
    std::string window = window_text(type);
    for (const LampRow& row : rows) {
        if (row.type != type)
            window = clipped(window_text(row.type), 12); // a kind of lamp seldom stands alone
        type = row.type;
        add_row(out, *assessment.site, row, window, style);
    }
    return out;
}

} // namespace rillwatt
