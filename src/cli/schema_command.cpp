#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/report/schema_json.hpp"
#include "rillwatt/site/read_site.hpp"

#include <ostream>

namespace rillwatt {

namespace {

ExitStatus run(const Arguments& arguments, Console& console) {
    if (arguments.text("--of") == "catalog")
        console.out << schema_json(catalog_tables(), "rillwatt catalog");
    else
        console.out << schema_json(site_tables(), "rillwatt site file");
    return ExitStatus::ok;
}

} // namespace

Command schema_command() {
    return {
        .name = "schema",
        .summary = "Print the JSON Schema of the site file or of a catalog, for editors",
        .options = {{.name = "--of",
                     .value = "FILE",
                     .help = "which of the two files",
                     .choices = {"site", "catalog"},
                     .fallback = "site"}},
        .examples = {{"rillwatt schema > site.schema.json", "let the editor complete keys of site files"}},
        .run = run};
}

} // namespace rillwatt
