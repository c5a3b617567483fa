#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"
#include <set>

namespace rillwatt {

namespace {

std::string item(std::string_view html) { return fmt::format("<li>{}</li>\n", html); }

std::string circuit_items() {
    return item("A cable length is two conductors: R = 2 &times; length &times; ohms of one conductor at its "
                "temperature, "
                "r<sub>T</sub> = r<sub>ref</sub> (1 + &alpha; (T &minus; T<sub>ref</sub>)). A "
                "fixture&rsquo;s own lead "
                "counts for that fixture alone; every judgement is on the volts at the lamp.") +
           item("A transformer is an ideal winding behind one impedance: the head of a run has tap &times; "
                "(supply / "
                "primary &minus; regulation &times; &Sigma;(tap &times; amperes) / VA), so all runs of one "
                "transformer "
                "pull on each other.") +
           item(
               "A lamp draws what its load model says at its own volts: constant power I = VA / V, constant "
               "current "
               "I = VA / rated V, filament I &prop; V<sup>0.55</sup>, resistance I &prop; V. Volts and "
               "amperes are solved "
               "together, the upper root, to a billionth of a volt, and checked by Kirchhoff&rsquo;s laws.") +
           item("Reactance is left out below 6 AWG, where it is small against resistance. Currents of lamps "
                "with different "
                "power factors are added as if in phase, which is on the safe side.");
}

std::string case_items(const Assessment& assessment) {
    const Site& site = *assessment.site;
    std::string out;
    for (const CaseResult& result : assessment.solution.cases) {
        const OperatingCase& conditions = result.conditions;
        out += item(fmt::format("Case {}: supply {}, conductor at {}{}.", html_text(conditions.name),
                                nominal_volts_text(site.settings.supply_voltage * conditions.supply_factor),
                                celsius_text(conditions.conductor),
                                conditions.loaded ? "" : ", no load current: the most volts a lamp can see"));
    }
    return out;
}

/// The conductor tables and catalogs the figures were taken from.
std::string source_items(const Assessment& assessment) {
    std::set<std::string> sources;
    const Catalog& catalog = *assessment.catalog;
    for (const SegmentResult& segment : assessment.solution.nominal().segments) {
        const ConductorTable* table = find_entry(catalog.tables, segment.type->table);
        if (table != nullptr) sources.insert("Conductors: " + table->source);
        sources.insert("Cables: " + segment.type->source);
    }
    for (const Fixture& fixture : assessment.site->fixtures)
        if (const FixtureType* type = find_entry(catalog.fixtures, fixture.model))
            sources.insert("Fixtures: " + type->source);
    for (const TransformerCircuit& circuit : assessment.circuits.transformers)
        if (circuit.type != nullptr) sources.insert("Transformers: " + circuit.type->source);
    for (const Pump& pump : assessment.site->pumps)
        if (const PumpType* type = find_entry(catalog.pumps, pump.model))
            sources.insert("Pumps: " + type->source);
    std::string out;
    for (const std::string& source : sources)
        out += item(html_text(source));
    return out;
}

} // namespace

std::string method_section(const ReportPageParts& parts) {
    const SiteSettings& settings = parts.site.assessment.site->settings;
    std::string out = section_open("method", "Method and assumptions");
    out += "<h3>The circuit</h3>\n<ul>\n" + circuit_items() + "</ul>\n";
    out += "<h3>The three cases</h3>\n<ul>\n" + case_items(parts.site.assessment) + "</ul>\n";
    out += "<h3>Lengths and energy</h3>\n<ul>\n";
    out += item(fmt::format(
        "A length that is not typed is the shortest trench on the plan that passes no building, paving "
        "or water (nor a gap of up to 3 mm between two of them), plus {} %.",
        trimmed_text(100 * settings.cable_allowance, 1)));
    out += item("Energy of a year: (lamp watts + cable, lead and winding loss + no-load watts) &times; hours "
                "&times; nights; "
                "pumps by their nameplate watts.");
    out += "</ul>\n";
    const std::string sources = source_items(parts.site.assessment);
    if (!sources.empty()) out += "<h3>Where the figures come from</h3>\n<ul>\n" + sources + "</ul>\n";
    return out + "</section>\n";
}

} // namespace rillwatt
