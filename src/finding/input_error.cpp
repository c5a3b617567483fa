#include "rillwatt/finding/input_error.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {
namespace {

/// The line as written: tabs as one blank, everything else made visible.
std::string displayed_line(std::string line) {
    std::replace(line.begin(), line.end(), '\t', ' ');
    return printable(line);
}

std::string_view without_line_end(std::string_view line) {
    if (line.ends_with('\r')) line.remove_suffix(1);
    return line;
}

} // namespace

std::string input_error_text(const InputError& error) {
    std::string text = printable(error.location.file);
    if (error.location.line > 0) text += fmt::format(":{}", error.location.line);
    text += fmt::format("{}error: {}", text.empty() ? "" : ": ", error.found);
    if (!error.expected.empty()) text += fmt::format("; expected {}", error.expected);
    text += '\n';
    if (!error.source_line.empty()) text += fmt::format("    {}\n", displayed_line(error.source_line));
    return text;
}

std::string shortened_line(std::string_view line) {
    constexpr std::size_t longest = 160;
    line = without_line_end(line);
    if (line.size() <= longest) return std::string(line);
    std::size_t end = longest;
    while (end > 0 && (static_cast<unsigned char>(line[end]) & 0xC0u) == 0x80u)
        --end;
    return std::string(line.substr(0, end)) + " ...";
}

void add_source_lines(std::vector<InputError>& errors, std::string_view file, std::string_view text) {
    if (errors.empty()) return;
    std::vector<std::size_t> starts{0};
    for (std::size_t i = 0; i < text.size(); ++i)
        if (text[i] == '\n') starts.push_back(i + 1);
    for (InputError& error : errors) {
        const auto line = static_cast<std::size_t>(std::max(error.location.line, 0));
        const bool known = error.location.file.view() == file && line >= 1 && line <= starts.size();
        if (!known || !error.source_line.empty()) continue;
        const std::size_t begin = starts[line - 1];
        const std::size_t end = line < starts.size() ? starts[line] - 1 : text.size();
        error.source_line = shortened_line(text.substr(begin, end - begin));
    }
}

} // namespace rillwatt
