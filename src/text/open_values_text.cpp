#include "open_values_text.hpp"

#include "rillwatt/finding/command_word.hpp"
#include "rillwatt/finding/input_error.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

namespace {

/// "`tap` of A" of "`tap` of A is open; everything on ..."
std::string what_is_open(const Finding& finding) {
    return finding.message.substr(0, finding.message.rfind(" is open"));
}

} // namespace

bool left_to_sizing(const Finding& finding) {
    return finding.rule == "open-value" && finding.hint.find("rillwatt size") != std::string::npos;
}

std::size_t count_left_to_sizing(const std::vector<Finding>& findings) {
    return static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), left_to_sizing));
}

std::string left_to_sizing_text(const std::vector<Finding>& findings, const TextStyle& style) {
    const std::size_t count = count_left_to_sizing(findings);
    const auto first = std::find_if(findings.begin(), findings.end(), left_to_sizing);
    if (first == findings.end()) return "";
    const std::string_view file = first->location.file;
    std::string list;
    int line = 0;
    for (const Finding& finding : findings) {
        if (!left_to_sizing(finding)) continue;
        const std::string place =
            finding.location.line == line ? "" : fmt::format("line {} ", finding.location.line);
        line = finding.location.line;
        list += (list.empty() ? "" : ", ") + place + printable(what_is_open(finding));
    }
    const std::string told = fmt::format(
        "error: {} value{} left open: `rillwatt size {} --write` chooses {}; until then what hangs on "
        "their transformers is left out of the numbers [open-value]",
        count, count == 1 ? " is" : "s are", command_word(file), count == 1 ? "it" : "them");
    std::string text = wrapped(fmt::format("{}: {}", printable(file), told), style.width, "", "    ");
    if (const auto at = text.find("error:", printable(file).size()); at != std::string::npos)
        text.replace(at, 6, inked(style, Ink::error, "error:"));
    return text + wrapped("open: " + list, style.width, "    ", "          ");
}

} // namespace rillwatt
