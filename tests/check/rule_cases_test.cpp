// Each rule has a folder tests/check/<id> with a site that keeps it (good.toml), one that breaks it
// (bad.toml), and the finding lines the bad one must give (expected.txt: "severity part: message"). What
// begins with "#" there says where these figures come from.

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/check/assessment.hpp"
#include "rillwatt/light/compute_light.hpp"
#include "rillwatt/site/read_site.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "support/paths.hpp"
#include "support/temporary_folder.hpp"
#include <filesystem>
#include <sstream>

namespace rillwatt {

namespace {

std::string folder_of(const std::string& rule) {
    return std::string(RILLWATT_SOURCE_DIR) + "/tests/check/" + rule;
}

/// A catalog beside the sites of a rule, for what no built-in entry has.
void add_own_catalog(const std::string& path, Catalog& catalog) {
    if (!std::filesystem::exists(path)) return;
    LoadResult<Catalog> read = read_catalog(test::file_text(path), path, catalog);
    for (const InputError& error : read.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(read);
    catalog = std::move(*read.value);
}

/// The photometric files the fixtures of a site are described by.
PhotometricFiles photometry_of(const Site& site, const Catalog& catalog) {
    PhotometricFiles files;
    for (const std::string& path : photometric_paths(site, catalog))
        files[path] = test::file_text(path);
    return files;
}

Assessment assess_file(const std::string& path) {
    LoadResult<Site> site = read_site(test::file_text(path), "site.toml");
    for (const InputError& error : site.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(site);
    LoadResult<Catalog> built_in = read_built_in_catalog();
    REQUIRE(built_in);
    REQUIRE(check_catalog(*built_in.value).empty());
    add_own_catalog((std::filesystem::path(path).parent_path() / "catalog.toml").string(), *built_in.value);
    auto catalog = std::make_shared<const Catalog>(std::move(*built_in.value));
    for (const InputError& error : check_against_catalog(*site.value, *catalog))
        FAIL_CHECK(input_error_text(error));
    const PhotometricFiles files = photometry_of(*site.value, *catalog);
    LoadResult<Assessment> result =
        assess(std::make_shared<const Site>(std::move(*site.value)), catalog, &files);
    for (const InputError& error : result.errors)
        UNSCOPED_INFO(input_error_text(error));
    REQUIRE(result);
    return std::move(*result.value);
}

std::string lines_of(const std::string& rule, const Assessment& assessment) {
    std::string lines;
    for (const Finding& finding : assessment.findings)
        if (finding.rule == rule)
            lines +=
                fmt::format("{} {}: {}\n", severity_name(finding.severity), finding.part, finding.message);
    return lines;
}

struct Expected {
    std::string lines;
    std::string origin;
};

Expected expected_of(const std::string& rule) {
    Expected expected;
    std::istringstream text(test::file_text(folder_of(rule) + "/expected.txt"));
    for (std::string line; std::getline(text, line);)
        (line.starts_with('#') ? expected.origin : expected.lines) += line + "\n";
    return expected;
}

} // namespace

TEST_CASE("each rule keeps quiet on its good site and speaks on its bad one") {
    for (const Rule& rule : all_rules()) {
        DYNAMIC_SECTION(rule.id) {
            const std::string id(rule.id);
            REQUIRE(std::filesystem::exists(folder_of(id)));
            CHECK(lines_of(id, assess_file(folder_of(id) + "/good.toml")).empty());
            const Expected expected = expected_of(id);
            CHECK(lines_of(id, assess_file(folder_of(id) + "/bad.toml")) == expected.lines);
            CHECK(expected.origin.size() > 20);
        }
    }
}

TEST_CASE("each rule says what it is, why, and where its limit comes from") {
    for (const Rule& rule : all_rules()) {
        INFO(rule.id);
        CHECK_FALSE(rule.summary.empty());
        CHECK_FALSE(rule.severity.empty());
        CHECK(rule.explanation.size() > 40);
        CHECK_FALSE(rule.source.text().empty());
    }
}

TEST_CASE("each finding carries its source and the place its part is written") {
    for (const Rule& rule : all_rules()) {
        const Assessment assessment = assess_file(folder_of(std::string(rule.id)) + "/bad.toml");
        for (const Finding& finding : assessment.findings) {
            INFO(rule.id << " / " << finding.rule << ": " << finding.message);
            CHECK_FALSE(finding.source.empty());
            CHECK((finding.part.empty() || finding.location.line > 0));
        }
    }
}

} // namespace rillwatt
