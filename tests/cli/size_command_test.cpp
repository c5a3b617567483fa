#include "rillwatt/cli/command_line.hpp"

#include <catch2/catch.hpp>

#include "support/temporary_folder.hpp"
#include <sstream>
#include <unistd.h>

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

//   T1 --A--+-- H1 --+-- falls-1
//           |        +-- falls-2
//           +-- path-1 --- path-2
// Line ends of two kinds, tabs and comments: none of it may change.
const std::string open_site =
    "# as drawn\r\n"
    "rillwatt = 1\n"
    "[site]\n"
    "name = \"Test terrace\"   # the name\n"
    "\n"
    "[[circuit]]\nid = \"C1\"\nbreaker = 15\ngfci = true\nwet_cover = true\n"
    "[[transformer]]\n"
    "id = \"T1\"   # no model yet\n"
    "circuit = \"C1\"\n"
    "[[run]]\n"
    "\tid   =   \"A\"\n"
    "\tfrom = \"T1\"\n"
    "[[splice]]\nid = \"H1\"\nfrom = \"A\"\nlength = \"60 ft\"\n"
    "[[fixture]]\nid = \"falls-1\"\nmodel = \"sub-3w\"\nfrom = \"H1\"\nlength = 12\n"
    "in_water = true\n"
    "[[fixture]]\nid = \"falls-2\"\nmodel = \"sub-3w\"\nfrom = \"H1\"\nlength = 18\n"
    "in_water = true\n"
    "[[fixture]]\nid = \"path-1\"\nmodel = \"path-2w\"\nfrom = \"A\"\nlength = 30\n"
    "[[fixture]]\nid = \"path-2\"\nmodel = \"path-2w\"\nfrom = \"path-1\"\nlength = 14";

std::string in_folder(const test::TemporaryFolder& folder, const std::string& text) {
    const std::string path = folder.file("site.toml");
    std::ofstream(path, std::ios::binary) << text;
    return path;
}

/// The lines of a text that are not in another.
std::vector<std::string> new_lines(const std::string& text, const std::string& before) {
    std::vector<std::string> added;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
        if (!holds(before, line)) added.push_back(line);
    return added;
}

//   T1 tap 12 --A-- 16/2, 180 ft -- lamp-1 -- 10 ft -- lamp-2
// Everything typed; inside the windows at nominal supply, not on a weak one.
const std::string weak_site =
    "rillwatt = 1\n[site]\nname = \"Long way\"\n"
    "[[circuit]]\nid = \"C1\"\nbreaker = 15\ngfci = true\nwet_cover = true\n"
    "[[transformer]]\nid = \"T1\"\nmodel = \"mag-150\"\ncircuit = \"C1\"\n"
    "[[run]]\nid = \"A\"\nfrom = \"T1\"\ntap = 12\ncable = \"16/2\"\n"
    "[[fixture]]\nid = \"lamp-1\"\nmodel = \"accent-5w-36\"\nfrom = \"A\"\nlength = 180\n"
    "[[fixture]]\nid = \"lamp-2\"\nmodel = \"accent-5w-36\"\nfrom = \"lamp-1\"\nlength = 10\n";

//   T1 --A-- 12/2, 300 ft -- lamp-1 -- 10 ft -- lamp-2, both in water, on a supply of 114 V, 8 % high or low
// A tap of 15 V takes the least copper and shows 15.39 V when the supply is high.
const std::string strong_site =
    "rillwatt = 1\n[site]\nname = \"Far pool\"\nsupply_voltage = 114\nsupply_band_percent = 8\n"
    "[[circuit]]\nid = \"C1\"\nbreaker = 15\ngfci = true\nwet_cover = true\n"
    "[[transformer]]\nid = \"T1\"\nmodel = \"pool-150\"\ncircuit = \"C1\"\n"
    "[[run]]\nid = \"A\"\nfrom = \"T1\"\ntap = 12\ncable = \"12/2\"\n"
    "[[fixture]]\nid = \"lamp-1\"\nmodel = \"sub-5w-40\"\nfrom = \"A\"\nlength = 300\nin_water = true\n"
    "[[fixture]]\nid = \"lamp-2\"\nmodel = \"sub-5w-40\"\nfrom = \"lamp-1\"\nlength = 10\n"
    "in_water = true\n";

/// The words between backquotes that follow a phrase, as typed: what a fix tells the user to run.
std::vector<std::string> command_after(const std::string& text, const std::string& phrase) {
    std::string flat; // wrapped lines as one
    std::istringstream all(text.substr(text.find(phrase)));
    for (std::string word; all >> word;)
        flat += (flat.empty() ? "" : " ") + word;
    const std::size_t begin = flat.find('`') + 1;
    std::istringstream command(flat.substr(begin, flat.find('`', begin) - begin));
    std::vector<std::string> words;
    for (std::string word; command >> word;)
        words.push_back(word);
    words.erase(words.begin()); // the program
    return words;
}

} // namespace

TEST_CASE("an open site is sized, proven, and says why") {
    const test::TemporaryFolder folder;
    const std::string site = in_folder(folder, open_site);
    const Outcome text = type({"size", site});
    CHECK(text.status == ExitStatus::ok);
    CHECK(holds(text.out, "Optimal"));
    CHECK(holds(text.out, "licensed electrician"));
    CHECK(test::file_text(site) == open_site);
    const Outcome json = type({"size", site, "--format", "json"});
    CHECK(json.status == ExitStatus::ok);
    for (const char* part : {R"("command": "size")", R"("status": "optimal")", R"("lower_bound": )",
                             R"("bill_total": )", R"("check": {)", R"("what": "model")", R"("was": null)"})
        CHECK(holds(json.out, part));
}

TEST_CASE("written choices make the site pass its check and leave every other byte alone") {
    const test::TemporaryFolder folder;
    const std::string site = in_folder(folder, open_site);
    CHECK(type({"check", site}).status == ExitStatus::findings);
    const Outcome shown = type({"size", site, "--diff"});
    CHECK(test::file_text(site) == open_site);
    CHECK(holds(shown.out, "+model = "));
    CHECK(type({"size", site, "--write"}).status == ExitStatus::ok);
    const std::string written = test::file_text(site);
    CHECK(type({"check", site}).status == ExitStatus::ok);
    CHECK(new_lines(written, open_site).size() == 3); // model, tap, cable
    std::string without = written;
    for (const std::string& line : new_lines(written, open_site)) {
        CHECK(holds(shown.out, '+' + line));
        without.erase(without.find(line + '\n'), line.size() + 1);
    }
    CHECK(without == open_site);
    CHECK(folder.entries() == 1);
    CHECK(type({"size", site, "--diff"}).out.empty());
}

TEST_CASE("each length with its own cable passes its check once written") {
    const test::TemporaryFolder folder;
    const std::string site = in_folder(folder, open_site);
    CHECK(type({"size", site, "--per-length", "--write"}).status == ExitStatus::ok);
    CHECK(type({"check", site}).status == ExitStatus::ok);
}

TEST_CASE("everything reopened comes out as if nothing had been typed") {
    const test::TemporaryFolder folder;
    const std::string site = in_folder(folder, open_site);
    const std::string open = type({"size", site, "--format", "json"}).out;
    type({"size", site, "--margin", "1", "--write"});
    const std::string again = type({"size", site, "--all", "--format", "json"}).out;
    const auto cost = [](const std::string& text) { return text.substr(text.find("\"cost\""), 20); };
    CHECK(cost(again) == cost(open));
}

TEST_CASE("what the fix of a weak-supply warning tells to run ends the warning") {
    const test::TemporaryFolder folder;
    const std::string site = in_folder(folder, weak_site);
    const Outcome before = type({"check", site});
    CHECK(before.status == ExitStatus::ok);
    REQUIRE(holds(before.out, "warning: lamp-2 gets"));
    const Outcome plain = type({"size", site, "--all"});
    CHECK(holds(plain.out, "On a weak supply some lamps leave their windows"));
    CHECK(holds(plain.out, "[lamp-undervoltage]"));
    std::vector<std::string> told = command_after(before.out, "fix: thicker cable");
    CHECK(told == std::vector<std::string>{"size", site, "--all", "--weak-supply"});
    told.emplace_back("--write");
    CHECK(type(told).status == ExitStatus::ok);
    CHECK_FALSE(holds(type({"check", site}).out, "[lamp-undervoltage]"));
}

TEST_CASE("options of size that contradict each other are told") {
    const test::TemporaryFolder folder;
    const std::string site = in_folder(folder, open_site);
    const std::vector<std::vector<std::string>> lines = {{"size", site, "--any-order"},
                                                         {"size", site, "--write", "--diff"},
                                                         {"size", site, "--loading", "0"},
                                                         {"size", site, "--margin", "-1"},
                                                         {"size", site, "--effort", "0"}};
    for (const auto& line : lines) {
        const Outcome outcome = type(line);
        CHECK(outcome.status == ExitStatus::wrong_input);
        CHECK(outcome.out.empty());
        CHECK_FALSE(outcome.err.empty());
    }
    CHECK(test::file_text(site) == open_site);
}

TEST_CASE("a site that can be read but not written is wrong input") {
    int ends[2];
    REQUIRE(pipe(ends) == 0);
    REQUIRE(write(ends[1], open_site.data(), open_site.size()) == static_cast<ssize_t>(open_site.size()));
    close(ends[1]);
    const Outcome outcome = type({"size", "/dev/fd/" + std::to_string(ends[0]), "--write"});
    close(ends[0]);
    CHECK(outcome.status == ExitStatus::wrong_input);
    CHECK(holds(outcome.err, "was not written"));
}

TEST_CASE("what the fix of a weak-supply warning tells to run gives no lamp too much on a strong one") {
    const test::TemporaryFolder folder;
    const std::string site = in_folder(folder, strong_site);
    REQUIRE(holds(type({"check", site}).out, "lamp-2 gets"));
    CHECK(type({"size", site, "--all", "--weak-supply", "--write"}).status == ExitStatus::ok);
    const Outcome after = type({"check", site});
    CHECK_FALSE(holds(after.out, "[lamp-undervoltage]"));
    CHECK_FALSE(holds(after.out, "[lamp-overvoltage]"));
    CHECK_FALSE(holds(after.out, "[wet-contact-voltage]"));
}

TEST_CASE("headroom is told for every place of a sized site") {
    const test::TemporaryFolder folder;
    const std::string site = in_folder(folder, open_site);
    type({"size", site, "--write"});
    const Outcome text = type({"headroom", site});
    CHECK(text.status == ExitStatus::ok);
    for (const char* part : {"T1", "A", "H1", "path-2"})
        CHECK(holds(text.out, part));
    CHECK(holds(type({"headroom", site, "--format", "json"}).out, R"("more_va": )"));
}

} // namespace rillwatt
