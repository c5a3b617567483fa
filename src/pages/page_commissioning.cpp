#include "rillwatt/layout/places.hpp"
#include "rillwatt/plan/solved_circuit.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"

namespace rillwatt {

namespace {

constexpr std::string_view blanks = "<td class=\"blank\"></td><td class=\"blank\"></td>";

std::string reading_row(std::string_view id, const std::string& where, const std::string& computed) {
    return fmt::format("<tr{}><th scope=\"row\">{}</th><td class=\"n\">{}</td>{}</tr>\n", part_attribute(id),
                       where, computed, blanks);
}

/// A lamp is measured at its own terminals; one in water where its lead joins the cable, on dry ground.
std::string lamp_reading(const Site& site, const Fixture& fixture, const LampResult& lamp) {
    const bool wet = in_water(site, fixture);
    return reading_row(fixture.id,
                       part_link(fixture.id) +
                           sub_line(wet ? "where its lead joins the cable, out of the water" : "at the lamp"),
                       volts_text(wet ? lamp.splice_volts : lamp.volts));
}

/// Every lamp of one run, in the order the cable reaches them.
std::string lamp_readings(const Site& site, const SolvedCircuit& solved, int run) {
    std::string out;
    for (std::size_t i = 0; i < solved.nodes.size(); ++i) {
        const CircuitNode& node = solved.circuit->nodes[i];
        const LampResult* lamp = solved.nodes[i].lamp;
        if (lamp == nullptr || node.run != run) continue;
        out += lamp_reading(site, site.fixtures[node.part], *lamp);
    }
    return out;
}

std::string run_readings(const Site& site, const SolvedCircuit& solved, std::size_t run) {
    const RunResult& result = *solved.nodes[static_cast<std::size_t>(solved.circuit->runs[run].node)].run;
    const std::string& id = site.runs[result.run].id;
    std::string out = table_open(fmt::format("Run {} on tap {}", id, nominal_volts_text(result.tap)),
                                 {"Where", "#Computed", "Meter", "Seen, by"});
    out += reading_row(id, "Terminals" + sub_line("volts, all lamps on"), volts_text(result.volts));
    out += reading_row(id, "Cable" + sub_line("amperes, clamp on one conductor"), amps_text(result.amps));
    return out + lamp_readings(site, solved, static_cast<int>(run)) + "</tbody></table>\n";
}

std::string transformer_readings(const Site& site, const SolvedCircuit& solved) {
    const Transformer& transformer = site.transformers[solved.circuit->transformer];
    std::string out =
        fmt::format("<h3>{}: {}, set up for {} in</h3>\n", html_text(transformer.id),
                    html_text(solved.circuit->type->id), nominal_volts_text(solved.circuit->supply));
    if (!transformer.control.empty())
        out += fmt::format("<p>Control: {}</p>\n", html_text(transformer.control));
    for (std::size_t run = 0; run < solved.circuit->runs.size(); ++run)
        out += run_readings(site, solved, run);
    return out;
}

/// A line to tick for each circuit that is said to be protected.
std::string ground_fault_tests(const Site& site) {
    std::string out;
    for (const BranchCircuit& circuit : site.circuits)
        if (circuit.gfci)
            out += fmt::format("<li>{}: trips by its test button ____ &nbsp; resets ____</li>\n",
                               html_text(circuit.id));
    return out.empty() ? out
                       : "<p>Ground-fault protection, before anything else:</p>\n<ul>\n" + out + "</ul>\n";
}

} // namespace

std::string commissioning_section(const ReportPageParts& parts) {
    const Assessment& assessment = parts.site.assessment;
    if (assessment.solution.nominal().transformers.empty()) return "";
    std::string out = section_open("commissioning", "Commissioning sheet", true);
    out += "<p>Only when the licensed electrician has finished. No hand and no meter lead in the water while "
           "anything is on: a light in water is measured where its lead joins the cable.</p>\n" +
           ground_fault_tests(*assessment.site);
    out += fmt::format(
        "<p>Switch everything on, wait until the lamps are warm, measure with a true-rms meter and write "
        "beside the "
        "computed figure. The figures are for {} at the outlet and conductors at {}: write down the supply "
        "you find, "
        "every reading moves with it. Cool cable in the ground reads a little higher than computed.</p>\n"
        "<p>Supply measured: ____________ &nbsp; Date: ____________ &nbsp; Name: "
        "______________________</p>\n",
        nominal_volts_text(assessment.site->settings.supply_voltage),
        celsius_text(assessment.site->settings.conductor_temperature));
    for (const SolvedCircuit& solved : parts.site.circuits)
        if (solved.transformer != nullptr) out += transformer_readings(*assessment.site, solved);
    return out + "</section>\n";
}

} // namespace rillwatt
