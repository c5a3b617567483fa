#include "rillwatt/text/explain_text.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "check_sections.hpp"
#include "explain_steps.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

std::string head_text(const Explained& about, const std::string& what, const SourceLocation& location) {
    std::string text = inked(about.style, Ink::heading, what);
    if (location.line > 0) text += fmt::format("  {}:{}", printable(location.file), location.line);
    const OperatingCase& conditions = about.result.conditions;
    return text + fmt::format("\nCase {}: supply {}, conductor at {}{}.\n\n", conditions.name,
                              nominal_volts_text(about.circuit().supply * conditions.supply_factor),
                              celsius_text(conditions.conductor),
                              conditions.loaded ? "" : ", no load current");
}

std::string unanswered_text(const Explained& about) {
    if (about.solved.unsolved == nullptr && about.circuit().complete())
        return wrapped(
            "Two taps are joined without resistance between them, so there are no figures: see the "
            "taps-joined finding of `check`.",
            about.style.width, "", "");
    if (about.solved.unsolved == nullptr)
        return "Something of this circuit is still open, so there are no figures: see the open-value "
               "findings of "
               "`check`.\n";
    const NoOperatingPoint& point = *about.solved.unsolved;
    return wrapped(
        fmt::format("This circuit has no operating point. The lamps on it want constant power: as volts "
                    "fall they draw more current, which makes volts fall further. With {} of every load it "
                    "would just hold; the first to give way is {} on run {}.",
                    percent_text(point.carried_share), printable(about.site().fixtures[point.fixture].id),
                    printable(about.site().runs[point.run].id)),
        about.style.width, "", "");
}

std::string no_load_text(const Explained& about, int node) {
    const CircuitRun& run = about.circuit().runs[static_cast<std::size_t>(about.written(node).run)];
    const TransformerType& type = *about.circuit().type;
    const Volts supply = about.circuit().supply * about.result.conditions.supply_factor;
    return wrapped(fmt::format("Without any current nothing drops: tap {} x {} / {} = {} all along run {}.",
                               nominal_volts_text(*run.tap), nominal_volts_text(supply),
                               nominal_volts_text(type.primary_volts),
                               volts_text(*run.tap * (supply / type.primary_volts)), about.name(run.node)),
                   about.style.width, "", "");
}

std::string lamp_verdict(const Explained& about, int node) {
    const FixtureType& type = *about.written(node).fixture;
    const LampResult& lamp = *about.answer(node).lamp;
    return wrapped(
        fmt::format("{} gets {}; it works from {} to {}. From the tap's {} that is a drop of {}, {}.",
                    about.name(node), volts_text(lamp.volts), nominal_volts_text(type.window_low),
                    nominal_volts_text(type.window_high), nominal_volts_text(lamp.volts + lamp.drop),
                    volts_text(lamp.drop), percent_text(lamp.drop_ratio)),
        about.style.width, "", "");
}

std::string node_text(const Explained& about, int node) {
    const CircuitNode& written = about.written(node);
    if (!about.result.conditions.loaded && about.circuit().complete()) return no_load_text(about, node);
    if (about.solved.transformer == nullptr) return unanswered_text(about);
    std::string out = head_of_run_steps(about, written.run);
    if (written.kind != NodeKind::run) out += cable_steps(about, node);
    if (written.kind == NodeKind::fixture) out += lamp_steps(about, node) + '\n' + lamp_verdict(about, node);
    return out + '\n' + method_remarks(about.style);
}

std::string what_text(const Explained& about, int node) {
    const CircuitNode& written = about.written(node);
    const std::string& transformer = about.site().transformers[about.circuit().transformer].id;
    const int run = about.circuit().runs[static_cast<std::size_t>(written.run)].node;
    switch (written.kind) {
    case NodeKind::run:
        return fmt::format("{}: run from {}", about.name(node), printable(transformer));
    case NodeKind::splice:
        return fmt::format("{}: splice on run {} of {}", about.name(node), about.name(run),
                           printable(transformer));
    case NodeKind::fixture:
        break;
    }
    return fmt::format("{}: {} on run {} of {}", about.name(node),
                       printable(about.site().fixtures[written.part].model), about.name(run),
                       printable(transformer));
}

SourceLocation location_of(const Site& site, const CircuitNode& node) {
    switch (node.kind) {
    case NodeKind::run:
        return site.runs[node.part].location;
    case NodeKind::splice:
        return site.splices[node.part].location;
    case NodeKind::fixture:
        break;
    }
    return site.fixtures[node.part].location;
}

std::optional<std::string> explain_in(const Explained& about, const std::string& id) {
    const Transformer& transformer = about.site().transformers[about.circuit().transformer];
    if (transformer.id == id) {
        std::string out = head_text(about, printable(id) + ": transformer", transformer.location);
        if (about.solved.transformer == nullptr) return out + unanswered_text(about);
        return out + transformer_steps(about) + '\n' + method_remarks(about.style);
    }
    for (std::size_t i = 0; i < about.circuit().nodes.size(); ++i) {
        const int node = static_cast<int>(i);
        if (node_id(about.site(), about.written(node)) != id) continue;
        return head_text(about, what_text(about, node), location_of(about.site(), about.written(node))) +
               node_text(about, node);
    }
    return std::nullopt;
}

} // namespace

std::optional<std::string> explain_text(const Assessment& assessment, const CaseResult& result,
                                        const std::string& id, const TextStyle& style) {
    for (const SolvedCircuit& solved : solved_circuits(assessment, result))
        if (auto text = explain_in({assessment, result, solved, style}, id)) return text;
    for (const MainsCircuit& circuit : assessment.mains.circuits) {
        const bool carries = std::find(circuit.loads.begin(), circuit.loads.end(), id) != circuit.loads.end();
        if (carries || assessment.site->circuits[circuit.circuit].id == id)
            return branch_circuit_text(assessment, circuit, style);
    }
    return std::nullopt;
}

} // namespace rillwatt
