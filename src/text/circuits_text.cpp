#include "rillwatt/text/circuits_text.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/mains/breaker.hpp"
#include "rillwatt/mains/burial.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/cautions.hpp"

#include <fmt/format.h>

namespace rillwatt {

namespace {

const char* mark(bool chosen) { return chosen ? " (proposed)" : ""; }

std::string load_text(const MainsLoad& load) {
    const std::string amps = load.amps ? amps_text(*load.amps) : "amperes unknown";
    switch (load.origin) {
    case AmpsOrigin::nameplate:
        return fmt::format("{} {} by its nameplate", load.id, amps);
    case AmpsOrigin::motor_table:
        return fmt::format("{} {} by the motor table, {} by its nameplate", load.id, amps,
                           amps_text(*load.nameplate));
    case AmpsOrigin::solved:
        return fmt::format("{} {} computed from its lights", load.id, amps);
    case AmpsOrigin::rating:
        return fmt::format("{} {} by its rating, its lights could not be computed", load.id, amps);
    case AmpsOrigin::unknown:
        break;
    }
    return fmt::format("{}: {}", load.id, amps);
}

std::string asked_for(const ProposedCircuit& circuit) {
    std::string text = nominal_volts_text(circuit.figures.volts);
    text += circuit.breaker.value ? fmt::format(", {} breaker{}", nominal_amps_text(*circuit.breaker.value),
                                                mark(circuit.breaker.chosen))
                                  : ", breaker open";
    text += circuit.written.gfci ? fmt::format(", GFCI{}", mark(circuit.gfci_chosen)) : ", no GFCI";
    if (circuit.conductor.value)
        text += fmt::format(", {} copper{}", *circuit.conductor.value, mark(circuit.conductor.chosen));
    if (!circuit.grounding.empty()) text += fmt::format(", ground {}", circuit.grounding);
    return text;
}

std::string way_text(const SiteSettings& settings, const ProposedCircuit& circuit) {
    std::string text;
    if (circuit.wiring.value)
        text = fmt::format("{}{}", wiring_name(*circuit.wiring.value), mark(circuit.wiring.chosen));
    if (circuit.cover.value)
        text += fmt::format(", {} deep{} under {}", depth_text(*circuit.cover.value, settings.units),
                            mark(circuit.cover.chosen), crossing_name(circuit.written.crosses));
    return text;
}

std::string drop_text(const SiteSettings& settings, const ProposedCircuit& circuit) {
    if (circuit.figures.drop_known)
        return fmt::format("drop {} over {}", percent_text(circuit.figures.drop_ratio),
                           length_text(*circuit.written.length, settings.units));
    if (circuit.longest.empty()) return "drop unknown";
    std::string text = "length open; 3 % of drop at";
    for (std::size_t i = 0; i < circuit.longest.size() && i < 3; ++i)
        text += fmt::format("{} {} with {}", i == 0 ? "" : ",",
                            most_length_text(circuit.longest[i].length, settings.units),
                            circuit.longest[i].conductor);
    return text;
}

std::string circuit_text(const Site& site, const ProposedCircuit& circuit, const TextStyle& style) {
    const auto line = [&](const std::string& text) {
        return text.empty() ? text : wrapped(printable(text), style.width, "    ", "      ");
    };
    std::string out = inked(style, Ink::heading, printable(circuit.id));
    out += circuit.circuit ? "\n" : "  new\n";
    out += line(asked_for(circuit));
    for (const auto& load : circuit.figures.parts)
        out += line(load_text(load));
    out += line(fmt::format("{} running, {} by design; {}", amps_text(circuit.figures.amps),
                            amps_text(circuit.figures.design_amps), drop_text(site.settings, circuit)));
    out += line(way_text(site.settings, circuit));
    for (const auto& why : circuit.why)
        out += wrapped(printable(why), style.width, "    - ", "      ");
    for (const auto& cannot : circuit.cannot)
        out += wrapped("! " + printable(cannot), style.width, "    ", "      ");
    return out;
}

std::string burial_text(const SiteSettings& settings, const CircuitProposal& proposal,
                        const TextStyle& style) {
    std::string out;
    for (const auto& choice : proposal.burial) {
        const auto cover = [&](const CoverNeeded& needed) {
            std::string text = depth_text(needed.by_wiring, settings.units);
            if (needed.as_home_gfci && *needed.as_home_gfci < needed.by_wiring)
                text += fmt::format(" ({} with GFCI at its start)",
                                    depth_text(*needed.as_home_gfci, settings.units));
            return text;
        };
        out += wrapped(fmt::format("under {}: direct burial {}, rigid metal {}, PVC {}; {}: {}",
                                   crossing_name(choice.crossing), cover(choice.direct),
                                   cover(choice.rigid_metal), cover(choice.pvc), wiring_name(choice.proposed),
                                   choice.why),
                       style.width, "  ", "    ");
    }
    return out + wrapped(source_text(burial_source, settings), style.width, "  ", "    ");
}

std::string kinds_text(const Site& site, const CircuitProposal& proposal, const TextStyle& style) {
    std::string out;
    const auto section = [&](const char* title, bool pumps, bool lights) {
        std::string text;
        for (const auto& circuit : proposal.circuits)
            if (circuit.figures.feeds_pumps() == pumps && circuit.figures.feeds_lights() == lights)
                text += circuit_text(site, circuit, style);
        if (!text.empty()) out += inked(style, Ink::heading, title) + "\n" + text + "\n";
    };
    section("PUMP CIRCUITS", true, false);
    section("LIGHTING CIRCUITS", false, true);
    section("PUMPS AND LIGHTS ON ONE CIRCUIT", true, true);
    section("SPARE CIRCUITS", false, false);
    return out;
}

} // namespace

std::string circuits_text(const Site& site, const CircuitProposal& proposal, const TextStyle& style) {
    std::string out = kinds_text(site, proposal, style);
    if (proposal.circuits.empty()) out += "No pump and no transformer: nothing to propose.\n\n";
    if (!proposal.burial.empty())
        out += inked(style, Ink::heading, "LEAST COVER") + "\n" +
               burial_text(site.settings, proposal, style) + "\n";
    for (const auto& advice : proposal.advice)
        out += wrapped(printable(advice), style.width, "", "  ");
    if (!proposal.loads_known)
        out += wrapped("A load without a model is not counted: its circuit may need more.", style.width, "",
                       "  ");
    if (site.settings.code == CodeFamily::iec)
        out += wrapped(
            "Sizes and depths are chosen from US tables only; the site says code = \"iec\", so what is open "
            "stays open for the electrician.",
            style.width, "", "  ");
    const std::string toml = proposal_toml(proposal);
    if (!toml.empty()) out += "\n" + inked(style, Ink::heading, "FOR THE SITE FILE") + "\n" + toml + "\n";
    for (const auto& caution : cautions())
        out += wrapped(caution, style.width, "", "  ");
    return out;
}

} // namespace rillwatt
