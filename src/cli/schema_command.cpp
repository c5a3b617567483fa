#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/exchange/schema_json.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/text/schema_text.hpp"

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    const bool catalog = arguments.text("--of") == "catalog";
    const std::vector<TableSpec> tables = catalog ? catalog_tables() : site_tables();
    if (arguments.text("--format") == "text")
        console.out << schema_text(tables, {.colour = console.colour});
    else
        console.out << schema_json(tables, catalog ? "rillwatt catalog" : "rillwatt site file");
    return ExitStatus::ok;
}

} // namespace

Command schema_command() {
    return {
        .name = "schema",
        .summary =
            "Print every key of the site file or of a catalog, for people or as JSON Schema for editors",
        .options = {{.name = "--of",
                     .value = "FILE",
                     .help = "which of the two files",
                     .choices = {"site", "catalog"},
                     .fallback = "site"},
                    {.name = "--format",
                     .value = "FORMAT",
                     .help = "json: a JSON Schema; text: to be read",
                     .choices = {"json", "text"},
                     .fallback = "json"}},
        .examples = {{"rillwatt schema --format text",
                      "every key, what it is for, and what counts when it is left out"},
                     {"rillwatt schema --of catalog --format text", "the same for a catalog of your own"},
                     {"rillwatt schema > site.schema.json", "let the editor complete keys of site files"}},
        .run = run};
}

} // namespace rillwatt
