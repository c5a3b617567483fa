// Photometric files whose content is known because the test wrote it.
#include "rillwatt/light/photometric_file.hpp"

#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

PhotometricFile good(const std::string& text) {
    LoadResult<PhotometricFile> read = read_photometric_file(text, "made.ies");
    for (const InputError& error : read.errors)
        INFO(error.location.line << ": " << error.found);
    REQUIRE(read);
    return std::move(*read.value);
}

Lm63 cosine_file() {
    Lm63 file;
    file.vertical = angles(0, 90, 5);
    file.candela = [](double v, double) { return 200 * std::cos(v * degree); };
    return file;
}

bool remarked(const PhotometricFile& file, const std::string& words) {
    for (const LightRemark& remark : file.remarks)
        if (remark.text.find(words) != std::string::npos) return true;
    return false;
}

/// Direction off the axis by `v` and round it by `h`, degrees.
LocalDirection towards(double v, double h) {
    return {std::cos(v * degree), std::sin(v * degree) * std::cos(h * degree),
            std::sin(v * degree) * std::sin(h * degree)};
}

} // namespace

TEST_CASE("every edition of the format is told apart and its factors are applied as that edition has them") {
    // Candela = value x multiplier x ballast factor x (ballast-lamp factor, 1986 and 1991 only).
    struct Row {
        const char* version;
        const char* format;
        double candela;
    };
    const Row rows[] = {{"measured long ago\r\nin 1986 style\r\n", "LM-63-1986", 200 * 2 * 0.9 * 0.5},
                        {"IESNA91\r\n[TEST] 1\r\n", "LM-63-1991", 200 * 2 * 0.9 * 0.5},
                        {"IESNA:LM-63-1995\r\n[TEST] 1\r\n", "LM-63-1995", 200 * 2 * 0.9},
                        {"IESNA:LM-63-2002\r\n[TEST] 1\r\n", "LM-63-2002", 200 * 2 * 0.9},
                        {"IES:LM-63-2019\r\n[TEST] 1\r\n", "LM-63-2019", 200 * 2 * 0.9}};
    for (const Row& row : rows) {
        INFO(row.version);
        Lm63 file = cosine_file();
        file.version = row.version;
        file.lamps = "1 1000 2";
        file.factors = "0.9 0.5 35";
        const PhotometricFile read = good(file.text());
        CHECK(read.format == row.format);
        CHECK(read.web.at(0, 0) == Approx(row.candela));
        CHECK(read.web.at(60, 123) == Approx(row.candela / 2));
        CHECK(read.watts == 35);
        CHECK(read.declared_lumens->value() == 1000);
    }
}

TEST_CASE("symmetries stand for the whole circle, and between angles candela run straight") {
    const auto folded = [](double first, double last, std::function<double(double)> round) {
        Lm63 file;
        file.vertical = {0, 90, 180};
        file.horizontal = angles(first, last, 10);
        file.candela = [round](double v, double h) { return v == 90 ? round(h) : 0.0; };
        return good(file.text()).web;
    };
    SECTION("one angle: the same all round") {
        CHECK(folded(0, 0, [](double) { return 70.0; }).towards(towards(90, 211)) == Approx(70));
    }
    SECTION("0 to 90: quadrants") {
        const PhotometricWeb web = folded(0, 90, [](double h) { return h; });
        for (const double h : {25.0, 155.0, 205.0, 335.0})
            CHECK(web.towards(towards(90, h)) == Approx(25));
    }
    SECTION("0 to 180: mirrored about that plane") {
        const PhotometricWeb web = folded(0, 180, [](double h) { return h; });
        CHECK(web.towards(towards(90, 143)) == Approx(143));
        CHECK(web.towards(towards(90, 217)) == Approx(143));
    }
    SECTION("90 to 270: mirrored about that plane") {
        const PhotometricWeb web = folded(90, 270, [](double h) { return h; });
        CHECK(web.towards(towards(90, 200)) == Approx(200));
        CHECK(web.towards(towards(90, 340)) == Approx(200));
        CHECK(web.towards(towards(90, 80)) == Approx(100));
        CHECK(web.towards(towards(90, 0)) == Approx(180));
    }
    SECTION("0 to 360, and 0 to 350 where 360 is left out") {
        const auto ramp = [](double h) { return h == 360 ? 0 : h; };
        for (const double last : {360.0, 350.0}) {
            const PhotometricWeb web = folded(0, last, ramp);
            CHECK(web.towards(towards(90, 275)) == Approx(275));
            CHECK(web.towards(towards(90, 355)) == Approx(175)); // half way from 350 back to 0
        }
    }
    SECTION("0 and 360 alone are the same all round") {
        Lm63 file = cosine_file();
        file.horizontal = {0, 360};
        CHECK(good(file.text()).web.towards(towards(60, 90)) == Approx(100));
    }
    SECTION("bilinear in both angles, nothing outside the vertical range") {
        Lm63 file;
        file.vertical = {0, 40, 90};
        file.horizontal = {0, 90};
        file.candela = [](double v, double h) { return v + 2 * h; };
        const PhotometricWeb web = good(file.text()).web;
        CHECK(web.at(20, 45) == Approx(20 + 90));
        CHECK(web.at(65, 30) == Approx(65 + 60));
        CHECK(web.at(90, 0) == Approx(90));
        CHECK(web.at(90.5, 0) == 0);
    }
}

TEST_CASE("floodlight files: zero is the axis, vertical goes to the top, horizontal to the right") {
    Lm63 file;
    file.vertical = angles(-90, 90, 10);
    file.horizontal = angles(-90, 90, 10);
    file.candela = [](double v, double h) { return 1000 + 3 * v + 2 * h; };
    const double v = 30 * degree;
    const double h = 20 * degree;
    file.kind = "2 2 0 0 0"; // B: vertical turns round the level polar axis
    CHECK(
        good(file.text()).web.towards({std::cos(h) * std::cos(v), std::cos(h) * std::sin(v), std::sin(h)}) ==
        Approx(1000 + 90 + 40));
    file.kind = "3 2 0 0 0"; // A: horizontal turns round the plumb polar axis
    CHECK(
        good(file.text()).web.towards({std::cos(v) * std::cos(h), std::sin(v), std::cos(v) * std::sin(h)}) ==
        Approx(1000 + 90 + 40));
    CHECK(good(file.text()).web.towards({-1, 0, 0}) == 0); // behind
    file.horizontal = angles(0, 90, 10);                   // mirrored about the plumb plane
    CHECK(good(file.text()).web.towards({std::cos(h), 0, -std::sin(h)}) == Approx(1040));
    file.version = "an old file that writes type 1 for type A\r\n";
    file.kind = "1 2 0 0 0";
    CHECK(good(file.text()).web.type() == PhotometricType::a);
}

TEST_CASE("a tilt table is read and held beyond its ends") {
    Lm63 file = cosine_file();
    file.tilt = "TILT=INCLUDE\r\n1\r\n3\r\n0 45 90\r\n1 0.8 0.6\r\n";
    const PhotometricFile read = good(file.text());
    CHECK(read.tilt.geometry == 1);
    CHECK(read.tilt.factor(0) == 1);
    CHECK(read.tilt.factor(22.5) == Approx(0.9));
    CHECK(read.tilt.factor(90) == Approx(0.6));
    CHECK(read.tilt.factor(120) == Approx(0.6));
    CHECK(TiltTable{}.factor(50) == 1);
}

TEST_CASE("oddities that leave no doubt are read, the worse ones with a remark") {
    const Lm63 plain = cosine_file();
    const auto reads_the_same = [&](const std::string& text) {
        const PhotometricFile read = good(text);
        return read.web.at(0, 0) == Approx(200) && read.web.at(60, 0) == Approx(100);
    };
    SECTION("byte order mark, blank lines, lower case and blanks in the TILT line") {
        Lm63 file = plain;
        file.version = "\xEF\xBB\xBF\r\n\r\n" + file.version;
        file.tilt = "tilt = none\r\n";
        CHECK(reads_the_same(file.text()));
        CHECK(good(file.text()).format == "LM-63-2002");
    }
    SECTION("line ends of any system, an end-of-file character, foreign bytes in a label") {
        std::string text = plain.text() + "\x1A\x1A old editor";
        CHECK(reads_the_same(text));
        CHECK(good(text).remarks.empty());
        for (const char* ending : {"\n", "\r"}) {
            std::string other;
            for (const char c : text)
                if (c == '\r')
                    other += ending;
                else if (c != '\n')
                    other += c;
            CHECK(reads_the_same(other));
        }
        Lm63 file = plain;
        file.version += "[OTHER] \xE9\xFF\x80 caf\xC3\xA9\r\n";
        CHECK(reads_the_same(file.text()));
    }
    SECTION("commas between numbers, a plus sign, counts written with a point") {
        Lm63 file = plain;
        file.lamps = "1.0 , -1 ,+1";
        CHECK(reads_the_same(file.text()));
    }
    SECTION("negative candela are taken as none") {
        Lm63 file = plain;
        file.candela = [](double v, double) { return v == 90 ? -3.0 : 200 * std::cos(v * degree); };
        CHECK(remarked(good(file.text()), "1 negative candela value taken as 0"));
        CHECK(good(file.text()).web.at(90, 0) == 0);
    }
    SECTION("more values than asked for, text at the end, a second data set") {
        Lm63 file = plain;
        file.tail = "1 2 3\r\n";
        CHECK(remarked(good(file.text()), "3 words after the last candela value"));
        file.tail = plain.text();
        CHECK(remarked(good(file.text()), "second data set"));
    }
    SECTION("more light than the lamps give") {
        Lm63 file = plain;
        file.lamps = "1 300 1";
        CHECK(remarked(good(file.text()), "628 lm, more than the 300 lm"));
        file.lamps = "1 640 1";
        CHECK(good(file.text()).remarks.empty());
    }
    SECTION("an opening of a house, units of neither kind, an unknown edition, [MORE] first") {
        Lm63 file = plain;
        file.kind = "1 1 80 80 0";
        CHECK(remarked(good(file.text()), "24.4 m"));
        file.kind = "1 7 0 0 0";
        CHECK(remarked(good(file.text()), "neither 1 (feet) nor 2"));
        file.kind = "1 1e36 0 0 0";
        CHECK(remarked(good(file.text()), "neither 1 (feet) nor 2"));
        file.version = "IESNA:LM-63-2050\r\n[MORE] what?\r\n";
        CHECK(remarked(good(file.text()), "unknown edition"));
        CHECK(remarked(good(file.text()), "continues no label"));
    }
    SECTION("vertical angles that stop short of 90, horizontal ones short of 360, a lone horizontal 45") {
        Lm63 file = plain;
        file.vertical = angles(0, 80, 5);
        CHECK(remarked(good(file.text()), "from 0 to 80"));
        file.horizontal = angles(0, 345, 15);
        CHECK(remarked(good(file.text()), "end at 345"));
        file.horizontal = {45};
        CHECK(remarked(good(file.text()), "taken as 0"));
    }
}

TEST_CASE("files that cannot be trusted are refused with the line") {
    struct Row {
        const char* what;
        std::function<void(Lm63&)> spoil;
        const char* found;
        int line;
    };
    const Row rows[] = {
        {"no TILT line", [](Lm63& f) { f.tilt = ""; }, "no TILT line", 9},
        {"TILT names a file", [](Lm63& f) { f.tilt = "TILT=lamp.tlt\r\n"; }, "TILT names a file, `lamp.tlt`",
         4},
        {"too few values",
         [](Lm63& f) {
             f.kind = "1 2 0 0 0 1 1 10 0";
             f.lamps = "1 -1 1 40";
         },
         "", 0},
        {"angles descend",
         [](Lm63& f) {
             f.vertical = {0, 30, 20, 90};
         },
         "vertical angle 20 after 30", 7},
        {"an angle twice",
         [](Lm63& f) {
             f.vertical = {0, 30, 30, 90};
         },
         "vertical angle 30 after 30", 7},
        {"not a number", [](Lm63& f) { f.lamps = "1 nan 1"; }, "`nan`", 5},
        {"endless", [](Lm63& f) { f.lamps = "1 inf 1"; }, "`inf`", 5},
        {"beyond any number", [](Lm63& f) { f.lamps = "1 1e999 1"; }, "`1e999`", 5},
        {"words", [](Lm63& f) { f.lamps = "one -1 1"; }, "`one`", 5},
        {"multiplier 0", [](Lm63& f) { f.lamps = "1 -1 0"; }, "candela multiplier 0", 5},
        {"ballast factor 0", [](Lm63& f) { f.factors = "0 1 10"; }, "ballast factor 0", 5},
        {"photometric type 4", [](Lm63& f) { f.kind = "4 2 0 0 0"; }, "photometric type", 5},
        {"half a lamp", [](Lm63& f) { f.lamps = "0.5 -1 1"; }, "number of lamps 0.5", 5},
        {"horizontal to 120",
         [](Lm63& f) {
             f.horizontal = {0, 60, 120};
         },
         "horizontal angles from 0 to 120", 8},
        {"horizontal from -90 in type C",
         [](Lm63& f) {
             f.horizontal = {-90, 0, 90};
         },
         "horizontal angles from -90 to 90", 8},
        {"vertical to 200",
         [](Lm63& f) {
             f.vertical = {0, 90, 200};
         },
         "vertical angles from 0 to 200", 7},
        {"one horizontal angle in type B", [](Lm63& f) { f.kind = "2 2 0 0 0"; }, "in a type A or B file", 8},
        {"tilt geometry 9", [](Lm63& f) { f.tilt = "TILT=INCLUDE\r\n9\r\n1 0 1\r\n"; },
         "lamp-to-luminaire geometry 9", 5},
    };
    for (const Row& row : rows) {
        INFO(row.what);
        Lm63 file = cosine_file();
        row.spoil(file);
        const LoadResult<PhotometricFile> read = read_lm63(file.text(), "made.ies");
        REQUIRE_FALSE(read);
        REQUIRE_FALSE(read.errors.empty());
        if (row.line > 0) CHECK(read.errors[0].location.line == row.line);
        CHECK(read.errors[0].found.find(row.found) != std::string::npos);
        CHECK(read.errors[0].location.file == "made.ies");
        CHECK_FALSE(read.errors[0].expected.empty());
    }
}

TEST_CASE("counts are believed only as far as the file goes") {
    const std::string start = "IESNA91\nTILT=NONE\n1 -1 1 ";
    for (const char* counts : {"99999 99999", "2 3", "1 1", "0 0", "-5 1", "1e300 1", "100001 1", "2.5 1"}) {
        INFO(counts);
        CHECK_FALSE(read_lm63(start + counts + " 1 2 0 0 0 1 1 10\n0 90 0 100 100\n", "made.ies"));
    }
    CHECK(read_lm63(start + "2 1 1 2 0 0 0 1 1 10\n0 90 0 100 100\n", "made.ies"));
    CHECK_FALSE(read_lm63(start + "2 1 1 2 0 0 0 1 1 10\n0 90 0 100\n", "made.ies"));
    for (const char* text : {"", "\n", "TILT=NONE", "TILT=INCLUDE\n1\n1000\n0", "\x1A", "\xEF\xBB\xBF"})
        CHECK_FALSE(read_lm63(text, "made.ies"));
}

TEST_CASE("decimal commas are refused, not misread") {
    const std::string text =
        "IESNA91\nTILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1 10\n0 45 90\n0\n100,5 80,2 10,1\n";
    const LoadResult<PhotometricFile> read = read_lm63(text, "made.ies");
    REQUIRE_FALSE(read);
    CHECK(read.errors[0].found.find("commas between digits") != std::string::npos);
    CHECK(read.errors[0].location.line == 7);
}

TEST_CASE("all bad numbers of a header are reported at once") {
    Lm63 file = cosine_file();
    file.lamps = "one two three";
    const LoadResult<PhotometricFile> read = read_lm63(file.text(), "made.ies");
    CHECK(read.errors.size() == 3);
    CHECK(read.errors[0].source_line.find("one two three") != std::string::npos);
}
