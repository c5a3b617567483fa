#include "rillwatt/drawing/diagram_svg.hpp"

#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/cautions.hpp"
#include "rillwatt/text/escape.hpp"

#include <fmt/format.h>

#include "diagram_layout.hpp"
#include "drawing_style.hpp"
#include "shape_markup.hpp"
#include <algorithm>

namespace rillwatt {
namespace {

std::string path(const std::string& classes, const std::string& d, const std::string& style = "") {
    return fmt::format("<path class=\"{}\" d=\"{}\"{}/>", classes, d,
                       style.empty() ? "" : " style=\"" + style + "\"");
}

std::string run_colour(const DiagramCircuit& circuit, const CircuitNode& node) {
    return run_class(circuit.solved->circuit->runs[static_cast<std::size_t>(node.run)].run);
}

/// Upright line from which the cables of several children leave.
std::string bus(double x, double top, double bottom, double from_x, double level, const std::string& colour) {
    return fmt::format(
        "<g class=\"{}\">{}{}</g>\n", colour,
        path("rw-cable", fmt::format("M{} {}H{}", coordinate(from_x), coordinate(level), coordinate(x)),
             "stroke-width:2px"),
        top < bottom
            ? path("rw-cable", fmt::format("M{} {}V{}", coordinate(x), coordinate(top), coordinate(bottom)),
                   "stroke-width:2px")
            : "");
}

std::string node_symbol(const CircuitNode& node) {
    if (node.kind == NodeKind::run) return "<circle class=\"rw-body\" r=\"3.6\"/>";
    if (node.kind == NodeKind::splice) return symbol_markup({SymbolKind::splice});
    return symbol_markup({symbol_of(node.fixture), 0});
}

std::string node_title(const DiagramNode& node) {
    return fmt::format("{}: {}{}{}", node.part, node.cable, node.current.empty() ? "" : ", " + node.current,
                       node.figure.empty() ? "" : ", " + node.figure);
}

std::string drawn_node(const DiagramCircuit& circuit, const DiagramNode& node) {
    const CircuitNode& part = circuit.solved->circuit->nodes[node.node];
    const bool is_run = part.kind == NodeKind::run;
    const CableStroke stroke = is_run ? CableStroke{2, "", ""} : cable_stroke(part.cable);
    const double words_x = node.line_from + 8;
    std::string out = fmt::format("<g class=\"rw-part rw-node {}\"{}>{}", run_colour(circuit, part),
                                  part_attribute(node.part), svg_title(node_title(node)));
    out += path(
        "rw-cable",
        fmt::format("M{} {}H{}", coordinate(node.line_from), coordinate(node.at.y), coordinate(node.at.x)),
        fmt::format("stroke-width:{}px{}", coordinate(stroke.width),
                    stroke.dashes.empty() ? "" : ";stroke-dasharray:" + stroke.dashes));
    out += svg_text({words_x, node.at.y - 5}, node.cable, diagram_type, is_run ? "" : "rw-faint");
    out += svg_text({words_x, node.at.y + 13}, node.current, diagram_type, "rw-faint");
    const double after = node.at.x + 14;
    out += svg_text({after, node.at.y - 5}, node.name, diagram_type, "", Anchor::start, true);
    out += svg_text({after, node.at.y + 13}, node.figure, diagram_type, node.bad ? "rw-bad-text" : "",
                    Anchor::start, node.bad);
    out += fmt::format("<g transform=\"translate({} {})\">{}</g></g>\n", coordinate(node.at.x),
                       coordinate(node.at.y), node_symbol(part));
    return out;
}

std::string drawn_buses(const DiagramCircuit& circuit) {
    std::string out;
    for (const DiagramNode& node : circuit.nodes) {
        const std::span<const int> children = circuit.solved->fed(node.node);
        if (children.empty()) continue;
        const DiagramNode& first = circuit.nodes[static_cast<std::size_t>(children.front())];
        const DiagramNode& last = circuit.nodes[static_cast<std::size_t>(children.back())];
        out += bus(first.line_from, first.at.y, last.at.y, node.at.x, node.at.y,
                   run_colour(circuit, circuit.solved->circuit->nodes[node.node]));
    }
    return out;
}

std::string drawn_transformer(const Assessment& assessment, const DiagramCircuit& circuit) {
    const SolvedCircuit& solved = *circuit.solved;
    const Transformer& transformer = assessment.site->transformers[solved.circuit->transformer];
    const SheetBox& box = circuit.box;
    std::vector<std::string> lines{transformer.model ? shortened(*transformer.model, 18) : "model open"};
    if (solved.transformer && solved.circuit->type)
        lines.push_back(fmt::format("{} of {} VA", fixed_text(solved.transformer->load.value(), 0),
                                    fixed_text(solved.circuit->type->va.value(), 0)));
    if (solved.transformer)
        lines.push_back(fmt::format("loaded {} %", fixed_text(solved.transformer->loading * 100, 0)));
    if (solved.unsolved) lines.push_back("no operating point");
    if (!solved.circuit->complete()) lines.push_back("not complete");
    if (transformer.circuit) lines.push_back("on circuit " + shortened(*transformer.circuit, 10));
    std::string out =
        fmt::format("<g class=\"rw-part rw-transformer\"{}>{}<rect class=\"rw-body\" x=\"{}\" y=\"{}\" "
                    "width=\"{}\" height=\"{}\" rx=\"3\"/>",
                    part_attribute(transformer.id), svg_title(transformer.id), coordinate(box.x),
                    coordinate(box.y), coordinate(box.width), coordinate(box.height));
    out += fmt::format("<g transform=\"translate({} {})\">{}</g>", coordinate(box.right() - 17),
                       coordinate(box.y + 16), symbol_markup({SymbolKind::transformer}));
    out += svg_text({box.x + 9, box.y + 19}, shortened(transformer.id, 12), 13, "", Anchor::start, true);
    for (std::size_t k = 0; k < lines.size(); ++k)
        out += svg_text({box.x + 9, box.y + 37 + 15 * static_cast<double>(k)}, lines[k], diagram_type,
                        lines[k] == "no operating point" ? "rw-bad-text" : "rw-faint");
    out += "</g>\n";
    const auto& runs = solved.circuit->runs;
    if (runs.empty()) return out;
    const DiagramNode& first = circuit.nodes[static_cast<std::size_t>(runs.front().node)];
    const DiagramNode& last = circuit.nodes[static_cast<std::size_t>(runs.back().node)];
    return out + bus(first.line_from, std::min(first.at.y, box.centre().y),
                     std::max(last.at.y, box.centre().y), box.right(), box.centre().y, "rw-run6");
}

/// Cables that close a ring, along the right edge.
std::string drawn_links(const Assessment& assessment, const DiagramCircuit& circuit, double& rail) {
    std::string out;
    for (const CircuitLink& link : circuit.solved->circuit->links) {
        const DiagramNode& a = circuit.nodes[static_cast<std::size_t>(link.a)];
        const DiagramNode& b = circuit.nodes[static_cast<std::size_t>(link.b)];
        const Link& part = assessment.site->links[link.link];
        const std::string words =
            shortened(part.id, 16) +
            (link.length ? ", " + length_text(*link.length, assessment.site->settings.units) : "") +
            (link.cable ? " of " + shortened(link.cable->id, 14) : ", cable open");
        out += fmt::format("<g class=\"rw-part rw-link rw-run6\"{}>{}{}{}</g>\n", part_attribute(part.id),
                           svg_title(part.id + ": closes a ring"),
                           path("rw-cable",
                                fmt::format("M{} {}V{}H{}V{}H{}V{}", coordinate(a.at.x), coordinate(a.at.y),
                                            coordinate(a.at.y + 18), coordinate(rail),
                                            coordinate(b.at.y + 18), coordinate(b.at.x), coordinate(b.at.y)),
                                "stroke-width:1.6px;stroke-dasharray:2 3"),
                           svg_text({rail + 5, (a.at.y + b.at.y) / 2 + 18}, words, 10, "rw-faint"));
        rail += text_width(words, 10) + 16;
    }
    return out;
}

std::string empty_diagram() { return svg_text({22, 84}, "No low-voltage circuits yet.", 12, "rw-faint"); }

} // namespace

std::string diagram_svg(const Assessment& assessment) {
    const Site& site = *assessment.site;
    DiagramLayout layout{{}, {}, 640, 110};
    if (!assessment.solution.cases.empty() && !assessment.circuits.transformers.empty())
        layout = diagram_layout(assessment, 64);
    std::string body;
    double rail = layout.width - 16;
    for (const DiagramCircuit& circuit : layout.circuits) {
        body += drawn_links(assessment, circuit, rail) + drawn_transformer(assessment, circuit) +
                drawn_buses(circuit);
        for (const DiagramNode& node : circuit.nodes)
            body += drawn_node(circuit, node);
    }
    if (layout.circuits.empty()) body = empty_diagram();
    const double width = std::max(layout.width, rail + 16);
    std::string notes =
        svg_text({22, 30}, shortened(site.settings.name, 60), 17, "", Anchor::start, true) +
        svg_text({22, 47}, "Single-line diagram, 12 V side; volts and amperes at nominal supply", 11.5,
                 "rw-faint");
    double y = layout.height + 6;
    for (const std::string_view caution : cautions())
        for (const std::string& line : broken_lines(caution, width - 44, 9.5))
            notes += svg_text({22, y += 12.5}, line, 9.5, "rw-faint");
    return fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"rw-drawing rw-diagram\" role=\"img\" "
        "aria-labelledby=\"rw-diagram-title rw-diagram-desc\" viewBox=\"0 0 {0} {1}\" width=\"{0}\" "
        "height=\"{1}\" data-drawing=\"diagram\">\n"
        "<title id=\"rw-diagram-title\">{2}</title>\n<desc id=\"rw-diagram-desc\">{3}</desc>\n{4}\n"
        "<rect class=\"rw-paper\" width=\"{0}\" height=\"{1}\"/>\n{5}\n{6}</svg>\n",
        coordinate(width), coordinate(y + 18), html_text("Single-line diagram of " + site.settings.name),
        html_text(
            "Each transformer with its runs, splices and lights; the same figures stand in the tables."),
        drawing_style(), notes, body);
}

} // namespace rillwatt
