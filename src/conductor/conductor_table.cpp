#include "rillwatt/conductor/conductor_table.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace rillwatt {
namespace {

/// The whole of `text` as a plain decimal number; no sign, no exponent, no "inf".
template<class Number>
std::optional<Number> whole_number(std::string_view text) {
    if (text.empty() || text.front() < '0' || text.front() > '9') return std::nullopt;
    Number value{};
    const char* end = text.data() + text.size();
    std::from_chars_result result{};
    if constexpr (std::is_floating_point_v<Number>)
        result = std::from_chars(text.data(), end, value, std::chars_format::fixed);
    else
        result = std::from_chars(text.data(), end, value);
    if (result.ec != std::errc() || result.ptr != end) return std::nullopt;
    return value;
}

/// The n of ASTM B258: 12 for "12", 0 for "1/0", -3 for "4/0".
std::optional<int> gauge_number(std::string_view text) {
    if (text.size() == 3 && text.substr(1) == "/0" && text[0] >= '1' && text[0] <= '4')
        return 1 - (text[0] - '0');
    const std::optional<int> number = whole_number<int>(text);
    return number && *number >= 1 && *number <= 40 ? number : std::nullopt;
}

} // namespace

const ConductorRow* ConductorTable::find(std::string_view size) const {
    const auto row =
        std::find_if(rows.begin(), rows.end(), [&](const ConductorRow& r) { return r.size == size; });
    return row == rows.end() ? nullptr : &*row;
}

OhmsPerMetre resistance_at(const ConductorTable& table, const ConductorRow& row, Celsius temperature) {
    return row.resistance * (1 + table.temperature_coefficient * (temperature - table.reference_temperature));
}

Ohms loop_resistance(OhmsPerMetre one_conductor, Metres length) { return 2 * one_conductor * length; }

std::optional<double> section_mm2(std::string_view size) {
    constexpr std::string_view awg = " AWG";
    constexpr std::string_view metric = " mm2";
    if (size.ends_with(metric)) {
        const std::optional<double> area = whole_number<double>(size.substr(0, size.size() - metric.size()));
        return area && *area > 0 && *area <= 2500 ? area : std::nullopt;
    }
    if (!size.ends_with(awg)) return std::nullopt;
    const std::optional<int> gauge = gauge_number(size.substr(0, size.size() - awg.size()));
    if (!gauge) return std::nullopt;
    const double diameter_mm = 0.005 * 25.4 * std::pow(92.0, (36.0 - *gauge) / 39.0);
    return std::acos(-1.0) / 4 * diameter_mm * diameter_mm;
}

} // namespace rillwatt
