#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>

using namespace rillwatt;

// The same garden written down in different ways must solve to the same volts.

namespace {

const Catalog& built_in() {
    static const Catalog catalog = [] {
        Catalog read = *read_built_in_catalog().value;
        check_catalog(read);
        return read;
    }();
    return catalog;
}

/// Volts of each lamp by id in the nominal case of a site file.
std::map<std::string, double> lamp_volts(const std::string& text) {
    const LoadResult<Site> site = read_site(text, "site.toml");
    REQUIRE(site);
    const auto circuits = build_circuits(*site.value, built_in(), measure_lengths(*site.value));
    REQUIRE(circuits);
    REQUIRE(circuits.value->open.empty());
    const SiteSolution solution = solve_site(*site.value, *circuits.value);
    REQUIRE(solution.nominal().solved);
    std::map<std::string, double> volts;
    for (const LampResult& lamp : solution.nominal().lamps)
        volts[site.value->fixtures[lamp.fixture].id] = lamp.volts.value();
    return volts;
}

void check_same(const std::map<std::string, double>& a, const std::map<std::string, double>& b) {
    REQUIRE(a.size() == 5);
    REQUIRE(a.size() == b.size());
    for (const auto& [id, volts] : a) {
        CAPTURE(id, volts);
        CHECK(std::abs(volts - b.at(id)) < 1e-9);
    }
}

//  T1 --A 13 V-- hub --+-- fall-1 -- fall-2
//                      +-- path-1
//  T1 --B 12 V-- step-1 -- path-2
const std::string in_feet = R"(
rillwatt = 1
[site]
name = "written in feet"
units = "ft"
conductor_temperature = "68 F"
[[transformer]]
id = "T1"
model = "mag-300"
[[run]]
id = "A"
from = "T1"
tap = 13
cable = "12/2"
[[run]]
id = "B"
from = "T1"
tap = 12
cable = "14/2"
[[splice]]
id = "hub"
from = "A"
length = 40
[[fixture]]
id = "fall-1"
model = "sub-9w-24"
from = "hub"
length = 12.5
[[fixture]]
id = "fall-2"
model = "sub-35w-halogen"
from = "fall-1"
length = "7 ft 6 in"
[[fixture]]
id = "path-1"
model = "path-3w"
from = "hub"
length = "18 in"
[[fixture]]
id = "step-1"
model = "path-18w-filament"
from = "B"
length = 25
[[fixture]]
id = "path-2"
model = "path-2w"
from = "step-1"
length = "11'"
)";

} // namespace

TEST_CASE("metric and imperial files of one garden agree") {
    const std::string in_metres = R"(
rillwatt = 1
[site]
name = "written in metres"
units = "m"
conductor_temperature = "20 C"
[[transformer]]
id = "T1"
model = "mag-300"
[[run]]
id = "A"
from = "T1"
tap = 13
cable = "12/2"
[[run]]
id = "B"
from = "T1"
tap = 12
cable = "14/2"
[[splice]]
id = "hub"
from = "A"
length = 12.192
[[fixture]]
id = "fall-1"
model = "sub-9w-24"
from = "hub"
length = "3810 mm"
[[fixture]]
id = "fall-2"
model = "sub-35w-halogen"
from = "fall-1"
length = "228.6 cm"
[[fixture]]
id = "path-1"
model = "path-3w"
from = "hub"
length = "0.4572 m"
[[fixture]]
id = "step-1"
model = "path-18w-filament"
from = "B"
length = 7.62
[[fixture]]
id = "path-2"
model = "path-2w"
from = "step-1"
length = "335.28 cm"
)";
    check_same(lamp_volts(in_feet), lamp_volts(in_metres));
}

TEST_CASE("a file written from the last lamp back to the transformer gives the same volts") {
    std::vector<std::string> tables;
    std::string head;
    for (std::size_t at = 0; at < in_feet.size();) {
        const auto next = in_feet.find("\n[[", at + 1);
        const auto piece = in_feet.substr(at, next == std::string::npos ? next : next - at);
        (at == 0 ? head : tables.emplace_back()) = piece;
        at = next == std::string::npos ? in_feet.size() : next;
    }
    REQUIRE(tables.size() == 9);
    std::string backwards = head;
    for (auto table = tables.rbegin(); table != tables.rend(); ++table)
        backwards += *table;
    check_same(lamp_volts(in_feet), lamp_volts(backwards));
}
