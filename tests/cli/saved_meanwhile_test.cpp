// Somebody saves the site file while a command is at work on it. The command reads a catalog from a named
// pipe after the site file: what is saved before the pipe is written to is saved in the meantime, on any
// machine.

#include "rillwatt/cli/command_line.hpp"

#include <catch2/catch.hpp>

#include "support/temporary_folder.hpp"
#include <functional>
#include <sstream>
#include <sys/stat.h>
#include <thread>

namespace rillwatt {

namespace {

using test::file_text;
using test::put_file;

const std::string site_text = "rillwatt = 1\n"
                              "[site]\n"
                              "name = \"Test terrace\"\n"
                              "[[transformer]]\n"
                              "id = \"T1\"\n"
                              "[[run]]\n"
                              "id = \"A\"\n"
                              "from = \"T1\"\n"
                              "[[fixture]]\n"
                              "id = \"path-1\"\n"
                              "model = \"path-2w\"\n"
                              "from = \"A\"\n"
                              "at = [5, 5]\n"
                              "length = 30\n"
                              "[[walk]]\n"
                              "id = \"steps\"\n"
                              "line = [[0, 0], [10, 0]]\n"
                              "width = 4\n"
                              "target = \"P5\"\n";

std::string with(std::string text, const std::string& old, const std::string& now) {
    const std::size_t at = text.find(old);
    REQUIRE(at != std::string::npos);
    return text.replace(at, old.size(), now);
}

struct Outcome {
    ExitStatus status;
    std::string err;
    std::string file; ///< what it says afterwards; empty where it is gone
};

/// A command on the site above, whose file `save` touches after it was read.
Outcome type(const std::string& command, const std::function<void(const std::string& site)>& save) {
    const test::TemporaryFolder folder;
    const std::string site = folder.file("site.toml");
    const std::string pipe = folder.file("more.toml");
    put_file(site, site_text);
    REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
    std::thread other([&] {
        std::ofstream catalog(pipe); // waits until the pipe is read
        save(site);
        catalog << "rillwatt_catalog = 1\n";
    });
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    Console console{.in = in, .out = out, .err = err};
    const ExitStatus status = run_command_line({command, site, "--write", "--catalog", pipe}, console);
    other.join();
    CHECK(folder.entries() <= 2); // nothing is left beside the two
    return {status, err.str(), std::filesystem::exists(site) ? file_text(site) : ""};
}

Outcome type(const std::string& command, const std::string& saved) {
    return type(command, [&](const std::string& site) { put_file(site, saved); });
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("what has no bearing on the choice is kept when it is saved while size searches") {
    const std::string saved = with(site_text, "[[run]]\n", "# mind the roots\n[[run]]\n") +
                              "[[viewpoint]]\nid = \"bench\"\nat = [3, 9]\n";
    const Outcome sized = type("size", saved);
    CHECK(sized.status == ExitStatus::ok);
    CHECK(holds(sized.file, "# mind the roots\n[[run]]\n"));
    CHECK(holds(sized.file, "id = \"bench\""));
    CHECK(holds(sized.file, "\ncable = "));
    CHECK(holds(sized.file, "id = \"T1\"\nmodel = "));
}

TEST_CASE("what the choice was made from stays as it was saved, and nothing is written") {
    const std::string saved = with(site_text, "length = 30", "length = 300");
    const Outcome sized = type("size", saved);
    CHECK(sized.status == ExitStatus::wrong_input);
    CHECK(sized.file == saved);
    CHECK(holds(sized.err,
                "site.toml:14: error: `fixture` \"path-1\" was changed after the file had been read; "
                "expected the file as it was read\n    length = 300\n"));
    CHECK(holds(sized.err, "site.toml was not written: "));
}

TEST_CASE("a part that was added or taken out meanwhile is named") {
    const Outcome more = type("size", site_text + "[[fixture]]\nid = \"path-2\"\nmodel = \"path-2w\"\n");
    CHECK(more.status == ExitStatus::wrong_input);
    CHECK(holds(more.err, "site.toml:20: error: `fixture` \"path-2\" was added"));
    const Outcome less = type("size", site_text.substr(0, site_text.find("[[fixture]]")));
    CHECK(less.status == ExitStatus::wrong_input);
    CHECK(holds(less.err, "site.toml: error: `fixture` was taken out"));
}

TEST_CASE("a file half-typed or gone by the time of writing is left so") {
    const Outcome torn = type("size", site_text + "[[fixture");
    CHECK(torn.status == ExitStatus::wrong_input);
    CHECK(torn.file == site_text + "[[fixture");
    CHECK(holds(torn.err, "not TOML"));
    const Outcome gone = type("size", [](const std::string& site) { std::filesystem::remove(site); });
    CHECK(gone.status == ExitStatus::wrong_input);
    CHECK(gone.file.empty());
    CHECK(holds(gone.err, "was not written: No such file or directory"));
}

TEST_CASE("place adds its lights to what was saved meanwhile, or to nothing") {
    const Outcome remark = type("place", "# mind the roots\n" + site_text);
    CHECK(remark.status == ExitStatus::ok);
    CHECK(remark.file.starts_with("# mind the roots\n" + site_text));
    CHECK(holds(remark.file.substr(site_text.size()), "[[fixture]]"));
    const std::string wider = with(site_text, "width = 4", "width = 8");
    const Outcome refused = type("place", wider);
    CHECK(refused.status == ExitStatus::wrong_input);
    CHECK(refused.file == wider);
    CHECK(holds(refused.err, "site.toml:18: error: `walk` \"steps\" was changed"));
}

} // namespace rillwatt
