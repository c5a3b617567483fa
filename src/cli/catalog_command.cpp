#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/text/catalog_text.hpp"

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    return ask_and_say("catalog", arguments, console);
}

} // namespace

Command catalog_command() {
    return {
        .name = "catalog",
        .summary = "List and search cables, lights, transformers, pumps and their sources",
        .arguments = {{.name = "WORD", .help = "list only entries that hold this word", .required = false}},
        .options =
            {{.name = "--kind", .value = "KIND", .help = "list only this kind", .choices = catalog_kinds()},
             {.name = "--units",
              .value = "UNITS",
              .help = "lengths in feet or metres",
              .choices = {"ft", "m"},
              .fallback = "ft"},
             {.name = "--site",
              .value = "SITE",
              .help = "with the catalogs this site names",
              .kind = ValueKind::file},
             format_option(),
             catalog_option()},
        .examples = {{"rillwatt catalog --kind transformer", "every transformer there is"},
                     {"rillwatt catalog halogen", "everything with halogen in its id, kind, note or source"}},
        .run = run};
}

} // namespace rillwatt
