#include "size_request.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "answers.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

constexpr double largest_margin = 100; // volts

/// Says when the time that `--time` gives is over, counted from now.
std::function<bool()> out_of_time(const Request& request) {
    const std::optional<double> seconds = request.arguments.number("--time");
    if (!seconds || !request.seconds) return {};
    return [clock = request.seconds, end = request.seconds() + *seconds] { return clock() >= end; };
}

} // namespace

SizeOptions size_options(const Request& request) {
    const Arguments& arguments = request.arguments;
    SizeOptions options;
    options.per_length = arguments.has("--per-length");
    options.any_order = arguments.has("--any-order");
    options.all = arguments.has("--all");
    if (const auto margin = arguments.number("--margin")) options.margin = Volts(*margin);
    if (const auto loading = arguments.number("--loading")) options.loading = *loading / 100;
    if (const auto effort = arguments.number("--effort"); effort && *effort >= 1)
        options.effort = static_cast<std::size_t>(std::min(*effort, 1e15));
    options.out_of_time = out_of_time(request);
    return options;
}

std::string option_fault(const Request& request, const SizeOptions& options) {
    const Arguments& arguments = request.arguments;
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
    if (arguments.has("--diff") && wants_json(request))
        return "--diff and --format json: only one of them, each speaks on standard output alone";
    return "";
}

} // namespace rillwatt
