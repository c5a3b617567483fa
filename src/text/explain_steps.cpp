#include "explain_steps.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

// Digits enough that somebody who types the printed figures into a calculator gets the next printed figure.
std::string volts4(Volts volts) { return fixed_text(volts.value(), 4) + " V"; }
std::string amps4(Amperes amps) { return fixed_text(amps.value(), 4) + " A"; }
std::string ohms6(double ohms) { return fixed_text(ohms, 6) + " ohm"; }
std::string number(double value) { return trimmed_text(value, 6); }

std::string step(const Explained& about, const std::string& text) {
    return wrapped(text, about.style.width, "   ", "     ");
}

std::string length_number(Metres length, LengthUnit unit) {
    const double value = unit == LengthUnit::feet ? length.value() / metres_per_foot : length.value();
    return trimmed_text(value, 3) + (unit == LengthUnit::feet ? " ft" : " m");
}

/// Resistance of one conductor per thousand units of length: ohm/kft or ohm/km.
double per_thousand(OhmsPerMetre resistance, LengthUnit unit) {
    return resistance.value() * 1000 * (unit == LengthUnit::feet ? metres_per_foot : 1);
}

const char* per_thousand_unit(LengthUnit unit) { return unit == LengthUnit::feet ? "ohm/kft" : "ohm/km"; }

using Told = std::vector<const CableType*>;

/// Where a cable's resistance comes from, and its value at the case's temperature: told once for each cable.
std::string resistance_steps(const Explained& about, const CableType& cable, Told& told) {
    if (std::find(told.begin(), told.end(), &cable) != told.end()) return "";
    told.push_back(&cable);
    const LengthUnit unit = about.site().settings.units;
    const ConductorTable* table = find_entry(about.assessment.catalog->tables, cable.table);
    const double reference = per_thousand(cable.resistance, unit);
    std::string out =
        step(about, fmt::format("{} is {}, one conductor {} {} at {}: {}", printable(cable.id),
                                printable(cable.size), number(reference), per_thousand_unit(unit),
                                celsius_text(cable.reference_temperature),
                                table != nullptr ? printable(table->source) : printable(cable.source)));
    const Celsius conductor = about.result.conditions.conductor;
    if (std::abs(conductor - cable.reference_temperature) < 1e-9) return out;
    return out +
           step(about, fmt::format("at {}: {} x (1 + {} x ({} - {})) = {} {}", celsius_text(conductor),
                                   number(reference), number(cable.temperature_coefficient),
                                   number(conductor.value()), number(cable.reference_temperature.value()),
                                   number(per_thousand(cable.resistance_at(conductor), unit)),
                                   per_thousand_unit(unit)));
}

std::string loop_text(const Explained& about, const CableType& cable, Metres length, double ohms) {
    const LengthUnit unit = about.site().settings.units;
    const double thousandth = per_thousand(cable.resistance_at(about.result.conditions.conductor), unit);
    return fmt::format("out and back: 2 x {} x {} {} / 1000 = {}", length_number(length, unit),
                       number(thousandth), per_thousand_unit(unit), ohms6(ohms));
}

const PartLength* part_length(const Explained& about, const CircuitNode& node) {
    const SiteLengths& lengths = about.assessment.lengths;
    const auto& list = node.kind == NodeKind::splice ? lengths.splices : lengths.fixtures;
    return node.part < list.size() ? &list[node.part] : nullptr;
}

std::string origin_text(const Explained& about, const CircuitNode& node) {
    const PartLength* length = part_length(about, node);
    if (length == nullptr || length->origin != LengthOrigin::plan) return "as typed";
    return fmt::format("from the plan, {} allowance included",
                       percent_text(about.site().settings.cable_allowance));
}

/// The lamps whose current flows through a node's cable.
std::vector<int> lamps_beyond(const Explained& about, int node) {
    std::vector<int> lamps;
    std::vector<int> open = {node};
    while (!open.empty()) {
        const int next = open.back();
        open.pop_back();
        if (about.answer(next).lamp != nullptr) lamps.push_back(next);
        const std::span<const int> fed = about.solved.fed(static_cast<std::size_t>(next));
        open.insert(open.end(), fed.begin(), fed.end());
    }
    std::sort(lamps.begin(), lamps.end());
    return lamps;
}

std::string current_text(const Explained& about, int node, Amperes amps) {
    if (!about.circuit().links.empty())
        return fmt::format("carries {}, as the ring shares it out", amps4(amps));
    const std::vector<int> lamps = lamps_beyond(about, node);
    std::string text = fmt::format("carries {}", amps4(amps));
    if (lamps.size() > 8) return text + fmt::format(", the sum of {} lamps", lamps.size());
    for (std::size_t i = 0; i < lamps.size(); ++i)
        text += fmt::format("{}{} {}", i == 0 ? ": " : " + ", about.name(lamps[i]),
                            fixed_text(about.answer(lamps[i]).lamp->amps.value(), 4));
    return text;
}

std::string length_steps(const Explained& about, int node, Told& told) {
    const CircuitNode& written = about.written(node);
    const SolvedNode& found = about.answer(node);
    const SegmentResult& segment = *found.segment;
    const LengthUnit unit = about.site().settings.units;
    std::string out = wrapped(fmt::format("{} to {}: {} of {}, {}", about.name(written.parent),
                                          about.name(node), length_number(segment.length, unit),
                                          printable(segment.cable), origin_text(about, written)),
                              about.style.width, " - ", "   ");
    out += resistance_steps(about, *written.cable, told);
    out += step(about, loop_text(about, *written.cable, segment.length, segment.ohms.value()));
    out += step(about, current_text(about, node, segment.amps));
    const std::optional<Volts> feed = about.answer(written.parent).volts;
    return out +
           step(about, fmt::format("{} - {} x {} = {} at {}", volts4(*feed), amps4(segment.amps),
                                   ohms6(segment.ohms.value()), volts4(*found.volts), about.name(node)));
}

double supply_ratio(const Explained& about) {
    return about.circuit().supply.value() * about.result.conditions.supply_factor /
           about.circuit().type->primary_volts.value();
}

std::string winding_steps(const Explained& about, double& sum) {
    std::string out;
    for (const CircuitRun& run : about.circuit().runs) {
        const RunResult& result = *about.answer(run.node).run;
        const double share = result.tap.value() * result.amps.value();
        sum += share;
        out += step(about,
                    fmt::format("{}: {} x {} = {} VA", about.name(run.node), nominal_volts_text(result.tap),
                                amps4(result.amps), fixed_text(share, 4)));
    }
    return out + step(about, fmt::format("together {} VA", fixed_text(sum, 4)));
}

std::string load_model_text(const FixtureType& type, const LampResult& lamp) {
    const std::string va = number(type.va.value());
    const std::string rated = number(type.rated_volts.value());
    const std::string volts = fixed_text(lamp.volts.value(), 4);
    switch (type.load) {
    case LoadModel::constant_power:
        return fmt::format("constant power, I = VA / V: {} VA / {} V = {}", va, volts, amps4(lamp.amps));
    case LoadModel::constant_current:
        return fmt::format("constant current, I = VA / rated V: {} VA / {} V = {}", va, rated,
                           amps4(lamp.amps));
    case LoadModel::filament:
        return fmt::format(
            "filament, I = VA / rated V x (V / rated V) ^ 0.55: {} / {} x ({} / {}) ^ 0.55 = {}", va, rated,
            volts, rated, amps4(lamp.amps));
    case LoadModel::resistance:
        return fmt::format("resistance, I = VA x V / rated V ^ 2: {} x {} / {} ^ 2 = {}", va, volts, rated,
                           amps4(lamp.amps));
    }
    return "";
}

std::string lead_steps(const Explained& about, int node) {
    const CircuitNode& written = about.written(node);
    const LampResult& lamp = *about.answer(node).lamp;
    if (written.lead_cable == nullptr || written.fixture->lead.value() <= 0)
        return wrapped("No lead: the lamp has the volts of the cable", about.style.width, " - ", "   ");
    const CableType& cable = *written.lead_cable;
    const Ohms ohms = 2 * written.fixture->lead * cable.resistance_at(about.result.conditions.conductor);
    std::string out = wrapped(fmt::format("Lead of {}: {} of {}, from the catalog", about.name(node),
                                          length_number(written.fixture->lead, about.site().settings.units),
                                          printable(cable.id)),
                              about.style.width, " - ", "   ");
    Told told;
    out += resistance_steps(about, cable, told);
    out += step(about, loop_text(about, cable, written.fixture->lead, ohms.value()));
    return out + step(about, fmt::format("{} - {} x {} = {} at the lamp", volts4(lamp.splice_volts),
                                         amps4(lamp.amps), ohms6(ohms.value()), volts4(lamp.volts)));
}

} // namespace

std::string Explained::name(int node) const { return printable(node_id(site(), written(node))); }

std::string head_of_run_steps(const Explained& about, int run) {
    const CircuitRun& written = about.circuit().runs[static_cast<std::size_t>(run)];
    const TransformerType& type = *about.circuit().type;
    const RunResult& result = *about.answer(written.node).run;
    const double ratio = supply_ratio(about);
    std::string out = wrapped(fmt::format("Head of run {}: tap {} of {}", about.name(written.node),
                                          nominal_volts_text(result.tap), printable(type.id)),
                              about.style.width, " - ", "   ");
    out += step(
        about, fmt::format("supply over primary: {} / {} = {}",
                           nominal_volts_text(about.circuit().supply * about.result.conditions.supply_factor),
                           nominal_volts_text(type.primary_volts), number(ratio)));
    out += step(about, "load on the winding, tap volts times amperes of each run:");
    double sum = 0;
    out += winding_steps(about, sum);
    return out + step(about, fmt::format("regulation {}: {} x ({} - {} x {} / {}) = {}",
                                         percent_text(type.regulation), nominal_volts_text(result.tap),
                                         number(ratio), number(type.regulation), fixed_text(sum, 4),
                                         number(type.va.value()), volts4(result.volts)));
}

std::string cable_steps(const Explained& about, int node) {
    std::vector<int> way;
    for (int at = node; about.written(at).parent >= 0; at = about.written(at).parent)
        way.push_back(at);
    Told told;
    std::string out;
    for (std::size_t i = way.size(); i-- > 0;)
        out += length_steps(about, way[i], told);
    return out;
}

std::string lamp_steps(const Explained& about, int node) {
    const CircuitNode& written = about.written(node);
    const LampResult& lamp = *about.answer(node).lamp;
    std::string out = lead_steps(about, node);
    out += wrapped(fmt::format("What {} draws: {}, {} VA at {}", about.name(node),
                               printable(written.fixture->id), number(written.fixture->va.value()),
                               nominal_volts_text(written.fixture->rated_volts)),
                   about.style.width, " - ", "   ");
    return out + step(about, load_model_text(*written.fixture, lamp));
}

std::string transformer_steps(const Explained& about) {
    const TransformerType& type = *about.circuit().type;
    const TransformerResult& result = *about.solved.transformer;
    std::string out =
        wrapped("Load: volts at the head times amperes of each run", about.style.width, " - ", "   ");
    double winding = 0;
    for (const CircuitRun& run : about.circuit().runs) {
        const RunResult& head = *about.answer(run.node).run;
        winding += head.tap.value() * head.amps.value();
        out +=
            step(about, fmt::format("{}: {} x {} = {} VA", about.name(run.node), volts4(head.volts),
                                    amps4(head.amps), fixed_text(head.volts.value() * head.amps.value(), 4)));
    }
    out += step(about, fmt::format("together {} VA; {} / {} = {} of the rating, {}",
                                   fixed_text(result.load.value(), 4), fixed_text(result.load.value(), 4),
                                   number(type.va.value()), fixed_text(result.loading, 4),
                                   percent_text(result.loading)));
    out += wrapped("Primary: (tap volts times amperes of each run + no-load watts) / primary volts",
                   about.style.width, " - ", "   ");
    out +=
        step(about, fmt::format("({} + {}) / {} = {}", fixed_text(winding, 4), number(type.no_load.value()),
                                number(type.primary_volts.value()), amps4(result.primary_amps)));
    out +=
        step(about, fmt::format("lost in the winding {} W, without load {} W",
                                fixed_text(result.winding_loss.value(), 2), number(result.no_load.value())));
    return out;
}

std::string method_remarks(const TextStyle& style) {
    std::string out;
    for (const char* remark : {"Volts and amperes depend on each other: the lamps' currents on their volts, "
                               "and all runs of a transformer "
                               "on its winding. They were solved together; the steps show that they fit.",
                               "Reactance is left out: in wire thinner than 6 AWG it is small against "
                               "resistance (NFPA 70 chapter 9 "
                               "Table 9).",
                               "Currents of lamps with different power factors are added as if in phase, "
                               "which is on the safe side."})
        out += wrapped(remark, style.width, "", "");
    return out;
}

} // namespace rillwatt
