#include <catch2/catch.hpp>

#include "label_placement.hpp"
#include <cmath>
#include <random>

using namespace rillwatt;

namespace {

constexpr double symbol_radius = 9;

/// A symbol with the label that stands round it.
void add_symbol(LabelGround& ground, std::vector<LabelRequest>& requests, SheetPoint at, double width = 60) {
    ground.symbols.push_back(box_around(at, 2 * symbol_radius, 2 * symbol_radius));
    requests.push_back({.width = width,
                        .height = 13,
                        .anchors = {{at, symbol_radius}},
                        .symbol = ground.symbols.size() - 1});
}

/// A label with these places only, each 40 by 13.
LabelRequest with_places(std::initializer_list<SheetPoint> centres) {
    LabelRequest request{.width = 40, .height = 13};
    for (const SheetPoint centre : centres)
        request.places.push_back({box_around(centre, 40, 13), 1, {}});
    return request;
}

/// Symbols strewn over a frame of 1,000 by 800, none upon another, with cables from each to the next.
struct Strewn {
    LabelGround ground{{0, 0, 1000, 800}, {}, {}};
    std::vector<LabelRequest> requests;

    Strewn(int count, unsigned seed) {
        std::mt19937 random(seed);
        const auto up_to = [&](double most) { return most * static_cast<double>(random()) / 4294967296.0; };
        std::optional<SheetPoint> last;
        while (static_cast<int>(requests.size()) < count) {
            const SheetPoint at{20 + up_to(960), 20 + up_to(760)};
            const SheetBox box = box_around(at, 2 * symbol_radius, 2 * symbol_radius);
            if (std::any_of(ground.symbols.begin(), ground.symbols.end(),
                            [&](const SheetBox& other) { return overlap(box, other, 1); }))
                continue;
            add_symbol(ground, requests, at, 30 + up_to(60));
            if (last) ground.lines.emplace_back(*last, at);
            last = at;
        }
    }
};

/// Judged pair by pair, with nothing that finds neighbours quickly.
bool in_the_way(const LabelPlace& a, const LabelPlace& b) {
    if (overlap(a.box, b.box, 2)) return true;
    const bool a_through_b = a.leader_from && meets(*a.leader_from, leader_end(a), b.box);
    const bool b_through_a = b.leader_from && meets(*b.leader_from, leader_end(b), a.box);
    return a_through_b || b_through_a ||
           (a.leader_from && b.leader_from &&
            lines_cross(*a.leader_from, leader_end(a), *b.leader_from, leader_end(b)));
}

bool covers_a_symbol(const LabelPlace& place, const Strewn& strewn, std::size_t own) {
    for (std::size_t i = 0; i < strewn.ground.symbols.size(); ++i) {
        const SheetBox& symbol = strewn.ground.symbols[i];
        if (overlap(place.box, symbol, 1)) return true;
        if (i != own && place.leader_from && meets(*place.leader_from, leader_end(place), symbol))
            return true;
    }
    return false;
}

bool fits(const LabelPlace& place, const SheetBox& frame) {
    return place.box.x >= frame.x && place.box.y >= frame.y && place.box.right() <= frame.right() &&
           place.box.bottom() <= frame.bottom();
}

using Placed = std::vector<std::optional<LabelPlace>>;

bool stands_free(const LabelPlace& place, std::size_t label, const Placed& placed) {
    for (std::size_t other = 0; other < placed.size(); ++other)
        if (other != label && placed[other] && in_the_way(place, *placed[other])) return false;
    return true;
}

std::size_t left_out(const Placed& placed) {
    return static_cast<std::size_t>(std::count(placed.begin(), placed.end(), std::nullopt));
}

} // namespace

TEST_CASE("a lone label stands close at the right of its symbol, without a leader") {
    LabelGround ground{{0, 0, 400, 300}, {}, {}};
    std::vector<LabelRequest> requests;
    add_symbol(ground, requests, {200, 150});
    const Placed placed = place_labels(ground, requests);
    REQUIRE(placed[0]);
    CHECK(placed[0]->box.x > 209);
    CHECK(placed[0]->box.x < 215);
    CHECK(placed[0]->box.centre().y == Approx(150));
    CHECK_FALSE(placed[0]->leader_from);
}

TEST_CASE("a label at the right edge of the frame stands at the left of its symbol") {
    LabelGround ground{{0, 0, 400, 300}, {}, {}};
    std::vector<LabelRequest> requests;
    add_symbol(ground, requests, {380, 150});
    const Placed placed = place_labels(ground, requests);
    REQUIRE(placed[0]);
    CHECK(placed[0]->box.right() < 371);
    CHECK(fits(*placed[0], ground.frame));
}

TEST_CASE("a label leaves a cable free where another side is as close") {
    LabelGround ground{{0, 0, 400, 300}, {}, {{{200, 150}, {400, 150}}}};
    std::vector<LabelRequest> requests;
    add_symbol(ground, requests, {200, 150});
    const Placed placed = place_labels(ground, requests);
    REQUIRE(placed[0]);
    CHECK_FALSE(meets({200, 150}, {400, 150}, placed[0]->box));
    CHECK_FALSE(placed[0]->leader_from);
}

TEST_CASE("a label walled in by symbols stands off with a leader that comes out of its own symbol") {
    //  # # #
    //  #   #     symbols on seven sides, 32 apart; open only to the right above
    //  # # #
    LabelGround ground{{0, 0, 600, 600}, {}, {}};
    std::vector<LabelRequest> requests;
    add_symbol(ground, requests, {300, 300});
    for (const SheetPoint at :
         {SheetPoint{268, 268}, SheetPoint{300, 268}, SheetPoint{268, 300}, SheetPoint{332, 300},
          SheetPoint{268, 332}, SheetPoint{300, 332}, SheetPoint{332, 332}})
        ground.symbols.push_back(box_around(at, 18, 18));
    const Placed placed = place_labels(ground, requests);
    REQUIRE(placed[0]);
    REQUIRE(placed[0]->leader_from);
    CHECK(placed[0]->leader_from->x == 300);
    for (std::size_t i = 1; i < ground.symbols.size(); ++i) {
        CHECK_FALSE(overlap(placed[0]->box, ground.symbols[i]));
        CHECK_FALSE(meets({300, 300}, leader_end(*placed[0]), ground.symbols[i]));
    }
}

TEST_CASE("labels with the fewest places choose first") {
    const LabelGround ground{{0, 0, 400, 300}, {}, {}};
    const std::vector<LabelRequest> requests{with_places({{100, 50}, {100, 150}}), with_places({{100, 50}}),
                                             with_places({{100, 150}, {300, 150}})};
    const Placed placed = place_labels(ground, requests);
    REQUIRE(left_out(placed) == 0);
    CHECK(placed[0]->box.centre().y == Approx(150));
    CHECK(placed[1]->box.centre().y == Approx(50));
    CHECK(placed[2]->box.centre().x == Approx(300));
}

TEST_CASE("a label without a place evicts one that has another") {
    const LabelGround ground{{0, 0, 400, 300}, {}, {}};
    // As many places each, so that the first label chooses first; those of the second one overlap.
    const std::vector<LabelRequest> requests{with_places({{100, 50}, {300, 150}}),
                                             with_places({{100, 50}, {105, 52}})};
    const Placed placed = place_labels(ground, requests);
    REQUIRE(left_out(placed) == 0);
    CHECK(placed[0]->box.centre().x == Approx(300));
}

TEST_CASE("a label evicts no other that would be left out in its stead") {
    const LabelGround ground{{0, 0, 400, 300}, {}, {}};
    const std::vector<LabelRequest> requests{with_places({{80, 50}}), with_places({{125, 50}}),
                                             with_places({{100, 50}})};
    CHECK(left_out(place_labels(ground, requests)) == 1);
}

TEST_CASE("an optional label is evicted, and leaves the better place to others") {
    const LabelGround ground{{0, 0, 400, 300}, {}, {}};
    std::vector<LabelRequest> requests{with_places({{100, 50}}), with_places({{100, 50}, {110, 55}})};
    requests[0].optional = true;
    Placed placed = place_labels(ground, requests);
    CHECK_FALSE(placed[0]);
    CHECK(placed[1]);
    requests[1] = with_places({{100, 50}, {300, 150}});
    requests[1].places[1].cost = 2;
    placed = place_labels(ground, requests);
    REQUIRE(placed[1]);
    CHECK(placed[1]->box.centre().x == Approx(100));
}

TEST_CASE("no label means no place, no place means none is chosen") {
    const LabelGround ground{{0, 0, 400, 300}, {}, {}};
    CHECK(place_labels(ground, {}).empty());
    CHECK_FALSE(place_labels(ground, {with_places({{500, 50}})})[0]);
}

TEST_CASE("labels of strewn symbols keep clear of one another, of symbols and of leaders") {
    const int count = GENERATE(20, 100, 250);
    const unsigned seed = GENERATE(1u, 2u, 3u);
    const Strewn strewn(count, seed);
    const Placed placed = place_labels(strewn.ground, strewn.requests);
    for (std::size_t label = 0; label < placed.size(); ++label) {
        if (!placed[label]) continue;
        CAPTURE(count, seed, label);
        CHECK(fits(*placed[label], strewn.ground.frame));
        CHECK_FALSE(covers_a_symbol(*placed[label], strewn, label));
        CHECK(stands_free(*placed[label], label, placed));
    }
    if (count <= 100) CHECK(left_out(placed) == 0);
}

TEST_CASE("no label is left out that has a place where nothing is in its way") {
    const Strewn strewn(400, 4);
    const Placed placed = place_labels(strewn.ground, strewn.requests);
    REQUIRE(left_out(placed) > 0);
    for (std::size_t label = 0; label < placed.size(); ++label) {
        if (placed[label]) continue;
        for (std::size_t k = 0; k < strewn.requests[label].place_count(); ++k) {
            const LabelPlace place = strewn.requests[label].place(k);
            const bool possible = fits(place, strewn.ground.frame) && !covers_a_symbol(place, strewn, label);
            CAPTURE(label, k);
            CHECK_FALSE((possible && stands_free(place, label, placed)));
        }
    }
}

TEST_CASE("the same labels take the same places every time") {
    const Strewn strewn(250, 5);
    const Placed once = place_labels(strewn.ground, strewn.requests);
    const Placed again = place_labels(strewn.ground, strewn.requests);
    for (std::size_t label = 0; label < once.size(); ++label) {
        REQUIRE(once[label].has_value() == again[label].has_value());
        if (!once[label]) continue;
        CHECK(once[label]->box.x == again[label]->box.x);
        CHECK(once[label]->box.y == again[label]->box.y);
    }
}
