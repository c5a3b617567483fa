#include "diagram_layout.hpp"

#include "rillwatt/limits/standing.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt {
namespace {

constexpr double edge = 22;
constexpr double row_height = 42;
constexpr double between_circuits = 26;
constexpr double box_width = 128;
constexpr double least_box_height = 92;
constexpr double symbol_room = 14; ///< from the centre of a symbol to the words after it
constexpr double gap = 12;

std::string volts_text(Volts volts) { return fixed_text(volts.value(), 2) + " V"; }

DiagramNode words_of(const Assessment& assessment, const SolvedCircuit& solved, std::size_t i) {
    const Site& site = *assessment.site;
    const CircuitNode& node = solved.circuit->nodes[i];
    const SolvedNode& answer = solved.nodes[i];
    DiagramNode out;
    out.node = i;
    out.part = node_id(site, node);
    out.name = shortened(out.part, 22);
    if (answer.lamp) {
        out.figure = volts_text(answer.lamp->volts);
        out.bad = node.fixture && place_in_window(*node.fixture, answer.lamp->volts) != WindowPlace::inside;
    } else if (answer.volts) {
        out.figure = volts_text(*answer.volts);
    }
    if (node.kind == NodeKind::run) {
        const CircuitRun& run = solved.circuit->runs[static_cast<std::size_t>(node.run)];
        out.cable = run.tap ? "tap " + trimmed_text(run.tap->value(), 1) + " V" : "tap open";
        if (answer.run) out.current = fixed_text(answer.run->amps.value(), 2) + " A";
        return out;
    }
    out.cable = node.length ? length_text(*node.length, site.settings.units) : "length open";
    out.cable += node.cable ? " of " + shortened(node.cable->id, 14) : ", cable open";
    if (answer.segment) out.current = fixed_text(answer.segment->amps.value(), 2) + " A";
    return out;
}

/// Rows from the top down: a leaf takes the next one, a parent stands level with the middle of its children.
double give_rows(DiagramCircuit& circuit, std::size_t node, double& next_row) {
    const std::span<const int> children = circuit.solved->fed(node);
    double first = 0;
    double last = 0;
    for (std::size_t k = 0; k < children.size(); ++k) {
        const auto child = static_cast<std::size_t>(children[k]);
        circuit.nodes[child].depth = circuit.nodes[node].depth + 1;
        last = give_rows(circuit, child, next_row);
        if (k == 0) first = last;
    }
    if (children.empty()) {
        first = last = next_row;
        next_row += row_height;
    }
    circuit.nodes[node].at.y = (first + last) / 2;
    return circuit.nodes[node].at.y;
}

double give_rows(DiagramCircuit& circuit, double top) {
    double next_row = top + row_height / 2 + 4;
    for (const CircuitRun& run : circuit.solved->circuit->runs)
        give_rows(circuit, static_cast<std::size_t>(run.node), next_row);
    const double bottom = std::max(next_row - row_height / 2, top + least_box_height);
    // A transformer with few rows is taller than they are: they move to its middle.
    const double slack = bottom - (next_row - row_height / 2);
    for (DiagramNode& node : circuit.nodes)
        node.at.y += slack / 2;
    circuit.box = {edge, (top + bottom - least_box_height) / 2, box_width, least_box_height};
    return bottom;
}

/// Room the words of a column need: before the symbols, and after them.
struct ColumnRoom {
    double cable = 0;
    double name = 0;
};

std::vector<ColumnRoom> column_rooms(const std::vector<DiagramCircuit>& circuits) {
    std::vector<ColumnRoom> rooms;
    for (const DiagramCircuit& circuit : circuits) {
        for (const DiagramNode& node : circuit.nodes) {
            rooms.resize(std::max(rooms.size(), static_cast<std::size_t>(node.depth) + 1));
            ColumnRoom& room = rooms[static_cast<std::size_t>(node.depth)];
            room.cable = std::max(
                {room.cable, text_width(node.cable, diagram_type), text_width(node.current, diagram_type)});
            room.name = std::max({room.name, text_width(node.name, diagram_type, true),
                                  text_width(node.figure, diagram_type, true)});
        }
    }
    return rooms;
}

double give_columns(std::vector<DiagramCircuit>& circuits) {
    double bus = edge + box_width + 14;
    const std::vector<ColumnRoom> rooms = column_rooms(circuits);
    for (std::size_t depth = 0; depth < rooms.size(); ++depth) {
        const double symbol = bus + gap + rooms[depth].cable + gap;
        for (DiagramCircuit& circuit : circuits) {
            for (DiagramNode& node : circuit.nodes) {
                if (static_cast<std::size_t>(node.depth) != depth) continue;
                node.line_from = bus;
                node.at.x = symbol;
            }
        }
        bus = symbol + symbol_room + rooms[depth].name + gap;
    }
    return bus + edge;
}

} // namespace

DiagramLayout diagram_layout(const Assessment& assessment, double top) {
    DiagramLayout layout;
    layout.solved = solved_circuits(assessment, assessment.solution.nominal());
    for (const SolvedCircuit& solved : layout.solved) {
        DiagramCircuit circuit{&solved, {}, {}};
        for (std::size_t i = 0; i < solved.circuit->nodes.size(); ++i)
            circuit.nodes.push_back(words_of(assessment, solved, i));
        layout.circuits.push_back(std::move(circuit));
    }
    double y = top;
    for (DiagramCircuit& circuit : layout.circuits)
        y = give_rows(circuit, y) + between_circuits;
    layout.width = std::max(give_columns(layout.circuits), 640.0);
    layout.height = y;
    return layout;
}

} // namespace rillwatt
