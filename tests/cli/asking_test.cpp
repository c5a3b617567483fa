// The program is a way to ask the engine: what it prints is what the engine answers over the same texts.
#include "rillwatt/cli/command_line.hpp"
#include "rillwatt/cli/console.hpp"
#include "rillwatt/engine/answer.hpp"

#include <catch2/catch.hpp>

#include "support/paths.hpp"
#include "support/temporary_folder.hpp"
#include <sstream>

namespace rillwatt {

namespace {

const std::string folder = std::string(RILLWATT_SOURCE_DIR) + "/examples/fernhollow/";

void compare(const std::string& command, const std::map<std::string, std::string>& more) {
    Request request{.command = command};
    std::vector<std::string> words = {command, folder + "site.toml"};
    request.arguments.set("SITE", {words.back()});
    for (const auto& [name, value] : more) {
        request.arguments.set(name, {value});
        if (name.starts_with("--")) words.push_back(name);
        if (!value.empty()) words.push_back(value);
    }
    FilesInMemory files({{folder + "site.toml", test::file_text(folder + "site.toml")},
                         {folder + "stock.toml", test::file_text(folder + "stock.toml")}});
    const Answer answered = answer(request, files).value();
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    Console console{.in = in, .out = out, .err = err};
    INFO(command);
    CHECK(run_command_line(words, console) == answered.status);
    CHECK(out.str() == answered.out);
    CHECK(err.str() == answered.err);
}

} // namespace

TEST_CASE("the program prints what the engine answers over the same texts in memory") {
    for (const char* format : {"text", "json"})
        for (const char* command : {"check", "size", "place", "light", "headroom", "circuits"})
            compare(command, {{"--format", format}});
    compare("explain", {{"PART", "T1"}});
    compare("plan", {});
    compare("plan", {{"--light", ""}});
    compare("size", {{"--margin", "1000"}, {"--format", "json"}});
}

} // namespace rillwatt
