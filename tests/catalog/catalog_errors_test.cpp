#include "rillwatt/catalog/read_catalog.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

std::string errors_of(const std::string& text) {
    const LoadResult<Catalog> result = read_catalog("rillwatt_catalog = 1\n" + text, "stock.toml");
    CHECK_FALSE(result);
    std::string words;
    for (const InputError& error : result.errors)
        words += input_error_text(error);
    return words;
}

Catalog read(const std::string& text, Catalog base = {}) {
    LoadResult<Catalog> result =
        read_catalog("rillwatt_catalog = 1\n" + text, "shop/stock.toml", std::move(base));
    for (const InputError& error : result.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(result);
    return std::move(*result.value);
}

/// A fixture with all that is required, and `more`.
std::string fixture(const std::string& more) {
    return "[fixture.f]\nkind = \"path\"\nwindow = [9, 15]\nwatts = 3\n" + more;
}

constexpr const char* small_stock = "source = \"generic stock\"\n"
                                    "[conductor_table.t]\n"
                                    "source = \"invented\"\n"
                                    "reference_temperature = \"68 F\"\n"
                                    "temperature_coefficient = 0.00393\n"
                                    "unit = \"ohm/kft\"\n"
                                    "sizes = { \"10 AWG\" = 1, \"12 AWG\" = 1.6, \"4 mm2\" = 1.4 }\n"
                                    "[cable.\"12/2\"]\n"
                                    "table = \"t\"\n"
                                    "size = \"12 AWG\"\n"
                                    "ampacity = 20\n"
                                    "direct_burial = true\n"
                                    "price_per_foot = 0.6096\n"
                                    "spools = [\"500 ft\", \"100 ft\"]\n";

} // namespace

TEST_CASE("a catalog entry arrives whole, in SI") {
    Catalog catalog = read(std::string(small_stock) +
                           fixture("va = 4.2\nload = \"filament\"\nlead = \"20 ft\"\nlead_cable = \"12/2\"\n"
                                   "rating = \"wet\"\nlumens = 210\nprice = 48\ncolour_temperature = 2700\n"
                                   "note = \"n\"\nsource = \"own\"\n"));
    CHECK(check_catalog(catalog).empty());
    const CableType& cable = catalog.cables.at("12/2");
    CHECK(cable.price->value() == Approx(2));
    CHECK(cable.spools == std::vector<Metres>{feet(100), feet(500)});
    CHECK(cable.resistance.value() == Approx(1.6 / 304.8).epsilon(1e-15));
    CHECK(cable.reference_temperature.value() == Approx(20).epsilon(1e-15));
    CHECK(cable.section_mm2 == Approx(3.3088).epsilon(1e-4));
    CHECK(cable.source == "generic stock");
    CHECK(cable.location.line == 9);
    std::string order;
    for (const ConductorRow& row : catalog.tables.at("t").rows)
        order += row.size + ";";
    CHECK(order == "12 AWG;4 mm2;10 AWG;");
    const FixtureType& light = catalog.fixtures.at("f");
    CHECK(light.source == "own");
    CHECK(light.va == VoltAmperes(4.2));
    CHECK(light.load == LoadModel::filament);
    CHECK(light.lead == feet(20));
    CHECK(light.colour_temperature == 2700);
}

TEST_CASE("volt-amperes are the watts where none are given") {
    CHECK(read(fixture("")).fixtures.at("f").va == VoltAmperes(3));
}

TEST_CASE("a later catalog replaces an entry of the same kind and id, and adds others") {
    const Catalog first = read(fixture("price = 1\n") + "[pump.f]\nvolts = 120\namps = 2\nwatts = 180\n");
    const Catalog second = read("[fixture.f]\nkind = \"step\"\nwindow = [9, 15]\nwatts = "
                                "2\n[fixture.g]\nkind = \"step\"\nwindow = [9, 15]\nwatts = 2\n",
                                first);
    CHECK(second.fixtures.at("f").kind == FixtureKind::step);
    CHECK_FALSE(second.fixtures.at("f").price);
    CHECK(second.fixtures.size() == 2);
    CHECK(second.pumps.size() == 1);
}

TEST_CASE("taps are put in ascending order") {
    const Catalog catalog =
        read("[transformer.t]\nva = 300\ntaps = [15, 12, 13.5]\nregulation_percent = 4\n");
    const TransformerType& type = catalog.transformers.at("t");
    CHECK(type.taps == std::vector<Volts>{Volts(12), Volts(13.5), Volts(15)});
    CHECK(type.regulation == 0.04);
    CHECK(type.primary_volts == Volts(120));
    CHECK(type.secondary_limit == Amperes(25));
}

TEST_CASE("a distribution is one of four, and a file is looked for beside its catalog") {
    const auto spread = [](const std::string& text) {
        return read(fixture("distribution = " + text + "\n")).fixtures.at("f").distribution;
    };
    CHECK(std::get<BeamDistribution>(spread("{ model = \"beam\", degrees = 40 }")).beam_angle == Degrees(40));
    CHECK(std::get<HatDistribution>(spread("{ model = \"hat\" }")).cutoff == Degrees(75));
    CHECK(std::get<HatDistribution>(spread("{ model = \"hat\", shadow = 5, cutoff = 80 }")).shadow ==
          Degrees(5));
    CHECK(std::get<BatwingDistribution>(spread("{ model = \"batwing\", cutoff = 65 }")).cutoff ==
          Degrees(65));
    CHECK(std::get<FileDistribution>(spread("{ file = \"x.ies\" }")).path == "shop/x.ies");
    CHECK(std::get<FileDistribution>(spread("{ file = \"/lights/x.ies\" }")).path == "/lights/x.ies");
    CHECK(std::holds_alternative<std::monostate>(read(fixture("")).fixtures.at("f").distribution));
}

TEST_CASE("everything wrong in a catalog is told at once") {
    CHECK(
        errors_of("colour = 1\n"
                  "[cable.a]\n"
                  "table = \"t\"\n"
                  "size = \"12 AWG\"\n"
                  "ampacity = 0\n"
                  "spools = [100]\n"
                  "price_per_foot = -1\n"
                  "[fixture.f]\n"
                  "kind = \"paths\"\n"
                  "window = [15, 9]\n"
                  "watts = 3\n"
                  "va = 2\n"
                  "lead = \"20 ft\"\n"
                  "lumens = inf\n") ==
        "stock.toml:2: error: unknown key `colour`; expected one of `rillwatt_catalog`, `source`, "
        "`conductor_table`, `cable`, "
        "`fixture`, `transformer`, `pump`, `accessory`\n    colour = 1\n"
        "stock.toml:6: error: `ampacity` is 0; expected a number above 0 and at most 1000 A\n    ampacity = "
        "0\n"
        "stock.toml:7: error: `spools` is 100; expected a length with its unit above 0 and at most 10 km, "
        "such as \"12 ft 6 in\" or "
        "\"3.8 m\"\n    spools = [100]\n"
        "stock.toml:8: error: `price_per_foot` is -1; expected a number from 0 to 1000000\n    "
        "price_per_foot = -1\n"
        "stock.toml:10: error: `kind` is \"paths\"; expected one of \"submersible\", \"path\", \"accent\", "
        "\"downlight\", \"step\", "
        "\"other\"; nearest is `path`\n    kind = \"paths\"\n"
        "stock.toml:11: error: `window` from 15 to 9; expected [lowest volts, highest volts], the lower "
        "first\n    window = [15, 9]\n"
        "stock.toml:13: error: `va` of 2 below `watts` of 3; expected at least the watts: a power factor is "
        "never above 1\n    va = 2\n"
        "stock.toml:14: error: fixture `f` with a `lead` but no `lead_cable`; expected `lead_cable`: the id "
        "of the cable that the lead "
        "is made of\n    lead = \"20 ft\"\n"
        "stock.toml:15: error: `lumens` is inf; expected a number from 0 to 10000000 lm\n    lumens = inf\n");
}

TEST_CASE("each entry is held to what can exist") {
    struct Row {
        std::string text;
        std::string found;
    };
    const Row rows[] = {
        {"[transformer.t]\nva = 300\ntaps = [12, 12]\n", "tap 12 twice"},
        {"[transformer.t]\nva = 300\ntaps = []\n", "`taps` is an empty list"},
        {"[transformer.t]\nva = 300\ntaps = [12, -1]\n", "`taps` is -1"},
        {"[transformer.t]\nva = 300\ntaps = [12, nan]\n", "`taps` is nan"},
        {"[transformer.t]\ntaps = [12]\n", "`[transformer.t]` without `va`"},
        {"[transformer.t]\nva = 300\ntaps = [12]\nregulation_percent = 50.1\n",
         "`regulation_percent` is 50.1"},
        {"[pump.p]\nvolts = 120\namps = 1\nwatts = 180\n", "pump `p` of 180 W at 120 V and 1 A"},
        {"[pump.p]\nvolts = 1200\namps = 1\nwatts = 180\n", "`volts` is 1200"},
        {"[pump.p]\nvolts = 120\namps = 2\nwatts = 180\ncord = \"11 km\"\n", "`cord` is \"11 km\""},
        {"[pump.p]\nvolts = 120\namps = 2\nwatts = 180\ncord = \"10001 m\"\n", "`cord` is \"10001 m\""},
        {"[accessory.a]\nprice = 1\n", "`[accessory.a]` without `use`"},
        {"[cable.a]\ntable = \"t\"\nsize = \"s\"\nampacity = 1\nprice_per_foot = 1\nprice_per_metre = 3\n",
         "cable `a` with both `price_per_foot` and `price_per_metre`"},
        {"[cable.a]\ntable = \"t\"\nsize = \"s\"\nampacity = 1\nspools = [\"1 m\", \"100 cm\"]\n",
         "the same spool length twice"},
        {fixture("lead_cable = \"18/2\"\n"), "fixture `f` with a `lead_cable` but no `lead`"},
        {fixture("distribution = { model = \"beam\" }\n"), "a beam without `degrees`"},
        {fixture("distribution = { model = \"beam\", degrees = 30, cutoff = 1 }\n"),
         "`cutoff` in a distribution by beam"},
        {fixture("distribution = { model = \"hat\", shadow = 80 }\n"), "`shadow` 80 not below `cutoff` 75"},
        {fixture("distribution = { model = \"batwing\", cutoff = 90 }\n"), "`cutoff` of 90 for a batwing"},
        {fixture("distribution = {}\n"), "a distribution without `model` or `file`"},
        {fixture("distribution = \"beam\"\n"), "`distribution` is \"beam\""},
        {fixture("price = \"48\"\n"), "`price` is \"48\""},
        {fixture("note = 2026-01-01\n"), "`note` is a date or a time"},
        {"[cable]\nx = 1\n", "`x` of `cable` is 1"},
        {"cable = 1\n", "`cable` is 1"},
        {"[fixture.\"a\\nb\"]\n", "`id` is \"a\\nb\""},
        {"[conductor_table.t]\nsource = \"s\"\nreference_temperature = 20\ntemperature_coefficient = 0\nunit "
         "= \"ohm/km\"\nsizes = { \"12\" = 1 }\n",
         "conductor size `12`"},
        {"[conductor_table.t]\nsource = \"s\"\nreference_temperature = 20\ntemperature_coefficient = 0\nunit "
         "= \"ohm/kft\"\nsizes = { \"12 AWG\" = 9999 }\n",
         "`12 AWG` of 9999 ohm/kft"},
        {"[conductor_table.t]\nsource = \"s\"\nreference_temperature = 20\ntemperature_coefficient = 0\nunit "
         "= \"ohm/km\"\nsizes = { \"12 AWG\" = 0 }\n",
         "`12 AWG` is 0"},
    };
    for (const Row& row : rows) {
        INFO(row.text);
        CHECK_THAT(errors_of(row.text), Catch::Contains("error: " + row.found + ";"));
    }
}

TEST_CASE("what values of one entry say of each other is told on the line of the value") {
    struct Row {
        std::string text;
        std::string line;
        std::string shown;
    };
    const std::string table = "[conductor_table.t]\nsource = \"s\"\nreference_temperature = \"75 C\"\n";
    const Row rows[] = {
        {table + "temperature_coefficient = 0.003\nunit = \"ohm/kft\"\n[conductor_table.t.sizes]\n"
                 "\"12 AWG\" = 2\n\"14 AWG\" = 9999\n",
         "9", "\"14 AWG\" = 9999"},
        {table + "temperature_coefficient = 0.008\nunit = \"ohm/km\"\nsizes = { \"12 AWG\" = 6 }\n", "5",
         "temperature_coefficient = 0.008"},
        {"[pump.p]\nvolts = 120\namps = 1\nwatts = 180\n", "5", "watts = 180"},
        {"[cable.a]\ntable = \"t\"\nsize = \"s\"\nampacity = 1\nprice_per_foot = 1\nprice_per_metre = 3\n",
         "7", "price_per_metre = 3"},
        {fixture("lead = \"3 ft\"\n"), "6", "lead = \"3 ft\""},
        {fixture("lead_cable = \"18/2\"\n"), "6", "lead_cable = \"18/2\""},
        {fixture("[fixture.f.distribution]\nmodel = \"batwing\"\ncutoff = 90\n"), "8", "cutoff = 90"},
    };
    for (const Row& row : rows) {
        INFO(row.text);
        const std::string errors = errors_of(row.text);
        CHECK(errors.starts_with("stock.toml:" + row.line + ": error: "));
        CHECK(errors.ends_with("\n    " + row.shown + "\n"));
    }
}

TEST_CASE("a conductor has resistance left in the coldest ground") {
    const auto table = [](const char* coefficient) {
        return std::string("[conductor_table.t]\nsource = \"x\"\nreference_temperature = \"75 C\"\n"
                           "temperature_coefficient = ") +
               coefficient + "\nunit = \"ohm/km\"\nsizes = { \"12 AWG\" = 6 }\n";
    };
    CHECK(read(table("0.0079")).tables.size() == 1); // 1 - 0.0079 * 125 = 0.0125
    CHECK_THAT(errors_of(table("0.008")), Catch::Contains("temperature coefficient of 0.008") &&
                                              Catch::Contains("some resistance at -50 C"));
}

TEST_CASE("a value just inside its limit is read") {
    CHECK(read("[transformer.t]\nva = 300\ntaps = [12]\nregulation_percent = 50\n")
              .transformers.at("t")
              .regulation == 0.5);
    CHECK(read("[pump.p]\nvolts = 1000\namps = 2\nwatts = 180\ncord = \"10000 m\"\n").pumps.at("p").cord ==
          Metres(10000));
    CHECK(read(fixture("va = 3\n")).fixtures.at("f").va == VoltAmperes(3));
}

TEST_CASE("a catalog says which version of the format it is in") {
    const LoadResult<Catalog> result = read_catalog("source = \"x\"\n", "stock.toml");
    REQUIRE(result.errors.size() == 1);
    CHECK(input_error_text(result.errors[0]) ==
          "stock.toml:1: error: `catalog` without `rillwatt_catalog`; expected `rillwatt_catalog`: a whole "
          "number: 1\n    source = \"x\"\n");
    CHECK_FALSE(read_catalog("rillwatt_catalog = 2\n", "stock.toml"));
}

TEST_CASE("what entries say of one another is checked when all catalogs are read") {
    Catalog catalog = read(std::string(small_stock) +
                           "[cable.b]\ntable = \"tt\"\nsize = \"12 AWG\"\nampacity = 1\n"
                           "[cable.c]\ntable = \"t\"\nsize = \"14 AWG\"\nampacity = 1\n" +
                           fixture("lead = \"1 m\"\nlead_cable = \"12-2\"\n"));
    std::string words;
    for (const InputError& error : check_catalog(catalog))
        words += input_error_text(error);
    CHECK(words ==
          "shop/stock.toml:16: error: `table` of cable `b` is `tt`, which no catalog has; expected a "
          "`[conductor_table]` of the catalogs; "
          "nearest is `t`\n"
          "shop/stock.toml:20: error: `size` of cable `c` is `14 AWG`; expected a size of the table "
          "`t`: `12 AWG`, `4 mm2`, `10 AWG`\n"
          "shop/stock.toml:24: error: `lead_cable` of fixture `f` is `12-2`, which no catalog has; expected "
          "a `[cable]` "
          "of the catalogs; nearest is "
          "`12/2`\n");
}
