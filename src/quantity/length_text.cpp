#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "number_scan.hpp"
#include <cmath>

namespace rillwatt {
namespace {

using scan::TextScan;

/// One unit of length: how it may be spelled and how long it is.
struct UnitSpelling {
    std::string_view word;
    double metres;
};

constexpr double foot = metres_per_foot;
constexpr double inch = metres_per_foot / 12;

// Longer spellings first, so that "mm" is not read as "m". The last of each group are the straight and the
// typographic signs: prime, right quotation mark, double prime, right double quotation mark.
constexpr UnitSpelling unit_spellings[] = {
    {"feet", foot},   {"foot", foot},   {"ft", foot},   {"'", foot},  {"\u2032", foot},
    {"\u2019", foot}, {"inches", inch}, {"inch", inch}, {"in", inch}, {"\"", inch},
    {"\u2033", inch}, {"\u201d", inch}, {"mm", 0.001},  {"cm", 0.01}, {"m", 1},
};

std::optional<double> take_unit(TextScan& text) {
    for (const UnitSpelling& unit : unit_spellings)
        if (text.take(unit.word)) return unit.metres;
    return std::nullopt;
}

/// The inches that may follow whole feet: fewer than twelve, and nothing after them.
std::optional<double> take_inches(TextScan& text) {
    const std::optional<double> count = scan::take_number(text);
    if (!count || *count >= 12) return std::nullopt;
    text.skip_spaces();
    const std::optional<double> unit = take_unit(text);
    if (!unit || *unit != inch) return std::nullopt;
    return *count * inch;
}

} // namespace

std::optional<Metres> parse_length(std::string_view written) {
    TextScan text(written);
    text.skip_spaces();
    const double sign = scan::take_sign(text);
    text.skip_spaces();
    const std::optional<double> count = scan::take_number(text);
    if (!count) return std::nullopt;
    text.skip_spaces();
    const std::optional<double> unit = take_unit(text);
    if (!unit) return std::nullopt;
    text.skip_spaces();
    double metres = *count * *unit;
    if (!text.at_end()) {
        if (*unit != foot || *count != std::floor(*count)) return std::nullopt;
        const std::optional<double> rest = take_inches(text);
        text.skip_spaces();
        if (!rest || !text.at_end()) return std::nullopt;
        metres += *rest;
    }
    if (!std::isfinite(metres)) return std::nullopt;
    return Metres(sign * metres);
}

std::string length_text(Metres length, LengthUnit unit) {
    if (unit == LengthUnit::metres) return trimmed_text(length.value(), 2) + " m";
    const double total = std::round(std::abs(length.value()) / inch);
    const double whole_feet = std::floor(total / 12);
    const double rest = total - whole_feet * 12;
    const char* sign = length.value() < 0 && total > 0 ? "-" : "";
    if (rest == 0) return fmt::format("{}{:.0f} ft", sign, whole_feet);
    if (whole_feet == 0) return fmt::format("{}{:.0f} in", sign, rest);
    return fmt::format("{}{:.0f} ft {:.0f} in", sign, whole_feet, rest);
}

std::string decimal_length_text(Metres length, LengthUnit unit, int decimals) {
    if (unit == LengthUnit::metres) return fixed_text(length.value(), decimals) + " m";
    return fixed_text(length.value() / foot, decimals) + " ft";
}

std::string depth_text(Metres length, LengthUnit unit) {
    if (unit == LengthUnit::metres) return trimmed_text(length.value(), 2) + " m";
    return trimmed_text(length.value() / inch, 1) + " in";
}

} // namespace rillwatt
