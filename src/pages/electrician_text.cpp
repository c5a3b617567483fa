#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/pages/electrician_page.hpp"
#include "rillwatt/text/cautions.hpp"
#include "rillwatt/text/text_style.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace rillwatt {

namespace {

/// Narrow enough for a telephone.
constexpr std::size_t message_width = 64;

std::string capitals(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    return text;
}

std::string line_of(const std::string& what, const std::string& cell) {
    return wrapped(fmt::format("{}: {}", what, printable(cell)), message_width, "  ", "    ");
}

/// Column by column: all of one circuit, then the next.
std::string table_text(const SheetTable& table) {
    std::string text = capitals(table.title) + "\n";
    for (std::size_t column = 0; column < table.columns.size(); ++column) {
        text += printable(table.columns[column]) + "\n";
        for (const auto& row : table.rows)
            if (row.cells[column] != "-") text += line_of(row.what, row.cells[column]);
    }
    return text + "\n";
}

std::string sources_text(const ElectricianSheet& sheet) {
    std::string text = "SOURCES\n";
    std::vector<std::string> told;
    for (const auto& table : sheet.tables)
        for (const auto& row : table.rows) {
            const std::string line = line_of(row.what, row.source);
            if (std::find(told.begin(), told.end(), line) != told.end()) continue;
            told.push_back(line);
            text += line;
        }
    return text + "\n";
}

std::string burial_text(const SheetTable& table) {
    if (table.columns.empty()) return {};
    std::string text = capitals(table.title) + "\n";
    for (const auto& row : table.rows) {
        std::string cells;
        for (std::size_t column = 0; column < table.columns.size(); ++column)
            cells +=
                fmt::format("{}{} {}", column == 0 ? "" : ", ", table.columns[column], row.cells[column]);
        text += line_of(row.what, cells);
    }
    return text + line_of("source", table.rows.front().source) + "\n";
}

std::string lines_text(const char* title, const std::vector<SheetLine>& lines) {
    if (lines.empty()) return {};
    std::string text = std::string(title) + "\n";
    for (const auto& line : lines)
        text += wrapped(printable(fmt::format("{} [{}]", line.text, line.source)), message_width, "- ", "  ");
    return text + "\n";
}

} // namespace

std::string electrician_text(const ElectricianSheet& sheet) {
    std::string text = wrapped(printable(sheet.site) + ": for the electrician", message_width, "", "");
    text += wrapped(printable(sheet.basis), message_width, "", "") + "\n";
    for (const auto& caution : cautions())
        text += wrapped(caution, message_width, "! ", "  ");
    text += "\n";
    for (const auto& table : sheet.tables)
        text += table_text(table);
    text += burial_text(sheet.burial);
    text += lines_text("WHAT STAYS OPEN OR MUST CHANGE", sheet.open);
    text += lines_text("IN AND NEAR THE WATER", sheet.reminders);
    if (!sheet.running_cost.empty()) text += "RUNNING COST\n";
    for (const auto& line : sheet.running_cost)
        text += wrapped(printable(line), message_width, "  ", "    ");
    text += "\n" + sources_text(sheet);
    return text + "Electrician, licence, date: ______________________________\n";
}

} // namespace rillwatt
