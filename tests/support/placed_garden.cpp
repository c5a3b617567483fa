#include "support/placed_garden.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <random>
#include <vector>

namespace rillwatt::test {

namespace {

constexpr double plot_width = 30; // metres, as everything here
constexpr double plot_depth = 24;
constexpr double street = 3;
constexpr int lights_of_plot = 25;
constexpr int lights_in_water = 4;
constexpr int lights_at_pond = 8;

struct At {
    double x = 0;
    double y = 0;
};

/// One plot's part of the file.
class Plot {
  public:
    Plot(const PlacedGardenSpec& spec, int number, At corner, std::mt19937& random)
        : spec_(&spec), number_(number), corner_(corner), random_(&random) {}

    std::string text(int lights) {
        shapes();
        supply();
        const int at_pond = std::min(lights, lights_at_pond);
        if (at_pond > 0) pond_lights(at_pond);
        dry_lights(lights - at_pond);
        return std::move(out_);
    }

  private:
    template<class... Args>
    void add(fmt::format_string<Args...> words, Args&&... args) {
        fmt::format_to(std::back_inserter(out_), words, std::forward<Args>(args)...);
    }

    std::string point(double x, double y) const {
        return fmt::format("[{:.3f}, {:.3f}]", corner_.x + x, corner_.y + y);
    }

    double jitter(double most) { return most * (static_cast<double>((*random_)()) / 2147483648.0 - 1); }

    std::string outline(const std::vector<At>& corners) const {
        std::string text;
        for (const At& corner : corners)
            text += (text.empty() ? "" : ", ") + point(corner.x, corner.y);
        return "[" + text + "]";
    }

    void area(const char* name, const char* kind, const std::vector<At>& corners) {
        add("[[area]]\nid = \"{} {}\"\nkind = \"{}\"\noutline = {}\n\n", name, number_, kind,
            outline(corners));
    }

    At on_pond(double share, double radius) const {
        const double angle = 2 * 3.14159265358979323846 * share;
        return {22 + radius * std::cos(angle), 11 + radius * std::sin(angle)};
    }

    void shapes() {
        area("house", "building", {{2, 2}, {12, 2}, {12, 8}, {2, 8}});
        area("terrace", "paving", {{12, 2}, {17, 2}, {17, 6}, {12, 6}});
        std::vector<At> pond;
        for (int k = 0; k < spec_->pond_corners; ++k)
            pond.push_back(on_pond(static_cast<double>(k) / spec_->pond_corners, 3.2 + jitter(0.2)));
        area("pond", "water", pond);
        add("[[walk]]\nid = \"walk {}\"\nline = [{}, {}, {}, {}]\nwidth = 1.2\ntarget = \"P6\"\n\n", number_,
            point(2, 10), point(14, 10.5), point(17, 18), point(28, 18.5));
        add("[[falls]]\nid = \"falls {}\"\nlip = [{}, {}]\ndrop = 0.6\npool_depth = 0.3\n\n", number_,
            point(21.2, 14.6), point(22.8, 14.6));
        add("[[viewpoint]]\nid = \"terrace chair {}\"\nat = {}\neye = 1.2\nlooks_at = [\"falls {}\"]\n\n",
            number_, point(15, 4), number_);
        add("[[sleeve]]\nid = \"sleeve {}\"\nbetween = [{}, {}]\n\n", number_, point(20, plot_depth - street),
            point(20, plot_depth));
    }

    void supply() {
        add("[[circuit]]\nid = \"C{}\"\nbreaker = 15\ngfci = true\nconductor = \"14 AWG\"\nlength = 8\n"
            "wiring = \"indoor\"\nat = {}\noutdoors = true\nwet_cover = true\n\n",
            number_, point(12.1, 7.2));
        add("[[transformer]]\nid = \"T{}\"\ncircuit = \"C{}\"\nat = {}\n{}\n", number_, number_,
            point(12.2, 7.6), spec_->choices ? "model = \"pool-150\"\n" : "");
        for (const char* run : {"A", "B"})
            add("[[run]]\nid = \"{}{}\"\nfrom = \"T{}\"\n{}\n", run, number_, number_,
                spec_->choices ? "tap = 12\ncable = \"10/2\"\n" : "");
    }

    void light(const std::string& id, const char* model, const std::string& from, At at) {
        add("[[fixture]]\nid = \"{}\"\nmodel = \"{}\"\nfrom = \"{}\"\nat = {}\n", id, model, from,
            point(at.x + jitter(0.1), at.y + jitter(0.1)));
        if (spec_->typed) out_ += "length = 3\n";
        out_ += '\n';
    }

    void pond_lights(int count) {
        const std::string hub = fmt::format("H{}", number_);
        add("[[splice]]\nid = \"{}\"\nfrom = \"B{}\"\nat = {}\n{}\n", hub, number_, point(18.2, 11.3),
            spec_->typed ? "length = 7\n" : "");
        for (int k = 0; k < count; ++k) {
            const bool wet = k < lights_in_water;
            light(fmt::format("{} {}-{}", wet ? "sunk" : "shore", number_, k + 1),
                  wet ? "sub-3w-60" : "accent-3w-60", hub, on_pond(0.13 + 0.25 * k, wet ? 2.2 : 3.9));
        }
    }

    void dry_lights(int count) {
        std::string from = fmt::format("A{}", number_);
        for (int k = 0; k < count; ++k) {
            const std::string id = fmt::format("path {}-{}", number_, k + 1);
            light(id, "path-2w-wide", from, beside_walk(k));
            from = id;
        }
    }

    /// On the left and right of the walk by turns, from its beginning to its end.
    static At beside_walk(int k) {
        const double side = k % 2 == 0 ? 0.9 : -0.9;
        if (k < 7) return {12.6 - 1.6 * k, 10.4 + side};
        if (k < 11) return {14.6 + 0.7 * (k - 7) - side, 12.2 + 1.75 * (k - 7)};
        return {18 + 1.75 * (k - 11), 18.1 + side};
    }

    const PlacedGardenSpec* spec_;
    int number_;
    At corner_;
    std::mt19937* random_;
    std::string out_;
};

std::string heading() {
    return "rillwatt = 1\n\n[site]\nname = \"Plots on paved streets\"\nunits = \"m\"\n\n"
           "[[mark]]\nid = \"M1\"\nat = [0, 0]\n\n[[mark]]\nid = \"M2\"\nat = [30, 0]\n\n";
}

std::string paved_street(int row, int columns) {
    const double from = row * plot_depth + plot_depth - street;
    return fmt::format("[[area]]\nid = \"street {}\"\nkind = \"paving\"\n"
                       "outline = [[0, {:.1f}], [{:.1f}, {:.1f}], [{:.1f}, {:.1f}], [0, {:.1f}]]\n\n",
                       row + 1, from + 0.5, columns * plot_width, from + 0.5, columns * plot_width,
                       from + street - 0.5, from + street - 0.5);
}

} // namespace

std::string placed_garden(const PlacedGardenSpec& spec) {
    std::mt19937 random(spec.seed);
    const int plots = (spec.lights + lights_of_plot - 1) / lights_of_plot;
    const int columns = std::max(1, static_cast<int>(std::ceil(std::sqrt(plots * plot_depth / plot_width))));
    std::string text = heading();
    for (int k = 0; k < plots; ++k) {
        const int row = k / columns;
        if (k % columns == 0) text += paved_street(row, columns);
        const At corner{(k % columns) * plot_width, row * plot_depth};
        text += Plot(spec, k + 1, corner, random)
                    .text(std::min(lights_of_plot, spec.lights - k * lights_of_plot));
    }
    return text;
}

} // namespace rillwatt::test
