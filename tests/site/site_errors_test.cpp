#include "rillwatt/site/read_site.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

std::string words_of(const std::vector<InputError>& errors) {
    std::string words;
    for (const InputError& error : errors)
        words += input_error_text(error);
    return words;
}

/// Errors of a site that is whole but for `parts`, which begin on line 3.
std::string errors_of(const std::string& parts) {
    const LoadResult<Site> result = read_site("rillwatt = 1\nsite = { name = \"x\" }\n" + parts, "site.toml");
    CHECK_FALSE(result);
    return words_of(result.errors);
}

constexpr const char* wired = "[[transformer]]\nid = \"T1\"\n[[run]]\nid = \"A\"\nfrom = \"T1\"\n";

} // namespace

TEST_CASE("many mistakes of one evening are told at once, by line") {
    CHECK(errors_of("[[circuit]]\n" // 3
                    "id = \"C1\"\n"
                    "breaker = 0\n"
                    "conductor = \"12\"\n"
                    "length = \"12 miles\"\n"
                    "wiring = \"direct burial\"\n" // 8
                    "[[transformer]]\n"
                    "id = \"T1\"\n"
                    "circuit = \"C2\"\n" // 11
                    "[[run]]\n"
                    "id = \"A\"\n"
                    "from = \"T2\"\n" // 14
                    "tap = nan\n"
                    "[[splice]]\n"
                    "id = \"A\"\n" // 17
                    "from = \"T1\"\n"
                    "length = -4\n"
                    "[[fixture]]\n" // 20
                    "id = \"falls-1\"\n"
                    "lenght = \"3 ft\"\n"
                    "at = [1, inf]\n") ==
          "site.toml:5: error: `breaker` is 0; expected a number above 0 and at most 1000 A\n"
          "    breaker = 0\n"
          "site.toml:6: error: conductor `12`; expected a size of copper conductor, such as \"12 AWG\" or "
          "\"2.5 mm2\"\n"
          "    conductor = \"12\"\n"
          "site.toml:7: error: `length` is \"12 miles\"; expected a length from 0 to 10 km, such as 12.5, "
          "\"12 ft 6 in\" or \"3.8 m\"\n"
          "    length = \"12 miles\"\n"
          "site.toml:8: error: `wiring` is \"direct burial\"; expected one of \"direct-burial\", "
          "\"rigid-metal\", \"pvc\", \"indoor\"; nearest "
          "is `direct-burial`\n"
          "    wiring = \"direct burial\"\n"
          "site.toml:11: error: `circuit` names `C2`, which is nothing in this file; expected the id of a "
          "circuit; nearest is `C1`\n"
          "    circuit = \"C2\"\n"
          "site.toml:14: error: `from` names `T2`, which is nothing in this file; expected the id of a "
          "transformer; nearest is `T1`\n"
          "    from = \"T2\"\n"
          "site.toml:15: error: `tap` is nan; expected a number above 0 and at most 1000 V\n"
          "    tap = nan\n"
          "site.toml:17: error: id `A` is already that of a run on line 13; expected an id that no other "
          "part of the file has\n"
          "    id = \"A\"\n"
          "site.toml:18: error: `from` names `T1`, which is a transformer; expected the id of a run, a "
          "splice or a fixture\n"
          "    from = \"T1\"\n"
          "site.toml:19: error: `length` is -4; expected a length from 0 to 10 km, such as 12.5, \"12 ft 6 "
          "in\" or \"3.8 m\"\n"
          "    length = -4\n"
          "site.toml:20: error: `[[fixture]]` without `model`; expected `model`: the id of a catalog entry\n"
          "    [[fixture]]\n"
          "site.toml:22: error: unknown key `lenght`; expected one of `id`, `model`, `from`, `length`, "
          "`cable`, `at`, `in_water`, `aim`, "
          "`bearing`, `tilt`, `mounting`, `elevation`, `lights`; nearest is `length`\n"
          "    lenght = \"3 ft\"\n"
          "site.toml:23: error: `at` is inf; expected a length from -10 km to 10 km, such as 12.5, \"12 ft 6 "
          "in\" or \"3.8 m\"\n"
          "    at = [1, inf]\n");
}

TEST_CASE("an empty file lacks its version and its site") {
    CHECK(words_of(read_site("", "site.toml").errors) ==
          "site.toml:1: error: `site file` without `rillwatt`; expected `rillwatt`: a whole number: 1\n"
          "site.toml:1: error: a site file without `[site]`; expected `[site]` with at least `name`\n");
    CHECK(
        words_of(read_site("rillwatt = 2\n[site]\nnmae = \"x\"\n", "site.toml").errors)
            .starts_with("site.toml:1: error: `rillwatt` is 2; expected a whole number: 1\n    rillwatt = 2\n"
                         "site.toml:2: error: `[site]` without `name`; expected `name`: printable text that "
                         "is not empty, of at most 200 bytes\n"
                         "    [site]\n"
                         "site.toml:3: error: unknown key `nmae`; expected one of `name`, "));
}

TEST_CASE("a syntax error stands alone") {
    const std::string words = errors_of("[[run]]\nid = A\n[[splice]]\nlength = -4\n");
    CHECK(words.starts_with("site.toml:4: error: not TOML: "));
    CHECK(words.ends_with("    id = A\n"));
}

TEST_CASE("a single table where several are meant is explained") {
    CHECK(errors_of("[fixture]\nid = \"x\"\n") ==
          "site.toml:3: error: `fixture` is a table; expected `[[fixture]]` in double brackets, once for "
          "each\n    [fixture]\n");
    CHECK_THAT(errors_of("[fixtures]\n"),
               Catch::Contains("unknown key `fixtures`") && Catch::Contains("nearest is `fixture`"));
    CHECK_THAT(errors_of("[stock]\ncables = \"12/2\"\n"),
               Catch::Contains("`cables` is \"12/2\"; expected a list of texts"));
}

TEST_CASE("lines are right with carriage returns and other alphabets") {
    CHECK(errors_of("# \u6c34\r\n[[mark]]\r\nid = \"m\u00e9\"\r\nat = [\"1 y\u00e9\", 0]\r\n") ==
          "site.toml:6: error: `at` is \"1 y\u00e9\"; expected a length from -10 km to 10 km, such as 12.5, "
          "\"12 ft 6 in\" or \"3.8 m\"\n"
          "    at = [\"1 y\u00e9\", 0]\n");
}

TEST_CASE("any printable text is an id, and what is not printable is shown harmlessly") {
    const std::string good =
        std::string(wired) + "[[splice]]\nid = \"<b>&amp; ../../x \u6c34\"\nfrom = \"A\"\n";
    CHECK(read_site("rillwatt = 1\n[site]\nname = \"x\"\n" + good, "site.toml"));
    CHECK(
        errors_of("[[mark]]\nid = \"a\\u001b[31m\"\nat = [0, 0]\n[[mark]]\nid = \"\"\nat = [0, "
                  "0]\n[[mark]]\nid = \"a\\u202eb\"\nat = [0, 0]\n") ==
        "site.toml:4: error: `id` is \"a\\x1b[31m\"; expected printable text that is not empty, of at most "
        "200 bytes\n"
        "    id = \"a\\u001b[31m\"\n"
        "site.toml:7: error: `id` is \"\"; expected printable text that is not empty, of at most 200 bytes\n"
        "    id = \"\"\n"
        "site.toml:10: error: `id` is \"a\\u{202e}b\"; expected printable text that is not empty, of at most "
        "200 bytes\n"
        "    id = \"a\\u202eb\"\n");
}

TEST_CASE("ids differ by case, and are unique over all kinds of part") {
    CHECK(read_site("rillwatt = 1\n[site]\nname = \"x\"\n[[mark]]\nid = \"a\"\nat = [0, 0]\n[[mark]]\nid = "
                    "\"A\"\nat = [0, 0]\n",
                    "site.toml"));
    CHECK(errors_of(
              "[[sleeve]]\nid = \"a\"\nbetween = [[0, 0], [1, 1]]\n[[mark]]\nid = \"a\"\nat = [0, 0]\n") ==
          "site.toml:7: error: id `a` is already that of a sleeve on line 4; expected an id that no other "
          "part of the file has\n"
          "    id = \"a\"\n");
}

TEST_CASE("a reference to the wrong kind of part says what it is") {
    struct Row {
        std::string parts;
        std::string words;
    };
    const Row rows[] = {
        {"[[run]]\nid = \"B\"\nfrom = \"A\"\n",
         "`from` names `A`, which is a run; expected the id of a transformer; nearest is"},
        {"[[fixture]]\nid = \"L\"\nmodel = \"m\"\nfrom = \"T1\"\n",
         "`from` names `T1`, which is a transformer; expected the id of a run, a splice or a fixture"},
        {"[[fixture]]\nid = \"L\"\nmodel = \"m\"\nlights = \"A\"\n",
         "`lights` names `A`, which is a run; expected the id of falls or a walk"},
        {"[[pump]]\nid = \"P\"\nmodel = \"m\"\ncircuit = \"A\"\n",
         "`circuit` names `A`, which is a run; expected the id of a circuit"},
        {"[[viewpoint]]\nid = \"v\"\nat = [0, 0]\nlooks_at = [\"A\"]\n",
         "`looks_at` names `A`, which is a run; expected the id of falls"},
        {"[[link]]\nbetween = [\"A\", \"T1\"]\n",
         "`between` names `T1`, which is a transformer; expected the id of a run, a splice or a fixture"},
        {"[[link]]\nbetween = [\"A\", \"A\"]\n", "a link from `A` to itself; expected two different parts"},
        {"[[link]]\nbetween = [\"A\"]\n",
         "`between` is a list of 1; expected a list of 2 ids, each of a run, a splice or a fixture"},
    };
    for (const Row& row : rows) {
        INFO(row.parts);
        CHECK_THAT(errors_of(wired + row.parts),
                   Catch::Contains(row.words.substr(0, row.words.find("; nearest"))));
    }
}

TEST_CASE("numbers are held to their ranges, the ends included") {
    const auto site_with = [](const std::string& key, const std::string& value) {
        return read_site("rillwatt = 1\n[site]\nname = \"x\"\n" + key + " = " + value + "\n", "site.toml")
            .value.has_value();
    };
    struct Row {
        const char* key;
        const char* inside;
        const char* outside;
    };
    const Row rows[] = {
        {"supply_voltage", "1000", "1000.001"},
        {"supply_voltage", "0.001", "0"},
        {"supply_band_percent", "50", "50.1"},
        {"supply_band_percent", "0", "-0.1"},
        {"cable_allowance_percent", "100", "101"},
        {"hours_per_night", "24", "24.1"},
        {"hours_per_night", "0", "-1"},
        {"nights_per_year", "366", "367"},
        {"code_edition", "2017", "2018"},
        {"code_edition", "2023", "2026"},
        {"light_loss_factor", "1", "1.01"},
        {"light_loss_factor", "0.01", "0"},
        {"energy_price", "0", "-0.17"},
        {"cable_cover", "\"0 in\"", "\"-6 in\""},
        {"conductor_temperature", "200", "201"},
        {"conductor_temperature", "\"-58 F\"", "\"-60 F\""},
        {"cable_cover", "\"10 km\"", "\"6 in\" # -"},
        {"dwelling", "true", "\"yes\""},
        {"dwelling", "false", "1"},
        {"code", "\"iec\"", "\"bs\""},
        {"units", "\"m\"", "\"yd\""},
        {"name2", "", "1"},
        {"energy_price", "1e3", "1e300"},
        {"water_attenuation", "0.5", "nan"},
    };
    for (const Row& row : rows) {
        INFO(row.key << " " << row.inside << " " << row.outside);
        if (std::string_view(row.inside) != "" && std::string_view(row.inside) != "\"10 km\"")
            CHECK(site_with(row.key, row.inside));
        if (std::string_view(row.inside) != "\"10 km\"") CHECK_FALSE(site_with(row.key, row.outside));
    }
}

TEST_CASE("lengths beyond any garden are slips of the pen") {
    const std::string splice = std::string(wired) + "[[splice]]\nid = \"S\"\nfrom = \"A\"\nlength = ";
    CHECK(read_site("rillwatt = 1\n[site]\nname = \"x\"\n" + splice + "\"10000 m\"\n", "site.toml"));
    CHECK_THAT(errors_of(splice + "\"10000.1 m\"\n"), Catch::Contains("`length` is \"10000.1 m\""));
    CHECK_THAT(errors_of(splice + "32809\n"), Catch::Contains("`length` is 32809"));
    CHECK_THAT(errors_of(splice + "1e400\n"), Catch::Contains("site.toml:11: error: "));
    const std::string circuit = "[[circuit]]\nid = \"C\"\ncover = ";
    CHECK(read_site("rillwatt = 1\n[site]\nname = \"x\"\n" + circuit + "\"18 in\"\n", "site.toml"));
    CHECK_THAT(errors_of(circuit + "18\n"), Catch::Contains("`cover` is 18"));
}

TEST_CASE("marks taped from one another are followed a long way, and no further") {
    const auto chain = [](int marks) {
        std::string text = "[[mark]]\nid = \"m0\"\nat = [0, 0]\n[[mark]]\nid = \"m1\"\nat = [10, 0]\n";
        for (int i = marks; i > 1; --i) // each needs the one after it in the file
            text += "[[mark]]\nid = \"m" + std::to_string(i) + "\"\nat = { from = [\"m0\", \"m" +
                    std::to_string(i - 1) + "\"], taped = [10, 5], side = \"left\" }\n";
        return text;
    };
    CHECK(read_site("rillwatt = 1\n[site]\nname = \"x\"\n" + chain(400), "site.toml"));
    CHECK_THAT(errors_of(chain(20000)), Catch::Contains("in a chain of more than 500"));
}

TEST_CASE("many links between the same ends get names of their own, quickly") {
    std::string text = wired;
    for (const char* id : {"S", "U"})
        text += "[[splice]]\nid = \"" + std::string(id) + "\"\nfrom = \"A\"\nlength = 1\n";
    for (int i = 0; i < 3000; ++i)
        text += "[[link]]\nbetween = [\"S\", \"U\"]\n";
    const LoadResult<Site> site = read_site("rillwatt = 1\n[site]\nname = \"x\"\n" + text, "site.toml");
    REQUIRE(site);
    CHECK(site.value->links[1].id == "S - U (link)");
    CHECK(site.value->links[2999].id == "S - U (link 3000)");
}

TEST_CASE("a great many errors end in a word that there are more") {
    std::string parts;
    for (int i = 0; i < 3000; ++i)
        parts += "[[pump]]\n";
    const LoadResult<Site> result = read_site("rillwatt = 1\nsite = { name = \"x\" }\n" + parts, "site.toml");
    CHECK(result.errors.size() == 1001);
}

TEST_CASE("keys that no catalog has are named with their lines") {
    const std::string text = "rillwatt = 1\n"
                             "[site]\n"
                             "name = \"x\"\n"
                             "[stock]\n"
                             "cables = [\"12/2\",\n"
                             "  \"12-2\"]\n"
                             "[[transformer]]\n"
                             "id = \"T1\"\n"
                             "model = \"mag-300\"\n"
                             "[[run]]\n"
                             "id = \"A\"\n"
                             "from = \"T1\"\n"
                             "cable = \"13/2\"\n"
                             "[[fixture]]\n"
                             "id = \"L\"\n"
                             "from = \"A\"\n"
                             "model = \"zzz\"\n";
    const LoadResult<Site> site = read_site(text, "site.toml");
    REQUIRE(site);
    Catalog catalog;
    catalog.cables["12/2"] = {};
    catalog.transformers["mag-150"] = {};
    CHECK(words_of(check_against_catalog(*site.value, catalog, text)) ==
          "site.toml:6: error: `cables` names `12-2`, which no catalog has; expected the id of a `[cable]` "
          "of the catalogs; nearest is "
          "`12/2`\n      \"12-2\"]\n"
          "site.toml:9: error: `model` names `mag-300`, which no catalog has; expected the id of a "
          "`[transformer]` of the catalogs; nearest is "
          "`mag-150`\n    model = \"mag-300\"\n"
          "site.toml:13: error: `cable` names `13/2`, which no catalog has; expected the id of a `[cable]` "
          "of the catalogs; nearest is "
          "`12/2`\n    cable = \"13/2\"\n"
          "site.toml:17: error: `model` names `zzz`, which no catalog has; expected the id of a "
          "`[fixture]` "
          "of the catalogs\n"
          "    model = \"zzz\"\n");
    CHECK(check_against_catalog(*site.value, catalog).at(2).location.line == 10);
    catalog.cables["12-2"] = {};
    catalog.cables["13/2"] = {};
    catalog.transformers["mag-300"] = {};
    catalog.fixtures["zzz"] = {};
    CHECK(check_against_catalog(*site.value, catalog, text).empty());
}
