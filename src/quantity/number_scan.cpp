#include "number_scan.hpp"

#include <charconv>
#include <cmath>

namespace rillwatt::scan {
namespace {

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// The one-character fractions of typographic text.
struct FractionSign {
    std::string_view sign;
    double value;
};

constexpr FractionSign fraction_signs[] = {
    {"\u00bd", 1.0 / 2}, {"\u00bc", 1.0 / 4}, {"\u00be", 3.0 / 4}, {"\u215b", 1.0 / 8},
    {"\u215c", 3.0 / 8}, {"\u215d", 5.0 / 8}, {"\u215e", 7.0 / 8},
};

std::optional<double> take_fraction_sign(TextScan& text) {
    for (const FractionSign& fraction : fraction_signs)
        if (text.take(fraction.sign)) return fraction.value;
    return std::nullopt;
}

std::optional<double> take_decimal(TextScan& text) {
    const std::string_view rest = text.rest();
    const bool leads_with_point = rest.size() > 1 && rest[0] == '.' && is_digit(rest[1]);
    if (rest.empty() || !(is_digit(rest[0]) || leads_with_point)) return std::nullopt;
    double value = 0;
    const auto [end, error] =
        std::from_chars(rest.data(), rest.data() + rest.size(), value, std::chars_format::fixed);
    if (error != std::errc()) return std::nullopt;
    text.skip(static_cast<std::size_t>(end - rest.data()));
    return value;
}

/// "/2" after its numerator.
std::optional<double> take_denominator(TextScan& text) {
    if (!text.take("/")) return std::nullopt;
    const std::optional<double> value = take_decimal(text);
    if (!value || *value == 0) return std::nullopt;
    return value;
}

/// " 1/2" or "-1/2" after whole inches; steps over nothing when that is not what comes.
std::optional<double> take_fraction(TextScan& text) {
    TextScan ahead = text;
    if (!ahead.take("-")) ahead.skip_spaces();
    std::optional<double> value = take_fraction_sign(ahead);
    if (!value) {
        const std::optional<double> numerator = take_decimal(ahead);
        const std::optional<double> denominator = numerator ? take_denominator(ahead) : std::nullopt;
        if (!denominator || *numerator >= *denominator) return std::nullopt;
        value = *numerator / *denominator;
    }
    text = ahead;
    return value;
}

} // namespace

double take_sign(TextScan& text) {
    if (text.take("-") || text.take("\u2212")) return -1;
    text.take("+");
    return 1;
}

std::optional<double> take_number(TextScan& text) {
    if (const std::optional<double> sign = take_fraction_sign(text)) return sign;
    const std::optional<double> number = take_decimal(text);
    if (!number) return std::nullopt;
    if (text.next() == '/') {
        const std::optional<double> denominator = take_denominator(text);
        return denominator ? std::optional(*number / *denominator) : std::nullopt;
    }
    if (*number != std::floor(*number)) return number;
    return *number + take_fraction(text).value_or(0);
}

} // namespace rillwatt::scan
