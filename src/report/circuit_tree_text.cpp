#include "circuit_tree_text.hpp"

#include "rillwatt/check/limits.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/report/utf8.hpp"

#include <fmt/format.h>

#include "solved_circuit.hpp"

namespace rillwatt {

namespace {

constexpr std::size_t label_columns = 30;
constexpr std::size_t deepest_indent = 6; // forks drawn by indentation; deeper ones name what feeds them

/// A node still to be drawn, with what stands before its name and before the names of what it feeds.
struct Pending {
    int node = 0;
    std::string before;
    std::string before_fed;
    std::size_t depth = 0;
};

class TreeText {
  public:
    TreeText(const Assessment& assessment, const TextStyle& style, const SolvedCircuit& solved,
             std::string& out)
        : site_(*assessment.site), style_(style), solved_(solved), out_(out) {}

    void draw() {
        draw_transformer();
        for (std::size_t i = solved_.circuit->runs.size(); i-- > 0;)
            push(solved_.circuit->runs[i].node, i + 1 == solved_.circuit->runs.size(), "", 0);
        while (!pending_.empty()) {
            const Pending next = std::move(pending_.back());
            pending_.pop_back();
            draw_node(next);
            push_fed(next);
        }
        for (const CircuitLink& link : solved_.circuit->links)
            draw_link(link);
    }

  private:
    const CircuitNode& written(int node) const {
        return solved_.circuit->nodes[static_cast<std::size_t>(node)];
    }
    const SolvedNode& answer(int node) const { return solved_.nodes[static_cast<std::size_t>(node)]; }
    std::string name(int node) const { return printable(node_id(site_, written(node))); }

    void push(int node, bool last, const std::string& before, std::size_t depth) {
        pending_.push_back(
            {node, before + (last ? "└─ " : "├─ "), before + (last ? "   " : "│  "), depth + 1});
    }

    void push_fed(const Pending& feed) {
        const std::vector<int>& fed = answer(feed.node).children;
        if (fed.size() == 1) {
            pending_.push_back({fed[0], feed.before_fed + "↓  ", feed.before_fed, feed.depth});
            return;
        }
        for (std::size_t i = fed.size(); i-- > 0;) {
            if (feed.depth < deepest_indent)
                push(fed[i], i + 1 == fed.size(), feed.before_fed, feed.depth);
            else
                pending_.push_back({fed[i], feed.before_fed + "·  ", feed.before_fed, feed.depth});
        }
    }

    void draw_transformer();
    void draw_node(const Pending& drawn);
    void draw_link(const CircuitLink& link);
    void line(const std::string& label, const std::string& figures);

    std::string length_column(const CircuitNode& node) const {
        if (node.kind == NodeKind::run) return "";
        return node.length ? decimal_length_text(*node.length, site_.settings.units) : "open";
    }

    std::string cable_column(const CircuitNode& node) const {
        return node.cable != nullptr ? printable(node.cable->id) : "open";
    }

    std::string volts_column(const SolvedNode& node) const {
        if (node.lamp != nullptr) return volts_text(node.lamp->volts);
        return node.volts ? volts_text(*node.volts) : "-";
    }

    std::string amps_column(const SolvedNode& node) const {
        if (node.run != nullptr) return amps_text(node.run->amps);
        return node.segment != nullptr ? amps_text(node.segment->amps) : "-";
    }

    std::string remark(const Pending& drawn) const;

    const Site& site_;
    const TextStyle& style_;
    const SolvedCircuit& solved_;
    std::string& out_;
    std::vector<Pending> pending_;
    std::string label_; ///< of the line being drawn, as are the figures: their memory serves every line
    std::string figures_;
};

void TreeText::draw_transformer() {
    const Transformer& transformer = site_.transformers[solved_.circuit->transformer];
    std::string about = printable(transformer.id);
    const TransformerType* type = solved_.circuit->type;
    about +=
        type != nullptr ? fmt::format(": {}, {}", printable(type->id), va_text(type->va)) : ": model open";
    if (transformer.circuit) about += ", on circuit " + printable(*transformer.circuit);
    if (solved_.transformer != nullptr)
        about += fmt::format("; carries {}, {} of its rating", va_text(solved_.transformer->load),
                             percent_text(solved_.transformer->loading));
    out_ += wrapped(about, style_.width, "", "    ");
    if (solved_.unsolved != nullptr)
        out_ += wrapped(
            fmt::format("no operating point: carries at most {} of its load; {} on {} gives way first",
                        percent_text(solved_.unsolved->carried_share),
                        printable(site_.fixtures[solved_.unsolved->fixture].id),
                        printable(site_.runs[solved_.unsolved->run].id)),
            style_.width, "    ", "    ");
    else if (solved_.transformer == nullptr)
        out_ += "    left out of the numbers: something is still open, see the findings\n";
}

std::string TreeText::remark(const Pending& drawn) const {
    const CircuitNode& node = written(drawn.node);
    if (node.kind == NodeKind::run) {
        const std::optional<Volts> tap = solved_.circuit->runs[static_cast<std::size_t>(node.run)].tap;
        return tap ? "tap " + nominal_volts_text(*tap) : "tap open";
    }
    std::string text;
    if (node.fixture != nullptr) {
        const LampResult* lamp = answer(drawn.node).lamp;
        if (lamp != nullptr && below(lamp->volts, node.fixture->window_low)) text = "LOW ";
        if (lamp != nullptr && above(lamp->volts, node.fixture->window_high)) text = "HIGH ";
        text += printable(node.fixture->id);
    }
    if (drawn.depth >= deepest_indent && node.parent >= 0 && answer(node.parent).children.size() > 1)
        text += " from " + name(node.parent);
    return text;
}

void TreeText::draw_node(const Pending& drawn) {
    const CircuitNode& node = written(drawn.node);
    const SolvedNode& found = answer(drawn.node);
    std::string& figures = figures_;
    figures.clear();
    append_padded_left(figures, length_column(node), 9);
    figures += "  ";
    append_padded_right(figures, clipped(cable_column(node), 9), 9);
    append_padded_left(figures, volts_column(found), 8);
    append_padded_left(figures, amps_column(found), 8);
    const std::size_t left = style_.width > label_columns + 38 ? style_.width - label_columns - 38 : 8;
    std::string note = clipped(remark(drawn), left);
    Ink ink = Ink::faint;
    if (note.starts_with("LOW ") || note.starts_with("HIGH ")) ink = Ink::error;
    if (!note.empty()) (figures += "  ") += inked(style_, ink, note);
    (label_ = drawn.before) += name(drawn.node);
    line(label_, figures);
}

void TreeText::line(const std::string& label, const std::string& figures) {
    if (display_width(label) <= label_columns) {
        append_padded_right(out_, label, label_columns);
        out_ += figures;
        out_ += '\n';
        return;
    }
    out_ += clipped(label, style_.width) + '\n';
    out_ += std::string(label_columns, ' ') + figures + '\n';
}

void TreeText::draw_link(const CircuitLink& link) {
    const std::string length =
        link.length ? decimal_length_text(*link.length, site_.settings.units) : "length open";
    out_ += wrapped(fmt::format("ring {}: {} to {}, {} of {}", printable(site_.links[link.link].id),
                                name(link.a), name(link.b), length,
                                link.cable != nullptr ? printable(link.cable->id) : "open cable"),
                    style_.width, "    ", "      ");
}

} // namespace

std::string circuit_trees_text(const Assessment& assessment, const TextStyle& style) {
    std::string out =
        inked(style, Ink::heading, "CIRCUIT") + "  nominal case; ↓ is fed by the line above it\n";
    out += inked(style, Ink::faint, padded_right("", label_columns) + "   length  cable       volts    amps");
    out += '\n';
    for (const SolvedCircuit& solved : solved_circuits(assessment, assessment.solution.nominal()))
        TreeText(assessment, style, solved, out).draw();
    return out;
}

} // namespace rillwatt
