#include "rillwatt/search/packing.hpp"
#include "rillwatt/search/packing_bounds.hpp"

#include <catch2/catch.hpp>

#include <numeric>
#include <random>

using namespace rillwatt::search;

namespace {

std::vector<Length> repeated(const std::vector<std::pair<Length, int>>& orders) {
    std::vector<Length> pieces;
    for (const auto& [length, times] : orders)
        pieces.insert(pieces.end(), static_cast<std::size_t>(times), length);
    return pieces;
}

/// Every piece is cut once, and no spool is cut further than it is long.
void check_cuts(const Packing& packing, const std::vector<Length>& pieces) {
    std::vector<int> cut(pieces.size(), 0);
    Length bought = 0;
    for (const PackedSpool& spool : packing.spools) {
        Length used = 0;
        for (const std::size_t piece : spool.pieces) {
            ++cut[piece];
            used += pieces[piece];
        }
        CHECK(used <= spool.length);
        CHECK(used > 0);
        bought += spool.length;
    }
    CHECK(cut == std::vector<int>(pieces.size(), 1));
    CHECK(bought == packing.bought);
    CHECK(packing.bound <= packing.bought);
}

/// Every way to put pieces into spools: each piece joins one of the groups begun, or begins one.
Length least_by_trying(const std::vector<Length>& sold, const std::vector<Length>& pieces, std::size_t next,
                       std::vector<Length>& groups) {
    constexpr Length none = 1'000'000'000;
    if (next == pieces.size()) {
        Length bought = 0;
        for (const Length group : groups) {
            Length least = none;
            for (const Length spool : sold)
                if (spool >= group) least = std::min(least, spool);
            bought += least;
        }
        return bought;
    }
    Length best = none;
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

TEST_CASE("packing meets the optima of published and enumerated instances") {
    const struct {
        const char* what;
        std::vector<Length> sold;
        std::vector<Length> pieces;
        Length bought;
    } rows[] = {
        // Martello, Toth, Discrete Appl. Math. 28 (1990) 59-70; optima by enumeration
        {"L2 meets the optimum", {100}, {60, 60, 60, 45, 45}, 400},
        {"no bound meets the optimum", {100}, {99, 94, 79, 64, 50, 46, 43, 37, 32, 19, 18, 7, 6, 3}, 700},
        // by enumeration: first fit decreasing takes three
        {"two spools are enough", {30}, {15, 12, 11, 7, 6, 5, 4}, 60},
        // spools of several lengths that cost by length, after Kang, Park, EJOR 147 (2003) 365-372; optima by
        // enumeration
        {"two lengths", {100, 250}, {60, 55, 45, 40, 38, 22}, 300},
        {"two lengths, long pieces", {100, 250}, {130, 90, 80, 70, 60, 45}, 500},
        {"three lengths", {100, 250, 500}, {90, 85, 80, 60, 55, 30}, 450},
        // Gilmore, Gomory, Oper. Res. 9 (1961) 849-859: 453 rolls of 100
        {"1,313 pieces", {100}, repeated({{45, 97}, {36, 610}, {31, 395}, {14, 211}}), 45'300},
        // a cutting plan for paper rolls, from memory: 73 rolls of 5600
        {"paper rolls",
         {5600},
         repeated({{1380, 22},
                   {1520, 25},
                   {1560, 12},
                   {1710, 14},
                   {1820, 18},
                   {1880, 18},
                   {1930, 20},
                   {2000, 10},
                   {2050, 12},
                   {2100, 14},
                   {2140, 16},
                   {2150, 18},
                   {2200, 20}}),
         73 * Length{5600}},
    };
    for (const auto& row : rows) {
        CAPTURE(row.what);
        const Packing packing = pack(row.sold, row.pieces);
        CHECK(packing.bought == row.bought);
        CHECK(packing.proven());
        check_cuts(packing, row.pieces);
    }
}

TEST_CASE("bounds of published instances") {
    // Martello, Toth, Discrete Appl. Math. 28 (1990) 59-70
    CHECK(l2_bound(100, {60, 60, 60, 45, 45}) == 4);
    CHECK(l2_bound(100, {99, 94, 79, 64, 50, 46, 43, 37, 32, 19, 18, 7, 6, 3}) == 6);
    // Gilmore, Gomory, Oper. Res. 9 (1961) 849-859: the linear programme takes 452.25 rolls of 100
    const PatternProgram program =
        solve_patterns({100}, repeated({{45, 97}, {36, 610}, {31, 395}, {14, 211}}));
    CHECK(program.bound == 45'225);
    double used = 0;
    for (const Pattern& pattern : program.patterns)
        used += pattern.used;
    CHECK(used == Approx(452.25).epsilon(1e-9));
}

TEST_CASE("packing of random pieces is the best there is, its bounds never above it") {
    std::mt19937 generator(7);
    const std::vector<std::vector<Length>> shops{{100, 250}, {100}, {30, 75, 150}, {50, 120, 130}, {97, 151}};
    for (int round = 0; round < 300; ++round) {
        const std::vector<Length>& sold = shops[generator() % shops.size()];
        std::vector<Length> pieces;
        for (std::size_t i = 0, count = 1 + generator() % 7; i < count; ++i)
            pieces.push_back(3 + static_cast<Length>(generator() % static_cast<unsigned>(sold.back() - 3)));
        std::vector<Length> groups;
        const Length expected = least_by_trying(sold, pieces, 0, groups);
        CAPTURE(round, sold, pieces);
        const Packing packing = pack(sold, pieces);
        CHECK(packing.bought == expected);
        CHECK(packing.proven());
        check_cuts(packing, pieces);
        CHECK(solve_patterns(sold, pieces).bound <= expected);
        if (sold.size() == 1) CHECK(l2_bound(sold[0], pieces) * sold[0] <= expected);
        const Packing hasty = pack(sold, pieces, 1); // without effort: worse, but never wrong
        check_cuts(hasty, pieces);
        CHECK(hasty.bound <= expected);
        CHECK(hasty.bought >= expected);
    }
}

TEST_CASE("totals that whole spools can have") {
    const SpoolTotals totals({100, 250, 500}, 1100);
    const std::pair<Length, Length> rows[] = {{0, 0},     {1, 100},   {100, 100}, {101, 200}, {201, 250},
                                              {250, 250}, {260, 300}, {430, 450}, {480, 500}, {1001, 1050}};
    for (const auto& [needed, bought] : rows)
        CHECK(totals.covering(needed) == bought);
}

TEST_CASE("feet and inches are whole micrometres") {
    CHECK(whole_length(0.3048) == 304'800);
    CHECK(whole_length(250 * 0.3048) == 76'200'000);
    CHECK(metres_of(whole_length(12.345678)) == Approx(12.345678).epsilon(1e-12));
}
