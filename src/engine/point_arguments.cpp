#include "point_arguments.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace rillwatt {

namespace {

std::string_view without_blanks(std::string_view text) {
    const std::size_t begin = text.find_first_not_of(" \t");
    if (begin == std::string_view::npos) return {};
    return text.substr(begin, text.find_last_not_of(" \t") - begin + 1);
}

/// A length as in a site file: with its unit, or bare in the site's.
std::optional<double> metres_of(std::string_view text, LengthUnit unit) {
    const std::string_view word = without_blanks(text);
    double bare = 0;
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), bare);
    if (error == std::errc() && end == word.data() + word.size() && std::abs(bare) < 1e6)
        return unit == LengthUnit::feet ? feet(bare).value() : bare;
    const std::optional<Metres> length = parse_length(word);
    return length ? std::optional<double>(length->value()) : std::nullopt;
}

/// "X,Y,Z" or "X,Y".
std::optional<SpacePoint> parse_point(std::string_view text, LengthUnit unit) {
    std::vector<double> numbers;
    while (numbers.size() < 4) {
        const std::size_t comma = text.find(',');
        const std::optional<double> number = metres_of(text.substr(0, comma), unit);
        if (!number) return {};
        numbers.push_back(*number);
        if (comma == std::string_view::npos) break;
        text.remove_prefix(comma + 1);
    }
    if (numbers.size() != 2 && numbers.size() != 3) return {};
    return SpacePoint{numbers[0], numbers[1], numbers.size() == 3 ? numbers[2] : 0};
}

} // namespace

LoadResult<std::vector<SpacePoint>> points_of(const Arguments& arguments, LengthUnit unit) {
    std::vector<SpacePoint> points;
    std::vector<InputError> errors;
    for (const std::string& text : arguments.all("--point")) {
        if (const std::optional<SpacePoint> point = parse_point(text, unit))
            points.push_back(*point);
        else
            errors.push_back({.found = fmt::format("`--point {}` is no point", printable(text)),
                              .expected = "X,Y,Z as lengths, such as \"12 ft,6 ft,0\""});
    }
    if (!errors.empty()) return {std::nullopt, std::move(errors)};
    return {std::move(points), {}};
}

} // namespace rillwatt
