#include "rillwatt/limits/breach.hpp"

namespace rillwatt {

namespace {

constexpr std::size_t nominal_case = 0;

const Part& part_at(const Site& site, const CircuitNode& node) {
    switch (node.kind) {
    case NodeKind::run:
        return site.runs[node.part];
    case NodeKind::splice:
        return site.splices[node.part];
    case NodeKind::fixture:
        break;
    }
    return site.fixtures[node.part];
}

bool beyond_rating(const Breach& breach) { return against_rating(breach.value).broken(); }

} // namespace

std::string_view rule_of(const Breach& breach) {
    switch (breach.kind) {
    case BreachKind::no_operating_point:
        return "no-operating-point";
    case BreachKind::lamp_low:
        return "lamp-undervoltage";
    case BreachKind::lamp_high:
        return "lamp-overvoltage";
    case BreachKind::cable:
        return "cable-overloaded";
    case BreachKind::secondary:
        return "secondary-overloaded";
    case BreachKind::loading:
        return beyond_rating(breach) ? "transformer-overloaded" : "transformer-margin";
    case BreachKind::contact_volts:
        return "wet-contact-voltage";
    case BreachKind::supply:
        return "supply-volts";
    case BreachKind::none:
        break;
    }
    return "";
}

Severity severity_of(const Breach& breach) {
    if (breach.operating_case != nominal_case)
        return breach.kind == BreachKind::contact_volts ? Severity::note : Severity::warning;
    const bool margin_only = breach.kind == BreachKind::loading && !beyond_rating(breach);
    return margin_only ? Severity::warning : Severity::error;
}

const Part& part_of(const Site& site, const TransformerCircuit& circuit, const Breach& breach) {
    if (breach.link >= 0) return site.links[circuit.links[static_cast<std::size_t>(breach.link)].link];
    if (breach.kind == BreachKind::no_operating_point || breach.node < 0) {
        if (breach.run < 0) return site.transformers[circuit.transformer];
        return site.runs[circuit.runs[static_cast<std::size_t>(breach.run)].run];
    }
    return part_at(site, circuit.nodes[static_cast<std::size_t>(breach.node)]);
}

} // namespace rillwatt
