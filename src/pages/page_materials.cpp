#include "rillwatt/plan/bill_figures.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"
#include <map>

namespace rillwatt {

namespace {

std::string unpriced_text(const std::vector<std::string>& items) {
    if (items.empty()) return "";
    std::string list;
    for (const std::string& item : items)
        list += (list.empty() ? "" : ", ") + html_text(item);
    return fmt::format("<p>Without a price in the catalogs and so not in the total: {}.</p>\n", list);
}

/// "7 pieces", "1 spool", "41.9 ft".
std::string quantity_text(const BillLine& line) {
    const bool counted = line.unit == "piece" || line.unit == "spool";
    return fmt::format("{} {}{}", bill_figures(line).quantity, html_text(line.unit),
                       counted && line.quantity != 1 ? "s" : "");
}

std::string bill_row(const BillLine& line) {
    const BillFigures figures = bill_figures(line);
    std::string about = html_text(line.description);
    if (!line.why.empty()) about += (about.empty() ? "" : ", ") + html_text(line.why);
    return fmt::format(
        "<tr><th scope=\"row\">{}{}</th><td class=\"n\">{}{}</td><td class=\"n\">{}</td></tr>\n",
        html_text(line.item), about.empty() ? "" : sub_line(about), quantity_text(line),
        figures.price.empty() ? "" : sub_line("at&nbsp;" + figures.price),
        figures.cost.empty() ? "no&nbsp;price" : figures.cost);
}

std::string length_cell(const CablePiece& piece, LengthUnit unit) {
    return fmt::format("<td class=\"n\">{}{}</td>", length_text(piece.length, unit),
                       piece.from_plan ? "" : sub_line("as typed"));
}

std::string piece_row(const CablePiece& piece, LengthUnit unit) {
    return fmt::format(
        "<tr{}><th scope=\"row\">{}{}</th>{}<td><span class=\"free\">{}</span> to {}</td></tr>\n",
        part_attribute(piece.to), html_text(piece.tag), sub_line(html_text(piece.cable)),
        length_cell(piece, unit), html_text(piece.from), part_link(piece.to));
}

std::string stock_row(const CableStock& stock, const CutPlan& cuts, LengthUnit unit) {
    std::string pieces;
    for (std::size_t piece : stock.pieces)
        pieces += fmt::format("{}{} ({})", pieces.empty() ? "" : ", ", html_text(cuts.pieces[piece].tag),
                              length_text(cuts.pieces[piece].length, unit));
    return fmt::format("<tr><th scope=\"row\">{}{}</th><td>{}</td><td class=\"n\">{}</td></tr>\n",
                       html_text(stock.cable), sub_line(length_text(stock.length, unit)), pieces,
                       length_text(stock.rest, unit));
}

/// Whether a stock is one piece bought at its own length.
bool cut_to_length(const CableStock& stock) { return stock.pieces.size() == 1 && stock.rest.value() <= 0; }

std::string by_length_text(const CutPlan& cuts, LengthUnit unit) {
    std::map<std::string, Metres> totals;
    for (const CableStock& stock : cuts.stock)
        if (cut_to_length(stock)) totals[stock.cable] += stock.length;
    std::string out;
    for (const auto& [cable, total] : totals)
        out += fmt::format("<li>{}: {} in all</li>\n", html_text(cable), length_text(total, unit));
    return out.empty() ? "" : "<p>Bought by length:</p>\n<ul>\n" + out + "</ul>\n";
}

std::string stock_table(const CutPlan& cuts, LengthUnit unit) {
    std::string rows;
    for (const CableStock& stock : cuts.stock)
        if (!cut_to_length(stock)) rows += stock_row(stock, cuts, unit);
    std::string out = "<h3>What to cut from what</h3>\n" + by_length_text(cuts, unit);
    if (rows.empty()) return out;
    return out +
           table_open("Spools, with the pieces in the order they are cut",
                      {"Cable", "Pieces", "#Left over"}) +
           rows + "</tbody></table>\n";
}

std::string tag_text(const CablePiece& piece, std::string_view end, const std::string& part,
                     LengthUnit unit) {
    return fmt::format("<div><b>{}</b>{} {}<br>{}, {}</div>", html_text(piece.tag), end, html_text(part),
                       html_text(piece.cable), length_text(piece.length, unit));
}

std::string tags(const CutPlan& cuts, LengthUnit unit) {
    std::string out =
        "<h3>Cable tags</h3>\n<p>Two for each piece: print, cut along the dashes, one on either end.</p>\n"
        "<ul class=\"tags\">\n";
    for (const CablePiece& piece : cuts.pieces)
        out += fmt::format("<li class=\"tag\"{}>{}{}</li>\n", part_attribute(piece.to),
                           tag_text(piece, "feed end at", piece.from, unit),
                           tag_text(piece, "far end at", piece.to, unit));
    return out + "</ul>\n";
}

} // namespace

std::string bill_section(const ReportPageParts& parts) {
    const Bill& bill = parts.site.bill;
    if (bill.lines.empty()) return "";
    const SiteSettings& settings = parts.site.assessment.site->settings;
    std::string out = section_open("bill", "Bill of materials");
    out += table_open(
        fmt::format("What to buy and put on the truck, prices in {} from the catalogs", settings.currency),
        {"Item", "#Quantity", "#Cost"});
    for (const BillLine& line : bill.lines)
        out += bill_row(line);
    out += fmt::format(
        "</tbody>\n<tfoot><tr><th scope=\"row\" colspan=\"2\">Together</th><td class=\"n\">{}</td></tr>"
        "</tfoot></table>\n",
        html_text(money_text(bill.total, settings.currency)));
    return out + unpriced_text(bill.unpriced) + "</section>\n";
}

std::string cut_list_section(const ReportPageParts& parts) {
    const CutPlan& cuts = parts.site.cuts;
    if (cuts.pieces.empty()) return "";
    const SiteSettings& settings = parts.site.assessment.site->settings;
    std::string out = section_open("cuts", "Cut list", true);
    out += table_open(
        fmt::format("Cable pieces; lengths from the plan hold {} of allowance, typed ones are taken as they "
                    "stand",
                    trimmed_text(100 * settings.cable_allowance, 1) + " %"),
        {"Tag and cable", "#Length", "From and to"});
    for (const CablePiece& piece : cuts.pieces)
        out += piece_row(piece, settings.units);
    out += "</tbody></table>\n" + stock_table(cuts, settings.units);
    for (const std::string& remark : cuts.remarks)
        out += fmt::format("<p>{}</p>\n", html_text(remark));
    return out + tags(cuts, settings.units) + "</section>\n";
}

} // namespace rillwatt
