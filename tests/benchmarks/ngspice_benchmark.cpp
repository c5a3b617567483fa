// The same gardens of 1,000 and 10,000 lamps through `rillwatt check` and through `ngspice -b`, turn by turn
// in one run: whole processes, from the text of the input to the text of the answer.
//
// The deck is the fastest fair one we know: no nodes but the lamps', load currents limited below 4 V so that
// ngspice starts from zero by itself (a deck that starts it with .nodeset lines takes 30 times as long), its
// default tolerances, and no table of devices printed. `rillwatt check` solves three cases in that time and
// judges them; it answers once as text for people and once as JSON, with every figure of every case.

#include <fmt/format.h>

#include "process_timing.hpp"
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace {

constexpr int lamps_per_run = 25;
constexpr int runs_per_transformer = 4;
constexpr double ohms_per_metre = 0.0065; // of one conductor
constexpr double lamp_va = 2;
constexpr int taps[] = {12, 13, 14};

double metres_to(int lamp) { return lamp == 0 ? 6 : 2; }

std::string catalog_text() {
    return R"(rillwatt_catalog = 1
source = "invented for this benchmark"
[conductor_table.bench]
source = "invented for this benchmark"
reference_temperature = "20 C"
temperature_coefficient = 0.00393
unit = "ohm/km"
sizes = { "12 AWG" = 6.5 }
[cable.bench]
table = "bench"
size = "12 AWG"
ampacity = 20
direct_burial = true
[fixture.bench]
kind = "path"
rated_volts = 12
window = [8, 15]
watts = 2
rating = "wet"
lumens = 140
[transformer.bench]
va = 600
taps = [12, 13, 14]
regulation_percent = 4
)";
}

std::string site_text(int lamps) {
    std::string text =
        "rillwatt = 1\n[site]\nname = \"bench\"\nunits = \"m\"\ncatalogs = [\"catalog.toml\"]\n"
        "conductor_temperature = \"20 C\"\n";
    const int runs = lamps / lamps_per_run;
    for (int q = 0; q < runs; ++q) {
        const int transformer = q / runs_per_transformer;
        if (q % runs_per_transformer == 0)
            text += fmt::format("[[transformer]]\nid = \"T{}\"\nmodel = \"bench\"\n", transformer);
        text += fmt::format("[[run]]\nid = \"R{}\"\nfrom = \"T{}\"\ntap = {}\ncable = \"bench\"\n", q,
                            transformer, taps[q % 3]);
        for (int k = 0; k < lamps_per_run; ++k) {
            const std::string feed = k == 0 ? fmt::format("R{}", q) : fmt::format("f{}_{}", q, k - 1);
            text +=
                fmt::format("[[fixture]]\nid = \"f{}_{}\"\nmodel = \"bench\"\nfrom = \"{}\"\nlength = {}\n",
                            q, k, feed, metres_to(k));
        }
    }
    return text;
}

std::string deck_text(int lamps) {
    std::string text = "bench\n";
    const int runs = lamps / lamps_per_run;
    for (int q = 0; q < runs; ++q) {
        const int t = q / runs_per_transformer;
        if (q % runs_per_transformer == 0)
            text += fmt::format("V{0} o{0} 0 1\nR{0} o{0} w{0} {1:.17g}\n", t, 0.04 / 600);
        text += fmt::format("Er{0} x{0} 0 w{1} 0 {2}\nVr{0} x{0} h{0} 0\nFr{0} w{1} 0 Vr{0} {2}\n", q, t,
                            taps[q % 3]);
        for (int k = 0; k < lamps_per_run; ++k) {
            const std::string feed = k == 0 ? fmt::format("h{}", q) : fmt::format("f{}_{}", q, k - 1);
            text += fmt::format(
                "Rc{0}_{1} {2} f{0}_{1} {3:.17g}\nBl{0}_{1} f{0}_{1} 0 I={4}/max(v(f{0}_{1}),4)\n", q, k,
                feed, 2 * ohms_per_metre * metres_to(k), lamp_va);
        }
    }
    return text + ".control\nset numdgt=12\nop\nprint all\n.endc\n.end\n";
}

std::string text_of(const std::filesystem::path& path) {
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/// Lamp volts in ngspice's answer: lines `f3_7 = 1.2e+01`.
std::map<std::string, double> ngspice_volts(const std::string& output) {
    std::map<std::string, double> volts;
    std::istringstream lines(output);
    for (std::string line; std::getline(lines, line);) {
        const auto equals = line.find(" = ");
        if (line.rfind('f', 0) != 0 || equals == std::string::npos) continue;
        volts[line.substr(0, equals)] = std::stod(line.substr(equals + 3));
    }
    return volts;
}

/// Largest difference between ngspice's volts and those of the first case of a check object, read off its
/// text.
double largest_difference(const std::string& json, const std::map<std::string, double>& expected) {
    double worst = 0;
    auto from = json.find("\"fixtures\"");
    for (std::size_t k = 0; k < expected.size(); ++k) {
        const auto id = json.find("\"f", json.find("\"id\"", from));
        const auto volts = json.find("\"volts\"", id);
        if (id == std::string::npos || volts == std::string::npos) return NAN;
        const std::string name = json.substr(id + 1, json.find('"', id + 1) - id - 1);
        const auto other = expected.find(name);
        if (other == expected.end()) return NAN;
        worst = std::max(worst, std::abs(std::stod(json.substr(json.find(':', volts) + 1)) - other->second));
        from = volts;
    }
    return worst;
}

void print_row(const char* what, const std::vector<ProcessTiming>& runs) {
    const ProcessTiming best = best_of(runs);
    fmt::print("  {:<16} {:>9.2f} ms wall {:>9.2f} ms processor {:>8.1f} MB\n", what, best.wall_milliseconds,
               best.processor_milliseconds, best.megabytes);
}

void print_ratio(const char* what, const std::vector<ProcessTiming>& ours,
                 const std::vector<ProcessTiming>& theirs) {
    const ProcessTiming a = best_of(ours);
    const ProcessTiming b = best_of(theirs);
    fmt::print("  ratio of {:<8} {:>6.1f} wall {:>6.1f} processor\n", what,
               b.wall_milliseconds / a.wall_milliseconds,
               b.processor_milliseconds / a.processor_milliseconds);
}

void compare(const std::filesystem::path& folder, int lamps, int repeats) {
    std::ofstream(folder / "catalog.toml") << catalog_text();
    std::ofstream(folder / "site.toml") << site_text(lamps);
    std::ofstream(folder / "deck.cir") << deck_text(lamps);
    const std::string site = (folder / "site.toml").string();
    const std::string deck = (folder / "deck.cir").string();
    const std::string text_out = (folder / "check.txt").string();
    const std::string json_out = (folder / "check.json").string();
    const std::string theirs_out = (folder / "ngspice.txt").string();
    std::vector<ProcessTiming> text;
    std::vector<ProcessTiming> json;
    std::vector<ProcessTiming> theirs;
    for (int k = 0; k < repeats; ++k) {
        text.push_back(time_process({RILLWATT_PROGRAM, "check", site}, text_out));
        json.push_back(time_process({RILLWATT_PROGRAM, "check", site, "--format", "json"}, json_out));
        theirs.push_back(time_process({"ngspice", "-b", deck}, theirs_out));
    }
    fmt::print("{} lamps, best of {}\n", lamps, repeats);
    print_row("check, text", text);
    print_row("check, JSON", json);
    print_row("ngspice -b", theirs);
    const auto expected = ngspice_volts(text_of(theirs_out));
    print_ratio("text", text, theirs);
    print_ratio("JSON", json, theirs);
    fmt::print("  {} lamps differ by at most {:.1e} V\n", expected.size(),
               largest_difference(text_of(json_out), expected));
}

} // namespace

int main() {
    const auto folder = std::filesystem::temp_directory_path() / "rillwatt-ngspice-benchmark";
    std::filesystem::create_directories(folder);
    compare(folder, 1000, 15);
    compare(folder, 10000, 7);
    std::filesystem::remove_all(folder);
}
