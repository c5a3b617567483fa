#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/site/site.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// `<style>` of every drawing. Every colour is a variable that a page may set (`--rw-paper`,
/// `--rw-ink`, ...); on its own a drawing follows the reader's light or dark setting, and paper is light.
std::string drawing_style();

/// Hatches of the areas, as `<pattern>` elements for `<defs>`, named for the drawing: `rw-plan-hatch-water`.
std::string area_patterns(std::string_view drawing);

/// Class of an area's fill and outline.
std::string area_class(AreaKind kind);

/// Class that gives a run its colour; runs beyond the palette start it again.
std::string run_class(std::size_t run);

/// Class that fills a level of light, the faintest 0; levels beyond the palette share its brightest.
std::string lux_class(std::size_t level);

/// How a cable is drawn by its conductor: thicker conductor, thicker line, and a dash of its own.
struct CableStroke {
    double width = 1.5;
    std::string dashes; ///< as `stroke-dasharray` takes them; empty: unbroken
    std::string words;  ///< "solid, medium"
};

/// Stroke for a cable; null: cable not chosen yet.
CableStroke cable_stroke(const CableType* cable);

} // namespace rillwatt
