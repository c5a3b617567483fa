#include "rillwatt/text/size_text.hpp"

#include "rillwatt/finding/command_word.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/plan/bill_figures.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/sizing/weak_supply.hpp"
#include "rillwatt/text/cautions.hpp"
#include "rillwatt/text/check_text.hpp"
#include "rillwatt/text/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

namespace {

std::string heading(const TextStyle& style, std::string_view text) {
    return '\n' + inked(style, Ink::heading, text) + '\n';
}

std::string money(const SizeReport& report, Money amount) {
    return money_text(amount, report.after.site->settings.currency);
}

std::string verdict_text(const SizeReport& report) {
    const SizeResult& result = report.result;
    switch (result.status) {
    case SizeStatus::optimal:
        return fmt::format("Optimal{}: cable and transformers cost {}, and no choice that {} costs less.",
                           result.left_out.empty() ? "" : " for what could be sized",
                           money(report, *result.cost),
                           report.options.weak_supply ? "works on a weak supply too" : "works");
    case SizeStatus::feasible:
        return fmt::format(
            "Feasible: cable and transformers cost {}; the cheapest choice that works costs at "
            "least {}, so this one is at most {} % too dear.",
            money(report, *result.cost), money(report, *result.lower_bound),
            fixed_text(std::ceil(result.gap() * 1e5) / 1e3, 3));
    case SizeStatus::infeasible:
        break;
    }
    if (result.infeasible && !result.infeasible->proven)
        return "Nothing that works was found within the effort.";
    return "Infeasible: nothing that may be chosen works.";
}

/// What every lamp keeps from the ends of its window; empty when nothing was asked for.
std::string margin_text(const SizeOptions& options) {
    if (options.above_low_end() <= Volts(0)) return "";
    std::string text = fmt::format("Asked for: every lamp at least {} above the low end of its window",
                                   nominal_volts_text(options.above_low_end()));
    if (options.margin > Volts(0))
        text += fmt::format(" and {} below the high end", nominal_volts_text(options.margin));
    text += ", at nominal supply";
    return text + '.';
}

/// One finding in one line, shortened: its whole sentence stands among the findings below.
std::string warned_line(const Finding& finding, const TextStyle& style) {
    const std::string first = fmt::format("  {}: ", severity_name(finding.severity));
    const std::string rule = fmt::format(" [{}]", finding.rule);
    const std::size_t taken = display_width(first) + display_width(rule);
    const std::size_t room = std::max<std::size_t>(style.width, taken + 8) - taken;
    return first + clipped(printable(finding.message), room) + rule + '\n';
}

/// What `check` will find fault with, told where nobody overlooks it.
std::string warned_text(const SizeReport& report, const TextStyle& style) {
    constexpr std::size_t most_told = 4;
    const std::vector<Finding> warned = warned_of(report);
    if (warned.empty()) return "";
    const auto old = std::count_if(warned.begin(), warned.end(),
                                   [&](const Finding& finding) { return found_before(report, finding); });
    std::string out = wrapped(
        fmt::format("{} `rillwatt check` finds {}{}:",
                    report.result.choices.empty() ? "As typed" : "With these choices",
                    findings_count_text(warned),
                    old == 0 || report.result.choices.empty() ? "" : fmt::format(" ({} before too)", old)),
        style.width, "", "  ");
    for (std::size_t i = 0; i < std::min(most_told, warned.size()); ++i)
        out += warned_line(warned[i], style);
    if (warned.size() > most_told) out += fmt::format("  and {} more\n", warned.size() - most_told);
    return out;
}

std::string head_text(const SizeReport& report, const TextStyle& style) {
    const Site& site = *report.after.site;
    const std::string file = clipped(printable(site.file), style.width / 2);
    const std::size_t room = style.width - display_width(file) - 2;
    std::string out =
        inked(style, Ink::heading, padded_right(clipped(printable(site.settings.name), room), room));
    out += "  " + file + '\n';
    out += wrapped(verdict_text(report), style.width, "", "  ");
    out += warned_text(report, style);
    if (const std::string margin = margin_text(report.options); !margin.empty())
        out += wrapped(margin, style.width, "", "  ");
    for (const std::string& id : report.result.left_out)
        out += wrapped(fmt::format("{} is left out: one of its lengths is open.", printable(id)), style.width,
                       "", "  ");
    for (const std::string& id : report.result.unpriced)
        out += wrapped(fmt::format("{} has no price and counts as nothing.", printable(id)), style.width, "",
                       "  ");
    return out;
}

std::string infeasible_text(const SizeReport& report, const TextStyle& style) {
    if (!report.result.infeasible) return "";
    const Infeasibility& why = *report.result.infeasible;
    std::string out = heading(style, "WHY NOT");
    out += wrapped(fmt::format("{}: {}.", printable(why.transformer), printable(why.reason)), style.width,
                   "  ", "  ");
    if (why.best && why.needed)
        out += wrapped(
            fmt::format("Missing: {}.", volts_text(*why.needed > *why.best ? *why.needed - *why.best
                                                                           : *why.best - *why.needed)),
            style.width, "  ", "  ");
    out += wrapped("Fix: " + printable(why.suggestion) + '.', style.width, "  ", "    ");
    for (const std::string& way : why.other_ways)
        out += wrapped("or: " + printable(way) + '.', style.width, "  ", "    ");
    return out;
}

std::string choice_text(const SizeChoice& choice, const char* what) {
    return choice.what == "tap" ? fmt::format("{} V", what) : what;
}

std::string choices_text(const SizeReport& report, const TextStyle& style) {
    if (report.result.choices.empty() && report.result.infeasible) return "";
    if (report.result.choices.empty())
        return report.result.left_out.empty() ? "\nNothing was open.\n" : "\nNothing else was open.\n";
    std::string out = heading(style, "CHOSEN");
    for (const SizeChoice& choice : report.result.choices) {
        const std::string was = choice.was ? "was " + choice_text(choice, choice.was->c_str()) : "was open";
        out +=
            fmt::format("  {} {} {} {}\n", padded_right(clipped(printable(choice.part), 30), 30),
                        padded_right(choice.what, 6),
                        padded_right(clipped(printable(choice_text(choice, choice.value.c_str())), 20), 20),
                        clipped(printable(was), 18));
    }
    return out;
}

std::string reasons_text(const SizeReport& report, const TextStyle& style) {
    if (report.result.reasons.empty()) return "";
    std::string out = heading(style, "WHY");
    for (const SizeReason& reason : report.result.reasons) {
        out += wrapped(fmt::format("{}: {}.", printable(reason.part), printable(reason.binds)), style.width,
                       "  ", "    ");
        const std::string cheaper =
            reason.cheaper.empty() ? "there is no cheaper one" : printable(reason.cheaper);
        out += wrapped("next cheaper: " + cheaper + '.', style.width, "    ", "      ");
    }
    return out;
}

std::string bill_text(const SizeReport& report, const TextStyle& style) {
    if (report.bill.lines.empty()) return "";
    std::string out = heading(style, "BILL");
    for (const BillLine& line : report.bill.lines) {
        const BillFigures figures = bill_figures(line);
        const std::string price = figures.price.empty() ? "no price" : figures.price;
        out += fmt::format("  {} {} {} {} {}\n", padded_right(clipped(printable(line.item), 18), 18),
                           padded_right(clipped(printable(line.description), 24), 24),
                           padded_left(fmt::format("{} {}", figures.quantity, line.unit), 12),
                           padded_left(price, 8), padded_left(figures.cost, 10));
    }
    out += fmt::format("  {} {}\n", padded_right("total", 65),
                       padded_left(fixed_text(report.bill.total.value(), 2), 10));
    for (const std::string& remark : report.bill.remarks)
        out += wrapped(printable(remark), style.width, "  ", "    ");
    return out;
}

const RunResult* run_result(const Assessment& assessment, std::size_t run) {
    for (const RunResult& result : assessment.solution.nominal().runs)
        if (result.run == run) return &result;
    return nullptr;
}

std::string lowest_text(const Assessment& assessment, std::size_t run) {
    const RunResult* result = run_result(assessment, run);
    if (result == nullptr) return "not known";
    if (!result->worst_fixture) return "no lamp";
    return fmt::format("{} at {}", volts_text(result->worst_volts),
                       printable(assessment.site->fixtures[*result->worst_fixture].id));
}

/// What the choices leave to be said of a weak supply.
std::string weak_supply_text(const SizeReport& report, const TextStyle& style) {
    if (report.result.infeasible) return "";
    const Site& site = *report.after.site;
    const std::optional<Volts> missed = weak_shortfall(report.after.solution, site, *report.after.catalog);
    if (!missed || report.options.weak_supply) return "";
    return wrapped(fmt::format("On a weak supply some lamps leave their windows, the worst by {}. `rillwatt "
                               "size {}{} --weak-supply` chooses so that none does.",
                               volts_text(*missed), command_word(site.file),
                               report.options.all ? " --all" : ""),
                   style.width, "  ", "    ");
}

std::string before_after_text(const SizeReport& report, const TextStyle& style) {
    std::string out = heading(style, "BEFORE AND AFTER");
    for (std::size_t r = 0; r < report.after.site->runs.size(); ++r)
        out += wrapped(fmt::format("{}: lowest lamp {} before, {} after.",
                                   printable(report.after.site->runs[r].id), lowest_text(report.before, r),
                                   lowest_text(report.after, r)),
                       style.width, "  ", "    ");
    out += wrapped(fmt::format("Findings: {} before, {} after.", findings_count_text(report.before.findings),
                               findings_count_text(report.after.findings)),
                   style.width, "  ", "    ");
    return out + weak_supply_text(report, style);
}

std::string findings_left_text(const SizeReport& report, const TextStyle& style) {
    if (report.result.infeasible) return ""; // `check` tells them
    std::vector<Finding> grave;
    for (const Finding& finding : report.after.findings)
        if (finding.severity != Severity::note) grave.push_back(finding);
    return grave.empty() ? "" : '\n' + findings_text(grave, style);
}

std::string cautions_text(const TextStyle& style) {
    std::string out = heading(style, "CAUTIONS");
    for (const std::string_view sentence : cautions())
        out += wrapped(sentence, style.width, "  ", "  ");
    return out;
}

std::string room_text(const Headroom& room) {
    if (room.broken) return "broken already";
    if (!room.limited) return fmt::format("over {} VA", fixed_text(most_headroom.value(), 0));
    return va_text(room.more);
}

} // namespace

std::string size_text(const SizeReport& report, const TextStyle& style) {
    std::string out = head_text(report, style);
    for (const std::string& section :
         {infeasible_text(report, style), choices_text(report, style), reasons_text(report, style),
          bill_text(report, style), before_after_text(report, style), findings_left_text(report, style),
          cautions_text(style)})
        out += section;
    return out;
}

std::string headroom_text(const std::vector<Headroom>& rooms, const Assessment& assessment,
                          const SizeOptions& options, const TextStyle& style) {
    std::string out = wrapped(
        fmt::format(
            "How much more constant-power load each place can carry at nominal supply, one place at a "
            "time, a transformer loaded to at most {}. The figure of a transformer is for load right at its "
            "terminals, shared evenly by its runs.",
            percent_text(options.loading)),
        style.width, "", "");
    std::string transformer;
    for (const Headroom& room : rooms) {
        if (room.transformer != transformer) out += heading(style, printable(room.transformer));
        transformer = room.transformer;
        const std::string first =
            fmt::format("  {} {}  ", padded_right(clipped(printable(room.part), 24), 24),
                        padded_left(room_text(room), 14));
        const std::string then = room.what.empty() ? "nothing breaks" : printable(room.what);
        out += wrapped(then, style.width, first, std::string(43, ' '));
    }
    if (rooms.empty()) out += "No transformer is complete: nothing can be said.\n";
    for (const OpenValue& open : assessment.circuits.open)
        out += wrapped(fmt::format("open: {} of {}", open.what, printable(open.part)), style.width, "", "  ");
    return out + cautions_text(style);
}

} // namespace rillwatt
