#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/plan/branch_kinds.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "check_sections.hpp"

namespace rillwatt {

namespace {

std::string protection_text(const BranchCircuit& written) {
    std::string text = written.breaker ? nominal_amps_text(*written.breaker) + " breaker" : "breaker open";
    text += written.gfci ? ", GFCI" : ", no GFCI";
    if (written.conductor) text += ", " + printable(*written.conductor);
    return text;
}

std::string pump_text(const Site& site, const MainsLoad& load) {
    const Pump& pump = site.pumps[load.part];
    std::string text = fmt::format("pump {}: {}", printable(pump.id), printable(pump.model));
    if (load.amps) text += ", " + amps_text(*load.amps);
    if (load.pump != nullptr) text += ", " + watts_text(load.pump->watts);
    return text + fmt::format(", {} h a day", trimmed_text(load.hours_per_day.value(), 1));
}

std::string transformer_text(const Site& site, const MainsLoad& load) {
    const Transformer& transformer = site.transformers[load.part];
    std::string text = fmt::format("transformer {}: {}", printable(transformer.id),
                                   printable(transformer.model.value_or("model open")));
    if (load.amps) text += ", " + amps_text(*load.amps);
    if (load.origin == AmpsOrigin::rating) text += " by its rating";
    return text;
}

std::string load_line(const Site& site, const MainsLoad& load) {
    return load.kind == MainsLoadKind::pump ? pump_text(site, load) : transformer_text(site, load);
}

} // namespace

std::string branch_circuit_text(const Assessment& assessment, const MainsCircuit& circuit,
                                const TextStyle& style) {
    const Site& site = *assessment.site;
    const BranchCircuit& written = site.circuits[circuit.circuit];
    std::string text = fmt::format("{}: {}, {}; {} running, design for {}", printable(written.id),
                                   nominal_volts_text(circuit.volts), protection_text(written),
                                   amps_text(circuit.amps), amps_text(circuit.design_amps));
    if (circuit.drop_known) text += fmt::format("; drop {}", percent_text(circuit.drop_ratio));
    std::string out = wrapped(text, style.width, "  ", "      ");
    for (const MainsLoad& load : circuit.parts)
        out += wrapped(load_line(site, load), style.width, "      ", "        ");
    if (circuit.parts.empty()) out += "      nothing on it yet\n";
    return out;
}

std::string branch_circuits_text(const Assessment& assessment, const TextStyle& style) {
    std::string out;
    for (const BranchKind& kind : branch_kinds(assessment)) {
        if (!out.empty()) out += '\n';
        out += inked(style, Ink::heading, kind.heading) + "  line voltage: for the electrician\n";
        for (const MainsCircuit* circuit : kind.circuits)
            out += branch_circuit_text(assessment, *circuit, style);
    }
    return out;
}

} // namespace rillwatt
