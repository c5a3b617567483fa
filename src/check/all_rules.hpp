#pragma once

#include "rillwatt/check/rule.hpp"

namespace rillwatt {

// One function for each rule, each family in its own file beside this one; all_rules.cpp puts them in order.

// low voltage
Rule lamp_undervoltage_rule();
Rule lamp_overvoltage_rule();
Rule no_operating_point_rule();
Rule cable_overloaded_rule();
Rule secondary_overloaded_rule();
Rule transformer_overloaded_rule();
Rule transformer_margin_rule();
Rule cable_not_for_burial_rule();
Rule open_value_rule();
Rule taps_joined_rule();
Rule supply_volts_rule();

// plan
Rule no_route_rule();
Rule route_crosses_paving_rule();
Rule length_shorter_than_plan_rule();

// water
Rule fixture_not_submersible_rule();
Rule wet_contact_voltage_rule();
Rule supply_not_listed_rule();
Rule near_water_rule();
Rule joint_in_water_rule();

// line voltage
Rule pump_without_gfci_rule();
Rule receptacle_without_gfci_rule();
Rule receptacle_cover_rule();
Rule receptacle_near_water_rule();
Rule circuit_overloaded_rule();
Rule breaker_exceeds_conductor_rule();
Rule motor_conductor_rule();
Rule lighting_branch_rule();
Rule branch_drop_rule();
Rule burial_depth_rule();
Rule cord_in_water_rule();
Rule cord_too_short_rule();
Rule shared_gfci_rule();
Rule leakage_sum_rule();
Rule pump_voltage_rule();
Rule supply_in_water_rule();
Rule outlet_outside_rule();

// light
Rule walk_too_dark_rule();
Rule walk_uneven_rule();
Rule falls_unlit_rule();
Rule glare_rule();
Rule view_blocked_rule();
Rule uplight_wasted_rule();
Rule warm_colour_rule();
Rule photometric_file_rule();

} // namespace rillwatt
