#pragma once

#include "rillwatt/catalog/distribution.hpp"
#include "rillwatt/conductor/conductor_table.hpp"
#include "rillwatt/finding/finding.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// What every catalog entry says of itself.
struct CatalogEntry {
    std::string id;
    std::string source; ///< where the figures come from, printed by reports
    std::string note;
    SourceLocation location;
};

struct CableType : CatalogEntry {
    std::string table; ///< id of its conductor table
    std::string size;  ///< row of that table
    Amperes ampacity;  ///< in this use
    bool direct_burial = false;
    std::optional<MoneyPerMetre> price; ///< none: sizing may not choose it
    std::vector<Metres> spools;         ///< sold in these lengths only; empty: by length
    OhmsPerMetre resistance;            ///< of one conductor, at the table's reference temperature
    Celsius reference_temperature;
    double temperature_coefficient = 0;
    double section_mm2 = 0; ///< for "thicker than"

    /// Resistance of one conductor at a temperature.
    OhmsPerMetre resistance_at(Celsius temperature) const {
        return resistance * (1 + temperature_coefficient * (temperature - reference_temperature));
    }
};

enum class FixtureKind { submersible, path, accent, downlight, step, other };
enum class LoadModel { constant_power, constant_current, filament, resistance };
enum class WaterRating { submersible, wet, damp };

const char* fixture_kind_name(FixtureKind kind);
const char* load_model_name(LoadModel model);
const char* water_rating_name(WaterRating rating);

struct FixtureType : CatalogEntry {
    FixtureKind kind = FixtureKind::other;
    Volts rated_volts{12};
    Volts window_low; ///< within the window the lamp works; limits are inclusive
    Volts window_high;
    Watts watts;
    VoltAmperes va; ///< S of the load model; equals watts where the catalog gives none
    LoadModel load = LoadModel::constant_power;
    Metres lead;            ///< the fixture's own cord; 0: none
    std::string lead_cable; ///< cable id, empty when there is no lead
    WaterRating rating = WaterRating::damp;
    Lumens lumens;
    DistributionSpec distribution;
    std::optional<Money> price;
    std::optional<double> colour_temperature; ///< kelvins
};

struct TransformerType : CatalogEntry {
    VoltAmperes va;
    Volts primary_volts{120};
    std::vector<Volts> taps;     ///< open-circuit volts at rated primary volts, ascending
    double regulation = 0;       ///< ratio (regulation_percent / 100): fall from no load to rated load
    Amperes secondary_limit{25}; ///< per run
    Watts no_load;
    bool water_listed = false;
    std::optional<Money> price;
};

struct PumpType : CatalogEntry {
    Volts volts;
    Amperes amps;
    Watts watts;
    std::optional<double> horsepower;
    bool submersible = false;
    Metres cord;
    bool cord_and_plug = true;
    std::optional<double> leakage_ma;
    std::optional<Money> price;
};

/// What else goes on the truck: connectors, stakes, sleeves. Used by the bill only.
struct AccessoryType : CatalogEntry {
    /// What the bill counts it by: "splice" (one a joint), "fixture-stake" (one a light set in soil),
    /// "sleeve-metre", "trench-tape-metre", "cable-tag" (two a cable piece), "marker-stake" (one a point
    /// staked).
    std::string use;
    std::optional<Money> price;
};

/// Everything that can be named by a `model` or `cable` key. Built-in entries first, later files override by
/// id.
struct Catalog {
    std::map<std::string, ConductorTable, std::less<>> tables;
    std::map<std::string, CableType, std::less<>> cables;
    std::map<std::string, FixtureType, std::less<>> fixtures;
    std::map<std::string, TransformerType, std::less<>> transformers;
    std::map<std::string, PumpType, std::less<>> pumps;
    std::map<std::string, AccessoryType, std::less<>> accessories;
};

/// The entry with that id, or null.
template<class Map>
const typename Map::mapped_type* find_entry(const Map& map, const std::string& id) {
    const auto it = map.find(id);
    return it == map.end() ? nullptr : &it->second;
}

/// Looks entries up one after the other and remembers the last: lights of one kind often follow each other.
template<class Map>
class EntryFinder {
  public:
    explicit EntryFinder(const Map& map) : map_(map), last_(map.end()) {}

    /// The entry with this id, or null.
    const typename Map::mapped_type* find(const std::string& id) {
        if (last_ == map_.end() || last_->first != id) last_ = map_.find(id);
        return last_ == map_.end() ? nullptr : &last_->second;
    }

  private:
    const Map& map_;
    typename Map::const_iterator last_;
};

} // namespace rillwatt
