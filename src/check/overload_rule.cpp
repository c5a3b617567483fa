#include "rillwatt/check/limits.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "all_rules.hpp"
#include <algorithm>
#include <cmath>
#include <map>

namespace rillwatt {

namespace {

bool overloaded(const SegmentResult& segment) {
    return above(Amperes(std::abs(segment.amps.value())), segment.type->ampacity);
}

/// Where each part of the site is written, by id.
std::map<std::string_view, SourceLocation> part_locations(const Site& site) {
    std::map<std::string_view, SourceLocation> places;
    for (const Splice& splice : site.splices)
        places[splice.id] = splice.location;
    for (const Fixture& fixture : site.fixtures)
        places[fixture.id] = fixture.location;
    for (const Link& link : site.links)
        places[link.id] = link.location;
    return places;
}

bool any_overloaded(const RuleContext& context) {
    const std::vector<SegmentResult>& segments = context.solution.nominal().segments;
    return std::any_of(segments.begin(), segments.end(), overloaded);
}

std::vector<Finding> find_cable(const RuleContext& context) {
    if (!any_overloaded(context)) return {};
    std::vector<Finding> findings;
    const auto places = part_locations(context.site);
    std::map<std::string_view, std::string_view> overloaded_upstream; // part -> its overloaded cable
    for (const SegmentResult& segment : context.solution.nominal().segments) {
        if (!overloaded(segment)) continue;
        const std::string_view part = segment.link.empty() ? segment.to : segment.link;
        const auto feed = overloaded_upstream.find(segment.from);
        const bool told =
            segment.link.empty() && feed != overloaded_upstream.end() && feed->second == segment.cable;
        if (segment.link.empty()) overloaded_upstream[part] = segment.cable;
        if (told) continue; // the length that feeds it says so already
        const auto place = places.find(part);
        findings.push_back(
            {.severity = Severity::error,
             .part = std::string(part),
             .location = place == places.end() ? SourceLocation{} : place->second,
             .message =
                 fmt::format("the {} cable from {} to {} carries {} A, its ampacity is {} A", segment.cable,
                             segment.from, segment.to, fixed_text(std::abs(segment.amps.value()), 2),
                             trimmed_text(segment.type->ampacity.value(), 2)),
             .hint = "a thicker cable from the transformer on, or two runs"});
    }
    return findings;
}

std::vector<Finding> find_secondary(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const RunResult& result : context.solution.nominal().runs) {
        const TransformerType* type = context.circuits.transformers[result.transformer].type;
        const Amperes amps(std::abs(result.amps.value())); // a joined tap may drive it backwards
        if (type == nullptr || !above(amps, type->secondary_limit)) continue;
        const Run& run = context.site.runs[result.run];
        findings.push_back(
            {.severity = Severity::error,
             .part = run.id,
             .location = run.location,
             .message = fmt::format("run {} draws {} A, more than the {} A one output of {} may give", run.id,
                                    fixed_text(amps.value(), 2),
                                    trimmed_text(type->secondary_limit.value(), 2), type->id),
             .hint = "split the run in two"});
    }
    return findings;
}

Finding load_finding(const RuleContext& context, const TransformerResult& result, Severity severity) {
    const Transformer& transformer = context.site.transformers[result.transformer];
    const TransformerType& type = *context.circuits.transformers[result.transformer].type;
    return {.severity = severity,
            .part = transformer.id,
            .location = transformer.location,
            .message = fmt::format("transformer {} carries {} VA of its {} VA, {} %", transformer.id,
                                   fixed_text(result.load.value(), 1), trimmed_text(type.va.value(), 1),
                                   fixed_text(result.loading * 100, 1)),
            .hint = "a larger transformer, or move a run to another one"};
}

std::vector<Finding> find_overloaded_transformer(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const TransformerResult& result : context.solution.nominal().transformers)
        if (above(result.loading, limits::transformer_rating.value))
            findings.push_back(load_finding(context, result, Severity::error));
    return findings;
}

std::vector<Finding> find_margin(const RuleContext& context) {
    std::vector<Finding> findings;
    for (const TransformerResult& result : context.solution.nominal().transformers)
        if (above(result.loading, limits::transformer_margin.value) &&
            !above(result.loading, limits::transformer_rating.value))
            findings.push_back(load_finding(context, result, Severity::warning));
    return findings;
}

} // namespace

Rule cable_overloaded_rule() {
    return {.id = "cable-overloaded",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A cable carries more than its ampacity",
            .explanation =
                "Copper that carries too much current heats its insulation. Each length is judged on its "
                "own current; of a chain of overloaded lengths of one cable the first is named.",
            .source = limits::ampacity_source,
            .find = find_cable};
}

Rule secondary_overloaded_rule() {
    return {.id = "secondary-overloaded",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A run draws more than one output of its transformer may give",
            .explanation =
                "Every output of a low-voltage lighting supply is limited, to 25 A unless its nameplate "
                "says less. Split the run over two outputs.",
            .source = limits::secondary_source,
            .find = find_secondary};
}

Rule transformer_overloaded_rule() {
    return {.id = "transformer-overloaded",
            .group = RuleGroup::low_voltage,
            .severity = "error",
            .summary = "A transformer carries more than its nameplate",
            .explanation =
                "The load is what the runs draw at their heads, cable losses included, in volt-amperes.",
            .source = limits::transformer_rating.source,
            .find = find_overloaded_transformer};
}

Rule transformer_margin_rule() {
    return {.id = "transformer-margin",
            .group = RuleGroup::low_voltage,
            .severity = "warning",
            .summary = "A transformer is loaded beyond 80 %",
            .explanation =
                "It works, but runs hot and leaves no room for the two lights that come next year.",
            .source = limits::transformer_margin.source,
            .find = find_margin};
}

} // namespace rillwatt
