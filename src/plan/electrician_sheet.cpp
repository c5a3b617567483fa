#include "rillwatt/plan/electrician_sheet.hpp"

#include "rillwatt/layout/places.hpp"
#include "rillwatt/mains/burial.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "electrician_parts.hpp"
#include <algorithm>
#include <array>

namespace rillwatt {

namespace {

/// Rules whose findings the electrician must know: the line-voltage ones and those of water.
bool is_for_electrician(const std::string& rule) {
    static const std::array<std::string, 4> water{"fixture-not-submersible", "wet-contact-voltage",
                                                  "supply-not-listed-for-water", "near-water"};
    if (std::find(water.begin(), water.end(), rule) != water.end()) return true;
    const auto& rules = all_rules();
    const auto found =
        std::find_if(rules.begin(), rules.end(), [&](const Rule& known) { return known.id == rule; });
    return found != rules.end() && found->group == RuleGroup::mains;
}

std::string basis_text(const Site& site) {
    const auto& settings = site.settings;
    const std::string code = settings.code == CodeFamily::iec
                                 ? std::string("IEC 60364, text not at hand, confirm")
                                 : fmt::format("NFPA 70 (NEC) {}", settings.code_edition);
    return fmt::format("{}; supply {} plus or minus {}; {}; plan lengths in {}", code,
                       nominal_volts_text(settings.supply_voltage), percent_text(settings.supply_band),
                       settings.dwelling ? "one- or two-family home" : "not a one- or two-family home",
                       settings.units == LengthUnit::feet ? "feet" : "metres");
}

std::string cover_text(const SiteSettings& settings, const CoverNeeded& needed) {
    std::string text = depth_text(needed.by_wiring, settings.units);
    if (needed.as_home_gfci && *needed.as_home_gfci < needed.by_wiring)
        text += fmt::format(" ({} with GFCI)", depth_text(*needed.as_home_gfci, settings.units));
    return text;
}

SheetTable burial_table(const SiteSettings& settings, const CircuitProposal& proposal) {
    SheetTable table{
        "Least cover of a line-voltage circuit", {"direct burial", "rigid metal", "PVC conduit"}, {}};
    for (const auto& choice : proposal.burial)
        table.rows.push_back({fmt::format("under {}", crossing_name(choice.crossing)),
                              {cover_text(settings, choice.direct), cover_text(settings, choice.rigid_metal),
                               cover_text(settings, choice.pvc)},
                              source_text(burial_source, settings)});
    return table;
}

/// Whether the sheet itself proposes what stands under this key of the circuit, or asks for it.
bool is_answered(std::string_view key, const ProposedCircuit& circuit) {
    if (key == "breaker") return circuit.breaker.chosen;
    if (key == "conductor") return circuit.conductor.chosen;
    if (key == "wiring") return circuit.wiring.chosen;
    if (key == "cover") return circuit.cover.chosen;
    return key == "length"; // see to_confirm
}

/// Whether a note says only that something could not be judged for want of what is answered on this very
/// sheet.
bool answered_here(const Finding& finding, const CircuitProposal& proposal) {
    if (finding.open_keys.empty()) return false;
    const auto circuit = std::find_if(
        proposal.circuits.begin(), proposal.circuits.end(),
        [&](const ProposedCircuit& proposed) { return proposed.circuit && proposed.id == finding.part; });
    return circuit != proposal.circuits.end() &&
           std::all_of(finding.open_keys.begin(), finding.open_keys.end(),
                       [&](std::string_view key) { return is_answered(key, *circuit); });
}

/// What of a circuit is proposed on this sheet, and what has to be measured for the rest.
std::vector<SheetLine> to_confirm(const ProposedCircuit& circuit, const SiteSettings& settings) {
    std::vector<SheetLine> lines;
    std::string chosen;
    const auto add = [&](bool is_chosen, const std::string& what) {
        if (is_chosen) chosen += (chosen.empty() ? "" : ", ") + what;
    };
    if (circuit.breaker.value)
        add(circuit.breaker.chosen, nominal_amps_text(*circuit.breaker.value) + " breaker");
    add(circuit.gfci_chosen, "ground-fault protection");
    if (circuit.conductor.value) add(circuit.conductor.chosen, *circuit.conductor.value + " copper");
    if (circuit.wiring.value) add(circuit.wiring.chosen, wiring_name(*circuit.wiring.value));
    if (circuit.cover.value)
        add(circuit.cover.chosen, depth_text(*circuit.cover.value, settings.units) + " of cover");
    if (!chosen.empty())
        lines.push_back({fmt::format("{}: proposed here, not seen on the site, confirm or change: {}",
                                     circuit.id, chosen),
                         "proposal"});
    if (!circuit.written.length)
        lines.push_back(
            {fmt::format("{}: the way from panel to outlet is to be measured; drop and starting dip "
                         "wait for it",
                         circuit.id),
             "plan"});
    return lines;
}

std::vector<SheetLine> open_lines(const Assessment& assessment, const CircuitProposal& proposal) {
    std::vector<SheetLine> lines;
    if (!assessment.site->circuits.empty())
        lines.push_back({"what is said of circuits that exist (breaker, ground-fault protection, outlet, "
                         "cover, depth) is "
                         "what the crew wrote down, seen or assumed: inspect it before relying on it",
                         "site file"});
    for (const auto& finding : assessment.findings) {
        if (!is_for_electrician(finding.rule) || answered_here(finding, proposal)) continue;
        std::string text = fmt::format("{}: {}", severity_name(finding.severity), finding.message);
        if (!finding.hint.empty()) text += "; fix: " + finding.hint;
        lines.push_back({text, finding.source});
    }
    for (const auto& circuit : proposal.circuits)
        for (const auto& line : to_confirm(circuit, assessment.site->settings))
            lines.push_back(line);
    for (const auto& circuit : proposal.circuits)
        for (const auto& cannot : circuit.cannot)
            lines.push_back({fmt::format("{}: {}", circuit.id, cannot), "proposal"});
    for (const auto& advice : proposal.advice)
        lines.push_back({advice, "common practice, no source"});
    return lines;
}

} // namespace

std::string distance_text(const SiteSettings& settings, Metres distance) {
    if (settings.units == LengthUnit::metres) return trimmed_text(distance.value(), 1) + " m";
    return trimmed_text(distance / feet(1), 1) + " ft";
}

std::string place_text(const Site& site, const std::optional<PlanPoint>& at) {
    if (!at) return "not on the plan";
    std::string text = fmt::format("x {}, y {}", distance_text(site.settings, Metres(at->x)),
                                   distance_text(site.settings, Metres(at->y)));
    if (const auto away = distance_to_water(site, *at))
        text += fmt::format("; {} from water", distance_text(site.settings, *away));
    return text;
}

std::string comma_separated(const std::vector<std::string>& words) {
    std::string text;
    for (const auto& word : words)
        text += (text.empty() ? "" : "; ") + word;
    return text;
}

ElectricianSheet electrician_sheet(const Assessment& assessment) {
    const Site& site = *assessment.site;
    const CircuitProposal proposal = propose_circuits(site, assessment.mains);
    ElectricianSheet sheet;
    sheet.site = site.settings.name;
    sheet.basis = basis_text(site);
    sheet.tables = circuit_tables(assessment, proposal);
    for (auto& table : supply_tables(assessment))
        sheet.tables.push_back(std::move(table));
    if (site.settings.code == CodeFamily::nec) sheet.burial = burial_table(site.settings, proposal);
    sheet.open = open_lines(assessment, proposal);
    sheet.reminders = water_reminders(site.settings);
    sheet.running_cost = running_cost_lines(assessment);
    return sheet;
}

} // namespace rillwatt
