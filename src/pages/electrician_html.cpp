#include "rillwatt/pages/electrician_page.hpp"
#include "rillwatt/text/cautions.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include <string_view>

namespace rillwatt {

namespace {

/// Dense, black on white, one or two sheets of letter or A4. No script, no font, no picture from elsewhere.
constexpr std::string_view head = R"(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<style>
@page { margin: 10mm; }
body { font: 8.2pt/1.22 "Liberation Sans", Arial, Helvetica, sans-serif; color: #000; background: #fff;
  max-width: 195mm; margin: 0 auto; padding: 2mm; }
h1 { font-size: 13pt; margin: 0; }
h2 { font-size: 9pt; margin: 2.2mm 0 .6mm; border-bottom: .5pt solid #000; break-after: avoid; }
p { margin: .6mm 0; }
.cautions { border: 1.2pt solid #000; padding: 1mm 2mm; margin: 1.5mm 0; }
.cautions p { margin: .3mm 0; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; }
th, td { border: .4pt solid #777; padding: .35mm 1mm; text-align: left; vertical-align: top;
  overflow-wrap: anywhere; }
thead th { background: #eee; }
tbody th { font-weight: 600; width: 19mm; overflow-wrap: normal; }
tr { break-inside: avoid; }
.source { color: #333; font-size: 6.6pt; line-height: 1.15; }
td.source { width: 48mm; }
ul { margin: 0; padding-left: 4mm; }
li { break-inside: avoid; }
.two { columns: 2; column-gap: 6mm; }
.sign { display: grid; grid-template-columns: 2fr 1.4fr 1fr 2fr; gap: 4mm; margin-top: 3mm; break-inside: avoid; }
.sign div { border-top: .6pt solid #000; padding-top: .5mm; margin-top: 9mm; font-size: 7pt; }
@media screen { body { font-size: 10pt; } .source { font-size: 8pt; } td.source { width: 26%; }
  h2 { font-size: 11.5pt; } }
@media screen and (max-width: 700px) { .two { columns: 1; } .sign { grid-template-columns: 1fr; } }
@media print { body { padding: 0; max-width: none; } .scroll { overflow: visible; } }
</style>
)";

std::string cautions_html() {
    std::string html =
        "<div class=\"cautions\" role=\"note\"><strong>Before anyone acts on this sheet</strong>\n";
    for (const auto& caution : cautions())
        html += fmt::format("<p>{}</p>\n", html_text(caution));
    return html + "</div>\n";
}

std::string table_html(const SheetTable& table) {
    if (table.columns.empty()) return {};
    std::string html = fmt::format("<h2>{}</h2>\n<div class=\"scroll\"><table>\n<thead><tr><td></td>",
                                   html_text(table.title));
    for (const auto& column : table.columns)
        html += fmt::format("<th scope=\"col\">{}</th>", html_text(column));
    html += "<th scope=\"col\" class=\"source\">source</th></tr></thead>\n<tbody>\n";
    for (const auto& row : table.rows) {
        html += fmt::format("<tr><th scope=\"row\">{}</th>", html_text(row.what));
        for (const auto& cell : row.cells)
            html += fmt::format("<td>{}</td>", html_text(cell));
        html += fmt::format("<td class=\"source\">{}</td></tr>\n", html_text(row.source));
    }
    return html + "</tbody></table></div>\n";
}

std::string lines_html(const char* title, const std::vector<SheetLine>& lines, const char* none) {
    std::string html = fmt::format("<h2>{}</h2>\n", title);
    if (lines.empty()) return html + fmt::format("<p>{}</p>\n", none);
    html += "<ul class=\"two\">\n";
    for (const auto& line : lines)
        html += fmt::format("<li>{} <span class=\"source\">{}</span></li>\n", html_text(line.text),
                            html_text(line.source));
    return html + "</ul>\n";
}

std::string running_cost_html(const ElectricianSheet& sheet) {
    if (sheet.running_cost.empty()) return {};
    std::string text;
    for (const auto& line : sheet.running_cost)
        text += (text.empty() ? "" : "; ") + html_text(line);
    return fmt::format(
        "<h2>Running cost</h2>\n<p>{}. <span class=\"source\">computed; hours, nights and price by "
        "owner</span></p>\n",
        text);
}

constexpr std::string_view sign_off = R"(<div class="sign">
<div>electrician, name</div><div>licence</div><div>date</div><div>remarks: panel, space, changes made</div>
</div>
)";

} // namespace

std::string electrician_html(const ElectricianSheet& sheet) {
    std::string html(head);
    html += fmt::format(
        "<title>{}: for the electrician</title>\n</head>\n<body>\n<h1>{}: for the electrician</h1>\n"
        "<p>{}. \"As planned\" is what the site file says, \"proposed\" what it leaves open; the "
        "electrician decides.</p>\n",
        html_text(sheet.site), html_text(sheet.site), html_text(sheet.basis));
    html += cautions_html();
    for (const auto& table : sheet.tables)
        html += table_html(table);
    html += table_html(sheet.burial);
    html += lines_html("What stays open or must change", sheet.open,
                       "Nothing that the rules of this program see.");
    html += lines_html("In and near the water", sheet.reminders, "");
    html += running_cost_html(sheet);
    html += sign_off;
    return html + "</body>\n</html>\n";
}

} // namespace rillwatt
