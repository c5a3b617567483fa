// The report of 1,000 placed lights and the plan of 10,000, whole processes, beside `rillwatt check` of the
// same garden: what drawing and pages cost over computing. The garden is written once with lengths measured
// on the plan and once with lengths typed, so that finding the trenches and drawing them are told apart.

#include <fmt/format.h>

#include "process_timing.hpp"
#include "support/placed_garden.hpp"
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace {

namespace files = std::filesystem;

/// A garden in a folder of its own.
class Garden {
  public:
    Garden(const files::path& folder, int lights, bool typed)
        : folder_(folder / fmt::format("{}-{}", lights, typed ? "typed" : "measured")) {
        files::create_directories(folder_);
        std::ofstream(site()) << rillwatt::test::placed_garden({.lights = lights, .typed = typed});
    }

    ProcessTiming time(const std::vector<std::string>& words, int turns) const {
        std::vector<std::string> command{RILLWATT_PROGRAM, words.front(), site()};
        command.insert(command.end(), words.begin() + 1, words.end());
        std::vector<ProcessTiming> runs;
        for (int turn = 0; turn < turns; ++turn)
            runs.push_back(time_process(command, (folder_ / "output").string()));
        return best_of(runs);
    }

    std::string report_folder() const { return (folder_ / "report").string(); }

  private:
    std::string site() const { return (folder_ / "site.toml").string(); }

    files::path folder_;
};

void print_row(const char* words, const ProcessTiming& timing, const ProcessTiming& check) {
    fmt::print("  {:<22}{:8.3f} s wall{:8.3f} s processor{:7.1f} MB{:9.1f} times check\n", words,
               timing.wall_milliseconds / 1000, timing.processor_milliseconds / 1000, timing.megabytes,
               timing.processor_milliseconds / check.processor_milliseconds);
}

void measure(const files::path& folder, int lights, bool typed, bool report, int turns) {
    const Garden garden(folder, lights, typed);
    const ProcessTiming check = garden.time({"check"}, turns);
    fmt::print("{} placed lights, lengths {}, best of {}\n", lights, typed ? "typed" : "measured on the plan",
               turns);
    print_row("check", check, check);
    print_row("plan", garden.time({"plan"}, turns), check);
    print_row("plan --diagram", garden.time({"plan", "--diagram"}, turns), check);
    if (!report) return;
    print_row("light", garden.time({"light"}, turns), check);
    print_row("report", garden.time({"report", "--output", garden.report_folder(), "--force"}, turns), check);
}

} // namespace

int main() {
    const files::path folder = files::temp_directory_path() / "rillwatt-drawing-benchmark";
    fmt::print("goals: report of 1,000 lights in 0.2 s, plan of 10,000 in 2 s\n");
    for (const bool typed : {true, false}) {
        measure(folder, 1000, typed, true, 3);
        measure(folder, 10000, typed, false, 1);
    }
    files::remove_all(folder);
    return 0;
}
