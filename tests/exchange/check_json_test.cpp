#include "rillwatt/exchange/check_json.hpp"

#include <catch2/catch.hpp>

#include "support/sample_assessment.hpp"

using namespace rillwatt;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

std::string one_case(const std::string& json, const std::string& name) {
    const auto from = json.find("\"name\": \"" + name + "\"");
    REQUIRE(from != std::string::npos);
    const auto next = json.find("\"name\": ", from + 1);
    const auto circuits = json.find("\"circuits\"", from);
    return json.substr(from, std::min(next, circuits) - from);
}

} // namespace

TEST_CASE("the check object starts with its schema and names the site") {
    const std::string json = check_json(samples::small_garden());
    CHECK_THAT(json, StartsWith("{\n  \"schema\": \"rillwatt/1\",\n  \"command\": \"check\",\n"
                                "  \"site\": \"Fernhollow terrace\",\n  \"file\": \"site.toml\",\n"
                                "  \"solved\": true,\n"));
}

TEST_CASE("percent keys carry percent, not ratios") {
    const std::string json = one_case(check_json(samples::small_garden()), "nominal");
    CHECK_THAT(json, Contains("\"loading_percent\": 8.97333"));
    CHECK_THAT(json, Contains("\"drop_volts\": 0.25, \"drop_percent\": 1.92307692"));
}

TEST_CASE("segments carry their route when the length came from the plan, and only then") {
    const std::string json = one_case(check_json(samples::small_garden()), "nominal");
    CHECK_THAT(json, Contains("\"to\": \"falls-2\", \"cable\": \"12/2\", \"length_m\": 5.5,"));
    CHECK_THAT(json, Contains("\"route_m\": [[1, 2], [3.5, 2], [4, 4.25]] }"));
    CHECK(json.find("route_m") == json.rfind("route_m"));
}

TEST_CASE("the strong case tells the lamps' highest volts only") {
    const std::string json = one_case(check_json(samples::small_garden()), "strong");
    CHECK_THAT(json, Contains("{ \"id\": \"falls-1\", \"run\": \"A\", \"volts\": 13.65 }"));
    CHECK_THAT(json, Contains("\"transformers\": []"));
    CHECK_THAT(json, Contains("\"segments\": []"));
}

TEST_CASE("a transformer without operating point is told as unsolved") {
    const std::string json = check_json(samples::unsolved_garden());
    CHECK_THAT(json, Contains("\"solved\": false,\n  \"cases\""));
    CHECK_THAT(one_case(json, "nominal"),
               Contains("{ \"transformer\": \"T1\", \"run\": \"A\", \"fixture\": \"falls-2\", "
                        "\"carried_share\": 0.734 }"));
}

TEST_CASE("a circuit without breaker or known drop says null") {
    const std::string json = check_json(samples::small_garden());
    CHECK_THAT(json,
               Contains("{ \"id\": \"C1\", \"amps\": 2.1, \"continuous_amps\": 2.1, \"design_amps\": 2.625, "
                        "\"breaker\": 20, \"drop_percent\": 0.35000000000000003, \"loads\": [\"P1\"] }"));
    CHECK_THAT(json, Contains("\"breaker\": null, \"drop_percent\": null, \"loads\": [\"T1\"]"));
}

TEST_CASE("a finding of the whole site has no part, file or line") {
    const std::string json = check_json(samples::small_garden());
    CHECK_THAT(
        json, Contains("{ \"rule\": \"shared-gfci\", \"severity\": \"note\", \"part\": null, \"file\": null, "
                       "\"line\": null, "));
    CHECK_THAT(
        json,
        Contains("\"severity\": \"error\", \"part\": \"falls-1\", \"file\": \"site.toml\", \"line\": 70"));
}

TEST_CASE("hostile names stay inside their strings") {
    const std::string json = check_json(samples::hostile_garden());
    CHECK_THAT(json, Contains(R"("=1+1\u001b[31m<b>)"));
    for (char character : json)
        CHECK((character == '\n' || static_cast<unsigned char>(character) >= 0x20));
}
