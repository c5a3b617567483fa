#include "support/ngspice.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <unistd.h>

namespace rillwatt::test {

namespace {

/// Writes the deck of one garden. Nodes are called by what stands there: `r` a run's head, `s` a splice, `f`
/// the joint of a fixture, `l` its lamp, each with its place in the site.
class DeckWriter {
  public:
    DeckWriter(const Site& site, const Catalog& catalog, const SiteLengths& lengths, const SpiceCase& under)
        : site_(site), catalog_(catalog), lengths_(lengths), under_(under) {
        note('r', site.runs);
        note('s', site.splices);
        note('f', site.fixtures);
    }

    std::string text() {
        deck_ = "garden\n.options reltol=1e-12 abstol=1e-13 vntol=1e-13 itl1=500\n";
        for (std::size_t t = 0; t < site_.transformers.size(); ++t)
            write_transformer(t);
        for (std::size_t i = 0; i < site_.splices.size(); ++i)
            write_cable("s", i, site_.splices[i].id, lengths_.splices.at(i));
        for (std::size_t i = 0; i < site_.fixtures.size(); ++i)
            write_fixture(i);
        for (std::size_t i = 0; i < site_.links.size(); ++i)
            write_link(i);
        deck_ += ".control\nset numdgt=15\nop\n";
        for (const auto& [id, place] : places_)
            deck_ += fmt::format("print v({})\n", place);
        for (std::size_t i = 0; i < site_.fixtures.size(); ++i)
            deck_ += fmt::format("print v(l{})\n", i);
        return deck_ + ".endc\n.end\n";
    }

  private:
    template<class Parts>
    void note(char letter, const Parts& parts) {
        for (std::size_t i = 0; i < parts.size(); ++i)
            places_[parts[i].id] = fmt::format("{}{}", letter, i);
    }

    /// A resistor, or where it would have no resistance, which SPICE does not know, a source of 0 V.
    void resistor(const std::string& name, const std::string& a, const std::string& b, double ohms) {
        if (ohms > 0)
            deck_ += fmt::format("R{} {} {} {:.17g}\n", name, a, b, ohms);
        else
            deck_ += fmt::format("V{} {} {} 0\n", name, a, b);
    }

    /// Ohms of a two-conductor cable: `2 L r (1 + alpha (T - T_ref))`, r from its conductor table; a garden
    /// written in code has no tables, and its cables carry r themselves.
    double ohms(const std::string& cable, double metres) const {
        const CableType& type = catalog_.cables.at(cable);
        double r = type.resistance.value();
        double reference = type.reference_temperature.value();
        double alpha = type.temperature_coefficient;
        if (!type.table.empty()) {
            const ConductorTable& table = catalog_.tables.at(type.table);
            for (const ConductorRow& row : table.rows)
                if (row.size == type.size) r = row.resistance.value();
            reference = table.reference_temperature.value();
            alpha = table.temperature_coefficient;
        }
        return 2 * metres * r * (1 + alpha * (under_.conductor_celsius - reference));
    }

    /// The cable that leads to a part: its own, else what that it is fed from has.
    std::string cable_to(const std::string& id) const {
        for (const Run& run : site_.runs)
            if (run.id == id) return run.cable.value();
        for (const Splice& splice : site_.splices)
            if (splice.id == id) return splice.cable ? *splice.cable : cable_to(splice.from);
        for (const Fixture& fixture : site_.fixtures)
            if (fixture.id == id) return fixture.cable ? *fixture.cable : cable_to(fixture.from.value());
        throw std::runtime_error("no part " + id);
    }

    const std::string& feed_of(const std::string& id) const {
        for (const Splice& splice : site_.splices)
            if (splice.id == id) return splice.from;
        for (const Fixture& fixture : site_.fixtures)
            if (fixture.id == id) return fixture.from.value();
        throw std::runtime_error("no feed of " + id);
    }

    double supply_volts(const Transformer& transformer) const {
        for (const BranchCircuit& circuit : site_.circuits)
            if (transformer.circuit == circuit.id && circuit.volts) return circuit.volts->value();
        return site_.settings.supply_voltage.value();
    }

    /// `V_q = t_q (s - g sum(t_p I_p) / VA)`: a source of s volts behind g / VA ohms feeds one ideal
    /// transformer for each run.
    void write_transformer(std::size_t t) {
        const Transformer& transformer = site_.transformers[t];
        const TransformerType& type = catalog_.transformers.at(transformer.model.value());
        const double s = under_.supply_factor * supply_volts(transformer) / type.primary_volts.value();
        deck_ += fmt::format("Vsupply{0} open{0} 0 {1:.17g}\n", t, s);
        resistor(fmt::format("series{}", t), fmt::format("open{}", t), fmt::format("winding{}", t),
                 type.regulation / type.va.value());
        for (std::size_t q = 0; q < site_.runs.size(); ++q) {
            if (site_.runs[q].from != transformer.id) continue;
            const double tap = site_.runs[q].tap.value().value();
            deck_ += fmt::format("E{0} tap{0} 0 winding{1} 0 {2:.17g}\nVrun{0} tap{0} r{0} 0\n"
                                 "F{0} winding{1} 0 Vrun{0} {2:.17g}\n",
                                 q, t, tap);
        }
    }

    void write_cable(const std::string& letter, std::size_t i, const std::string& id,
                     const PartLength& length) {
        resistor(fmt::format("{}{}", letter, i), places_.at(feed_of(id)), places_.at(id),
                 ohms(cable_to(id), length.length.value().value()));
    }

    void write_fixture(std::size_t i) {
        const Fixture& fixture = site_.fixtures[i];
        const FixtureType& type = catalog_.fixtures.at(fixture.model);
        write_cable("f", i, fixture.id, lengths_.fixtures.at(i));
        const double lead = type.lead_cable.empty() ? 0 : ohms(type.lead_cable, type.lead.value());
        resistor(fmt::format("lead{}", i), fmt::format("f{}", i), fmt::format("l{}", i), lead);
        write_lamp(i, type);
    }

    void write_lamp(std::size_t i, const FixtureType& type) {
        const double va = type.va.value();
        const double rated = type.rated_volts.value();
        switch (type.load) {
        case LoadModel::constant_power:
            deck_ += fmt::format("Blamp{0} l{0} 0 I={1:.17g}/max(v(l{0}),{2:.17g})\n", i, va, 0.4 * rated);
            return;
        case LoadModel::constant_current:
            deck_ += fmt::format("Ilamp{0} l{0} 0 {1:.17g}\n", i, va / rated);
            return;
        case LoadModel::filament:
            deck_ += fmt::format("Blamp{0} l{0} 0 I={1:.17g}*pwr(max(v(l{0}),1e-3)/{2:.17g},0.55)\n", i,
                                 va / rated, rated);
            return;
        case LoadModel::resistance:
            deck_ += fmt::format("Rlamp{0} l{0} 0 {1:.17g}\n", i, rated * rated / va);
            return;
        }
    }

    void write_link(std::size_t i) {
        const Link& link = site_.links[i];
        resistor(fmt::format("link{}", i), places_.at(link.a), places_.at(link.b),
                 ohms(link.cable.value(), lengths_.links.at(i).length.value().value()));
    }

    const Site& site_;
    const Catalog& catalog_;
    const SiteLengths& lengths_;
    const SpiceCase& under_;
    std::map<std::string, std::string> places_; ///< node of each part
    std::string deck_;
};

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

std::string spice_deck(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                       const SpiceCase& under) {
    return DeckWriter(site, catalog, lengths, under).text();
}

SpiceVolts ngspice_volts(const Site& site, const Catalog& catalog, const SiteLengths& lengths,
                         const SpiceCase& under) {
    const std::string output = run_deck(spice_deck(site, catalog, lengths, under));
    SpiceVolts volts{std::vector<double>(site.runs.size()), std::vector<double>(site.fixtures.size()),
                     std::vector<double>(site.fixtures.size())};
    std::size_t found = 0;
    std::istringstream lines(output);
    for (std::string line; std::getline(lines, line);) {
        char kind = 0;
        std::size_t i = 0;
        double value = 0;
        if (std::sscanf(line.c_str(), "v(%c%zu) = %lf", &kind, &i, &value) != 3 || kind == 's') continue;
        (kind == 'r' ? volts.runs : kind == 'f' ? volts.joints : volts.lamps).at(i) = value;
        ++found;
    }
    if (found != site.runs.size() + 2 * site.fixtures.size())
        throw std::runtime_error("ngspice found no answer:\n" + output);
    return volts;
}

} // namespace rillwatt::test
