#include "rillwatt/cli/command.hpp"

namespace rillwatt {

OptionSpec format_option() {
    return {.name = "--format",
            .value = "FORMAT",
            .help = "text for people, json for programs",
            .choices = {"text", "json"},
            .fallback = "text"};
}

OptionSpec catalog_option() {
    return {.name = "--catalog",
            .value = "FILE",
            .help = "read this catalog too; its entries win over all others",
            .kind = ValueKind::file,
            .repeatable = true};
}

ArgumentSpec site_argument() { return {.name = "SITE", .help = "the site file"}; }

} // namespace rillwatt
