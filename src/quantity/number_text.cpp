#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "number_scan.hpp"
#include <array>
#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstring>

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

namespace {

/// `magnitude` times ten to the power of `decimals`, to the nearest whole number, as exact as the double is
/// and to the even one of two that are equally near. Empty where 64 bits do not hold it, and for what is no
/// number.
inline std::optional<std::uint64_t> scaled_to_whole(double magnitude, int decimals) {
    static constexpr std::array<std::uint64_t, 4> powers_of_ten{1, 10, 100, 1000};
    constexpr double largest =
        9'007'199'254'740'992.0; // 2^53: below it a double is a fraction of a power of two
    if (!(magnitude < largest) || decimals < 0 || decimals > 3) return std::nullopt;
    const std::uint64_t power = powers_of_ten[static_cast<std::size_t>(decimals)];
    // Multiplied in doubles it is off by less than a millionth here: which whole number is nearest can only
    // be in doubt about half way between two.
    constexpr double doubtful = 1e-4;
    const double product_about = magnitude * static_cast<double>(power);
    if (product_about < 1e9) {
        const auto below = static_cast<std::int64_t>(product_about);
        const double over = product_about - static_cast<double>(below);
        if (std::abs(over - 0.5) > doubtful) return static_cast<std::uint64_t>(below + (over > 0.5 ? 1 : 0));
    }
    // As IEC 60559 lays a double out: 52 bits below the leading one, above them the exponent.
    const auto bits = std::bit_cast<std::uint64_t>(magnitude);
    const std::uint64_t leading_one = std::uint64_t{1} << 52;
    const std::uint64_t mantissa = (bits & (leading_one - 1)) | leading_one;
    const std::uint64_t product = mantissa * power; // below 2^63
    const int shift = 1075 - static_cast<int>(bits >> 52);
    if (shift >= 64) return 0; // less than half of one
    if (shift <= 0) return product;
    const std::uint64_t whole = product >> shift;
    const std::uint64_t rest = product - (whole << shift);
    const std::uint64_t half = std::uint64_t{1} << (shift - 1);
    return whole + (rest > half || (rest == half && whole % 2 == 1) ? 1 : 0);
}

/// "00" to "99".
constexpr std::array<char, 200> digit_pairs = [] {
    std::array<char, 200> pairs{};
    for (std::size_t i = 0; i < 100; ++i) {
        pairs[2 * i] = static_cast<char>('0' + i / 10);
        pairs[2 * i + 1] = static_cast<char>('0' + i % 10);
    }
    return pairs;
}();

/// Writes "-12.05" from 1205, negative, two decimals, so that it ends before `at`; never "-0.00". Returns
/// where it begins.
inline char* write_scaled(char* at, std::uint64_t scaled, bool negative, int decimals) {
    const bool has_sign = negative && scaled != 0;
    const auto put_pair = [&at](std::uint64_t number) {
        at -= 2;
        std::memcpy(at, digit_pairs.data() + 2 * number, 2);
    };
    const auto put_digit = [&at](std::uint64_t digit) { *--at = static_cast<char>('0' + digit); };
    if (decimals == 2) {
        put_pair(scaled % 100);
        scaled /= 100;
    } else {
        for (int i = 0; i < decimals; ++i, scaled /= 10)
            put_digit(scaled % 10);
    }
    if (decimals > 0) *--at = '.';
    for (; scaled >= 100; scaled /= 100)
        put_pair(scaled % 100);
    if (scaled >= 10)
        put_pair(scaled);
    else
        put_digit(scaled);
    if (has_sign) *--at = '-';
    return at;
}

/// What 64 bits do not hold, and what is no number.
std::string unscaled_text(double value, int decimals) {
    if (!std::isfinite(value)) return fmt::format("{}", value);
    std::array<char, 400> digits{}; // the longest double has 309 of them before the point
    const std::to_chars_result end = std::to_chars(digits.data(), digits.data() + digits.size(), value,
                                                   std::chars_format::fixed, decimals);
    if (end.ec != std::errc()) return fmt::format("{:.{}f}", value, decimals);
    const std::string_view text(digits.data(), static_cast<std::size_t>(end.ptr - digits.data()));
    const bool negative_zero = text.front() == '-' && text.find_first_not_of("-0.") == std::string_view::npos;
    return std::string(negative_zero ? text.substr(1) : text);
}

} // namespace

char* write_fixed(char* end, double value, int decimals) {
    const std::optional<std::uint64_t> scaled = scaled_to_whole(std::abs(value), decimals);
    return scaled ? write_scaled(end, *scaled, value < 0, decimals) : nullptr;
}

std::string fixed_text(double value, int decimals) {
    std::array<char, longest_fixed> digits;
    char* const end = digits.data() + digits.size();
    const char* const begin = write_fixed(end, value, decimals);
    if (begin == nullptr) return unscaled_text(value, decimals);
    return {begin, static_cast<std::size_t>(end - begin)};
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
