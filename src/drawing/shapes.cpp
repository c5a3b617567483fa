#include "shapes.hpp"

namespace rillwatt {

SymbolKind symbol_of(const FixtureType* type) {
    switch (type ? type->kind : FixtureKind::other) {
    case FixtureKind::path:
        return SymbolKind::path_light;
    case FixtureKind::submersible:
        return SymbolKind::submersible_light;
    case FixtureKind::accent:
        return SymbolKind::accent_light;
    case FixtureKind::downlight:
        return SymbolKind::downlight;
    case FixtureKind::step:
        return SymbolKind::step_light;
    case FixtureKind::other:
        break;
    }
    return SymbolKind::other_light;
}

std::string_view symbol_words(SymbolKind kind) {
    switch (kind) {
    case SymbolKind::path_light:
        return "path light";
    case SymbolKind::submersible_light:
        return "light under water";
    case SymbolKind::accent_light:
        return "accent light, turned as it points";
    case SymbolKind::downlight:
        return "downlight";
    case SymbolKind::step_light:
        return "step light";
    case SymbolKind::other_light:
        return "light";
    case SymbolKind::splice:
        return "splice or hub";
    case SymbolKind::transformer:
        return "transformer";
    case SymbolKind::pump:
        return "pump";
    case SymbolKind::outlet:
        return "line-voltage outlet: electrician's work";
    case SymbolKind::mark:
        return "mark to tape from";
    case SymbolKind::viewpoint:
        return "viewpoint and where it looks";
    }
    return "";
}

} // namespace rillwatt
