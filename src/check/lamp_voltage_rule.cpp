#include "rillwatt/finding/command_word.hpp"
#include "rillwatt/limits/limits.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include <cmath>
#include <vector>

namespace rillwatt {

namespace {

/// What the words about a lamp outside its window speak of.
struct Outside {
    const Breach& breach;
    const TransformerCircuit& circuit;
    const CircuitRun& run;
    const Fixture& fixture;
    const FixtureType& type;
    const OperatingCase& conditions;

    bool nominal() const { return severity_of(breach) == Severity::error; }
    Volts volts() const { return Volts(breach.value); }
    double by() const { return std::abs(breach.value - breach.limit); }
};

std::string words_for(const OperatingCase& conditions) {
    const double percent = (conditions.supply_factor - 1) * 100;
    if (conditions.name == "weak")
        return fmt::format("when the supply is {} % low", trimmed_text(-percent, 1));
    if (conditions.name == "strong")
        return fmt::format("when the supply is {} % high and no other lamp draws current",
                           trimmed_text(percent, 1));
    return "at nominal supply";
}

std::string window_text(const FixtureType& type) {
    return fmt::format("{} to {} V", trimmed_text(type.window_low.value(), 2),
                       trimmed_text(type.window_high.value(), 2));
}

/// The volts of such a lamp were computed, so its cable and tap are written: sizing has to reopen them.
std::string size_command(const RuleContext& context, const char* more) {
    return fmt::format("`rillwatt size {} --all{}` chooses", command_word(context.site.file), more);
}

Finding low_finding(const RuleContext& context, const Outside& lamp) {
    return {.part = lamp.fixture.id,
            .location = lamp.fixture.location,
            .message = fmt::format("{} gets {} V {}, {} V below its window of {}", lamp.fixture.id,
                                   fixed_text(lamp.volts().value(), 2), words_for(lamp.conditions),
                                   fixed_text(lamp.by(), 2), window_text(lamp.type)),
            .hint = "thicker cable, a higher tap, a shorter way or fewer lights on the run; " +
                    size_command(context, lamp.nominal() ? "" : " --weak-supply")};
}

/// A lamp without load gets what its tap gives, so the highest tap it takes follows from its window alone.
std::string lower_tap_hint(const Outside& lamp) {
    if (!lamp.run.tap || lamp.circuit.type == nullptr) return "a lower tap";
    const Volts tap_now = *lamp.run.tap;
    const Volts highest = tap_now * (lamp.type.window_high / lamp.volts());
    const std::string most = fmt::format("{} V", trimmed_text(std::floor(highest.value() * 10) / 10, 1));
    std::optional<Volts> best;
    for (const Volts tap : lamp.circuit.type->taps)
        if (!against_high_end(lamp.type, lamp.volts() * (tap / tap_now)).broken())
            best = std::max(best.value_or(tap), tap);
    if (best)
        return fmt::format("the tap of {}; {} is the most this light takes", nominal_volts_text(*best), most);
    return fmt::format(
        "{} has no tap low enough, {} is the most this light takes: a light with a wider window, or "
        "another transformer; a supply known to vary less is written as `supply_band_percent`",
        lamp.circuit.type->id, most);
}

Finding high_finding(const RuleContext& context, const Outside& lamp) {
    return {.part = lamp.fixture.id,
            .location = lamp.fixture.location,
            .message = fmt::format("{} gets {} V {}, {} V above its window of {}", lamp.fixture.id,
                                   fixed_text(lamp.volts().value(), 2), words_for(lamp.conditions),
                                   fixed_text(lamp.by(), 2), window_text(lamp.type)),
            .hint = lamp.nominal() ? "a lower tap; " + size_command(context, "") : lower_tap_hint(lamp)};
}

/// One finding for each lamp that leaves its window: of the first case in which it does.
std::vector<Finding> find_outside(const RuleContext& context, BreachKind kind,
                                  Finding (*describe)(const RuleContext&, const Outside&)) {
    std::vector<Finding> findings;
    std::vector<bool> told(context.site.fixtures.size(), false);
    for (const Breach& breach : context.breaches) {
        if (breach.kind != kind) continue;
        const TransformerCircuit& circuit = context.circuits.transformers[breach.transformer];
        const CircuitNode& node = circuit.nodes[static_cast<std::size_t>(breach.node)];
        if (told[node.part]) continue;
        told[node.part] = true;
        findings.push_back(
            describe(context, {breach, circuit, circuit.runs[static_cast<std::size_t>(breach.run)],
                               context.site.fixtures[node.part], *node.fixture,
                               context.solution.cases[breach.operating_case].conditions}));
        findings.back().severity = severity_of(breach);
    }
    return findings;
}

std::vector<Finding> find_undervoltage(const RuleContext& context) {
    return find_outside(context, BreachKind::lamp_low, low_finding);
}

std::vector<Finding> find_overvoltage(const RuleContext& context) {
    return find_outside(context, BreachKind::lamp_high, high_finding);
}

} // namespace

Rule lamp_undervoltage_rule() {
    return {.id = "lamp-undervoltage",
            .group = RuleGroup::low_voltage,
            .severity = "error in the nominal case, warning in the weak case",
            .summary = "A lamp gets fewer volts than its window allows",
            .explanation =
                "Below its window an LED lamp dims, flickers or goes out, and a filament lamp turns dull and "
                "orange. The drop grows with length and current and shrinks with copper: use a thicker "
                "cable, a higher tap, a shorter way, or put fewer lights on the run.",
            .source = limits::window_source,
            .find = find_undervoltage};
}

Rule lamp_overvoltage_rule() {
    return {.id = "lamp-overvoltage",
            .group = RuleGroup::low_voltage,
            .severity = "error in the nominal case, warning in the strong case",
            .summary = "A lamp gets more volts than its window allows",
            .explanation =
                "Too many volts shorten a lamp's life and can destroy its driver. The strong case is the "
                "last lamp still working on a high supply: no other current pulls the voltage down. Use a "
                "lower tap.",
            .source = limits::window_source,
            .find = find_overvoltage};
}

} // namespace rillwatt
