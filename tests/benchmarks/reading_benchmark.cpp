// How long it takes to read: the built-in catalogs, which every start of the program pays for, and a site of
// 10,000 lights, read the short way and, because of one escape in a string, by the TOML library.

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/site/read_site.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdio>

using namespace rillwatt;

namespace {

std::string large_site(int runs, int lights_per_run, const char* name) {
    std::string text = fmt::format(
        "rillwatt = 1\n[site]\nname = \"{}\"\n[[transformer]]\nid = \"T1\"\nmodel = \"mag-300\"\n", name);
    for (int run = 0; run < runs; ++run) {
        text += fmt::format("\n[[run]]\nid = \"A{0}\"\nfrom = \"T1\"\ntap = 13\ncable = \"12/2\"\n", run);
        std::string feed = fmt::format("A{}", run);
        for (int light = 0; light < lights_per_run; ++light) {
            const std::string id = fmt::format("light {}-{}", run, light);
            text += fmt::format("\n[[fixture]]\nid = \"{}\"\nmodel = \"path-3w\"\nfrom = \"{}\"\nlength = "
                                "\"12 ft 6 in\"\nat = [{}.5, {}]\n",
                                id, feed, run, 3 * light);
            feed = id;
        }
    }
    return text;
}

template<class Work>
double best_milliseconds(Work work) {
    double best = 1e9;
    for (int round = 0; round < 7; ++round) {
        const auto begin = std::chrono::steady_clock::now();
        work();
        const std::chrono::duration<double, std::milli> taken = std::chrono::steady_clock::now() - begin;
        best = std::min(best, taken.count());
    }
    return best;
}

void print_site(const char* what, const std::string& text) {
    std::size_t lights = 0;
    const double milliseconds = best_milliseconds([&] {
        const LoadResult<Site> site = read_site(text, "site.toml");
        lights = site ? site.value->fixtures.size() : 0;
    });
    const double megabytes = static_cast<double>(text.size()) / 1e6;
    fmt::print("{:<44} {:>8.2f} ms  {:>6} lights  {:>5.2f} MB\n", what, milliseconds, lights, megabytes);
}

} // namespace

int main() {
    fmt::print("{:<44} {:>8.2f} ms\n", "built-in catalogs, read and checked", best_milliseconds([] {
                   LoadResult<Catalog> catalog = read_built_in_catalog();
                   if (catalog) check_catalog(*catalog.value);
               }));
    print_site("site, read the short way", large_site(400, 25, "large"));
    print_site("site, read by the TOML library", large_site(400, 25, "l\\u0061rge"));
}
