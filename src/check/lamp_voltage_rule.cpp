#include "rillwatt/check/limits.hpp"
#include "rillwatt/finding/command_word.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include <cmath>
#include <vector>

namespace rillwatt {

namespace {

/// A lamp whose volts leave its window in one case.
struct Breach {
    const Fixture& fixture;
    const FixtureType& type;
    const LampResult& lamp;
    const OperatingCase& conditions;

    bool nominal() const { return conditions.name == "nominal"; }
};

constexpr auto too_low = [](const FixtureType& type, Volts volts) { return below(volts, type.window_low); };
constexpr auto too_high = [](const FixtureType& type, Volts volts) { return above(volts, type.window_high); };

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

Finding low_finding(const RuleContext& context, const Breach& breach) {
    return {.part = breach.fixture.id,
            .location = breach.fixture.location,
            .message = fmt::format("{} gets {} V {}, {} V below its window of {}", breach.fixture.id,
                                   fixed_text(breach.lamp.volts.value(), 2), words_for(breach.conditions),
                                   fixed_text((breach.type.window_low - breach.lamp.volts).value(), 2),
                                   window_text(breach.type)),
            .hint = "thicker cable, a higher tap, a shorter way or fewer lights on the run; " +
                    size_command(context, breach.nominal() ? "" : " --weak-supply")};
}

/// A lamp without load gets what its tap gives, so the highest tap it bears follows from its window alone.
std::string lower_tap_hint(const RuleContext& context, const Breach& breach) {
    const TransformerCircuit& circuit = context.circuits.transformers[breach.lamp.transformer];
    std::optional<Volts> highest;
    std::optional<Volts> best;
    for (const CircuitRun& run : circuit.runs)
        if (run.run == breach.lamp.run && run.tap)
            highest = *run.tap * (breach.type.window_high / breach.lamp.volts);
    if (!highest || circuit.type == nullptr) return "a lower tap";
    const std::string most = fmt::format("{} V", trimmed_text(std::floor(highest->value() * 10) / 10, 1));
    for (const Volts tap : circuit.type->taps)
        if (!above(tap, *highest)) best = std::max(best.value_or(tap), tap);
    if (best)
        return fmt::format("the tap of {}; {} is the most this light takes", nominal_volts_text(*best), most);
    return fmt::format(
        "{} has no tap low enough, {} is the most this light takes: a light with a wider window, or "
        "another transformer; a supply known to vary less is written as `supply_band_percent`",
        circuit.type->id, most);
}

Finding high_finding(const RuleContext& context, const Breach& breach) {
    return {.part = breach.fixture.id,
            .location = breach.fixture.location,
            .message = fmt::format("{} gets {} V {}, {} V above its window of {}", breach.fixture.id,
                                   fixed_text(breach.lamp.volts.value(), 2), words_for(breach.conditions),
                                   fixed_text((breach.lamp.volts - breach.type.window_high).value(), 2),
                                   window_text(breach.type)),
            .hint = breach.nominal() ? "a lower tap; " + size_command(context, "")
                                     : lower_tap_hint(context, breach)};
}

/// One finding for each lamp that leaves its window: an error where the nominal case already does, a warning
/// where only the weak or strong case does.
template<class Breaks>
std::vector<Finding> find_breaches(const RuleContext& context, Breaks breaks,
                                   Finding (*describe)(const RuleContext&, const Breach&)) {
    std::vector<Finding> findings;
    std::vector<bool> told(context.site.fixtures.size(), false);
    for (const CaseResult& result : context.solution.cases) {
        for (const LampResult& lamp : result.lamps) {
            const FixtureType* type = context.circuits.fixture_types[lamp.fixture];
            if (!breaks(*type, lamp.volts) || told[lamp.fixture]) continue;
            told[lamp.fixture] = true;
            const Breach breach{context.site.fixtures[lamp.fixture], *type, lamp, result.conditions};
            Finding finding = describe(context, breach);
            finding.severity = breach.nominal() ? Severity::error : Severity::warning;
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

std::vector<Finding> find_undervoltage(const RuleContext& context) {
    return find_breaches(context, too_low, low_finding);
}

std::vector<Finding> find_overvoltage(const RuleContext& context) {
    return find_breaches(context, too_high, high_finding);
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
