#include "size_options.hpp"

#include "rillwatt/search/size_options.hpp"

#include <fmt/format.h>

namespace rillwatt {

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
         .help = "keep every window on a weak supply too, "
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

} // namespace rillwatt
