// Every command that computes, asked over files in memory: no disk, no console.
#include "rillwatt/engine/answer.hpp"

#include <catch2/catch.hpp>

#include "support/paths.hpp"
#include "support/temporary_folder.hpp"

namespace rillwatt {

namespace {

const std::string fernhollow = std::string(RILLWATT_SOURCE_DIR) + "/examples/fernhollow/";

using Texts = std::map<std::string, std::string>;

/// The example garden and its stock in a folder that there is not.
FilesInMemory garden() {
    return FilesInMemory({{"nowhere/site.toml", test::file_text(fernhollow + "site.toml")},
                          {"nowhere/stock.toml", test::file_text(fernhollow + "stock.toml")}});
}

Request request(const std::string& command, const std::map<std::string, std::string>& more = {}) {
    Request request{.command = command};
    request.arguments.set("SITE", {"nowhere/site.toml"});
    for (const auto& [name, value] : more)
        request.arguments.set(name, value.empty() ? std::vector<std::string>() : std::vector{value});
    return request;
}

Answer ask(const Request& request, FilesInMemory files) { return answer(request, files).value(); }

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("every command answers from texts alone") {
    for (const char* command : {"check", "size", "place", "light", "headroom", "circuits"}) {
        INFO(command);
        const Answer json = ask(request(command, {{"--format", "json"}}), garden());
        CHECK(json.status <= ExitStatus::findings);
        CHECK(json.out.starts_with("{"));
        CHECK(holds(json.out, "\"schema\": \"rillwatt/1\""));
        CHECK(holds(json.out, "\"command\": \"" + std::string(command) + "\""));
        CHECK(json.err.empty());
        CHECK_FALSE(ask(request(command), garden()).out.empty());
    }
    CHECK(holds(ask(request("explain", {{"PART", "T1"}}), garden()).out, "T1"));
    CHECK(ask(request("plan"), garden()).out.starts_with("<svg"));
    CHECK(ask(request("plan", {{"--diagram", ""}}), garden()).out.starts_with("<svg"));
    CHECK(ask(request("report"), garden()).report.size() >= 6);
    FilesInMemory none;
    CHECK_FALSE(answer(request("paint"), none));
    CHECK(answered_commands().size() == 10);
}

TEST_CASE("wrong input is told in words and as JSON, all of it at once, by file and line") {
    const FilesInMemory files(Texts{{"nowhere/site.toml", "rillwatt = 1\n[site]\nname = \"x\"\ncolour = 3\n"
                                                          "[[run]]\nid = \"A\"\nfrom = \"T9\"\n"}});
    for (const char* command : {"check", "size", "place", "light", "headroom", "circuits"}) {
        INFO(command);
        const Answer text = ask(request(command), files);
        CHECK(text.status == ExitStatus::wrong_input);
        CHECK(text.out.empty());
        CHECK(holds(text.err, "nowhere/site.toml:4: error: unknown key `colour`"));
        const Answer json = ask(request(command, {{"--format", "json"}}), files);
        CHECK(json.status == ExitStatus::wrong_input);
        CHECK(json.err == text.err);
        CHECK(holds(json.out, "\"command\": \"" + std::string(command) + "\""));
        CHECK(holds(json.out, "{ \"file\": \"nowhere/site.toml\", \"line\": 4, \"found\": \"unknown key"));
        CHECK(holds(json.out, "\"line\": 7, \"found\": "));
        CHECK(holds(json.out, "\"source_line\": \"colour = 3\""));
    }
}

TEST_CASE("files and options that are wrong are JSON too") {
    const Answer missing = ask(request("check", {{"--format", "json"}}), FilesInMemory());
    CHECK(missing.status == ExitStatus::wrong_input);
    CHECK(holds(missing.out, "{ \"file\": \"nowhere/site.toml\", \"line\": null, \"found\": \"the file"));
    CHECK(holds(missing.out, "No such file or directory"));
    const Answer option = ask(request("size", {{"--format", "json"}, {"--margin", "-1"}}), garden());
    CHECK(option.status == ExitStatus::wrong_input);
    CHECK(holds(option.out, "{ \"file\": null, \"line\": null, \"found\": \"--margin -1: expected"));
    const Answer point = ask(request("light", {{"--format", "json"}, {"--point", "here"}}), garden());
    CHECK(holds(point.out, "\"found\": \"`--point here` is no point\", \"expected\": \"X,Y,Z"));
}

TEST_CASE("a catalog beside the site is read by its name there, and missed by it") {
    const FilesInMemory files(Texts{{"nowhere/site.toml", test::file_text(fernhollow + "site.toml")}});
    const Answer answer = ask(request("check"), files);
    CHECK(answer.status == ExitStatus::wrong_input);
    CHECK(holds(answer.err, "the file `nowhere/stock.toml` cannot be read"));
}

// One small lamp on the only cable there is: at 300 ft it works, at 600 ft it dims on a weak supply.
TEST_CASE("a sizing says first what check will say of its choices") {
    const std::string before = "rillwatt = 1\n[site]\nname = \"x\"\n[stock]\ncables = [\"16/2\"]\n"
                               "[[transformer]]\nid = \"T1\"\nmodel = \"mag-150\"\n[[run]]\nid = \"A\"\n"
                               "from = \"T1\"\ntap = 12\n[[fixture]]\nid = \"far\"\nmodel = \"path-3w\"\n"
                               "from = \"A\"\nlength = ";
    const auto sized_at = [&](const std::string& feet, const std::string& format) {
        return ask(request("size", {{"--format", format}}),
                   FilesInMemory(Texts{{"nowhere/site.toml", before + feet + "\n"}}))
            .out;
    };
    const std::string far = sized_at("\"600 ft\"", "text");
    const std::string head = far.substr(0, far.find("CHOSEN"));
    CHECK(holds(head, "With these choices `rillwatt check` finds 1 warning:\n  warning: far "));
    CHECK(holds(head, "[lamp-undervoltage]"));
    CHECK(holds(sized_at("\"600 ft\"", "json"), "{ \"rule\": \"lamp-undervoltage\", \"part\": \"far\", \""));
    CHECK_FALSE(holds(sized_at("\"300 ft\"", "text"), "`rillwatt check` finds"));
    CHECK(holds(sized_at("\"300 ft\"", "json"), "\"warned\": []"));
}

TEST_CASE("time is what the clock that is handed in says") {
    Request hurried = request("size", {{"--all", ""}, {"--time", "10"}, {"--format", "json"}});
    int asked = 0;
    hurried.seconds = [&asked] { return asked++ * 100.0; }; // over at the second look
    ask(hurried, garden());
    CHECK(asked >= 2);
    hurried.seconds = [] { return 0.0; }; // stands still
    CHECK(holds(ask(hurried, garden()).out, "\"status\": \"optimal\""));
}

TEST_CASE("what is proposed comes as the text of the site file with it in place") {
    const Answer sized = ask(request("size", {{"--all", ""}, {"--write", ""}}), garden());
    REQUIRE(sized.edit);
    CHECK(holds(sized.edit->changes, " written"));
    FilesInMemory after({{"nowhere/site.toml", sized.edit->text},
                         {"nowhere/stock.toml", test::file_text(fernhollow + "stock.toml")}});
    const Answer again = ask(request("size", {{"--all", ""}, {"--write", ""}}), after);
    CHECK_FALSE(again.edit); // nothing left to change
    CHECK_FALSE(ask(request("size", {{"--all", ""}}), garden()).edit);
}

} // namespace rillwatt
