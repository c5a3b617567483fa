#include "drawing_style.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace rillwatt {
namespace {

struct Shade {
    const char* name;
    const char* light;
    const char* dark;
};

/// Run colours differ in lightness as well as in hue, so that they stay apart for colour-blind readers and in
/// grey; tags on the cables name the run besides.
constexpr std::array shades{
    Shade{"paper", "#fdfcf8", "#15191c"},         Shade{"ink", "#1f2a30", "#e6e9e6"},
    Shade{"faint", "#5d6a70", "#9aa7ac"},         Shade{"rule", "#c9d0d0", "#38434a"},
    Shade{"grid", "#c3cac8", "#3a454b"},          Shade{"water", "#d9eaf2", "#16303d"},
    Shade{"water-line", "#5f95b0", "#4f8aa6"},    Shade{"building", "#e2dfd9", "#2d3033"},
    Shade{"building-line", "#8b857b", "#80868a"}, Shade{"paving", "#f1ece1", "#26241f"},
    Shade{"paving-line", "#b5a98f", "#6b6250"},   Shade{"bed", "#e9efdd", "#1d2a1d"},
    Shade{"bed-line", "#8ba26b", "#5f7c4d"},      Shade{"lawn", "#f0f5e6", "#18221a"},
    Shade{"lawn-line", "#a9bf8a", "#4d6347"},     Shade{"glow", "#f6c945", "#e0b02c"},
    Shade{"bad", "#b3261e", "#ff8a7d"},           Shade{"walk", "#f7f3ea", "#2c2a25"},
    Shade{"mark", "#fff3b8", "#4b4218"},          Shade{"lux", "#6b4300", "#f3cf8a"},
    Shade{"walk-lit", "#5d6a70", "#6f7b80"},      Shade{"lux-line", "#8a5a00", "#a8761a"},
    Shade{"dark-lamp", "#8d9499", "#4a5358"},
};

/// Warm steps from the faintest level of light to the brightest.
constexpr std::array lux_shades{
    Shade{"lux0", "#fff6d8", "#2b2617"}, Shade{"lux1", "#ffedb0", "#3d3319"},
    Shade{"lux2", "#ffe08a", "#54431a"}, Shade{"lux3", "#fecb5c", "#6f561a"},
    Shade{"lux4", "#f8b133", "#8c6b19"}, Shade{"lux5", "#ec9417", "#ab811a"},
    Shade{"lux6", "#d67a0b", "#cb991f"}, Shade{"lux7", "#b86206", "#e8b533"},
};

constexpr std::array run_shades{
    Shade{"run0", "#1d5c9e", "#6fb1ee"}, Shade{"run1", "#c04a12", "#ff9a5c"},
    Shade{"run2", "#0b7a67", "#4fd0b6"}, Shade{"run3", "#7d2f86", "#d08be0"},
    Shade{"run4", "#9a7400", "#e6c34a"}, Shade{"run5", "#a8174f", "#ff86b1"},
    Shade{"run6", "#46575f", "#b4c3ca"}, Shade{"run7", "#4d6b10", "#a9cf5e"},
};

std::string variables(bool dark) {
    std::string out;
    const auto add = [&](const Shade& s) {
        out += fmt::format("--{0}:var(--rw-{0},{1});", s.name, dark ? s.dark : s.light);
    };
    for (const Shade& s : shades)
        add(s);
    for (const Shade& s : run_shades)
        add(s);
    for (const Shade& s : lux_shades)
        add(s);
    return out;
}

constexpr const char* rules = R"css(
.rw-drawing{background:var(--paper);font-family:"Helvetica Neue",Helvetica,Arial,"Liberation Sans",sans-serif;max-width:100%;height:auto}
.rw-drawing text{fill:var(--ink)}
.rw-drawing .rw-paper{fill:var(--paper)}
.rw-drawing .rw-halo{paint-order:stroke;stroke:var(--paper);stroke-width:3px;stroke-linejoin:round}
.rw-drawing .rw-faint{fill:var(--faint)}
.rw-drawing .rw-bad-text{fill:var(--bad)}
.rw-drawing .rw-lux{fill:var(--lux);font-style:italic}
.rw-drawing .rw-area-name{fill:var(--faint);letter-spacing:0}
.rw-drawing .rw-frame{fill:none;stroke:var(--ink);stroke-width:1.2}
.rw-drawing .rw-rule{fill:none;stroke:var(--rule);stroke-width:1}
.rw-drawing .rw-grid{fill:none;stroke:var(--grid);stroke-width:.7;opacity:.6}
.rw-drawing .rw-line{fill:none;stroke:var(--ink);stroke-width:1.3;stroke-linecap:round;stroke-linejoin:round}
.rw-drawing .rw-thin{fill:none;stroke:var(--ink);stroke-width:.8}
.rw-drawing .rw-leader{fill:none;stroke:var(--faint);stroke-width:.7}
.rw-drawing .rw-solid{fill:var(--ink);stroke:none}
.rw-drawing .rw-body{fill:var(--paper);stroke:var(--ink);stroke-width:1.4}
.rw-drawing .rw-lamp{fill:var(--glow);stroke:var(--ink);stroke-width:1.3}
.rw-drawing .rw-wrong{fill:none;stroke:var(--bad);stroke-width:2.2;stroke-dasharray:3 2}
.rw-drawing .rw-cable{fill:none;stroke-linejoin:round}
.rw-drawing .rw-cable-edge{fill:none;stroke:var(--paper);stroke-linejoin:round;opacity:.85}
.rw-drawing .rw-typed{opacity:.75}
.rw-drawing .rw-tag{fill:var(--paper);stroke:currentColor;stroke-width:1.1}
.rw-drawing .rw-walk-edge{fill:none;stroke:var(--paving-line);stroke-linejoin:round}
.rw-drawing .rw-walk-bed{fill:none;stroke:var(--walk);stroke-linejoin:round}
.rw-drawing .rw-walk-lit{fill:none;stroke:var(--walk-lit);stroke-linejoin:round}
.rw-drawing .rw-walk-middle{fill:none;stroke:var(--paving-line);stroke-width:1;stroke-dasharray:9 4 2 4}
.rw-drawing .rw-falls{fill:none;stroke:var(--water-line);stroke-width:3.4;stroke-linecap:round}
.rw-drawing .rw-falls-comb{fill:none;stroke:var(--water-line);stroke-width:1.1}
.rw-drawing .rw-sleeve{fill:none;stroke:var(--ink);stroke-width:.9;stroke-dasharray:5 2.5}
.rw-drawing .rw-water{fill:var(--water);stroke:var(--water-line);stroke-width:1.5}
.rw-drawing .rw-building{fill:var(--building);stroke:var(--ink);stroke-width:2.2}
.rw-drawing .rw-paving{fill:var(--paving);stroke:var(--paving-line);stroke-width:1.2}
.rw-drawing .rw-bed{fill:var(--bed);stroke:var(--bed-line);stroke-width:1;stroke-dasharray:6 2.5}
.rw-drawing .rw-lawn{fill:var(--lawn);stroke:var(--lawn-line);stroke-width:1;stroke-dasharray:1.5 2.5}
.rw-drawing .rw-dark{fill:var(--dark-lamp);stroke:var(--ink);stroke-width:1.3}
.rw-drawing .isolux{fill-opacity:.75;fill-rule:evenodd}
.rw-drawing .isolux-lines{fill:none;stroke:var(--lux-line);stroke-width:.8;stroke-linejoin:round}
.rw-drawing .rw-lux-key{stroke:var(--lux-line);stroke-width:.8}
.rw-drawing .rw-outline>*{fill:none}
.rw-drawing .rw-hatch{stroke:none}
.rw-drawing [data-part].rw-marked .rw-body,.rw-drawing [data-part].rw-marked .rw-lamp{fill:var(--mark);stroke-width:2.4}
.rw-drawing [data-part].rw-marked .rw-cable{stroke-width:5px}
.rw-drawing [data-part].rw-marked text{font-weight:700}
)css";

} // namespace

std::string drawing_style() {
    std::string out = "<style>.rw-drawing{color-scheme:light dark;" + variables(false) +
                      "}\n@media (prefers-color-scheme:dark){.rw-drawing{" + variables(true) +
                      "}}\n@media print{.rw-drawing{" + variables(false) + "}}";
    out += rules;
    for (std::size_t i = 0; i < run_shades.size(); ++i)
        out += fmt::format(".rw-drawing .rw-run{0}{{color:var(--run{0})}}\n", i);
    for (std::size_t i = 0; i < lux_shades.size(); ++i)
        out += fmt::format(".rw-drawing .rw-lux{0}{{fill:var(--lux{0})}}\n", i);
    return out +
           ".rw-drawing .rw-cable{stroke:currentColor}.rw-drawing .rw-tag-text{fill:currentColor}</style>";
}

std::string area_patterns(std::string_view drawing) {
    return fmt::format(
        R"svg(<pattern id="rw-{0}-hatch-building" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V7" style="stroke:var(--building-line);stroke-width:.9"/></pattern>
<pattern id="rw-{0}-hatch-water" width="26" height="12" patternUnits="userSpaceOnUse"><path d="M1 3q3-2.4 6 0t6 0M14 9q3-2.4 6 0t5 .4" style="fill:none;stroke:var(--water-line);stroke-width:.7;opacity:.75"/></pattern>
<pattern id="rw-{0}-hatch-paving" width="20" height="20" patternUnits="userSpaceOnUse"><path d="M0 0H20M0 10H20M5 0V10M15 10V20" style="fill:none;stroke:var(--paving-line);stroke-width:.45"/></pattern>
<pattern id="rw-{0}-hatch-bed" width="13" height="13" patternUnits="userSpaceOnUse"><path d="M3 5q1.5-3 0-4q-1.5 1 0 4M9 11q1.5-3 0-4q-1.5 1 0 4" style="fill:none;stroke:var(--bed-line);stroke-width:.7"/></pattern>
<pattern id="rw-{0}-hatch-lawn" width="22" height="18" patternUnits="userSpaceOnUse"><path d="M4 7v-3M6 7l1-2.4M2 7l-1-2.4M15 15v-3M17 15l1-2.4M13 15l-1-2.4" style="fill:none;stroke:var(--lawn-line);stroke-width:.7"/></pattern>
)svg",
        drawing);
}

std::string area_class(AreaKind kind) {
    switch (kind) {
    case AreaKind::water:
        return "water";
    case AreaKind::building:
        return "building";
    case AreaKind::paving:
        return "paving";
    case AreaKind::bed:
        return "bed";
    case AreaKind::lawn:
        return "lawn";
    }
    return "lawn";
}

std::string lux_class(std::size_t level) {
    return fmt::format("rw-lux{}", std::min(level, lux_shades.size() - 1));
}

std::string run_class(std::size_t run) { return fmt::format("rw-run{}", run % run_shades.size()); }

CableStroke cable_stroke(const CableType* cable) {
    if (!cable) return {1.6, "7 3 1.5 3", "dash-dot: cable not chosen yet"};
    struct Row {
        double at_least_mm2;
        CableStroke stroke;
    };
    // Conductor sections of the common sizes: 18 AWG 0.82, 16 1.31, 14 2.08, 12 3.31, 10 5.26, 8 8.37 mm2.
    static const std::array rows{
        Row{7, {4.2, "", "solid, very thick"}},
        Row{4.6, {3.2, "16 3", "long dashes, thick"}},
        Row{2.9, {2.2, "", "solid"}},
        Row{1.8, {2.0, "8 3", "dashes"}},
        Row{1.1, {1.8, "4 2.5", "short dashes"}},
        Row{0, {1.6, "1.6 2.4", "dots"}},
    };
    for (const Row& row : rows)
        if (cable->section_mm2 >= row.at_least_mm2) return row.stroke;
    return rows.back().stroke;
}

} // namespace rillwatt
