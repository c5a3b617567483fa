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

/// Writes the program row by row. It is given to the solvers as sparse as it goes: y<i>_<c> says that length
/// i is at least as thick as cable c, d<i> the volts lost on the way to its far end. A row over the whole
/// path of each lamp and one variable for each cable of a length say the same, but take both solvers several
/// times as long.
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
            if (node.length) lengths_.insert(lengths_.begin(), i);
        }
    }

    std::string write() {
        text_ = "Minimize\n cost:";
        double thinnest = 0;
        for (const std::size_t i : lengths_) {
            thinnest += price(i, 0);
            for (std::size_t c = 1; c < cables_.size(); ++c)
                text_ += fmt::format(" + {} {}\n", price(i, c) - price(i, c - 1), variable(i, c));
        }
        text_ += fmt::format(" + {} thinnest\nSubject To\n always: thinnest = 1\n", thinnest);
        for (const std::size_t i : lengths_)
            add_rows(i);
        text_ += "Bounds\n";
        for (const std::size_t i : lengths_)
            text_ += fmt::format(" d{} <= {}\n", i, most_drop(i));
        text_ += "Binary\n";
        for (const std::size_t i : lengths_)
            for (std::size_t c = 1; c < cables_.size(); ++c)
                text_ += fmt::format(" {}\n", variable(i, c));
        return text_ + "End\n";
    }

  private:
    static std::string variable(std::size_t i, std::size_t c) { return fmt::format("y{}_{}", i, c); }
    double price(std::size_t i, std::size_t c) const {
        return cables_[c]->price->value() * circuit_.nodes[i].length->value();
    }
    double drop(std::size_t i, std::size_t c) const {
        return amps_[i] * cable_ohms(*cables_[c], *circuit_.nodes[i].length, conditions_.conductor);
    }
    double most_drop(std::size_t i) const {
        constexpr double any = 1000;
        const double head =
            circuit_.runs[0].tap->value() * circuit_.supply.value() / circuit_.type->primary_volts.value();
        const auto* fixture = circuit_.nodes[i].fixture;
        return fixture == nullptr ? any : head - fixture->window_low.value();
    }

    void add_rows(std::size_t i) {
        const auto feed = static_cast<std::size_t>(circuit_.nodes[i].parent);
        const bool fed_by_length = circuit_.nodes[feed].length.has_value();
        for (std::size_t c = 1; c < cables_.size(); ++c) {
            if (c > 1)
                text_ +=
                    fmt::format(" steps{0}_{1}: {2} - {3} >= 0\n", i, c, variable(i, c - 1), variable(i, c));
            if (fed_by_length)
                text_ += fmt::format(" order{}_{}: {} - {} >= 0\n", i, c, variable(feed, c), variable(i, c));
            if (amps_[i] > cables_[c - 1]->ampacity.value())
                text_ += fmt::format(" amps{}_{}: {} = 1\n", i, c, variable(i, c));
        }
        text_ += fmt::format(" drop{0}: d{0} - {1} thinnest", i, drop(i, 0));
        if (fed_by_length) text_ += fmt::format(" - d{}", feed);
        for (std::size_t c = 1; c < cables_.size(); ++c)
            text_ += fmt::format(" + {} {}\n", drop(i, c - 1) - drop(i, c), variable(i, c));
        text_ += " = 0\n";
    }

    TransformerCircuit circuit_;
    OperatingCase conditions_;
    std::vector<const CableType*> cables_;
    std::vector<std::size_t> lengths_; ///< nodes at the far end of one
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
    return run_solver(program, fmt::format("glpsol --lp {{}} --tmlim {} -o {{}}", most_seconds),
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
