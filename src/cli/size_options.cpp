#include "size_options.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <ostream>

namespace rillwatt {

namespace {

constexpr double largest_margin = 100; // volts

std::string complaint(const Arguments& arguments, const SizeOptions& options) {
    if (options.margin < Volts(0) || options.margin > Volts(largest_margin))
        return fmt::format("--margin {}: expected 0 to {} volts", trimmed_text(options.margin.value(), 6),
                           largest_margin);
    if (options.loading <= 0 || options.loading > limits::transformer_rating.value)
        return fmt::format("--loading {}: expected more than 0 and at most {} percent",
                           trimmed_text(options.loading * 100, 6), limits::transformer_rating.value * 100);
    if (arguments.number("--effort").value_or(1) < 1) return "--effort: expected 1 or more";
    if (arguments.number("--time").value_or(1) <= 0) return "--time: expected more than 0 seconds";
    if (options.any_order && !options.per_length) return "--any-order: only together with --per-length";
    if (arguments.has("--write") && arguments.has("--diff"))
        return "--write and --diff: only one of them; --diff writes nothing";
    if (arguments.has("--diff") && arguments.text("--format") == "json")
        return "--diff and --format json: only one of them, each speaks on standard output alone";
    return "";
}

} // namespace

OptionSpec margin_option() {
    return {.name = "--margin",
            .value = "VOLTS",
            .help = "how far every lamp stays inside both ends of its window",
            .kind = ValueKind::number};
}

OptionSpec loading_option() {
    return {.name = "--loading",
            .value = "PERCENT",
            .help = fmt::format("how far a transformer may be loaded, {} unless given",
                                limits::transformer_margin.value * 100),
            .kind = ValueKind::number};
}

std::vector<OptionSpec> size_option_specs() {
    return {
        {.name = "--per-length", .help = "let each length have its own cable, never thicker downstream"},
        {.name = "--any-order", .help = "with --per-length: allow thicker cable downstream"},
        margin_option(),
        {.name = "--weak-supply",
         .help = "keep every window on a weak supply too, by the least margin at the low end that does it, "
                 "and on a strong one where some tap can"},
        loading_option(),
        {.name = "--all", .help = "choose anew what is typed as well"},
        {.name = "--write", .help = "write the choices into the site file, all else byte for byte as it is"},
        {.name = "--diff", .help = "show what --write would change, and write nothing"},
        {.name = "--effort",
         .value = "STEPS",
         .help = "search steps before the best choice so far is shown with its gap, by the size of the site "
                 "unless given; the same steps give the same answer",
         .kind = ValueKind::whole_number},
        {.name = "--time",
         .value = "SECONDS",
         .help = "stop searching after so many seconds",
         .kind = ValueKind::number},
        format_option(),
        catalog_option()};
}

std::optional<SizeOptions> size_options(const Arguments& arguments, Console& console) {
    SizeOptions options;
    options.per_length = arguments.has("--per-length");
    options.any_order = arguments.has("--any-order");
    options.all = arguments.has("--all");
    if (const auto margin = arguments.number("--margin")) options.margin = Volts(*margin);
    if (const auto loading = arguments.number("--loading")) options.loading = *loading / 100;
    if (const auto effort = arguments.number("--effort"); effort && *effort >= 1)
        options.effort = static_cast<std::size_t>(std::min(*effort, 1e15));
    const std::string problem = complaint(arguments, options);
    if (problem.empty()) return options;
    console.err << "rillwatt: " << problem << '\n';
    return std::nullopt;
}

} // namespace rillwatt
