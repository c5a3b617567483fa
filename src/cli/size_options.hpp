#pragma once

#include "rillwatt/cli/command.hpp"

#include <vector>

namespace rillwatt {

/// Options of `size`.
std::vector<OptionSpec> size_option_specs();

/// `--margin` and `--loading`, which `headroom` takes too.
OptionSpec margin_option();
OptionSpec loading_option();

} // namespace rillwatt
