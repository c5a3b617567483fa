#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/exchange/catalog_json.hpp"
#include "rillwatt/text/catalog_text.hpp"

#include <ostream>

namespace rillwatt {

namespace {

/// The catalogs as a site sees them, or without a site those built in.
std::optional<Catalog> chosen_catalog(const Arguments& arguments, Console& console) {
    if (!arguments.has("--site")) return load_catalogs(arguments.all("--catalog"), console);
    const std::optional<LoadedSite> loaded =
        load_site(arguments.text("--site"), arguments.all("--catalog"), console);
    if (!loaded) return std::nullopt;
    return *loaded->catalog;
}

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<Catalog> catalog = chosen_catalog(arguments, console);
    if (!catalog) return ExitStatus::wrong_input;
    CatalogQuery query{.kind = arguments.text("--kind"), .words = arguments.all("WORD")};
    const LengthUnit unit = arguments.text("--units") == "m" ? LengthUnit::metres : LengthUnit::feet;
    if (arguments.text("--format") == "json")
        console.out << catalog_json(*catalog, query);
    else
        console.out << catalog_text(*catalog, query, unit, {.colour = console.colour});
    return ExitStatus::ok;
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
