#include "rillwatt/site/read_site.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace rillwatt;

namespace {

constexpr const char* heading = "rillwatt = 1\nsite = { name = \"x\", units = \"m\" }\n";

Site read(const std::string& parts) {
    LoadResult<Site> result = read_site(heading + parts, "site.toml");
    for (const InputError& error : result.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(result);
    return std::move(*result.value);
}

std::string errors_of(const std::string& parts) {
    const LoadResult<Site> result = read_site(heading + parts, "site.toml");
    CHECK_FALSE(result);
    std::string words;
    for (const InputError& error : result.errors)
        words += input_error_text(error);
    return words;
}

std::string falls(const std::string& lip, const std::string& more = "") {
    return "[[falls]]\nid = \"f\"\nlip = " + lip + "\ndrop = 1\n" + more;
}

constexpr const char* two_marks = "[[mark]]\nid = \"a\"\nat = [0, 0]\n[[mark]]\nid = \"b\"\nat = [10, 0]\n";

std::string taped(const std::string& tape) {
    return std::string(two_marks) + "[[mark]]\nid = \"p\"\nat = " + tape + "\n";
}

} // namespace

TEST_CASE("falls face whoever sees their left end on the left") {
    struct Row {
        const char* lip;
        double faces;
    };
    // Worked by hand: someone stands on the side faced, looks back at the lip, and has the first end on the
    // left.
    const Row rows[] = {
        {"[[21, 10], [24, 10]]", 270}, // seen from below the lip, looking up the plan: x = 21 is left
        {"[[24, 10], [21, 10]]", 90},
        {"[[0, 0], [0, 3]]", 0}, // seen from the right, looking towards -x: the lower end is left
        {"[[0, 3], [0, 0]]", 180},
        {"[[0, 0], [1, 1]]", 315},
    };
    for (const Row& row : rows) {
        INFO(row.lip);
        CHECK(read(falls(row.lip)).falls[0].faces.value() == Approx(row.faces).margin(1e-9));
    }
}

TEST_CASE("a typed bearing of falls may be 45 degrees off the lip and no more") {
    CHECK(read(falls("[[21, 10], [24, 10]]", "faces = 225\n")).falls[0].faces == Degrees(225));
    CHECK(read(falls("[[21, 10], [24, 10]]", "faces = 315\n")).falls[0].faces == Degrees(315));
    CHECK(read(falls("[[21, 10], [24, 10]]", "faces = -90\n")).falls[0].faces == Degrees(270));
    CHECK(read(falls("[[0, 0], [0, 3]]", "faces = 350\n")).falls[0].faces == Degrees(350));
    CHECK(errors_of(falls("[[21, 10], [24, 10]]", "faces = 315.5\n")) ==
          "site.toml:7: error: `faces` is 315.5, 46 degrees off the lip; expected within 45 degrees of 270, "
          "where a lip from left to "
          "right for someone in front of the falls faces\n    faces = 315.5\n");
    CHECK_THAT(errors_of(falls("[[21, 10], [24, 10]]", "faces = 90\n")),
               Catch::Contains("180 degrees off the lip"));
}

TEST_CASE("shapes without extent are refused") {
    CHECK_THAT(errors_of(falls("[[1, 1], [1, 1]]")),
               Catch::Contains("site.toml:5: error: points 1 and 2 are the same"));
    CHECK_THAT(errors_of(falls("[[1, 1]]")),
               Catch::Contains("`lip` is a list of 1; expected a list of 2 points"));
    CHECK_THAT(errors_of("[[falls]]\nid = \"f\"\nlip = [[0, 0], [1, 0]]\ndrop = 0\n"),
               Catch::Contains("`drop` is 0"));
    const auto area = [](const std::string& outline) {
        return "[[area]]\nid = \"a\"\nkind = \"bed\"\noutline = " + outline + "\n";
    };
    CHECK_THAT(errors_of(area("[[0, 0], [1, 0]]")),
               Catch::Contains("`outline` is a list of 2; expected a list of 3 to 2000 points"));
    CHECK_THAT(errors_of(area("[[0, 0], [1, 1], [2, 2]]")), Catch::Contains("an outline without an inside"));
    CHECK_THAT(errors_of(area("[[0, 0], [1, 1], [1, 1], [2, 0]]")),
               Catch::Contains("points 2 and 3 are the same"));
    CHECK_THAT(errors_of(area("[[0, 0], [1, nan], [2, 0]]")), Catch::Contains("`outline` is nan"));
    CHECK_THAT(errors_of("[[walk]]\nid = \"w\"\nline = [[0, 0], [0, 0]]\nwidth = 1\n"),
               Catch::Contains("points 1 and 2 are the same"));
    CHECK_THAT(errors_of("[[walk]]\nid = \"w\"\nline = [[0, 0], [1, 0]]\nwidth = 0\n"),
               Catch::Contains("`width` is 0"));
    CHECK_THAT(errors_of("[[sleeve]]\nid = \"s\"\nbetween = [[0, 0], [0, 0]]\n"),
               Catch::Contains("points 1 and 2 are the same"));
}

//   1 --- 2       1 - 2
//     . .          . .
//      X            3        on the left edges cross, on the right they touch at a point
//     . .          . .
//   3 --- 4       5 - 4
TEST_CASE("an outline that crosses itself is refused, one that touches itself is not") {
    const auto area = [](const std::string& outline) {
        return "[[area]]\nid = \"a\"\nkind = \"bed\"\noutline = " + outline + "\n";
    };
    CHECK(errors_of(area("[[0, 3], [2, 3], [0, 0], [3, 0]]")) ==
          "site.toml:6: error: an outline that crosses itself: its edges from points 2 and 4; expected "
          "points in their order round the "
          "area\n    outline = [[0, 3], [2, 3], [0, 0], [3, 0]]\n");
    CHECK(read(area("[[0, 3], [2, 3], [1, 1], [2, 0], [0, 0], [1, 1]]")).areas.size() == 1);
    CHECK(read(area("[[0, 0], [4, 0], [4, 3], [2, 1], [0, 3]]")).areas.size() == 1); // concave
}

TEST_CASE("an outline may repeat its first point at the end") {
    const Site site =
        read("[[area]]\nid = \"a\"\nkind = \"bed\"\noutline = [[0, 0], [1, 0], [0, 1], [0, 0]]\n");
    CHECK(site.areas[0].outline.size() == 3);
}

TEST_CASE("only water has a level, and a building is high unless it says otherwise") {
    const auto area = [](const std::string& kind, const std::string& more) {
        return "[[area]]\nid = \"a\"\nkind = \"" + kind + "\"\noutline = [[0, 0], [1, 0], [0, 1]]\n" + more;
    };
    CHECK(read(area("building", "")).areas[0].height == feet(10));
    CHECK(read(area("building", "height = 0\n")).areas[0].height == Metres(0));
    CHECK(read(area("bed", "height = 1.5\n")).areas[0].height == Metres(1.5));
    CHECK(read(area("water", "level = -0.1\n")).areas[0].level == Metres(-0.1));
    CHECK_THAT(errors_of(area("paving", "level = 1\n")), Catch::Contains("`level` of `a` that is no water"));
}

TEST_CASE("a walk has a class or lux of its own, not both") {
    const auto walk = [](const std::string& more) {
        return "[[walk]]\nid = \"w\"\nline = [[0, 0], [1, 0]]\nwidth = 1\n" + more;
    };
    CHECK(read(walk("target = \"P7\"\n")).walks[0].target == "P7");
    CHECK(read(walk("mean_lux = 3\nmin_lux = 0.6\n")).walks[0].min_lux == Lux(0.6));
    CHECK_FALSE(read(walk("")).walks[0].target);
    CHECK_THAT(errors_of(walk("target = \"P8\"\n")),
               Catch::Contains("`target` is \"P8\"; expected one of \"P1\""));
    CHECK_THAT(errors_of(walk("target = \"P5\"\nmin_lux = 1\n")),
               Catch::Contains("walk `w` with a `target` class and lux of its own"));
    CHECK_THAT(errors_of(walk("mean_lux = 1\nmin_lux = 2\n")),
               Catch::Contains("`mean_lux` 1 below `min_lux` 2"));
}

//  Two marks ten metres apart and tapes of 6 and 8: a right angle where they meet, since 6^2 + 8^2 = 10^2.
//
//            p (3.6, 4.8)      left of the way from a to b
//        6  /    \  8
//      a(0,0) ---- b(10,0)
//        6  \    /  8
//            q (3.6, -4.8)     right of it
TEST_CASE("a point taped from two marks lies on the side that was said") {
    const Site left = read(taped("{ from = [\"a\", \"b\"], taped = [6, 8], side = \"left\" }"));
    CHECK(left.marks[2].at.x == Approx(3.6));
    CHECK(left.marks[2].at.y == Approx(4.8));
    const Site right = read(taped("{ from = [\"a\", \"b\"], taped = [6, \"800 cm\"], side = \"right\" }"));
    CHECK(right.marks[2].at.y == Approx(-4.8));
    const Site back = read(taped("{ from = [\"b\", \"a\"], taped = [8, 6], side = \"left\" }"));
    CHECK(back.marks[2].at.y == Approx(-4.8));
}

TEST_CASE("tapes that just touch give the one point between") {
    const Site site = read(taped("{ from = [\"a\", \"b\"], taped = [4, 6], side = \"left\" }"));
    CHECK(site.marks[2].at.x == Approx(4));
    CHECK(site.marks[2].at.y == Approx(0).margin(1e-9));
    CHECK(read(taped("{ from = [\"a\", \"b\"], taped = [14, 4], side = \"left\" }")).marks[2].at.x ==
          Approx(14));
}

TEST_CASE("tapes that do not meet say by how much") {
    CHECK(errors_of(taped("{ from = [\"a\", \"b\"], taped = [4, 5.5], side = \"left\" }")) ==
          "site.toml:11: error: tapes from `a` and `b` that miss each other by 0.5 m; expected two lengths "
          "that can meet: the marks are "
          "10 m apart\n    at = { from = [\"a\", \"b\"], taped = [4, 5.5], side = \"left\" }\n");
    CHECK_THAT(errors_of(taped("{ from = [\"a\", \"b\"], taped = [15, 4], side = \"left\" }")),
               Catch::Contains("miss each other by 1 m"));
    CHECK_THAT(errors_of(taped("{ from = [\"a\", \"a\"], taped = [4, 4], side = \"left\" }")),
               Catch::Contains("which are at the same place"));
}

TEST_CASE("every point of a part may be taped") {
    const std::string p = "{ from = [\"a\", \"b\"], taped = [6, 8], side = \"left\" }";
    const Site site = read(std::string(two_marks) + "[[walk]]\nid = \"w\"\nline = [[0, 0], " + p +
                           "]\nwidth = 1\n" + "[[sleeve]]\nid = \"s\"\nbetween = [" + p + ", [1, 1]]\n" +
                           "[[circuit]]\nid = \"c\"\nat = " + p + "\n" +
                           "[[fixture]]\nid = \"l\"\nmodel = \"m\"\nat = " + p + "\naim = " + p + "\n");
    CHECK(site.walks[0].line[1].x == Approx(3.6));
    CHECK(site.sleeves[0].a.y == Approx(4.8));
    CHECK(site.circuits[0].at->x == Approx(3.6));
    CHECK(site.fixtures[0].aim.at->y == Approx(4.8));
    CHECK(site.fixtures[0].aim.at->z == 0);
}

TEST_CASE("marks may be taped from marks further down, but never from themselves") {
    const Site site =
        read("[[mark]]\nid = \"p\"\nat = { from = [\"q\", \"b\"], taped = [6, 8], side = \"left\" }\n"
             "[[mark]]\nid = \"q\"\nat = { from = [\"a\", \"b\"], taped = [1, 10], side = \"right\" }\n" +
             std::string(two_marks));
    REQUIRE(site.marks.size() == 4);
    CHECK(site.marks[0].id == "p");
    CHECK(distance(site.marks[0].at, site.marks[1].at).value() == Approx(6));
    CHECK(distance(site.marks[0].at, site.marks[3].at).value() == Approx(8));
    CHECK(
        errors_of("[[mark]]\nid = \"p\"\nat = { from = [\"q\", \"b\"], taped = [6, 8], side = \"left\" }\n"
                  "[[mark]]\nid = \"q\"\nat = { from = [\"p\", \"b\"], taped = [6, 8], side = \"left\" }\n" +
                  std::string(two_marks)) ==
        "site.toml:8: error: mark `p` is taped, by way of others or at once, from itself; expected marks "
        "that lead back to two with "
        "coordinates\n    at = { from = [\"p\", \"b\"], taped = [6, 8], side = \"left\" }\n");
}

TEST_CASE("a taped point needs two marks, two tapes and a side") {
    CHECK_THAT(
        errors_of(taped("{ from = [\"a\", \"bb\"], taped = [6, 8], side = \"left\" }")),
        Catch::Contains("taped from `bb`, which is no mark; expected the id of a mark; nearest is `b`"));
    CHECK_THAT(errors_of(taped("{ from = [\"a\"], taped = [6, 8], side = \"left\" }")),
               Catch::Contains("`from` is a list of 1"));
    CHECK_THAT(errors_of(taped("{ from = [\"a\", \"b\"], taped = [6, -8], side = \"left\" }")),
               Catch::Contains("`taped` is -8"));
    CHECK_THAT(errors_of(taped("{ from = [\"a\", \"b\"], taped = [6, 8], side = \"up\" }")),
               Catch::Contains("`side` is \"up\"; expected one of \"left\", \"right\""));
    CHECK_THAT(errors_of(taped("{ from = [\"a\", \"b\"], taped = [6, 8] }")),
               Catch::Contains("`taped point` without `side`"));
    CHECK_THAT(
        errors_of(taped("{ from = [\"a\", \"b\"], tape = [6, 8], side = \"left\" }")),
        Catch::Contains("unknown key `tape`; expected one of `from`, `taped`, `side`; nearest is `taped`"));
}

TEST_CASE("a link without an id is called by its ends") {
    const std::string wired = "[[transformer]]\nid = \"T\"\n[[run]]\nid = \"A\"\nfrom = "
                              "\"T\"\n[[splice]]\nid = \"S\"\nfrom = \"A\"\n";
    const Site site = read(wired + "[[link]]\nbetween = [\"A\", \"S\"]\n[[link]]\nbetween = [\"A\", "
                                   "\"S\"]\n[[link]]\nid = \"ring\"\nbetween = [\"S\", \"A\"]\n");
    CHECK(site.links[0].id == "A - S");
    CHECK(site.links[1].id == "A - S (link)");
    CHECK(site.links[2].id == "ring");
}

TEST_CASE("the reader's own list of keys covers every table") {
    for (const TableSpec& table : site_tables()) {
        INFO(table.name);
        CHECK_FALSE(table.fields.empty());
        const bool has_id = std::any_of(table.fields.begin(), table.fields.end(),
                                        [](const FieldSpec& field) { return field.key == "id"; });
        CHECK(has_id == table.repeated);
    }
}
