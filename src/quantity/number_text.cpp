#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "number_scan.hpp"
#include <array>
#include <charconv>
#include <cmath>

namespace rillwatt {

std::optional<Celsius> parse_temperature(std::string_view written) {
    scan::TextScan text(written);
    text.skip_spaces();
    const double sign = scan::take_sign(text);
    const std::optional<double> number = scan::take_number(text);
    if (!number || !std::isfinite(*number)) return std::nullopt;
    text.skip_spaces();
    text.take("\u00b0");
    const double degrees = sign * *number;
    const bool celsius = text.take("C");
    if (!celsius && !text.take("F")) return std::nullopt;
    text.skip_spaces();
    if (!text.at_end()) return std::nullopt;
    return Celsius(celsius ? degrees : (degrees - 32) / 1.8);
}

std::string fixed_text(double value, int decimals) {
    std::array<char, 400> digits; // the longest double has 309 of them before the point
    const std::to_chars_result end = std::to_chars(digits.data(), digits.data() + digits.size(), value,
                                                   std::chars_format::fixed, decimals);
    if (end.ec != std::errc()) return fmt::format("{:.{}f}", value, decimals);
    const std::string_view text(digits.data(), static_cast<std::size_t>(end.ptr - digits.data()));
    const bool negative_zero = text.front() == '-' && text.find_first_not_of("-0.") == std::string_view::npos;
    return std::string(negative_zero ? text.substr(1) : text);
}

std::string trimmed_text(double value, int decimals) {
    std::string text = fixed_text(value, decimals);
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

std::string money_text(Money amount, std::string_view currency) {
    return fmt::format("{} {}", fixed_text(amount.value(), 2), currency);
}

} // namespace rillwatt
