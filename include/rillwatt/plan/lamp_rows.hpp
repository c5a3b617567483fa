#pragma once

#include "rillwatt/check/assessment.hpp"

#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// Where a lamp stands in its window, worst news first.
enum class LampState { low, high, low_when_weak, high_when_strong, good, unknown };

/// "too low", "low if weak", ...; empty for a good lamp.
std::string lamp_state_text(LampState state);

/// A lamp with its volts in the three cases side by side.
struct LampRow {
    const Fixture* fixture = nullptr;
    const FixtureType* type = nullptr; ///< null: the catalog has no such model
    std::optional<std::size_t> run;    ///< index into Site::runs
    const LampResult* nominal = nullptr;
    const LampResult* weak = nullptr;
    const LampResult* strong = nullptr;
    std::optional<Volts> margin; ///< to the nearer end of the window, nominal; negative outside
    LampState state = LampState::unknown;
};

/// One row for each fixture of the site, in file order; lamps without an answer have no results.
std::vector<LampRow> lamp_rows(const Assessment& assessment);

} // namespace rillwatt
