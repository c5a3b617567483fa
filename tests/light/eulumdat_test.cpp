// EULUMDAT files whose content is known because the test wrote it.
#include "rillwatt/light/photometric_file.hpp"

#include "lamps.hpp"

using namespace rillwatt;
using namespace rillwatt::test;

namespace {

struct Eulumdat {
    int symmetry = 0;
    int planes = 24; ///< round the whole circle
    double lumens = 1000;
    std::string factor = "1";
    std::string sets = "1";
    std::vector<double> gamma = angles(0, 180, 10);
    std::function<double(double, double)> per_kilolumen = [](double, double) { return 100.0; };

    std::vector<double> stored() const {
        const double step = 360.0 / planes;
        if (symmetry == 1) return {0};
        if (symmetry == 2) return angles(0, 180, step);
        if (symmetry == 3) return angles(270, 450, step);
        if (symmetry == 4) return angles(0, 90, step);
        return angles(0, 360 - step, step);
    }

    std::string text() const {
        std::string t =
            fmt::format("lab\n1\n{}\n{}\n{}\n{}\n5\n", symmetry, planes, 360.0 / planes, gamma.size());
        t += "report\nname\nnumber\nfile\ndate\n200\n200\n50\n180\n180\n0\n0\n0\n0\n100\n80\n"; // lines 8 to
                                                                                                // 23
        t += factor + "\n0\n" + sets + "\n1\nlamp\n" + fmt::format("{}\n", lumens) + "3000\n80\n12,5\n";
        for (int i = 0; i < 10; ++i)
            t += "0.5\n";
        for (int i = 0; i < planes; ++i)
            t += fmt::format("{}\n", i * 360.0 / planes);
        t += fmt::format("{}\n", fmt::join(gamma, "\n"));
        for (const double c : stored())
            for (const double g : gamma)
                t += fmt::format("{:.6f}\n", per_kilolumen(g, c >= 360 ? c - 360 : c));
        return t;
    }
};

LoadResult<PhotometricFile> read(const Eulumdat& file) {
    return read_photometric_file(file.text(), "made.ldt");
}

} // namespace

TEST_CASE("candela are given per 1000 lm of lamp flux and scaled by the conversion factor") {
    Eulumdat file;
    file.symmetry = 1;
    file.lumens = 450;
    file.factor = "0,8"; // a decimal comma: one number stands on each line, so it is clear
    const LoadResult<PhotometricFile> result = read(file);
    REQUIRE(result);
    CHECK(result.value->format == "EULUMDAT");
    CHECK(result.value->web.at(37, 200) == Approx(100 * 0.45 * 0.8));
    CHECK(result.value->web.flux() == Approx(4 * pi * 36));
    CHECK(result.value->watts == Approx(12.5));
    CHECK(result.value->declared_lumens->value() == 450);
}

TEST_CASE("each symmetry of EULUMDAT stands for the whole circle") {
    // A lobe with the symmetry named, read back where the file does not store it.
    struct Row {
        int symmetry;
        double cosine, sine; ///< of the horizontal angle: broken across 90-270 and across 0-180
    };
    for (const Row& row : {Row{0, 20, 10}, Row{2, 20, 0}, Row{3, 0, 10}, Row{4, 0, 0}}) {
        INFO("symmetry " << row.symmetry);
        Eulumdat file;
        file.symmetry = row.symmetry;
        file.per_kilolumen = [row](double g, double c) {
            return 80 +
                   std::sin(g * degree) * (15 * std::cos(2 * c * degree) + row.cosine * std::cos(c * degree) +
                                           row.sine * std::sin(c * degree));
        };
        const LoadResult<PhotometricFile> result = read(file);
        REQUIRE(result);
        for (const double c : {0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0})
            CHECK(result.value->web.at(70, c) == Approx(file.per_kilolumen(70, c)).margin(1e-5));
    }
}

TEST_CASE("a EULUMDAT file that cannot be trusted is refused with the line") {
    struct Row {
        const char* what;
        std::function<void(Eulumdat&)> spoil;
        int line;
    };
    const Row rows[] = {{"symmetry 7", [](Eulumdat& f) { f.symmetry = 7; }, 3},
                        {"planes that quadrants do not divide",
                         [](Eulumdat& f) {
                             f.symmetry = 4;
                             f.planes = 10;
                         },
                         4},
                        {"no lumens", [](Eulumdat& f) { f.lumens = 0; }, 29},
                        {"conversion factor in words", [](Eulumdat& f) { f.factor = "one"; }, 24},
                        {"no lamp set", [](Eulumdat& f) { f.sets = "0"; }, 26},
                        {"angles descend",
                         [](Eulumdat& f) {
                             f.gamma = {0, 90, 45};
                         },
                         69}};
    for (const Row& row : rows) {
        INFO(row.what);
        Eulumdat file;
        row.spoil(file);
        const LoadResult<PhotometricFile> result = read(file);
        REQUIRE_FALSE(result);
        CHECK(result.errors[0].location.line == row.line);
    }
    const std::string whole = Eulumdat{}.text();
    CHECK_FALSE(read_eulumdat(whole.substr(0, whole.size() / 2), "made.ldt"));
    CHECK_FALSE(read_eulumdat("", "made.ldt"));
}

TEST_CASE("a file is told by its content, whatever it is called") {
    Lm63 file;
    file.vertical = {0, 90};
    CHECK(read_photometric_file(file.text(), "made.ldt").value->format == "LM-63-2002");
    CHECK(read_photometric_file(Eulumdat{}.text(), "MADE.LDT").value->format == "EULUMDAT");
    CHECK_FALSE(read_photometric_file(Eulumdat{}.text(), "made.ies"));
}
