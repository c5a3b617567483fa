// Times sizing on gardens of several sizes, and side by side with a general mixed-integer solver on the
// linearised problem. Prints figures; asserts nothing.

#include "rillwatt/sizing/size.hpp"

#include <fmt/format.h>

#include "sizing/large_garden.hpp"
#include "sizing/milp.hpp"
#include <chrono>
#include <cstdio>

using namespace rillwatt;

namespace {

struct Timed {
    SizeResult result;
    double seconds = 0;
};

Timed size_timed(const test::Garden& garden, const SizeOptions& options) {
    const auto site = std::make_shared<const Site>(garden.site);
    const auto start = std::chrono::steady_clock::now();
    auto sized = size_site(site, garden.catalog, garden.lengths(), options);
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    return {std::move(*sized.value), taken.count()};
}

void print_site(const char* what, const test::Garden& garden, const SizeOptions& options) {
    const Timed timed = size_timed(garden, options);
    const SizeResult& result = timed.result;
    fmt::print("{:<54} {:>10} {:>10.2f} {:>9.4f} % {:>8.3f} s {:>9}\n", what, size_status_name(result.status),
               result.cost ? result.cost->value() : 0, result.gap() * 100, timed.seconds, result.steps);
    std::fflush(stdout);
}

void print_rival(const char* name, const std::optional<test::ProgramAnswer>& answer, double our_seconds) {
    if (answer)
        fmt::print("   {} {:>9.4f} in {:>8.3f} s, {:>5.1f} times as long", name, answer->cost,
                   answer->seconds, answer->seconds / our_seconds);
    else
        fmt::print("   {} has no proof in its time", name);
    std::fflush(stdout);
}

/// The quickest of a few turns: a single one may be disturbed.
template<class Turn>
auto quickest(int turns, Turn turn, const auto& seconds) {
    auto best = turn();
    while (--turns > 0)
        if (auto next = turn(); seconds(next) < seconds(best)) best = std::move(next);
    return best;
}

/// Rivals are whole processes, which begin and read their program in a few milliseconds: of weight at 50
/// lengths, not at 200.
void print_against_program(int lengths, unsigned seed) {
    const test::Garden garden = test::constant_current_garden(lengths, seed);
    SizeOptions options;
    options.per_length = true;
    options.loading = 1e9;
    const auto our_seconds = [](const Timed& timed) { return timed.seconds; };
    const Timed ours = quickest(
        5, [&] { return size_timed(garden, options); }, our_seconds);
    const std::string program = test::per_length_program(garden);
    const auto seconds = [](const auto& answer) { return answer ? answer->seconds : 1e9; };
    fmt::print("{:>4} lengths {:>9.4f} in {:>7.2f} ms", lengths, ours.result.cost->value(),
               1e3 * ours.seconds);
    print_rival("cbc",
                quickest(
                    3, [&] { return test::solve_with_cbc(program, 120); }, seconds),
                ours.seconds);
    print_rival("glpsol",
                quickest(
                    3, [&] { return test::solve_with_glpk(program, 30); }, seconds),
                ours.seconds);
    fmt::print("\n");
}

void print_gardens() {
    fmt::print("{:<54} {:>10} {:>10} {:>11} {:>10} {:>9}\n", "garden", "status", "cost", "gap", "time",
               "steps");
    SizeOptions per_run;
    SizeOptions per_length;
    per_length.per_length = true;
    for (unsigned seed = 1; seed <= 3; ++seed)
        print_site("50 lamps, 3 transformers, per run", test::large_garden(50, 3, seed), per_run);
    for (unsigned seed = 1; seed <= 3; ++seed)
        print_site("50 lamps, 3 transformers, per length", test::large_garden(50, 3, seed), per_length);
    for (unsigned seed = 1; seed <= 3; ++seed)
        print_site("1,000 lamps, 20 transformers, per length", test::large_garden(1000, 20, seed),
                   per_length);
    print_site("1,000 lamps in chains, 10 transformers, per length", test::chained_garden(10, 4, 25),
               per_length);
    print_site("1,000 lamps, 1 transformer, per length", test::large_garden(1000, 1, 1), per_length);
    print_site("10,000 lamps, 200 transformers, per length", test::large_garden(10000, 200, 1), per_length);
    print_site("10,000 lamps, 200 transformers, per run", test::large_garden(10000, 200, 1), per_run);
    print_site("10,000 lamps in chains, 100 transformers, per length", test::chained_garden(100, 4, 25),
               per_length);
    print_site("10,000 lamps, 1 transformer, per length", test::large_garden(10000, 1, 1), per_length);
}

void print_against_programs() {
    for (const int lengths : {50, 100, 200})
        for (unsigned seed = 1; seed <= 3; ++seed)
            print_against_program(lengths, seed);
}

} // namespace

int main() {
    print_gardens();
    print_against_programs();
}
