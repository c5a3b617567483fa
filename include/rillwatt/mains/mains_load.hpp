#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/site/site.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

enum class MainsLoadKind { pump, transformer };

/// Where the amperes of a load come from.
enum class AmpsOrigin {
    nameplate,   ///< a pump's nameplate, from catalog
    motor_table, ///< Table 430.248, for a hardwired motor that draws less by its nameplate
    solved,      ///< input of a transformer whose low-voltage side was computed
    rating,      ///< rating of a transformer whose low-voltage side is open or has no operating point
    unknown,     ///< neither model nor rating is known
};

/// One pump or transformer as its branch circuit sees it.
struct MainsLoad {
    MainsLoadKind kind = MainsLoadKind::pump;
    std::size_t part = 0; ///< index into Site::pumps or Site::transformers
    std::string id;
    AmpsOrigin origin = AmpsOrigin::unknown;
    std::optional<Amperes> amps;      ///< what the circuit is planned with
    std::optional<Amperes> nameplate; ///< pump: nameplate; transformer: rating over primary volts
    std::optional<Amperes> table;     ///< hardwired motor with horsepower: Table 430.248
    double power_factor = 1;          ///< lagging; pump: watts over volts times amperes; transformer: 1
    Hours hours_per_day;
    bool continuous = false; ///< runs three hours a day or more
    bool hardwired = false;  ///< pump: no cord and plug
    std::optional<double> leakage_ma;
    const PumpType* pump = nullptr; ///< into the catalog; null for transformers
    const TransformerType* transformer = nullptr;
};

/// Every pump and transformer with the index of its circuit; empty where it names none.
struct PlacedLoad {
    std::optional<std::size_t> circuit;
    MainsLoad load;
};

/// All loads of a site, pumps before transformers, each in file order.
std::vector<PlacedLoad> mains_loads(const Site& site, const Catalog& catalog, const SiteCircuits& circuits,
                                    const SiteSolution& solution);

/// A circuit's volts: its own, else the site's.
Volts circuit_volts(const Site& site, const BranchCircuit& circuit);

} // namespace rillwatt
