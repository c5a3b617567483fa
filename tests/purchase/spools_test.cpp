#include "rillwatt/purchase/spools.hpp"

#include <catch2/catch.hpp>

#include <numeric>
#include <random>

using namespace rillwatt;

namespace {

std::vector<Metres> in_feet(const std::vector<double>& lengths) {
    std::vector<Metres> metres;
    for (const double length : lengths)
        metres.push_back(feet(length));
    return metres;
}

/// Every way to put pieces into spools: each piece joins one of the groups begun, or begins one.
double least_by_trying(const std::vector<double>& sold, const std::vector<double>& pieces, std::size_t next,
                       std::vector<double>& groups) {
    if (next == pieces.size()) {
        double bought = 0;
        for (const double group : groups) {
            double least = 1e18;
            for (const double spool : sold)
                if (spool >= group - 1e-9) least = std::min(least, spool);
            bought += least;
        }
        return bought;
    }
    double best = 1e18;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        groups[g] += pieces[next];
        best = std::min(best, least_by_trying(sold, pieces, next + 1, groups));
        groups[g] -= pieces[next];
    }
    groups.push_back(pieces[next]);
    best = std::min(best, least_by_trying(sold, pieces, next + 1, groups));
    groups.pop_back();
    return best;
}

} // namespace

TEST_CASE("whole spools that cover a length") {
    const struct {
        double needed;
        double bought;
    } rows[] = {{0, 0},     {1, 100},   {100, 100}, {100.1, 200}, {201, 250},
                {250, 250}, {260, 300}, {430, 450}, {480, 500},   {1001, 1050}};
    for (const auto& row : rows) {
        CAPTURE(row.needed);
        const SpoolPurchase purchase = cheapest_spools(in_feet({100, 250, 500}), feet(row.needed));
        CHECK(purchase.total.value() == Approx(feet(row.bought).value()).margin(1e-6));
        CHECK(purchased_length(in_feet({100, 250, 500}), feet(row.needed)).value() ==
              Approx(feet(row.bought).value()).margin(1e-6));
    }
    CHECK(purchased_length({}, Metres(12.5)) == Metres(12.5));
}

TEST_CASE("pieces are packed into the least length of spools") {
    std::mt19937 generator(7);
    const std::vector<double> sold{100, 250};
    for (int round = 0; round < 60; ++round) {
        std::vector<double> pieces;
        for (unsigned i = 0; i < 2 + generator() % 6; ++i)
            pieces.push_back(5 + static_cast<double>(generator() % 120));
        const CutList list = pack_cut_list(in_feet(sold), in_feet(pieces));
        std::vector<double> groups;
        const double expected = least_by_trying(sold, pieces, 0, groups);
        CAPTURE(round, pieces);
        CHECK(list.proven);
        CHECK(list.bought.value() == Approx(feet(expected).value()).margin(1e-6));
        std::vector<int> seen(pieces.size(), 0);
        for (const CutSpool& spool : list.spools) {
            double used = 0;
            for (const std::size_t piece : spool.pieces) {
                ++seen[piece];
                used += pieces[piece];
            }
            CHECK(spool.spool.value() >= feet(used).value() - 1e-6);
            CHECK(spool.rest.value() == Approx(spool.spool.value() - feet(used).value()).margin(1e-6));
        }
        CHECK(seen == std::vector<int>(pieces.size(), 1));
    }
}

TEST_CASE("three pieces that do not fit two spools take three, though the total would") {
    const CutList list = pack_cut_list(in_feet({100}), in_feet({60, 60, 60}));
    CHECK(list.spools.size() == 3);
    CHECK(list.proven);
}

TEST_CASE("a piece longer than any spool is listed, the others are packed") {
    const CutList list = pack_cut_list(in_feet({100}), in_feet({60, 120}));
    CHECK(list.too_long == std::vector<std::size_t>{1});
    CHECK(list.bought.value() == Approx(feet(100).value()));
}
