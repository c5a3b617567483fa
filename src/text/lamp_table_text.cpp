#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/limits/standing.hpp"
#include "rillwatt/plan/lamp_rows.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/line_writer.hpp"
#include "rillwatt/text/utf8.hpp"

#include <fmt/format.h>

#include "check_sections.hpp"

namespace rillwatt {

namespace {

constexpr std::size_t name_columns = 20;
constexpr std::size_t run_columns = 6;

bool outside(const FixtureType* type, Volts volts) {
    return type != nullptr && place_in_window(*type, volts) != WindowPlace::inside;
}

constexpr FigureStyle bare_volts{volts_style.decimals, ""};

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
        : site_(site), style_(style), line_(out) {}

    void add(const LampRow& row) {
        add_name(row);
        add_run(row.run);
        for (const LampResult* lamp : {row.nominal, row.weak, row.strong})
            add_volts(lamp, row.type);
        add_window(row.type);
        if (row.margin)
            line_.figure(row.margin->value(), bare_volts, 7);
        else
            line_.right("-", 7);
        if (row.state == LampState::low) line_.text(' ' + inked(style_, Ink::error, "LOW"));
        if (row.state == LampState::high) line_.text(' ' + inked(style_, Ink::error, "HIGH"));
        line_.end_line();
    }

  private:
    /// A name too long for its column gets a line of its own.
    void add_name(const LampRow& row) {
        const ShownText name = shown(row.fixture->id, room_);
        line_.text("  ");
        if (name.columns <= name_columns) {
            line_.text(name.text);
            line_.blanks(name_columns - name.columns);
            return;
        }
        line_.text(clipped(name.text, style_.width - 2));
        line_.end_line();
        line_.blanks(2 + name_columns);
    }

    /// A cell of eight columns, the last for the mark of a figure outside the window.
    void add_volts(const LampResult* lamp, const FixtureType* type) {
        if (lamp == nullptr)
            line_.right("-", 7);
        else
            line_.figure(lamp->volts.value(), bare_volts, 7);
        line_.text(lamp != nullptr && outside(type, lamp->volts) ? "!" : " ");
    }

    void add_run(std::optional<std::size_t> run) {
        if (run_cell_.empty() || run != last_run_) {
            const std::string name = run ? printable(site_.runs[*run].id) : "-";
            run_cell_ = ' ' + padded_right(clipped(name, run_columns), run_columns) + ' ';
            last_run_ = run;
        }
        line_.text(run_cell_);
    }

    void add_window(const FixtureType* type) {
        if (window_cell_.empty() || type != last_type_) {
            window_cell_ = ' ' + padded_right(clipped(window_text(type), 12), 12);
            last_type_ = type;
        }
        line_.text(window_cell_);
    }

    const Site& site_;
    const TextStyle& style_;
    LineWriter line_;
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
