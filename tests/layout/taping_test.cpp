#include "rillwatt/layout/taping.hpp"

#include <catch2/catch.hpp>

#include "sketch.hpp"
#include <algorithm>
#include <cmath>

TEST_CASE(
    "taped distances of every part, with the side of someone walking from the first mark to the second") {
    // House corner at the origin, post at (6,0). The light at (3,4) is 5 from both, on the left;
    // the transformer at (0,-8) is 8 and 10 away, on the right.
    rillwatt::Site plan = sketch::site({0, -8}, {3, 4}, {});
    rillwatt::Mark corner;
    corner.id = "house-corner";
    rillwatt::Mark post;
    post.id = "post";
    post.at = {6, 0};
    const auto taped = taped_distances(plan, corner, post);
    REQUIRE(taped.size() == 2);
    CHECK(taped[0].id == "T1");
    CHECK(taped[0].from_first.value() == Approx(8));
    CHECK(taped[0].from_second.value() == Approx(10));
    CHECK_FALSE(taped[0].left);
    CHECK(taped[1].id == "light");
    CHECK(taped[1].from_first.value() == Approx(5));
    CHECK(taped[1].from_second.value() == Approx(5));
    CHECK(taped[1].left);
    // From the other mark it is on the other hand.
    CHECK_FALSE(taped_distances(plan, post, corner)[1].left);
}
