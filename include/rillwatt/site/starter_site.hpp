#pragma once

#include "rillwatt/quantity/point.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// A rectangle of water on the plan.
struct StarterPond {
    PlanPoint corner; ///< nearest the house, left
    Metres width;     ///< along the house
    Metres length;    ///< away from the house
};

/// What a first site file needs to know. Points are measured from the left end of the house wall that faces
/// the garden: x along the wall, y away from it.
struct StarterAnswers {
    std::string name;
    LengthUnit units = LengthUnit::feet;
    Metres house_width;
    Metres house_depth;
    Metres outlet; ///< along the wall
    std::optional<StarterPond> pond;
    Metres falls_width; ///< at the pond's far edge; 0: no falls
    Metres falls_drop;
    std::vector<PlanPoint> path; ///< empty: no path
    Metres path_width;
    int water_lights = 0;
    int path_lights = 0;
    int accent_lights = 0;
    int pumps = 0;
    std::string pump_model;
    Metres pump_cord;                ///< of that model; 0: none
    std::optional<Volts> pump_volts; ///< of that model, where it is not the usual supply
    bool pump_hardwired = false;     ///< that model has no plug
};

/// A commented site file from a few answers. Cables, taps and transformer models are left open for sizing,
/// lengths for the plan; everything else reads and solves as it stands.
std::string starter_site(const StarterAnswers& answers);

} // namespace rillwatt
