// Prints the site file of a garden drawn to scale, for timing whole commands by hand:
//
//   placed_garden 1000 > site.toml && rillwatt light site.toml
//
// After the number of lights: `open` leaves models, taps and cables to sizing, `typed` writes every length,
// `corners=N` gives each pond N corners, `seed=N` moves everything a little.

#include "support/placed_garden.hpp"

#include <fmt/format.h>

#include <cstdlib>
#include <string_view>

namespace {

/// The number after `key=`, or `otherwise`.
int number_after(std::string_view word, std::string_view key, int otherwise) {
    return word.starts_with(key) ? std::atoi(word.substr(key.size()).data()) : otherwise;
}

} // namespace

int main(int count, char** words) {
    rillwatt::test::PlacedGardenSpec spec;
    for (int k = 1; k < count; ++k) {
        const std::string_view word = words[k];
        if (k == 1) spec.lights = std::atoi(words[k]);
        if (word == "open") spec.choices = false;
        if (word == "typed") spec.typed = true;
        spec.pond_corners = number_after(word, "corners=", spec.pond_corners);
        spec.seed = static_cast<unsigned>(number_after(word, "seed=", static_cast<int>(spec.seed)));
    }
    if (spec.lights < 1 || spec.pond_corners < 3) {
        fmt::print(stderr, "placed_garden LIGHTS [open] [typed] [corners=N] [seed=N]\n");
        return 2;
    }
    fmt::print("{}", rillwatt::test::placed_garden(spec));
    return 0;
}
