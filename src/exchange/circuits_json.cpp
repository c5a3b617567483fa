#include "rillwatt/exchange/circuits_json.hpp"

#include "rillwatt/exchange/json_writer.hpp"
#include "rillwatt/mains/circuit_proposal.hpp"

namespace rillwatt {

namespace {

void write_strings(JsonWriter& json, const char* name, const std::vector<std::string>& texts) {
    json.key(name);
    json.begin_array();
    for (const auto& text : texts)
        json.value(text);
    json.end();
}

void write_choices(JsonWriter& json, const ProposedCircuit& circuit) {
    json.member("breaker",
                circuit.breaker.value ? std::optional(circuit.breaker.value->value()) : std::nullopt);
    json.member("breaker_proposed", circuit.breaker.chosen);
    json.member("conductor", circuit.conductor.value);
    json.member("conductor_proposed", circuit.conductor.chosen);
    json.member_or_null("ground", circuit.grounding);
    json.member("gfci", circuit.written.gfci);
    json.member("gfci_proposed", circuit.gfci_chosen);
    json.member("wiring", circuit.wiring.value
                              ? std::optional<std::string>(wiring_name(*circuit.wiring.value))
                              : std::nullopt);
    json.member("wiring_proposed", circuit.wiring.chosen);
    json.member("crosses", crossing_name(circuit.written.crosses));
    json.member("cover_m", circuit.cover.value ? std::optional(circuit.cover.value->value()) : std::nullopt);
    json.member("cover_proposed", circuit.cover.chosen);
}

void write_figures(JsonWriter& json, const ProposedCircuit& circuit) {
    const auto& figures = circuit.figures;
    json.member("volts", figures.volts.value());
    json.member("amps", figures.amps.value());
    json.member("continuous_amps", figures.continuous_amps.value());
    json.member("design_amps", figures.design_amps.value());
    json.member("length_m",
                circuit.written.length ? std::optional(circuit.written.length->value()) : std::nullopt);
    json.member("drop_percent", figures.drop_known ? std::optional(figures.drop_ratio * 100) : std::nullopt);
    json.member("starting_dip_percent_estimate",
                figures.dip ? std::optional(figures.dip->ratio * 100) : std::nullopt);
    json.member("leakage_ma", figures.leakage_ma);
}

void write_circuit(JsonWriter& json, const ProposedCircuit& circuit) {
    json.begin_object();
    json.member("id", circuit.id);
    json.member("new", !circuit.circuit.has_value());
    write_strings(json, "loads", circuit.figures.loads);
    write_figures(json, circuit);
    write_choices(json, circuit);
    json.key("longest");
    json.begin_array();
    for (const auto& longest : circuit.longest) {
        json.begin_object(JsonWriter::Set::line);
        json.member("conductor", longest.conductor);
        json.member("length_m", longest.length.value());
        json.end();
    }
    json.end();
    write_strings(json, "why", circuit.why);
    write_strings(json, "cannot", circuit.cannot);
    json.end();
}

void write_cover(JsonWriter& json, const char* name, const CoverNeeded& needed) {
    json.key(name);
    json.begin_object(JsonWriter::Set::line);
    json.member("cover_m", needed.by_wiring.value());
    json.member("home_gfci_cover_m",
                needed.as_home_gfci ? std::optional(needed.as_home_gfci->value()) : std::nullopt);
    json.end();
}

void write_burial(JsonWriter& json, const CircuitProposal& proposal) {
    json.key("burial");
    json.begin_array();
    for (const auto& choice : proposal.burial) {
        json.begin_object();
        json.member("crosses", crossing_name(choice.crossing));
        write_cover(json, wiring_name(Wiring::direct_burial), choice.direct);
        write_cover(json, wiring_name(Wiring::rigid_metal), choice.rigid_metal);
        write_cover(json, wiring_name(Wiring::pvc), choice.pvc);
        json.member("proposed", wiring_name(choice.proposed));
        json.member("why", choice.why);
        json.end();
    }
    json.end();
}

} // namespace

std::string circuits_json(const Site& site, const CircuitProposal& proposal) {
    JsonWriter json;
    json.begin_object();
    json.member("schema", "rillwatt/1");
    json.member("command", "circuits");
    json.member("site", site.settings.name);
    json.key("circuits");
    json.begin_array();
    for (const auto& circuit : proposal.circuits)
        write_circuit(json, circuit);
    json.end();
    write_burial(json, proposal);
    write_strings(json, "advice", proposal.advice);
    json.member("toml", proposal_toml(proposal));
    json.end();
    return json.take();
}

} // namespace rillwatt
