#pragma once

#include "rillwatt/catalog/catalog.hpp"

#include "svg_parts.hpp"
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// How the points of a line hang together.
enum class LineForm {
    open,   ///< from the first to the last
    closed, ///< and back: an outline, filled as its class says
    strokes ///< two by two: a comb, a grid
};

/// A line of a drawing. Its class in the drawing's style says how it looks, but for what depends on the part.
struct Line {
    std::string look; ///< class
    std::vector<SheetPoint> points;
    LineForm form = LineForm::open;
    double width = 0;    ///< 0: as the class says
    std::string dashes;  ///< as `stroke-dasharray` takes them; empty: as the class says
    std::string pattern; ///< that fills an outline; empty: as the class says
};

/// What a part that is drawn larger than life is known by.
enum class SymbolKind {
    path_light,
    submersible_light,
    accent_light,
    downlight,
    step_light,
    other_light,
    splice,
    transformer,
    pump,
    outlet,
    mark,
    viewpoint
};

/// A symbol, about 7 in radius.
struct Symbol {
    SymbolKind kind = SymbolKind::other_light;
    double pointing = 90; ///< degrees, 0 to the right, 90 up: accent lights and viewpoints
    bool wrong = false;   ///< ringed: the part has an error finding
    bool dark = false;    ///< a light that gives none
};

/// The symbol of a kind of light; null: a light that no catalog has.
SymbolKind symbol_of(const FixtureType* type);

/// What a legend says of a symbol.
std::string_view symbol_words(SymbolKind kind);

/// The kinds of light, in the order of legends.
inline constexpr std::array light_symbols{SymbolKind::submersible_light, SymbolKind::path_light,
                                          SymbolKind::accent_light,      SymbolKind::downlight,
                                          SymbolKind::step_light,        SymbolKind::other_light};

/// A part of the site as it is drawn: lines, or a symbol at its place, or both.
struct Shape {
    std::string part;  ///< id for `data-part`; may be empty
    std::string look;  ///< classes of the group
    std::string title; ///< said where a pointer rests on it; may be empty
    std::vector<Line> lines;
    std::optional<Symbol> symbol;
    SheetPoint at; ///< of the symbol
};

} // namespace rillwatt
