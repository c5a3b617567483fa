#include "rillwatt/document/value_reader.hpp"
#include "rillwatt/site/read_site.hpp"

#include <fmt/format.h>

namespace rillwatt {
namespace {

/// Where in the document a catalog key stands: item `index` of `[[table]]`, or a key of `[stock]`.
struct Place {
    std::string_view table;
    std::size_t index;
    std::string_view key;
    int part_line;
};

class CatalogCheck {
  public:
    CatalogCheck(const Site& site, std::string_view text) : site_(site), text_(text) {}

    template<class Map>
    void name(const Place& place, const std::string& id, const Map& map, std::string_view kind) {
        if (id.empty()) return; // a key that is missing or unreadable is an error of its own
        if (found_.map == &map && *found_.id == id) return; // as the part before
        if (map.contains(id)) {
            found_ = {&map, &id};
            return;
        }
        std::vector<std::string> ids;
        for (const auto& [key, entry] : map)
            ids.push_back(key);
        const std::optional<std::string> nearest = nearest_spelling(id, ids);
        errors_.push_back({{site_.file, line_of(place)},
                           fmt::format("`{}` names {}, which no catalog has", place.key, shown_id(id)),
                           fmt::format("the id of a `[{}]` of the catalogs{}", kind,
                                       nearest ? "; nearest is " + shown_id(*nearest) : std::string()),
                           {}});
    }

    template<class Map>
    void name(const Place& place, const std::optional<std::string>& id, const Map& map,
              std::string_view kind) {
        if (id) name(place, *id, map, kind);
    }

    template<class Map>
    void list(std::string_view key, const std::optional<std::vector<std::string>>& ids, const Map& map,
              std::string_view kind) {
        if (!ids) return;
        for (std::size_t i = 0; i < ids->size(); ++i)
            name({"stock", i, key, 0}, ids->at(i), map, kind);
    }

    std::vector<InputError> take() {
        add_source_lines(errors_, site_.file, text_);
        return std::move(errors_);
    }

  private:
    /// The last id that a catalog has, and where: a garden has many parts of few kinds.
    struct Found {
        const void* map = nullptr;
        const std::string* id = nullptr;
    };

    /// Files are read a second time only to show an error.
    int line_of(const Place& place) {
        if (text_.empty()) return place.part_line;
        if (!document_) document_ = parse_document(text_, site_.file).value;
        const Value* value = document_ ? document_->root().find(place.table) : nullptr;
        if (value == nullptr) return place.part_line;
        if (const Table* stock = value->table()) {
            const Value* ids = stock->find(place.key);
            const bool listed =
                ids != nullptr && ids->array() != nullptr && place.index < ids->array()->size();
            return listed ? (*ids->array())[place.index].line : value->line;
        }
        const Array* parts = value->array();
        if (parts == nullptr || place.index >= parts->size()) return place.part_line;
        const Table* part = (*parts)[place.index].table();
        const Value* key = part != nullptr ? part->find(place.key) : nullptr;
        return key != nullptr ? key->line : place.part_line;
    }

    const Site& site_;
    std::string_view text_;
    std::optional<Document> document_;
    std::vector<InputError> errors_;
    Found found_;
};

/// Calls `look` with every part of one kind and its place among them.
template<class Parts, class Look>
void each(const Parts& parts, Look look) {
    for (std::size_t i = 0; i < parts.size(); ++i)
        look(i, parts[i]);
}

} // namespace

std::vector<InputError> check_against_catalog(const Site& site, const Catalog& catalog,
                                              std::string_view text) {
    CatalogCheck check(site, text);
    check.list("cables", site.stock.cables, catalog.cables, "cable");
    check.list("transformers", site.stock.transformers, catalog.transformers, "transformer");
    check.list("fixtures", site.stock.fixtures, catalog.fixtures, "fixture");
    each(site.pumps, [&](std::size_t i, const Pump& pump) {
        check.name({"pump", i, "model", pump.location.line}, pump.model, catalog.pumps, "pump");
    });
    each(site.transformers, [&](std::size_t i, const Transformer& transformer) {
        check.name({"transformer", i, "model", transformer.location.line}, transformer.model,
                   catalog.transformers, "transformer");
    });
    each(site.runs, [&](std::size_t i, const Run& run) {
        check.name({"run", i, "cable", run.location.line}, run.cable, catalog.cables, "cable");
    });
    each(site.splices, [&](std::size_t i, const Splice& splice) {
        check.name({"splice", i, "cable", splice.location.line}, splice.cable, catalog.cables, "cable");
    });
    each(site.fixtures, [&](std::size_t i, const Fixture& fixture) {
        check.name({"fixture", i, "model", fixture.location.line}, fixture.model, catalog.fixtures,
                   "fixture");
        check.name({"fixture", i, "cable", fixture.location.line}, fixture.cable, catalog.cables, "cable");
    });
    each(site.links, [&](std::size_t i, const Link& link) {
        check.name({"link", i, "cable", link.location.line}, link.cable, catalog.cables, "cable");
    });
    return check.take();
}

} // namespace rillwatt
