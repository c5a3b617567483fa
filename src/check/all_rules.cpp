#include "all_rules.hpp"

namespace rillwatt {

const std::vector<Rule>& all_rules() {
    // clang-format off
    static const std::vector<Rule> rules = {
        // low voltage
        lamp_undervoltage_rule(),
        lamp_overvoltage_rule(),
        no_operating_point_rule(),
        cable_overloaded_rule(),
        secondary_overloaded_rule(),
        transformer_overloaded_rule(),
        transformer_margin_rule(),
        cable_not_for_burial_rule(),
        open_value_rule(),
        taps_joined_rule(),
        supply_volts_rule(),
        // plan
        no_route_rule(),
        route_crosses_paving_rule(),
        length_shorter_than_plan_rule(),
        // water
        fixture_not_submersible_rule(),
        wet_contact_voltage_rule(),
        supply_not_listed_rule(),
        near_water_rule(),
        joint_in_water_rule(),
        // line voltage
        pump_without_gfci_rule(),
        receptacle_without_gfci_rule(),
        receptacle_cover_rule(),
        receptacle_near_water_rule(),
        circuit_overloaded_rule(),
        breaker_exceeds_conductor_rule(),
        motor_conductor_rule(),
        lighting_branch_rule(),
        branch_drop_rule(),
        burial_depth_rule(),
        cord_in_water_rule(),
        cord_too_short_rule(),
        shared_gfci_rule(),
        leakage_sum_rule(),
        pump_voltage_rule(),
        supply_in_water_rule(),
        outlet_outside_rule(),
        // light
        walk_too_dark_rule(),
        walk_uneven_rule(),
        falls_unlit_rule(),
        glare_rule(),
        view_blocked_rule(),
        uplight_wasted_rule(),
        warm_colour_rule(),
        photometric_file_rule(),
    };
    // clang-format on
    return rules;
}

std::vector<Finding> run_rules(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const Rule& rule : all_rules()) {
        if (rule.group == RuleGroup::light && context.light == nullptr) continue;
        for (Finding& finding : rule.find(context)) {
            finding.rule = rule.id;
            if (finding.source.empty()) finding.source = rule.source.text();
            findings.push_back(std::move(finding));
        }
    }
    sort_worst_first(findings);
    return findings;
}

} // namespace rillwatt
