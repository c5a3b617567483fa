#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/document/value_reader.hpp"

#include <fmt/format.h>

namespace rillwatt {
namespace {

/// "an id of the catalogs; nearest is `12/2`"
template<class Map>
std::string expected_entry(const char* words, const Map& map, const std::string& id) {
    std::vector<std::string> ids;
    for (const auto& [key, entry] : map)
        ids.push_back(key);
    const std::optional<std::string> nearest = nearest_spelling(id, ids);
    return nearest ? fmt::format("{}; nearest is {}", words, shown_id(*nearest)) : std::string(words);
}

std::string listed_sizes(const ConductorTable& table) {
    std::string words;
    for (const ConductorRow& row : table.rows)
        words += fmt::format("{}`{}`", words.empty() ? "" : ", ", row.size);
    return words;
}

void resolve(CableType& cable, const Catalog& catalog, std::vector<InputError>& errors) {
    const ConductorTable* table = find_entry(catalog.tables, cable.table);
    if (table == nullptr) {
        errors.push_back(
            {cable.location,
             fmt::format("`table` of cable {} is {}, which no catalog has", shown_id(cable.id),
                         shown_id(cable.table)),
             expected_entry("a `[conductor_table]` of the catalogs", catalog.tables, cable.table),
             {},
             "table"});
        return;
    }
    const ConductorRow* row = table->find(cable.size);
    if (row == nullptr) {
        errors.push_back(
            {cable.location,
             fmt::format("`size` of cable {} is {}", shown_id(cable.id), shown_id(cable.size)),
             fmt::format("a size of the table {}: {}", shown_id(table->id), listed_sizes(*table)),
             {},
             "size"});
        return;
    }
    cable.resistance = row->resistance;
    cable.reference_temperature = table->reference_temperature;
    cable.temperature_coefficient = table->temperature_coefficient;
    cable.section_mm2 = section_mm2(cable.size).value_or(0);
}

} // namespace

std::vector<InputError> check_catalog(Catalog& catalog) {
    std::vector<InputError> errors;
    for (auto& [id, cable] : catalog.cables)
        resolve(cable, catalog, errors);
    for (const auto& [id, fixture] : catalog.fixtures)
        if (!fixture.lead_cable.empty() && find_entry(catalog.cables, fixture.lead_cable) == nullptr)
            errors.push_back(
                {fixture.location,
                 fmt::format("`lead_cable` of fixture {} is {}, which no catalog has", shown_id(id),
                             shown_id(fixture.lead_cable)),
                 expected_entry("a `[cable]` of the catalogs", catalog.cables, fixture.lead_cable),
                 {},
                 "lead_cable"});
    return errors;
}

} // namespace rillwatt
