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
    if (lamp == nullptr)
        append_padded_left(out, "-", 7);
    else
        append_fixed(out, lamp->volts.value(), 2, "", 7);
    out += lamp != nullptr && outside(type, lamp->volts) ? '!' : ' ';
}

std::string window_text(const FixtureType* type) {
    if (type == nullptr) return "-";
    return fmt::format("{} to {}", trimmed_text(type->window_low.value(), 2),
                       trimmed_text(type->window_high.value(), 2));
}

/// Writes the rows. Neighbours are mostly of one run and one kind: what is written for these serves the next
/// row too.
class LampTable {
  public:
    LampTable(const Site& site, const TextStyle& style, std::string& out)
        : site_(site), style_(style), out_(out) {}

    void add(const LampRow& row) {
        add_name(row);
        add_run(row.run);
        for (const LampResult* lamp : {row.nominal, row.weak, row.strong})
            add_volts_cell(out_, lamp, row.type);
        add_window(row.type);
        if (row.margin)
            append_fixed(out_, row.margin->value(), 2, "", 7);
        else
            append_padded_left(out_, "-", 7);
        if (row.state == LampState::low) out_ += ' ' + inked(style_, Ink::error, "LOW");
        if (row.state == LampState::high) out_ += ' ' + inked(style_, Ink::error, "HIGH");
        out_ += '\n';
    }

  private:
    /// A name too long for its column gets a line of its own.
    void add_name(const LampRow& row) {
        const ShownText name = shown(row.fixture->id, room_);
        out_ += "  ";
        if (name.columns <= name_columns) {
            out_ += name.text;
            out_.append(name_columns - name.columns, ' ');
            return;
        }
        (out_ += clipped(name.text, style_.width - 2)) += "\n  ";
        out_.append(name_columns, ' ');
    }

    void add_run(std::optional<std::size_t> run) {
        if (run_cell_.empty() || run != last_run_) {
            const std::string name = run ? printable(site_.runs[*run].id) : "-";
            run_cell_ = ' ' + padded_right(clipped(name, run_columns), run_columns) + ' ';
            last_run_ = run;
        }
        out_ += run_cell_;
    }

    void add_window(const FixtureType* type) {
        if (window_cell_.empty() || type != last_type_) {
            window_cell_ = ' ' + padded_right(clipped(window_text(type), 12), 12);
            last_type_ = type;
        }
        out_ += window_cell_;
    }

    const Site& site_;
    const TextStyle& style_;
    std::string& out_;
    std::string room_; ///< for a name that is not printable as it stands
    std::optional<std::size_t> last_run_;
    std::string run_cell_;
    const FixtureType* last_type_ = nullptr;
    std::string window_cell_;
};

} // namespace

void append_lamp_table(std::string& out, const Assessment& assessment, const TextStyle& style) {
    const std::vector<LampRow> rows = lamp_rows(assessment);
    if (rows.empty()) return;
    out += inked(style, Ink::heading, "LAMPS") +
           "  volts at the lamp; ! is outside the window; margin is to its nearer end\n";
    out += inked(style, Ink::faint,
                 "  lamp                 run    nominal    weak  strong  window V     margin");
    out += '\n';
    LampTable table(*assessment.site, style, out);
    for (const LampRow& row : rows)
        table.add(row);
}

} // namespace rillwatt
