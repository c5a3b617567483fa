#pragma once

#include "rillwatt/mains/mains_load.hpp"
#include "rillwatt/mains/running_cost.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// Estimate of the drop while the hardest-starting pump of a circuit starts, the other loads running.
/// Assumption: `code_limits::starting_current` times its amperes at `code_limits::starting_power_factor`.
struct StartingDip {
    std::string pump;
    Amperes amps;     ///< of that pump while it starts
    double ratio = 0; ///< over the circuit's volts
};

/// One branch circuit with all that hangs on it.
struct MainsCircuit {
    std::size_t circuit = 0; ///< index into Site::circuits
    Amperes amps;            ///< running current of all loads, nominal case
    Amperes continuous_amps; ///< part of it that runs three hours a day or more
    Amperes design_amps;   ///< 125 % of the continuous part and of the largest motor not in it, plus the rest
    double drop_ratio = 0; ///< over the circuit's volts; meaningless unless drop_known
    bool drop_known = false;
    std::vector<std::string> loads; ///< ids of pumps and transformers

    Volts volts;
    std::vector<MainsLoad> parts;        ///< the same loads with their figures
    bool amps_known = true;              ///< every load's amperes are known
    std::optional<StartingDip> dip;      ///< where it has a pump and the drop is known
    double leakage_ma = 0;               ///< sum of the leakages that are known
    std::vector<std::string> no_leakage; ///< pumps whose leakage nobody wrote

    bool feeds_pumps() const;
    bool feeds_lights() const;
};

/// The line-voltage side of a site.
struct MainsSummary {
    std::vector<MainsCircuit> circuits; ///< in the order of Site::circuits
    std::vector<MainsLoad> unassigned;  ///< loads that name no circuit
    RunningCost cost;
};

/// What each branch circuit carries, from the nameplates and the solved low-voltage side.
MainsSummary summarise_mains(const Site& site, const Catalog& catalog, const SiteCircuits& circuits,
                             const SiteSolution& solution);

/// The figures of one circuit with given loads; also for circuits that are only proposed.
MainsCircuit mains_circuit(const Site& site, const BranchCircuit& circuit, std::vector<MainsLoad> loads);

} // namespace rillwatt
