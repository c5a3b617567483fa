#include "page_html.hpp"

#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

namespace {

constexpr double window_left = 16; // of a picture that is 100 wide
constexpr double window_right = 84;
constexpr double bar_full = 86; // where a bar reaches what its part may carry

std::string at(double x) { return trimmed_text(std::clamp(x, 1.5, 98.5), 2); }

double in_window(const WindowGauge& gauge, Volts volts) {
    const Volts span = gauge.high - gauge.low;
    if (span.value() <= 0) return (window_left + window_right) / 2;
    return window_left + (window_right - window_left) * ((volts - gauge.low) / span);
}

std::string upright(std::string_view kind, const std::string& x, int top, int bottom) {
    return fmt::format(R"(<line class="{}" x1="{}" x2="{}" y1="{}" y2="{}"/>)", kind, x, x, top, bottom);
}

} // namespace

std::string_view name_of_file(std::string_view path) { return path.substr(path.find_last_of("/\\") + 1); }

std::string part_link(std::string_view id) { return fmt::format(R"(<a href="#plan">{}</a>)", html_text(id)); }

std::string sub_line(std::string_view html) { return fmt::format(R"(<span class="sub">{}</span>)", html); }

std::string sentence_html(std::string_view text) {
    std::string out;
    while (true) {
        const std::size_t open = text.find('`');
        const std::size_t close = open == std::string_view::npos ? open : text.find('`', open + 1);
        if (close == std::string_view::npos) return out + html_text(text);
        out += html_text(text.substr(0, open));
        out += "<code>" + html_text(text.substr(open + 1, close - open - 1)) + "</code>";
        text.remove_prefix(close + 1);
    }
}

std::string state_word(std::string_view kind, std::string_view text) {
    return fmt::format(R"(<span class="word {}">{}</span>)", kind, html_text(text));
}

std::string section_open(std::string_view anchor, std::string_view heading, bool own_sheet) {
    return fmt::format(
        "<section id=\"{}\" aria-labelledby=\"{}-heading\"{}>\n<h2 id=\"{}-heading\">{}</h2>\n", anchor,
        anchor, own_sheet ? " class=\"sheet\"" : "", anchor, html_text(heading));
}

std::string table_open(std::string_view caption, const std::vector<std::string>& heads) {
    std::string out = fmt::format("<table>\n<caption>{}</caption>\n<thead><tr>", html_text(caption));
    for (const std::string& head : heads) {
        const bool number = head.starts_with('#');
        out += fmt::format("<th scope=\"col\"{}>{}</th>", number ? " class=\"n\"" : "",
                           html_text(std::string_view(head).substr(number ? 1 : 0)));
    }
    return out + "</tr></thead>\n<tbody>\n";
}

std::string window_gauge(const WindowGauge& gauge) {
    std::string picture =
        R"(<svg class="bar" viewBox="0 0 100 16" preserveAspectRatio="none" aria-hidden="true">)";
    picture += fmt::format(R"(<rect class="ground" x="{}" y="4" width="{}" height="8"/>)", window_left,
                           window_right - window_left);
    picture += fmt::format(R"(<line class="range" x1="{}" x2="{}" y1="8" y2="8"/>)",
                           at(in_window(gauge, gauge.weak)), at(in_window(gauge, gauge.strong)));
    picture += upright("end", at(in_window(gauge, gauge.weak)), 5, 11);
    picture += upright("end", at(in_window(gauge, gauge.strong)), 5, 11);
    picture += upright(gauge.out ? "mark out" : "mark", at(in_window(gauge, gauge.nominal)), 1, 15);
    return picture + "</svg>";
}

std::string loading_bar(double loading, bool over, double limit) {
    std::string picture =
        R"(<svg class="bar" viewBox="0 0 100 16" preserveAspectRatio="none" aria-hidden="true">)";
    picture += fmt::format(R"(<rect class="ground" x="0" y="4" width="{}" height="8"/>)", bar_full);
    picture +=
        fmt::format(R"(<rect class="{}" x="0" y="5" width="{}" height="6"/>)", over ? "fill over" : "fill",
                    trimmed_text(std::clamp(loading * bar_full, 0.0, 99.0), 2));
    if (limit > 0) picture += upright("limit", at(limit * bar_full), 1, 15);
    return picture + "</svg>";
}

} // namespace rillwatt
