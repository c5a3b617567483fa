#include "rillwatt/mains/branch_conductor.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <string>

namespace rillwatt {

namespace {

constexpr OhmsPerMetre per_kft(double ohms) { return OhmsPerMetre(ohms / (1000 * metres_per_foot)); }
constexpr OhmsPerMetre per_km(double ohms) { return OhmsPerMetre(ohms / 1000); }

BranchConductor row(std::string_view size, std::array<double, 3> ampacity, std::optional<Amperes> breaker_max,
                    double circular_mils, std::array<double, 3> ohms_per_kft, bool from_memory = false) {
    return {size,
            Amperes(ampacity[0]),
            Amperes(ampacity[1]),
            Amperes(ampacity[2]),
            breaker_max,
            circular_mils,
            per_kft(ohms_per_kft[0]),
            per_kft(ohms_per_kft[1]),
            per_kft(ohms_per_kft[2]),
            from_memory};
}

/// "12 AWG", "12awg", "#12" and "12" are one size.
std::string plain_size(std::string_view size) {
    std::string plain;
    for (const char c : size)
        if (c != ' ' && c != '#') plain += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    if (plain.size() > 3 && plain.ends_with("awg")) plain.resize(plain.size() - 3);
    return plain;
}

struct MetricConductor {
    std::string_view size;
    double ohms_per_km; ///< IEC 60228 class 1 and 2, 20 C, maximum
};

constexpr std::array<MetricConductor, 6> metric_conductors{
    {{"1.5mm2", 12.1}, {"2.5mm2", 7.41}, {"4mm2", 4.61}, {"6mm2", 3.08}, {"10mm2", 1.83}, {"16mm2", 1.15}}};

/// IEC 60228: R(70 C) / R(20 C) = (234.5 + 70) / (234.5 + 20).
constexpr double copper_70_over_20 = 304.5 / 254.5;

std::optional<BranchImpedance> metric_impedance(std::string_view size) {
    const std::string wanted = plain_size(size);
    for (const auto& metric : metric_conductors)
        if (wanted == metric.size)
            return BranchImpedance{per_km(metric.ohms_per_km * copper_70_over_20), OhmsPerMetre(0)};
    return std::nullopt;
}

} // namespace

const std::vector<BranchConductor>& branch_conductors() {
    // Table 310.16 at 60, 75, 90 C; 240.4(D); Table 8 circular mils; Table 9 R and X in PVC, X in steel,
    // ohm/kft.
    static const std::vector<BranchConductor> rows{
        row("14 AWG", {15, 20, 25}, Amperes(15), 4110, {3.1, 0.058, 0.073}),
        row("12 AWG", {20, 25, 30}, Amperes(20), 6530, {2.0, 0.054, 0.068}),
        row("10 AWG", {30, 35, 40}, Amperes(30), 10380, {1.2, 0.050, 0.063}),
        row("8 AWG", {40, 50, 55}, std::nullopt, 16510, {0.78, 0.052, 0.065}),
        row("6 AWG", {55, 65, 75}, std::nullopt, 26240, {0.49, 0.051, 0.064}),
        row("4 AWG", {70, 85, 95}, std::nullopt, 41740, {0.31, 0.048, 0.060}, true),
    };
    return rows;
}

const BranchConductor* find_branch_conductor(std::string_view size) {
    const std::string wanted = plain_size(size);
    for (const auto& conductor : branch_conductors())
        if (plain_size(conductor.size) == wanted) return &conductor;
    return nullptr;
}

std::optional<Amperes> table_ampacity(std::string_view size, TemperatureColumn column) {
    // Fixture wire sizes have a figure in the 90 C column only.
    if (column == TemperatureColumn::c90 && plain_size(size) == "18") return Amperes(14);
    if (column == TemperatureColumn::c90 && plain_size(size) == "16") return Amperes(18);
    const auto* conductor = find_branch_conductor(size);
    if (conductor == nullptr) return std::nullopt;
    if (column == TemperatureColumn::c60) return conductor->ampacity_60;
    return column == TemperatureColumn::c75 ? conductor->ampacity_75 : conductor->ampacity_90;
}

Amperes usable_ampacity(const BranchConductor& conductor) { return conductor.ampacity_60; }

std::optional<BranchImpedance> branch_impedance(std::string_view size) {
    if (const auto* conductor = find_branch_conductor(size))
        return BranchImpedance{conductor->resistance, conductor->reactance};
    return metric_impedance(size);
}

Volts branch_drop(const BranchImpedance& impedance, Metres length, Amperes amps, double power_factor) {
    const double cosine = std::clamp(power_factor, 0.0, 1.0);
    const double sine = std::sqrt(1 - cosine * cosine);
    return 2 * (length * amps * (impedance.resistance * cosine + impedance.reactance * sine));
}

} // namespace rillwatt
