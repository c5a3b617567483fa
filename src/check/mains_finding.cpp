#include "mains_finding.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {

Finding finding_about(const RuleContext& context, const Part& part, Severity severity, std::string message,
                      std::string hint, const LimitSource& source) {
    return {.severity = severity,
            .part = part.id,
            .location = part.location,
            .message = std::move(message),
            .hint = std::move(hint),
            .source = source_text(source, context.site.settings)};
}

Finding cannot_judge(const RuleContext& context, const Part& part, const std::string& missing,
                     const std::string& write, const LimitSource& source,
                     std::vector<std::string_view> open_keys) {
    Finding finding =
        finding_about(context, part, Severity::note, fmt::format("not judged for {}: {}", part.id, missing),
                      "write " + write, source);
    finding.open_keys = std::move(open_keys);
    return finding;
}

Finding not_judged_abroad(const RuleContext& context) {
    return {
        .severity = Severity::note,
        .location = {context.site.file, 0},
        .message =
            "the site says code = \"iec\": breakers against conductors, conductors of pumps, the size of "
            "lighting circuits, burial depths, cords in water and distances of lights and transformers to "
            "water are limits of the US code and are not judged",
        .hint = "ask the electrician for the local rules"};
}

const BranchCircuit& written(const RuleContext& context, const MainsCircuit& circuit) {
    return context.site.circuits[circuit.circuit];
}

const BranchCircuit* circuit_named(const Site& site, const std::optional<std::string>& id) {
    if (!id) return nullptr;
    const auto found = std::find_if(site.circuits.begin(), site.circuits.end(),
                                    [&](const BranchCircuit& circuit) { return circuit.id == *id; });
    return found == site.circuits.end() ? nullptr : &*found;
}

std::string length_in(const RuleContext& context, Metres length) {
    if (context.site.settings.units == LengthUnit::metres) return trimmed_text(length.value(), 2) + " m";
    return trimmed_text(length / feet(1), 2) + " ft";
}

std::string depth_in(const RuleContext& context, Metres depth) {
    return depth_text(depth, context.site.settings.units);
}

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " and " : ", ";
        text += words[i];
    }
    return text;
}

std::string some_of(std::vector<std::string> ids) {
    constexpr std::size_t shown = 4;
    if (ids.size() <= shown) return joined(ids);
    const std::size_t more = ids.size() - (shown - 1);
    ids.resize(shown - 1);
    ids.push_back(fmt::format("{} more", more));
    return joined(ids);
}

bool abroad(const RuleContext& context) { return context.site.settings.code == CodeFamily::iec; }

} // namespace rillwatt
