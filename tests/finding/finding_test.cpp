#include "rillwatt/finding/command_word.hpp"
#include "rillwatt/finding/finding.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

Finding finding(const char* rule, Severity severity) {
    Finding result;
    result.rule = rule;
    result.severity = severity;
    return result;
}

} // namespace

TEST_CASE("findings come worst first and otherwise in the order given") {
    std::vector<Finding> findings{finding("a", Severity::note), finding("b", Severity::error),
                                  finding("c", Severity::warning), finding("d", Severity::error)};
    CHECK(any_error(findings));
    sort_worst_first(findings);
    std::string order;
    for (const Finding& f : findings)
        order += f.rule;
    CHECK(order == "bdca");
    CHECK_FALSE(any_error({finding("a", Severity::note), finding("c", Severity::warning)}));
}

TEST_CASE("file names are equal when they read the same, shared or not") {
    const FileName name = "site.toml";
    const FileName shared = name;
    CHECK(name == shared);
    CHECK(name == FileName("site.toml"));
    CHECK_FALSE(name == FileName("other.toml"));
    CHECK(FileName() == FileName(""));
    CHECK(FileName().empty());
    CHECK(shared.view().data() == name.view().data());
}

TEST_CASE("a file's name stands in a command as a shell takes it") {
    CHECK(command_word("gardens/site-2.toml") == "gardens/site-2.toml");
    CHECK(command_word("my garden.toml") == "'my garden.toml'");
    CHECK(command_word("$(reboot).toml") == "'$(reboot).toml'");
    CHECK(command_word("it's.toml") == "'it'\\''s.toml'");
    CHECK(command_word("a\x1b[2J") == "SITE");
    CHECK(command_word("") == "SITE");
    CHECK(command_word("--all.toml") == "./--all.toml");
}
