#pragma once

#include "rillwatt/cli/command.hpp"
#include "rillwatt/search/size_options.hpp"

#include <optional>

namespace rillwatt {

/// Options of `size`.
std::vector<OptionSpec> size_option_specs();

/// `--margin` and `--loading`, which `headroom` takes too.
OptionSpec margin_option();
OptionSpec loading_option();

/// What was asked for. Empty, with a message on `console.err`, when the options contradict each other or a
/// number is out of range.
std::optional<SizeOptions> size_options(const Arguments& arguments, Console& console);

} // namespace rillwatt
