#pragma once

#include "rillwatt/finding/finding.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/text/escape.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// The name of a file without its folders: a page is handed on, and they are nobody else's concern.
std::string_view name_of_file(std::string_view path);

/// The name of a part as a link to the drawing, so that it can be focused and marked.
std::string part_link(std::string_view id);

/// Small print under the main text of a cell. `html` is markup already.
std::string sub_line(std::string_view html);

/// A sentence of a finding as HTML: escaped, what stands between backticks set as code.
std::string sentence_html(std::string_view text);

/// A severity or state as a framed word.
std::string state_word(std::string_view kind, std::string_view text);

/// A heading of a section with the anchor the contents list names.
std::string section_open(std::string_view anchor, std::string_view heading, bool own_sheet = false);

/// `<table>` with its caption and column heads; a head that starts with '#' is of a column of numbers.
std::string table_open(std::string_view caption, const std::vector<std::string>& heads);

/// A lamp's volts in its window: ends of the window, the span from weak to strong, a mark at nominal.
struct WindowGauge {
    Volts low;
    Volts high;
    Volts nominal;
    Volts weak;
    Volts strong;
    bool out = false; ///< nominal volts leave the window
};

/// The gauge as a small picture. It repeats what stands beside it, so it is hidden from screen readers.
std::string window_gauge(const WindowGauge& gauge);

/// A loading as a bar, in another colour where it is over; `limit` (a ratio) is drawn across it, 0 for none.
std::string loading_bar(double loading, bool over, double limit);

} // namespace rillwatt
