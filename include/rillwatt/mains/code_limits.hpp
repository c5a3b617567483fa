#pragma once

#include "rillwatt/mains/limit_source.hpp"
#include "rillwatt/quantity/quantity.hpp"

namespace rillwatt::code_limits {

// Load and drop.

/// A load that runs this long is continuous.
inline constexpr CodeLimit<Hours> continuous_hours{
    Hours(3), {"210.19(A), 210.20(A)", "210.19(A), 210.20(A)", "210.19(A), 210.20(A)"}};

/// Factor on continuous loads.
inline constexpr CodeLimit<double> continuous_factor{
    1.25, {"210.19(A), 210.20(A)", "210.19(A), 210.20(A)", "210.19(A), 210.20(A)"}};

/// Factor on the largest motor for its conductors.
inline constexpr CodeLimit<double> motor_factor{1.25, {"430.22, 430.24", "430.22, 430.24", "430.22, 430.24"}};

/// Share of the branch rating that one cord-and-plug load may take.
inline constexpr CodeLimit<double> cord_load_share{0.8, {"210.23(A)(1)", "210.23(A)(1)", "210.23(A)(1)"}};

/// Share of the branch rating for equipment fastened in place where lights or plugs share the circuit.
inline constexpr CodeLimit<double> fixed_load_share{0.5, {"210.23(A)(2)", "210.23(A)(2)", "210.23(A)(2)"}};

/// Largest inverse-time breaker over a motor's full-load current.
inline constexpr CodeLimit<double> motor_breaker_factor{2.5, {"430.52", "430.52", "430.52"}};

/// Drop in a branch circuit (an informational note, not a rule); lighting where code = "iec".
inline constexpr CodeLimit<double> branch_drop{0.03,
                                               {"210.19(A)(1) informational note 4",
                                                "210.19(A) informational note", "210.19 informational note",
                                                false, "IEC 60364-5-52 Table G.52.1, lighting"}};

/// Drop for other uses than lighting where code = "iec".
inline constexpr CodeLimit<double> branch_drop_other_iec{
    0.05, {"", "", "", true, "IEC 60364-5-52 Table G.52.1, other uses"}};

/// Largest branch circuit that may supply low-voltage lighting.
inline constexpr CodeLimit<Amperes> lighting_branch{Amperes(20), {"411.7", "411.7", "411.8"}};

/// Current of a pump while it starts, over its running amperes; for estimates.
inline constexpr CodeLimit<double> starting_current{6.0, common_practice};

/// Power factor of a motor while it starts; for estimates.
inline constexpr CodeLimit<double> starting_power_factor{0.4, common_practice};

// Ground-fault protection.

/// Submersible pumps and lights in a fountain.
inline constexpr LimitSource fountain_gfci{"680.51(A)", "680.51(A)", "680.51(A)", false,
                                           "IEC 60364-7-702 702.410.3.4.2, residual current not over 30 mA"};

/// Cord-and-plug equipment of a fountain.
inline constexpr LimitSource cord_gfci{"680.56", "680.56", "680.56", false,
                                       "IEC 60364-7-702 702.410.3.4.2, residual current not over 30 mA"};

/// Permanently installed pumps that are not submersible: new in 2020.
inline constexpr LimitSource dry_pump_gfci{"", "680.59", "680.59", false,
                                           "IEC 60364-7-702 702.410.3.4.2, residual current not over 30 mA"};

/// Outdoor receptacles of a dwelling. 2017: 125 V only; later editions: 125 to 250 V.
inline constexpr LimitSource outdoor_receptacle_gfci{
    "210.8(A)(3)", "210.8(A)(3)", "210.8(A)(3)", false,
    "IEC 60364-4-41 411.3.3, residual current not over 30 mA"};

/// Outdoor receptacles of other buildings.
inline constexpr LimitSource other_receptacle_gfci{"210.8(B)", "210.8(B)", "210.8(B)", false,
                                                   "IEC 60364-4-41 411.3.3, residual current not over 30 mA"};

/// Receptacles nearer to a fountain than this need GFCI wherever they are.
inline constexpr CodeLimit<Metres> fountain_receptacle_gfci{
    feet(20), {"680.58", "680.58", "680.58", false, "IEC 60364-7-702 zone 2"}};

/// Expected leakage of all that hangs on one GFCI; a class A device may trip from 4 mA and must at 6 mA.
inline constexpr CodeLimit<double> gfci_leakage_ma{3.0, common_practice};

/// The same for a residual-current device of 30 mA: three tenths of its rating.
inline constexpr CodeLimit<double> rcd_leakage_ma{9.0, {"", "", "", true, "BS 7671 531.3.2"}};

// Water.

/// Low-voltage lights and their supply stay this far from water unless Article 680 lets them nearer.
inline constexpr CodeLimit<Metres> low_voltage_to_water{feet(10), {"411.5(B)", "411.5(B)", "411.6(B)"}};

/// Contact limit where people may touch with wet skin, AC.
inline constexpr CodeLimit<Volts> wet_contact{
    Volts(15), {"411.1(2), 680.2", "411.1(2), 680.2", "411.3, Article 100", false, ""}};

/// SELV in the zones of a basin where code = "iec".
inline constexpr CodeLimit<Volts> wet_contact_iec{
    Volts(12), {"", "", "", true, "IEC 60364-7-702 702.410.3.4.2, SELV not over 12 V AC"}};

/// Highest nominal tap volts for a light in water under the code the site goes by.
inline const CodeLimit<Volts>& wet_contact_limit(const SiteSettings& settings) {
    return settings.code == CodeFamily::iec ? wet_contact_iec : wet_contact;
}

/// What a supply for lights in water must be listed for.
inline constexpr LimitSource water_supply{"680.23(A)(2), 680.51(A)", "680.23(A)(2), 680.51(A)",
                                          "680.23(A)(2), 680.51(A)", false,
                                          "IEC 60364-7-702 702.410.3.4.2, SELV source outside the zones"};

/// Lights in water must be made for it.
inline constexpr LimitSource submersible_light{"110.3(B), 680.51", "110.3(B), 680.51", "110.3(B), 680.51",
                                               true, "IEC 60364-7-702 702.512.2, IPX8 in zone 0"};

/// Receptacles to a pool wall; fountains only where they share water with a pool.
inline constexpr CodeLimit<Metres> receptacle_to_water{
    feet(6), {"680.22(A)", "680.22(A)", "680.22(A)", false, "IEC 60364-7-702, no socket in zones 0 and 1"}};

/// Exposed cord inside a fountain.
inline constexpr CodeLimit<Metres> cord_in_water{feet(10), {"680.51(E)", "680.51(E)", "680.51(E)"}};

/// Receptacles in wet places: a cover that is weatherproof with the plug in.
inline constexpr LimitSource wet_location_cover{"406.9(B)(1)", "406.9(B)(1)", "406.9(B)(1)", false,
                                                "IEC 60364-7-702 702.512.2, IPX4 outdoors in zone 2"};

/// Where a figure of the nameplate decides, not a table.
inline constexpr LimitSource nameplate{"110.3(B), 110.4", "110.3(B), 110.4", "110.3(B), 110.4", true,
                                       "the nameplate"};

} // namespace rillwatt::code_limits
