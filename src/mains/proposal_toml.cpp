#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/mains/circuit_proposal.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

namespace rillwatt {

namespace {

/// A TOML basic string.
std::string quoted(const std::string& text) {
    std::string out = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\')
            out += fmt::format("\\{}", c);
        else if (byte < 0x20 || byte == 0x7F)
            out += fmt::format("\\u{:04X}", static_cast<unsigned>(byte));
        else
            out += c;
    }
    return out + '"';
}

/// Depths of the burial table are whole inches: written so, they read back exactly.
std::string in_inches(Metres depth) { return trimmed_text(depth / inches(1), 3) + " in"; }

std::string new_circuit(const ProposedCircuit& circuit) {
    const auto& written = circuit.written;
    std::string text = fmt::format("[[circuit]]\nid = {}\n", quoted(circuit.id));
    if (written.volts) text += fmt::format("volts = {}\n", trimmed_text(written.volts->value(), 3));
    if (written.breaker) text += fmt::format("breaker = {}\n", trimmed_text(written.breaker->value(), 3));
    text += "gfci = true\n";
    if (written.conductor) text += fmt::format("conductor = {}\n", quoted(*written.conductor));
    text += "# length = \"...\"      panel to outlet, one way: measure it\n";
    if (written.wiring) text += fmt::format("wiring = \"{}\"\n", wiring_name(*written.wiring));
    if (written.cover) text += fmt::format("cover = \"{}\"\n", in_inches(*written.cover));
    text += "# at = [x, y]         the outlet on the plan\n";
    if (written.outlet == Outlet::hardwired) return text + "outlet = \"hardwired\"\n";
    return text + "wet_cover = true\n";
}

std::string added_lines(const ProposedCircuit& circuit) {
    std::string text;
    if (circuit.breaker.chosen && circuit.breaker.value)
        text += fmt::format("breaker = {}\n", trimmed_text(circuit.breaker.value->value(), 3));
    if (circuit.gfci_chosen) text += "gfci = true\n";
    if (circuit.conductor.chosen && circuit.conductor.value)
        text += fmt::format("conductor = {}\n", quoted(*circuit.conductor.value));
    if (circuit.wiring.chosen && circuit.wiring.value)
        text += fmt::format("wiring = \"{}\"\n", wiring_name(*circuit.wiring.value));
    if (circuit.cover.chosen && circuit.cover.value)
        text += fmt::format("cover = \"{}\"\n", in_inches(*circuit.cover.value));
    if (text.empty()) return text;
    return fmt::format("# to [[circuit]] {}:\n{}", printable(circuit.id), text);
}

} // namespace

std::string proposal_toml(const CircuitProposal& proposal) {
    std::string text;
    const auto add = [&](const std::string& block) {
        if (!block.empty()) text += (text.empty() ? "" : "\n") + block;
    };
    for (const auto& circuit : proposal.circuits) {
        if (circuit.circuit) {
            add(added_lines(circuit));
            continue;
        }
        add(new_circuit(circuit));
        for (const auto& load : circuit.figures.parts)
            add(fmt::format("# to [[{}]] {}:\ncircuit = {}\n",
                            load.kind == MainsLoadKind::pump ? "pump" : "transformer", printable(load.id),
                            quoted(circuit.id)));
    }
    return text;
}

} // namespace rillwatt
