#include "support/ngspice.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <unistd.h>

namespace rillwatt::test {

namespace {

/// A resistor, or where it would have no resistance, which SPICE does not know, a source of 0 V.
std::string resistor(const std::string& name, const std::string& a, const std::string& b, double ohms) {
    if (ohms > 0) return fmt::format("R{} {} {} {:.17g}\n", name, a, b, ohms);
    return fmt::format("V{} {} {} 0\n", name, a, b);
}

/// `V_q = t_q (s - c sum(t_p I_p))`: a source of s volts behind c ohms feeds one ideal transformer per run.
std::string transformer_lines(const Network& network) {
    std::string deck = fmt::format("Vsupply open 0 {:.17g}\n", network.supply_ratio);
    deck += resistor("series", "open", "winding", network.regulation_per_va);
    for (std::size_t q = 0; q < network.run_count(); ++q) {
        const auto head = network.node_count() + q;
        deck += fmt::format("E{0} tap{0} 0 winding 0 {1:.17g}\n", q, network.tap[q]);
        deck += fmt::format("Vrun{0} tap{0} n{1} 0\n", q, head);
        deck += fmt::format("F{0} winding 0 Vrun{0} {1:.17g}\n", q, network.tap[q]);
    }
    return deck;
}

std::string cable_lines(const Network& network) {
    std::string deck;
    for (std::size_t i = 0; i < network.node_count(); ++i) {
        const std::string node = fmt::format("n{}", i);
        deck +=
            resistor(fmt::format("cable{}", i), fmt::format("n{}", network.feed[i]), node, network.ohms[i]);
        deck += resistor(fmt::format("lead{}", i), node, fmt::format("l{}", i), network.lead_ohms[i]);
    }
    for (std::size_t k = 0; k < network.links.size(); ++k) {
        const NetworkLink& link = network.links[k];
        deck += resistor(fmt::format("link{}", k), fmt::format("n{}", link.a), fmt::format("n{}", link.b),
                         link.ohms);
    }
    return deck;
}

std::string lamp_lines(const Network& network) {
    std::string deck;
    for (const int node : network.lamps) {
        const auto i = static_cast<std::size_t>(node);
        if (network.power[i] > 0)
            deck += fmt::format("Bp{0} l{0} 0 I={1:.17g}/max(v(l{0}),4.8)\n", i, network.power[i]);
        if (network.current[i] > 0) deck += fmt::format("Ic{0} l{0} 0 {1:.17g}\n", i, network.current[i]);
        if (network.conductance[i] > 0)
            deck += fmt::format("Rl{0} l{0} 0 {1:.17g}\n", i, 1 / network.conductance[i]);
    }
    for (const FilamentLoad& lamp : network.filaments)
        deck += fmt::format("Bf{0} l{0} 0 I={1:.17g}*pwr(max(v(l{0}),1e-3)/{2:.17g},0.55)\n", lamp.node,
                            lamp.amps_at_rated, lamp.rated_volts);
    return deck;
}

std::string output_of(const std::string& command) {
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    if (!pipe) throw std::runtime_error("could not run " + command);
    std::string text;
    std::array<char, 4096> buffer{};
    while (const auto count = fread(buffer.data(), 1, buffer.size(), pipe.get()))
        text.append(buffer.data(), count);
    return text;
}

std::string run_deck(const std::string& deck) {
    const auto path = std::filesystem::temp_directory_path() /
                      fmt::format("rillwatt-test-{}.cir", static_cast<long>(getpid()));
    std::ofstream(path) << deck;
    const std::string output = output_of("ngspice -b " + path.string() + " 2>&1");
    std::filesystem::remove(path);
    return output;
}

} // namespace

std::string spice_deck(const Network& network) {
    std::string deck = "low-voltage circuit\n.options reltol=1e-12 abstol=1e-13 vntol=1e-13 itl1=500\n";
    deck += transformer_lines(network) + cable_lines(network) + lamp_lines(network);
    deck += ".control\nset numdgt=15\nop\n";
    for (std::size_t i = 0; i < network.node_count(); ++i)
        deck += fmt::format("print v(l{})\n", i);
    return deck + ".endc\n.end\n";
}

std::vector<double> ngspice_lamp_volts(const Network& network) {
    const std::string output = run_deck(spice_deck(network));
    std::vector<double> volts(network.node_count(), -1);
    std::istringstream lines(output);
    std::size_t found = 0;
    for (std::string line; std::getline(lines, line);) {
        std::size_t node = 0;
        double value = 0;
        if (std::sscanf(line.c_str(), "v(l%zu) = %lf", &node, &value) != 2) continue;
        volts.at(node) = value;
        ++found;
    }
    if (found != volts.size()) throw std::runtime_error("ngspice found no answer:\n" + output);
    return volts;
}

} // namespace rillwatt::test
