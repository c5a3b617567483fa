#include "rillwatt/exchange/catalog_json.hpp"
#include "rillwatt/text/catalog_text.hpp"

#include "answers.hpp"

namespace rillwatt {

namespace {

/// The catalogs as a site sees them, or without a site those built in.
LoadResult<Catalog> chosen_catalog(const Arguments& arguments, FileSource& files) {
    const std::vector<std::string>& more = arguments.all("--catalog");
    if (!arguments.has("--site")) return load_catalogs(more, files);
    LoadResult<LoadedSite> loaded = load_site({arguments.text("--site"), more}, files);
    if (!loaded) return {std::nullopt, std::move(loaded.errors)};
    return {*loaded.value->catalog, {}};
}

} // namespace

Answer catalog_answer(const Request& request, FileSource& files) {
    const Arguments& arguments = request.arguments;
    const LoadResult<Catalog> catalog = chosen_catalog(arguments, files);
    if (!catalog) return refused(request, catalog.errors);
    const CatalogQuery query{.kind = arguments.text("--kind"), .words = arguments.all("WORD")};
    const LengthUnit unit = arguments.text("--units") == "m" ? LengthUnit::metres : LengthUnit::feet;
    return {.out = wants_json(request) ? catalog_json(*catalog.value, query)
                                       : catalog_text(*catalog.value, query, unit, text_style(request))};
}

} // namespace rillwatt
