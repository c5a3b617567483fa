#include "rillwatt/site/read_site.hpp"

namespace rillwatt {
namespace {

void add(EntryNames& names, const std::optional<std::string>& name) {
    if (name) names.insert(*name);
}

void add(EntryNames& names, const std::optional<std::vector<std::string>>& listed) {
    if (listed) names.insert(listed->begin(), listed->end());
}

} // namespace

EntryNames entries_named_by(const Site& site) {
    EntryNames names;
    std::string_view last; // lights of one kind often follow each other
    for (const Fixture& fixture : site.fixtures) {
        if (fixture.model != last) names.insert(fixture.model);
        last = fixture.model;
        add(names, fixture.cable);
    }
    for (const Transformer& transformer : site.transformers)
        add(names, transformer.model);
    for (const Pump& pump : site.pumps)
        names.insert(pump.model);
    for (const Run& run : site.runs)
        add(names, run.cable);
    for (const Splice& splice : site.splices)
        add(names, splice.cable);
    for (const Link& link : site.links)
        add(names, link.cable);
    add(names, site.stock.cables);
    add(names, site.stock.transformers);
    add(names, site.stock.fixtures);
    return names;
}

} // namespace rillwatt
