#include "rillwatt/text/schema_text.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

constexpr bool in_words = false;

// clang-format off
constexpr KeyWords words[] = {
    {"", "rillwatt", "the version of the format", ""},

    {"[site]", "name", "what the garden is called, on every sheet", ""},
    {"[site]", "units", "what a bare length means, and what reports print", "\"ft\""},
    {"[site]", "catalogs", "catalog files beside this one, read after the built-in ones; a later entry wins", ""},
    {"[site]", "currency", "what prices are in", "\"USD\""},
    {"[site]", "conductor_temperature", "how warm the copper is", "\"75 C\""},
    {"[site]", "supply_voltage", "nominal line voltage", "120"},
    {"[site]", "supply_band_percent", "how far the supply may fall or rise: the weak and the strong case", "5"},
    {"[site]", "cable_allowance_percent", "added to lengths taken from the plan, never to typed ones", "10"},
    {"[site]", "hours_per_night", "how long the lights burn; from 3 hours on their load is continuous", "5"},
    {"[site]", "code", "which rules of the trade apply", "\"nec\""},
    {"[site]", "code_edition", "edition of the US code: 2017, 2020 or 2023", "2020"},
    {"[site]", "dwelling", "whether it is a one- or two-family home", "true"},
    {"[site]", "energy_price", "of one kilowatt-hour; 0 prints no energy cost", "0"},
    {"[site]", "nights_per_year", "nights the lights burn; days the pumps run", "365"},
    {"[site]", "cable_cover", "depth at which the crew buries the 12 V cable", "\"6 in\""},
    {"[site]", "water_attenuation", "how cloudy the water is; 0 is clear", "0"},
    {"[site]", "light_loss_factor", "share of the light left when lamps are old and dirty", "0.8"},
    {"[site]", "light_loss_factor_water", "the same for lights in water", "0.65"},
    {"[site]", "north", "where north is on the plan: 90 = up the sheet, 0 = right", "no north arrow", in_words},

    {"[stock]", "cables", "cables that sizing may choose", "every priced one", in_words},
    {"[stock]", "transformers", "transformers that sizing may choose", "every priced one", in_words},
    {"[stock]", "fixtures", "lights that placing may propose", "every priced one", in_words},

    {"[[circuit]]", "id", "its name, unlike all others in the file", ""},
    {"[[circuit]]", "volts", "line voltage", "supply_voltage of the site", in_words},
    {"[[circuit]]", "breaker", "rating of its breaker", ""},
    {"[[circuit]]", "gfci", "whether it has ground-fault protection", "false"},
    {"[[circuit]]", "conductor", "size of its copper, \"12 AWG\" or \"2.5 mm2\"", ""},
    {"[[circuit]]", "length", "from the panel to the outlet, one way", ""},
    {"[[circuit]]", "wiring", "how it is laid", ""},
    {"[[circuit]]", "cover", "how deep it is buried", ""},
    {"[[circuit]]", "crosses", "what it lies under: which row of the burial table", "\"lawn\""},
    {"[[circuit]]", "at", "where the outlet is on the plan", ""},
    {"[[circuit]]", "outlet", "what ends it", "\"receptacle\""},
    {"[[circuit]]", "outdoors", "whether the outlet is outdoors", "true, but false for indoor wiring", in_words},
    {"[[circuit]]", "wet_cover", "whether it has an in-use cover and a weather-resistant device", "false"},

    {"[[pump]]", "id", "its name, unlike all others in the file", ""},
    {"[[pump]]", "model", "which pump of the catalogs it is", ""},
    {"[[pump]]", "circuit", "what feeds it", ""},
    {"[[pump]]", "at", "where it stands on the plan", ""},
    {"[[pump]]", "hours_per_day", "how long it runs", "24"},

    {"[[transformer]]", "id", "its name, unlike all others in the file", ""},
    {"[[transformer]]", "model", "which transformer of the catalogs it is", "open, `size` chooses", in_words},
    {"[[transformer]]", "circuit", "what feeds it", ""},
    {"[[transformer]]", "at", "where it hangs on the plan", ""},
    {"[[transformer]]", "control", "how it is switched, printed on the sheets", ""},

    {"[[run]]", "id", "its name, unlike all others in the file", ""},
    {"[[run]]", "from", "the transformer it leaves", ""},
    {"[[run]]", "tap", "open-circuit volts of the terminal it is on", "open, `size` chooses", in_words},
    {"[[run]]", "cable", "cable of everything on it that names none", "open, `size` chooses", in_words},

    {"[[splice]]", "id", "its name, unlike all others in the file", ""},
    {"[[splice]]", "from", "what feeds it", ""},
    {"[[splice]]", "length", "cable from there to here, one way", "the plan says it, where both ends have `at`", in_words},
    {"[[splice]]", "cable", "cable of this length and of what it feeds", "that of what feeds it", in_words},
    {"[[splice]]", "at", "where it is on the plan", ""},

    {"[[fixture]]", "id", "its name, unlike all others in the file", ""},
    {"[[fixture]]", "model", "which light of the catalogs it is", ""},
    {"[[fixture]]", "from", "what feeds it; may wait while lights are still being placed", ""},
    {"[[fixture]]", "length", "cable from there to here, one way", "the plan says it, where both ends have `at`", in_words},
    {"[[fixture]]", "cable", "cable of this length and of what it feeds", "that of what feeds it", in_words},
    {"[[fixture]]", "at", "where it stands on the plan", ""},
    {"[[fixture]]", "in_water", "whether it stands in water", "true inside an area of water", in_words},
    {"[[fixture]]", "aim", "the point it is aimed at; wins over bearing and tilt", ""},
    {"[[fixture]]", "bearing", "which way it points on the plan: 0 = right, 90 = up the sheet", "0"},
    {"[[fixture]]", "tilt", "0 = straight down, 90 = level, 180 = straight up",
     "0 for path, step and downlight, 180 for submersible and accent", in_words},
    {"[[fixture]]", "mounting", "height of the light above the ground, negative under water",
     "by kind: path 18 in, step 12 in, downlight 10 ft, accent 6 in, submersible -4 in, other 0", in_words},
    {"[[fixture]]", "elevation", "height of the ground there", "0"},
    {"[[fixture]]", "lights", "what it is there for", ""},

    {"[[link]]", "id", "its name, unlike all others in the file", ""},
    {"[[link]]", "between", "the two parts that it joins to a ring", ""},
    {"[[link]]", "length", "cable from one to the other", "the plan says it, where both ends have `at`", in_words},
    {"[[link]]", "cable", "its cable", "open, `size` chooses", in_words},

    {"[[area]]", "id", "its name, unlike all others in the file", ""},
    {"[[area]]", "kind", "what it is; cable runs round water, buildings and paving", ""},
    {"[[area]]", "outline", "its corners in order", ""},
    {"[[area]]", "height", "how high it blocks light and view", "10 ft for a building, 0 for the rest", in_words},
    {"[[area]]", "level", "water only: height of the surface", "0"},

    {"[[sleeve]]", "id", "its name, unlike all others in the file", ""},
    {"[[sleeve]]", "between", "the two ends of a pipe that cable may pass through", ""},

    {"[[mark]]", "id", "its name, unlike all others in the file", ""},
    {"[[mark]]", "at", "a point easy to find again, to tape from", ""},

    {"[[walk]]", "id", "its name, unlike all others in the file", ""},
    {"[[walk]]", "line", "its middle, point by point", ""},
    {"[[walk]]", "width", "how wide it is", ""},
    {"[[walk]]", "elevation", "height of its surface", "0"},
    {"[[walk]]", "target", "lighting class of EN 13201-2 it shall reach", ""},
    {"[[walk]]", "mean_lux", "instead of a class: the mean it shall reach", ""},
    {"[[walk]]", "min_lux", "instead of a class: what its darkest point shall reach", ""},

    {"[[falls]]", "id", "its name, unlike all others in the file", ""},
    {"[[falls]]", "lip", "the ends of the edge, left and right for someone in front of the falls", ""},
    {"[[falls]]", "drop", "how high the water falls", ""},
    {"[[falls]]", "pool_depth", "how deep the water is below", "0"},
    {"[[falls]]", "base", "height of the lower water above grade", "0"},
    {"[[falls]]", "faces", "bearing the face looks to: 0 = right, 90 = up the sheet", "what the lip says", in_words},

    {"[[viewpoint]]", "id", "its name, unlike all others in the file", ""},
    {"[[viewpoint]]", "at", "where people look from", ""},
    {"[[viewpoint]]", "eye", "height of their eyes", "\"5 ft\""},
    {"[[viewpoint]]", "looks_at", "the falls that shall be seen from there", ""},

    {"taped point", "from", "the two marks taped from", ""},
    {"taped point", "taped", "distance from each of them", ""},
    {"taped point", "side", "on which side of the line from the first mark to the second the point lies", ""},

    {"", "rillwatt_catalog", "the version of the format", ""},
    {"", "source", "where the figures of the file come from, printed by reports", ""},

    {"[conductor_table.ID]", "source", "document, edition and table the figures are from", ""},
    {"[conductor_table.ID]", "reference_temperature", "temperature the figures are for", ""},
    {"[conductor_table.ID]", "temperature_coefficient", "of resistance, at that temperature", ""},
    {"[conductor_table.ID]", "unit", "of the figures: one conductor, not out and back", ""},
    {"[conductor_table.ID]", "sizes", "resistance by size: { \"12 AWG\" = 1.98 }", ""},

    {"[cable.ID]", "table", "its conductor table", ""},
    {"[cable.ID]", "size", "a size of that table", ""},
    {"[cable.ID]", "ampacity", "what it may carry for good, in this use", ""},
    {"[cable.ID]", "direct_burial", "whether it may be buried without a pipe", "false"},
    {"[cable.ID]", "price_per_foot", "price; without one, sizing never chooses it", ""},
    {"[cable.ID]", "price_per_metre", "the same by the metre", ""},
    {"[cable.ID]", "spools", "lengths it is sold in", "any length", in_words},
    {"[cable.ID]", "source", "where its figures come from", "the file's", in_words},
    {"[cable.ID]", "note", "printed by the catalog", ""},

    {"[fixture.ID]", "kind", "what it is for", ""},
    {"[fixture.ID]", "rated_volts", "volts its watts are for", "12"},
    {"[fixture.ID]", "window", "lowest and highest volts at which it works", ""},
    {"[fixture.ID]", "watts", "what it draws at rated volts", ""},
    {"[fixture.ID]", "va", "volt-amperes; they size cable and transformer", "the watts", in_words},
    {"[fixture.ID]", "load", "how its current changes with its volts", "\"constant-power\""},
    {"[fixture.ID]", "lead", "length of its own cord", "no lead", in_words},
    {"[fixture.ID]", "lead_cable", "the cable that cord is made of; required with `lead`", ""},
    {"[fixture.ID]", "rating", "how wet a place it is listed for", "\"damp\""},
    {"[fixture.ID]", "lumens", "light it gives", "0"},
    {"[fixture.ID]", "distribution", "where its light goes: { model = \"beam\", degrees = 40 }, { model = \"hat\", cutoff = 75 }, "
     "{ model = \"batwing\", cutoff = 65 } or { file = \"light.ies\" }", ""},
    {"[fixture.ID]", "colour_temperature", "colour of its light", ""},
    {"[fixture.ID]", "price", "of one", ""},
    {"[fixture.ID]", "source", "where its figures come from", "the file's", in_words},
    {"[fixture.ID]", "note", "printed by the catalog", ""},

    {"[transformer.ID]", "va", "rated load", ""},
    {"[transformer.ID]", "primary_volts", "line volts it is made for", "120"},
    {"[transformer.ID]", "taps", "open-circuit volts of its terminals", ""},
    {"[transformer.ID]", "regulation_percent", "how far its volts fall from no load to rated load", "0"},
    {"[transformer.ID]", "secondary_limit_amps", "what one run may draw", "25"},
    {"[transformer.ID]", "no_load_watts", "what it draws with nothing on", "0"},
    {"[transformer.ID]", "water_listed", "listed for lights in pools and fountains", "false"},
    {"[transformer.ID]", "price", "of one; without one, sizing never chooses it", ""},
    {"[transformer.ID]", "source", "where its figures come from", "the file's", in_words},
    {"[transformer.ID]", "note", "printed by the catalog", ""},

    {"[pump.ID]", "volts", "nameplate volts", ""},
    {"[pump.ID]", "amps", "nameplate amperes", ""},
    {"[pump.ID]", "watts", "nameplate watts", ""},
    {"[pump.ID]", "horsepower", "of its motor; a hardwired one is judged by it", ""},
    {"[pump.ID]", "submersible", "whether it may stand in water", "false"},
    {"[pump.ID]", "cord", "length of its cord", "no cord", in_words},
    {"[pump.ID]", "cord_and_plug", "whether it plugs in; false is hardwired", "true"},
    {"[pump.ID]", "leakage_ma", "leakage to expect", ""},
    {"[pump.ID]", "price", "of one", ""},
    {"[pump.ID]", "source", "where its figures come from", "the file's", in_words},
    {"[pump.ID]", "note", "printed by the catalog", ""},

    {"distribution", "model", "its shape: a beam round an axis, the ring of a hat, an even pool", ""},
    {"distribution", "degrees", "beam: the angle between its half-intensity edges", ""},
    {"distribution", "shadow", "hat: no light nearer to straight down than this", "10"},
    {"distribution", "cutoff", "hat and batwing: no light further from straight down than this", "75 for a hat; a batwing "
     "must say it", in_words},
    {"distribution", "file", "instead of a shape: a photometric file, IES LM-63 or EULUMDAT, beside the catalog", ""},

    {"[accessory.ID]", "use", "what the bill counts it by: splice, fixture-stake, sleeve-metre, trench-tape-metre, cable-tag, "
     "marker-stake", ""},
    {"[accessory.ID]", "price", "of one, or of a metre", ""},
    {"[accessory.ID]", "source", "where its figures come from", "the file's", in_words},
    {"[accessory.ID]", "note", "printed by the catalog", ""},
};
// clang-format on

} // namespace

std::span<const KeyWords> all_key_words() { return words; }

const KeyWords* key_words(std::string_view table, std::string_view key) {
    const auto found = std::find_if(std::begin(words), std::end(words), [&](const KeyWords& each) {
        return each.table == table && each.key == key;
    });
    return found == std::end(words) ? nullptr : &*found;
}

} // namespace rillwatt
