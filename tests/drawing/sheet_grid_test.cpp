#include <catch2/catch.hpp>

#include "sheet_grid.hpp"
#include <random>
#include <set>
#include <utility>

using namespace rillwatt;

namespace {

/// Numbers from `low` to `high`, the same for the same seed everywhere. Every fourth is a whole one, so that
/// boxes and lines touch just the edges of cells.
class Numbers {
  public:
    explicit Numbers(unsigned seed) : random_(seed) {}

    double operator()(double low, double high) {
        const double number = low + (high - low) * static_cast<double>(random_()) / 4294967296.0;
        return random_() % 4 == 0 ? 12 * std::floor(number / 12) : number;
    }

  private:
    std::mt19937 random_;
};

constexpr SheetBox frame{30, 20, 500, 300};

/// Also beyond the frame.
SheetPoint any_point(Numbers& number) {
    const double x = number(-40, 600);
    return {x, number(-40, 400)};
}

SheetBox any_box(Numbers& number) {
    const SheetPoint corner = any_point(number);
    const double width = number(0, 70);
    return {corner.x, corner.y, width, number(0, 40)};
}

using Line = std::pair<SheetPoint, SheetPoint>;

Line any_line(Numbers& number) {
    const SheetPoint a = any_point(number);
    return {a, any_point(number)};
}

} // namespace

TEST_CASE("a grid finds every box and every line that a box meets") {
    Numbers number(1);
    std::vector<SheetBox> boxes;
    std::vector<Line> lines;
    SheetGrid grid(frame, 400);
    for (std::size_t i = 0; i < 200; ++i) {
        boxes.push_back(any_box(number));
        lines.push_back(any_line(number));
        grid.add(i, boxes[i]);
        grid.add(1000 + i, lines[i].first, lines[i].second);
    }
    for (int turn = 0; turn < 400; ++turn) {
        const SheetBox asked = any_box(number);
        std::set<std::size_t> found;
        grid.any_near(asked, [&](std::size_t item) { return found.insert(item), false; });
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            CAPTURE(turn, i);
            if (overlap(asked, boxes[i])) CHECK(found.count(i) == 1);
            if (meets(lines[i].first, lines[i].second, asked)) CHECK(found.count(1000 + i) == 1);
        }
    }
}

TEST_CASE("a grid finds every line that a line crosses, and every box that it meets") {
    Numbers number(2);
    std::vector<SheetBox> boxes;
    std::vector<Line> lines;
    SheetGrid grid(frame, 400);
    for (std::size_t i = 0; i < 200; ++i) {
        boxes.push_back(any_box(number));
        lines.push_back(any_line(number));
        grid.add(i, boxes[i]);
        grid.add(1000 + i, lines[i].first, lines[i].second);
    }
    for (int turn = 0; turn < 400; ++turn) {
        const auto [a, b] = any_line(number);
        std::set<std::size_t> found;
        grid.any_near(a, b, [&](std::size_t item) { return found.insert(item), false; });
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            CAPTURE(turn, i);
            if (meets(a, b, boxes[i])) CHECK(found.count(i) == 1);
            if (lines_cross(a, b, lines[i].first, lines[i].second)) CHECK(found.count(1000 + i) == 1);
        }
    }
}

TEST_CASE("a grid finds nothing that was taken away, and little that lies far off") {
    SheetGrid grid(frame, 400);
    grid.add(1, SheetBox{100, 100, 50, 13});
    grid.add(2, SheetPoint{60, 60}, SheetPoint{400, 250});
    const SheetBox everywhere{0, 0, 600, 400};
    const auto found = [&](const SheetBox& box) {
        std::set<std::size_t> items;
        grid.any_near(box, [&](std::size_t item) { return items.insert(item), false; });
        return items;
    };
    CHECK(found(everywhere) == std::set<std::size_t>{1, 2});
    CHECK(found({300, 40, 50, 13}).empty());
    grid.remove(2, SheetPoint{60, 60}, SheetPoint{400, 250});
    CHECK(found(everywhere) == std::set<std::size_t>{1});
    grid.remove(1, SheetBox{100, 100, 50, 13});
    CHECK(found(everywhere).empty());
}
