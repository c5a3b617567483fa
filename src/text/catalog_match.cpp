#include "rillwatt/text/catalog_match.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& character : result)
        if (character >= 'A' && character <= 'Z') character = static_cast<char>(character - 'A' + 'a');
    return result;
}

} // namespace

const std::vector<std::string>& catalog_kinds() {
    static const std::vector<std::string> kinds = {"cable", "fixture",   "transformer",
                                                   "pump",  "accessory", "conductor-table"};
    return kinds;
}

bool all_words_in(const CatalogQuery& query, std::string_view text) {
    const std::string searched = lower(text);
    return std::all_of(query.words.begin(), query.words.end(), [&](const std::string& word) {
        return searched.find(lower(word)) != std::string::npos;
    });
}

std::string searched_text(const CatalogEntry& entry) {
    return entry.id + ' ' + entry.note + ' ' + entry.source;
}

std::string searched_text(const FixtureType& entry) {
    const CatalogEntry& common = entry;
    return searched_text(common) + ' ' + fixture_kind_name(entry.kind) + ' ' + load_model_name(entry.load) +
           ' ' + water_rating_name(entry.rating);
}

std::string searched_text(const ConductorTable& entry) { return entry.id + ' ' + entry.source; }

} // namespace rillwatt
