#include "milp.hpp"

#include "rillwatt/solver/network.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <unistd.h>

namespace rillwatt::test {

namespace {

/// Writes the program row by row.
class ProgramWriter {
  public:
    explicit ProgramWriter(const Garden& garden)
        : circuit_(garden.circuit()), conditions_(operating_cases(garden.site.settings)[0]) {
        for (const auto& [id, type] : garden.catalog.cables)
            if (type.price) cables_.push_back(&type);
        std::sort(cables_.begin(), cables_.end(),
                  [](const CableType* a, const CableType* b) { return a->section_mm2 < b->section_mm2; });
        amps_.assign(circuit_.nodes.size(), 0);
        for (std::size_t i = circuit_.nodes.size(); i-- > 0;) {
            const CircuitNode& node = circuit_.nodes[i];
            if (node.fixture != nullptr)
                amps_[i] += node.fixture->va.value() / node.fixture->rated_volts.value();
            if (node.parent >= 0) amps_[static_cast<std::size_t>(node.parent)] += amps_[i];
        }
    }

    std::string write() {
        text_ = "Minimize\n cost:";
        for (std::size_t i = 0; i < amps_.size(); ++i)
            if (circuit_.nodes[i].length)
                for (std::size_t c = 0; c < cables_.size(); ++c)
                    text_ +=
                        fmt::format(" + {} {}\n", cables_[c]->price->value() * metres(i), variable(i, c));
        text_ += "Subject To\n";
        for (std::size_t i = 0; i < amps_.size(); ++i)
            if (circuit_.nodes[i].length) add_rows(i);
        text_ += "Binary\n";
        for (std::size_t i = 0; i < amps_.size(); ++i)
            if (circuit_.nodes[i].length)
                for (std::size_t c = 0; c < cables_.size(); ++c)
                    text_ += fmt::format(" {}\n", variable(i, c));
        return text_ + "End\n";
    }

  private:
    double metres(std::size_t i) const { return circuit_.nodes[i].length->value(); }
    static std::string variable(std::size_t i, std::size_t c) { return fmt::format("x{}_{}", i, c); }

    void add_rows(std::size_t i) {
        const CircuitNode& node = circuit_.nodes[i];
        text_ += fmt::format(" one{}:", i);
        for (std::size_t c = 0; c < cables_.size(); ++c)
            text_ += fmt::format(" + {}", variable(i, c));
        text_ += " = 1\n";
        for (std::size_t c = 0; c < cables_.size(); ++c)
            if (amps_[i] > cables_[c]->ampacity.value())
                text_ += fmt::format(" amps{}_{}: {} = 0\n", i, c, variable(i, c));
        const auto feed = static_cast<std::size_t>(node.parent);
        if (circuit_.nodes[feed].length)
            for (std::size_t least = 1; least < cables_.size(); ++least) {
                text_ += fmt::format(" order{}_{}:", i, least);
                for (std::size_t c = least; c < cables_.size(); ++c)
                    text_ += fmt::format(" + {} - {}", variable(feed, c), variable(i, c));
                text_ += " >= 0\n";
            }
        if (node.fixture != nullptr) add_lamp(i);
    }

    void add_lamp(std::size_t i) {
        text_ += fmt::format(" lamp{}:", i);
        for (std::size_t k = i; circuit_.nodes[k].length;
             k = static_cast<std::size_t>(circuit_.nodes[k].parent))
            for (std::size_t c = 0; c < cables_.size(); ++c)
                text_ += fmt::format(
                    " + {} {}\n",
                    amps_[k] * cable_ohms(*cables_[c], *circuit_.nodes[k].length, conditions_.conductor),
                    variable(k, c));
        const double head =
            circuit_.runs[0].tap->value() * circuit_.supply.value() / circuit_.type->primary_volts.value();
        text_ += fmt::format(" <= {}\n", head - circuit_.nodes[i].fixture->window_low.value());
    }

    TransformerCircuit circuit_;
    OperatingCase conditions_;
    std::vector<const CableType*> cables_;
    std::vector<double> amps_;
    std::string text_;
};

/// A file of this process that is gone at the end.
class ScratchFile {
  public:
    explicit ScratchFile(const char* ending)
        : path_((std::filesystem::temp_directory_path() / fmt::format("rillwatt-{}{}", getpid(), ending))
                    .string()) {}
    ~ScratchFile() { std::filesystem::remove(path_); }
    ScratchFile(const ScratchFile&) = delete;
    ScratchFile& operator=(const ScratchFile&) = delete;
    const std::string& path() const { return path_; }

  private:
    std::string path_;
};

/// Runs a command on a program and reads the number after `marker` in the line of its answer that has it.
std::optional<ProgramAnswer> run_solver(const std::string& program, const std::string& command,
                                        const char* marker) {
    const ScratchFile file(".lp");
    const ScratchFile answer(".sol");
    std::ofstream(file.path()) << program;
    const std::string line =
        fmt::format(fmt::runtime(command), file.path(), answer.path()) + " > /dev/null 2>&1";
    const auto start = std::chrono::steady_clock::now();
    if (std::system(line.c_str()) != 0) return std::nullopt;
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    std::ifstream in(answer.path());
    for (std::string text; std::getline(in, text);) {
        const auto place = text.find(marker);
        if (place == std::string::npos) continue;
        return ProgramAnswer{std::strtod(text.c_str() + place + std::string(marker).size(), nullptr),
                             taken.count()};
    }
    return std::nullopt;
}

} // namespace

std::string per_length_program(const Garden& garden) { return ProgramWriter(garden).write(); }

std::optional<ProgramAnswer> solve_with_cbc(const std::string& program, double most_seconds) {
    return run_solver(
        program,
        fmt::format("cbc {{}} ratioGap 0 allowableGap 0 seconds {} solve solution {{}}", most_seconds),
        "Optimal - objective value ");
}

std::optional<ProgramAnswer> solve_with_glpk(const std::string& program, double most_seconds) {
    return run_solver(program, fmt::format("glpsol --lp {{}} --cuts --tmlim {} -o {{}}", most_seconds),
                      "Objective:  cost = ");
}

Garden constant_current_garden(int lengths, unsigned seed) {
    std::mt19937 generator(seed);
    const auto number = [&](double from, double to) {
        return from + (to - from) * static_cast<double>(generator()) / static_cast<double>(0xffffffffu);
    };
    Garden garden;
    const struct {
        const char* id;
        double ohms_per_km; // NEC (2017) chapter 9 Table 8, stranded, per conductor
        double ampacity;
        double price;
        double section;
    } cables[] = {{"16/2", 16.4, 10, 1.08, 1.31},
                  {"14/2", 10.3, 15, 1.51, 2.08},
                  {"12/2", 6.50, 20, 2.03, 3.31},
                  {"10/2", 4.07, 30, 3.44, 5.26},
                  {"8/2", 2.55, 40, 5.84, 8.37}};
    for (const auto& row : cables) {
        garden.cable(row.id, row.ohms_per_km / 1000);
        CableType& type = garden.catalog.cables[row.id];
        type.ampacity = Amperes(row.ampacity);
        type.price = MoneyPerMetre(row.price);
        type.section_mm2 = row.section;
        type.direct_burial = true;
    }
    garden.ideal_transformer("T1").run("A", "T1", 14, "");
    garden.catalog.transformers["type of T1"].secondary_limit = Amperes(1000);
    const double amps = 13.0 / lengths; // all of them together near the limit of the cables
    for (int i = 0; i < 4; ++i) {
        const std::string id = fmt::format("lamp{}", i);
        garden.lamp_type(id, {.load = LoadModel::constant_current, .va = 12 * amps * number(0.5, 1.5)});
        garden.catalog.fixtures[id].window_low = Volts(number(10.2, 11));
        garden.catalog.fixtures[id].window_high = Volts(15);
    }
    const double stretch = 90.0 / lengths;
    std::vector<std::string> trunk{"A"};
    for (int i = 0; i < lengths; ++i) {
        const bool onward = number(0, 1) < 0.45;
        const auto place = trunk.size() - 1 -
                           static_cast<std::size_t>(number(0, 0.999) *
                                                    std::min<double>(4, static_cast<double>(trunk.size())));
        const std::string id = fmt::format("n{}", i);
        garden.fixture(id, trunk[onward ? trunk.size() - 1 : place], stretch * number(0.5, 2.5),
                       fmt::format("lamp{}", static_cast<int>(number(0, 3.999))));
        if (onward) trunk.push_back(id);
    }
    return garden;
}

} // namespace rillwatt::test
