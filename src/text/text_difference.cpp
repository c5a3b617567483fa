#include "rillwatt/text/text_difference.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace rillwatt {

namespace {

constexpr std::size_t context = 3;

/// One line of a difference: ' ' stays, '-' goes, '+' comes.
struct Edit {
    char mark;
    std::string_view line;
};

std::vector<std::string_view> lines_of(std::string_view text) {
    std::vector<std::string_view> lines;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size() - 1);
        lines.push_back(text.substr(0, end + 1));
        text.remove_prefix(end + 1);
    }
    return lines;
}

/// How far ahead to look for the place where two texts agree again.
constexpr std::size_t horizon = 200;

/// The fewest lines to pass over in both texts until they agree: (old, new).
std::pair<std::size_t, std::size_t> next_agreement(const std::vector<std::string_view>& before, std::size_t i,
                                                   const std::vector<std::string_view>& after,
                                                   std::size_t j) {
    for (std::size_t passed = 1; passed < horizon; ++passed)
        for (std::size_t old_lines = 0; old_lines <= passed; ++old_lines) {
            const std::size_t new_lines = passed - old_lines;
            if (i + old_lines >= before.size() || j + new_lines >= after.size()) continue;
            if (before[i + old_lines] == after[j + new_lines]) return {old_lines, new_lines};
        }
    return {before.size() - i, after.size() - j};
}

std::vector<Edit> edits_between(const std::vector<std::string_view>& before,
                                const std::vector<std::string_view>& after) {
    std::vector<Edit> edits;
    for (std::size_t i = 0, j = 0; i < before.size() || j < after.size();) {
        if (i < before.size() && j < after.size() && before[i] == after[j]) {
            edits.push_back({' ', before[i++]});
            ++j;
            continue;
        }
        const auto [old_lines, new_lines] = next_agreement(before, i, after, j);
        for (const std::size_t end = i + old_lines; i < end; ++i)
            edits.push_back({'-', before[i]});
        for (const std::size_t end = j + new_lines; j < end; ++j)
            edits.push_back({'+', after[j]});
    }
    return edits;
}

/// Whether a line is within the context of one that changes.
std::vector<bool> shown_lines(const std::vector<Edit>& edits) {
    std::vector<bool> shown(edits.size(), false);
    for (std::size_t i = 0; i < edits.size(); ++i) {
        if (edits[i].mark == ' ') continue;
        const std::size_t from = i > context ? i - context : 0;
        std::fill(shown.begin() + static_cast<long>(from),
                  shown.begin() + static_cast<long>(std::min(i + context + 1, edits.size())), true);
    }
    return shown;
}

std::string hunk_text(const std::vector<Edit>& edits, std::size_t from, std::size_t to, std::size_t old_line,
                      std::size_t new_line) {
    std::size_t old_count = 0;
    std::size_t new_count = 0;
    std::string body;
    for (std::size_t i = from; i < to; ++i) {
        old_count += edits[i].mark != '+';
        new_count += edits[i].mark != '-';
        body += edits[i].mark;
        body += edits[i].line;
        if (!edits[i].line.ends_with('\n')) body += "\n\\ No newline at end of file\n";
    }
    return fmt::format("@@ -{},{} +{},{} @@\n", old_count == 0 ? old_line - 1 : old_line, old_count,
                       new_count == 0 ? new_line - 1 : new_line, new_count) +
           body;
}

} // namespace

std::string text_difference(std::string_view before, std::string_view after, std::string_view name) {
    if (before == after) return "";
    const std::vector<Edit> edits = edits_between(lines_of(before), lines_of(after));
    const std::vector<bool> shown = shown_lines(edits);
    std::string out = fmt::format("--- {}\n+++ {}\n", name, name);
    std::size_t old_line = 1;
    std::size_t new_line = 1;
    for (std::size_t i = 0; i < edits.size();) {
        std::size_t end = i;
        while (end < edits.size() && shown[end])
            ++end;
        if (end > i) out += hunk_text(edits, i, end, old_line, new_line);
        end = std::max(end, i + 1);
        for (; i < end; ++i) {
            old_line += edits[i].mark != '+';
            new_line += edits[i].mark != '-';
        }
    }
    return out;
}

} // namespace rillwatt
