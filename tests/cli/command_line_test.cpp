#include "rillwatt/cli/command_line.hpp"
#include "rillwatt/cli/completions.hpp"
#include "rillwatt/cli/manual_page.hpp"

#include <catch2/catch.hpp>

#include "support/temporary_folder.hpp"
#include <algorithm>
#include <sstream>

namespace rillwatt {

namespace {

struct Outcome {
    ExitStatus status = ExitStatus::fault;
    std::string out;
    std::string err;
};

Outcome type(const std::vector<std::string>& words) {
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    Console console{.in = in, .out = out, .err = err};
    const ExitStatus status = run_command_line(words, console);
    return {status, out.str(), err.str()};
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("help goes to standard output, with the cautions, and is no error") {
    const Outcome help = type({"--help"});
    CHECK(help.status == ExitStatus::ok);
    CHECK(help.err.empty());
    CHECK(holds(help.out, "licensed electrician"));
    for (const Command& command : all_commands())
        CHECK(holds(help.out, command.name));
}

TEST_CASE("each command is found by its name, and no other name finds one") {
    for (const Command& command : all_commands()) {
        INFO(command.name);
        const std::optional<Command> found = command_named(command.name);
        REQUIRE(found);
        CHECK(found->name == command.name);
    }
    CHECK_FALSE(command_named("chec"));
    CHECK_FALSE(command_named(""));
}

TEST_CASE("each command explains itself with examples") {
    for (const Command& command : all_commands()) {
        const Outcome help = type({command.name, "--help"});
        INFO(command.name);
        CHECK(help.status == ExitStatus::ok);
        CHECK(holds(help.out, command.summary.substr(0, 30)));
        CHECK_FALSE(command.examples.empty());
        for (const CommandExample& example : command.examples)
            CHECK(holds(help.out, example.line));
    }
}

TEST_CASE("what parts say of each other is told on the line of the value, with all other errors") {
    const test::TemporaryFolder folder;
    test::put_file(folder.file("stock.toml"), "rillwatt_catalog = 1\n"
                                              "[cable.odd]\n"
                                              "table = \"nec-8-stranded\"\n"
                                              "size = \"13 AWG\"\n"
                                              "ampacity = 20\n");
    const std::string site = folder.file("site.toml");
    test::put_file(site, "rillwatt = 1\n"
                         "site = { name = \"x\" }\n"
                         "[[transformer]]\n"
                         "id = \"T1\"\n"
                         "model = \"mag-300\"\n"
                         "[[run]]\n"
                         "id = \"A\"\n"
                         "from = \"T1\"\n"
                         "tap = 13.5\n" // 9
                         "[[splice]]\n"
                         "id = \"S\"\n"
                         "length = 3\n"
                         "from = \"S\"\n"); // 13
    const Outcome alone = type({"check", site});
    CHECK(alone.status == ExitStatus::wrong_input);
    CHECK(holds(alone.err,
                "site.toml:9: error: `tap` of run \"A\" is 13.5, and transformer \"T1\" (mag-300) has no "
                "such tap; expected one of its taps: 12, 13, 14, 15\n    tap = 13.5\n"));
    CHECK(holds(alone.err, "site.toml:13: error: \"S\" (line 10) feeds itself"));
    CHECK(holds(alone.err, "\n    from = \"S\"\n"));
    const Outcome together = type({"check", site, "--catalog", folder.file("stock.toml")});
    CHECK(holds(together.err, "site.toml:9: error: `tap` of run"));
    CHECK(holds(together.err, "site.toml:13: error: \"S\" (line 10) feeds itself"));
    CHECK(holds(together.err,
                "stock.toml:4: error: `size` of cable `odd` is `13 AWG`; expected a size of the table "
                "`nec-8-stranded`"));
    CHECK(holds(together.err, "\n    size = \"13 AWG\"\n"));
}

TEST_CASE("a misspelled command is answered with the nearest one") {
    const Outcome wrong = type({"chek", "garden.toml"});
    CHECK(wrong.status == ExitStatus::wrong_input);
    CHECK(wrong.out.empty());
    CHECK(holds(wrong.err, "no command `chek`; nearest is `check`"));
}

TEST_CASE("a wrong command line is said on standard error with status 2") {
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {}, {"chekc"}, {"rules", "--colour"}, {"rules", "--format", "yaml"}, {"rules", "extra"}}) {
        const Outcome wrong = type(words);
        CHECK(wrong.status == ExitStatus::wrong_input);
        CHECK(wrong.out.empty());
        CHECK(holds(wrong.err, "rillwatt"));
    }
}

TEST_CASE("two arguments go to their own places") {
    const Outcome outcome = type({"explain", "/nowhere/site.toml", "lamp"});
    CHECK(outcome.status == ExitStatus::wrong_input);
    CHECK(holds(outcome.err, "/nowhere/site.toml"));
}

TEST_CASE("mistakes of the file and names that no catalog has are told in one go, by line") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("site.toml");
    test::put_file(file,
                   "rillwatt = 1\n[site]\nname = \"x\"\n[[transformer]]\nid = \"T\"\nmodel = \"mag-30\"\n"
                   "[[run]]\nid = \"A\"\nfrom = \"T\"\ncolour = 1\ncable = \"12/3\"\n");
    const Outcome wrong = type({"check", file});
    CHECK(wrong.status == ExitStatus::wrong_input);
    const std::size_t model = wrong.err.find(":6: error: `model` names");
    const std::size_t key = wrong.err.find(":10: error: unknown key `colour`");
    const std::size_t cable = wrong.err.find(":11: error: `cable` names");
    INFO(wrong.err);
    CHECK(model < key);
    CHECK(key < cable);
    CHECK(cable != std::string::npos);
}

TEST_CASE("parts that feed each other are told beside other mistakes") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("site.toml");
    test::put_file(file, "rillwatt = 1\n[site]\nname = \"x\"\ncolour = 1\n"
                         "[[splice]]\nid = \"a\"\nfrom = \"b\"\n[[splice]]\nid = \"b\"\nfrom = \"a\"\n");
    const Outcome wrong = type({"check", file});
    CHECK(wrong.status == ExitStatus::wrong_input);
    CHECK(holds(wrong.err, "unknown key `colour`"));
    CHECK(holds(wrong.err, "feed each other"));
}

TEST_CASE("a catalog that is not there is told with the line that names it") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("site.toml");
    test::put_file(file, "rillwatt = 1\n[site]\nname = \"x\"\ncatalogs = [\"nothere.toml\"]\n");
    const Outcome wrong = type({"check", file});
    CHECK(wrong.status == ExitStatus::wrong_input);
    CHECK_THAT(wrong.err, Catch::Matchers::Contains("site.toml:4: error: the file") &&
                              Catch::Matchers::Contains("    catalogs = [\"nothere.toml\"]\n"));
}

TEST_CASE("a drawing is not written over the site it is of") {
    const test::TemporaryFolder folder;
    const std::string file = folder.file("site.toml");
    const std::string text = "rillwatt = 1\n[site]\nname = \"x\"\n";
    test::put_file(file, text);
    const Outcome refused = type({"plan", file, "--output", file, "--force"});
    CHECK(refused.status == ExitStatus::wrong_input);
    CHECK(holds(refused.err, "is the site file itself"));
    CHECK(test::file_text(file) == text);
}

TEST_CASE("the version is the project's") {
    CHECK(type({"--version"}).out == "rillwatt " + program_version() + "\n");
}

TEST_CASE("mistakes of a site and of its catalog are told in one go, and only those") {
    const test::TemporaryFolder folder;
    const std::string catalog =
        "rillwatt_catalog = 1\n[fixture.own]\nkind = \"path\"\nwindow = [9, 15]\nwatts = \"two\"\n";
    test::put_file(folder.file("stock.toml"), catalog);
    const std::string site = "rillwatt = 1\n[site]\nname = \"x\"\ncatalogs = [\"stock.toml\"]\n"
                             "[[transformer]]\nid = \"T\"\nmodel = \"mag-151\"\n"
                             "[[fixture]]\nid = \"f\"\nmodel = \"own\"\n";
    test::put_file(folder.file("site.toml"), site);
    const Outcome both = type({"check", folder.file("site.toml")});
    CHECK(both.status == ExitStatus::wrong_input);
    CHECK_THAT(both.err, Catch::Matchers::Contains("site.toml:7: error: `model` names `mag-151`") &&
                             Catch::Matchers::Contains("stock.toml:5: error: `watts` is \"two\"") &&
                             !Catch::Matchers::Contains("`own`"));
    // What a catalog holds that is no TOML is not known: then the site is not accused of it.
    test::put_file(folder.file("stock.toml"), catalog + "broken\n");
    const Outcome broken = type({"check", folder.file("site.toml")});
    CHECK_THAT(broken.err, Catch::Matchers::Contains("stock.toml:6: error: not TOML") &&
                               !Catch::Matchers::Contains("names"));
}

TEST_CASE("a user's catalog builds on built-in entries, however their names are quoted") {
    const test::TemporaryFolder folder;
    test::put_file(folder.file("site.toml"),
                   "rillwatt = 1\n[site]\nname = \"x\"\ncatalogs = [\"stock.toml\"]\n"
                   "[[transformer]]\nid = \"T\"\nmodel = \"mag-150\"\n"
                   "[[run]]\nid = \"A\"\nfrom = \"T\"\ntap = 12\ncable = \"own\"\n"
                   "[[fixture]]\nid = \"f\"\nmodel = \"own\"\nfrom = \"A\"\nlength = 20\n");
    const std::string catalog =
        "rillwatt_catalog = 1\n[cable.own]\ntable = 'nec-8-stranded'\nsize = '12 AWG'\n"
        "ampacity = 20\n[fixture.own]\nkind = 'path'\nwindow = [9, 15]\nwatts = 2\n"
        "lead_cable = '18/2'\nlead = '3 ft'\n";
    std::string double_quoted = catalog;
    std::replace(double_quoted.begin(), double_quoted.end(), '\'', '"');
    std::vector<Outcome> outcomes;
    for (const std::string& text : {catalog, double_quoted}) {
        test::put_file(folder.file("stock.toml"), text);
        outcomes.push_back(type({"check", folder.file("site.toml")}));
        INFO(outcomes.back().err);
        CHECK(outcomes.back().err.empty());
        CHECK(holds(outcomes.back().out, "own"));
    }
    CHECK(outcomes[0].out == outcomes[1].out);
}

TEST_CASE("the shell to complete in is an argument or an option, and another shell is refused") {
    const Outcome argument = type({"completions", "fish"});
    CHECK(argument.status == ExitStatus::ok);
    CHECK(argument.out == fish_completions(all_commands()));
    CHECK(type({"completions", "--shell", "fish"}).out == argument.out);
    CHECK(type({"completions"}).out == bash_completions(all_commands()));
    CHECK(type({"completions", "tcsh"}).status == ExitStatus::wrong_input);
    CHECK_THAT(bash_completions(all_commands()),
               Catch::Matchers::Contains("completions) COMPREPLY=($(compgen -W 'bash zsh fish'"));
}

TEST_CASE("manual page and completions name every command and every option") {
    const std::string manual = manual_page(all_commands(), "1.0");
    const std::string bash = bash_completions(all_commands());
    const std::string zsh = zsh_completions(all_commands());
    const std::string fish = fish_completions(all_commands());
    for (const Command& command : all_commands()) {
        for (const std::string* text : {&manual, &bash, &zsh, &fish})
            CHECK(holds(*text, command.name));
        for (const OptionSpec& option : command.options) {
            CHECK(holds(bash, option.name));
            CHECK(holds(zsh, option.name));
            CHECK(holds(fish, "-l " + option.name.substr(2)));
        }
    }
}

} // namespace rillwatt
