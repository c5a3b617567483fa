#include "rillwatt/check/limits.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include <vector>

namespace rillwatt {

namespace {

/// A lamp whose volts leave its window in one case.
struct Breach {
    const Fixture& fixture;
    const FixtureType& type;
    Volts volts;
    const OperatingCase& conditions;
};

/// What the catalog says of each fixture of the site; null where it says nothing.
std::vector<const FixtureType*> fixture_types(const RuleContext& context) {
    std::vector<const FixtureType*> types;
    types.reserve(context.site.fixtures.size());
    EntryFinder known(context.catalog.fixtures);
    for (const Fixture& fixture : context.site.fixtures)
        types.push_back(known.find(fixture.model));
    return types;
}

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

Finding low_finding(const Breach& breach) {
    return {
        .part = breach.fixture.id,
        .location = breach.fixture.location,
        .message = fmt::format("{} gets {} V {}, {} V below its window of {}", breach.fixture.id,
                               fixed_text(breach.volts.value(), 2), words_for(breach.conditions),
                               fixed_text((breach.type.window_low - breach.volts).value(), 2),
                               window_text(breach.type)),
        .hint =
            "thicker cable, a higher tap, a shorter way or fewer lights on the run; `rillwatt size` chooses"};
}

Finding high_finding(const Breach& breach) {
    return {.part = breach.fixture.id,
            .location = breach.fixture.location,
            .message = fmt::format("{} gets {} V {}, {} V above its window of {}", breach.fixture.id,
                                   fixed_text(breach.volts.value(), 2), words_for(breach.conditions),
                                   fixed_text((breach.volts - breach.type.window_high).value(), 2),
                                   window_text(breach.type)),
            .hint = "a lower tap; `rillwatt size` chooses"};
}

/// One finding for each lamp that leaves its window: an error where the nominal case already does, a warning
/// where only the weak or strong case does.
template<class Breaks>
std::vector<Finding> find_breaches(const RuleContext& context, Breaks breaks,
                                   Finding (*describe)(const Breach&)) {
    std::vector<Finding> findings;
    const std::vector<const FixtureType*> types = fixture_types(context);
    std::vector<bool> told(context.site.fixtures.size(), false);
    for (const CaseResult& result : context.solution.cases) {
        const bool nominal = result.conditions.name == "nominal";
        for (const LampResult& lamp : result.lamps) {
            const FixtureType* type = types[lamp.fixture];
            if (type == nullptr || told[lamp.fixture] || !breaks(*type, lamp.volts)) continue;
            told[lamp.fixture] = true;
            Finding finding =
                describe({context.site.fixtures[lamp.fixture], *type, lamp.volts, result.conditions});
            finding.severity = nominal ? Severity::error : Severity::warning;
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
