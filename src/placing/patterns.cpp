#include "patterns.hpp"

#include <algorithm>

namespace rillwatt {
namespace {

using Sides = Pattern::Sides;

constexpr double ends[] = {0.5, 0.35, 0.2};
constexpr double backs[] = {0.2, 0.5};
constexpr double slide_share = 0.45; ///< of the spacing: how far a light may slide along to free ground

int side_of(const Pattern& pattern, std::size_t k) {
    const bool other = pattern.sides != Sides::one_side && k % 2 == 1;
    return other ? -pattern.first_side : pattern.first_side;
}

} // namespace

std::vector<Pattern> all_patterns() {
    std::vector<Pattern> all;
    for (const Sides sides : {Sides::staggered, Sides::one_side, Sides::pairs})
        for (const double back : backs)
            for (const double end : ends)
                for (const int side : {1, -1})
                    if (sides != Sides::pairs || side > 0) all.push_back({sides, side, end, back});
    return all;
}

std::string pattern_words(const Pattern& pattern, std::size_t lights) {
    if (lights < 2) return "";
    if (pattern.sides == Sides::staggered) return "staggered";
    if (pattern.sides == Sides::pairs) return "in pairs";
    return pattern.first_side > 0 ? "all on the left" : "all on the right";
}

std::vector<std::size_t> set_out(const LightTable& table, const Pattern& pattern, std::size_t count) {
    const std::size_t abreast = pattern.sides == Sides::pairs ? 2 : 1;
    const std::size_t stations = (count + abreast - 1) / abreast;
    const double spacing = table.places().length() / (static_cast<double>(stations) - 1 + 2 * pattern.end);
    std::vector<std::size_t> lamps;
    for (std::size_t k = 0; k < count; ++k) {
        WalkSlot wanted;
        wanted.along = (pattern.end + static_cast<double>(k / abreast)) * spacing;
        if (stations == 1) wanted.along = table.places().length() / 2;
        wanted.side = side_of(pattern, k);
        wanted.back = pattern.back;
        const std::optional<std::size_t> place = table.near(wanted, slide_share * spacing);
        if (place && std::find(lamps.begin(), lamps.end(), *place) == lamps.end()) lamps.push_back(*place);
    }
    return lamps;
}

} // namespace rillwatt
