#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/quantity/quantity.hpp"
#include "rillwatt/site/site.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt {

/// What one pump uses in a year.
struct PumpEnergy {
    std::size_t pump = 0; ///< index into Site::pumps
    WattHours per_year;
};

/// Energy of a year, lights and pumps apart: `kWh = watts * hours a day * nights a year / 1000`.
struct RunningCost {
    Watts lamps;        ///< real power at the lamps, nominal case
    Watts cable_loss;   ///< cables and leads
    Watts winding_loss; ///< transformers, loaded
    Watts no_load;      ///< transformers, idle
    WattHours lights;   ///< a year
    WattHours pumps;    ///< a year
    Money lights_cost;
    Money pumps_cost;
    std::vector<PumpEnergy> each_pump;
    std::vector<std::size_t> left_out; ///< transformers that are open or have no operating point

    Watts meter_watts() const { return lamps + cable_loss + winding_loss + no_load; }
};

constexpr double kilowatt_hours(WattHours energy) { return energy.value() / 1000; }

/// Energy and money of a year from the nominal case.
RunningCost running_cost(const Site& site, const Catalog& catalog, const SiteSolution& solution);

} // namespace rillwatt
