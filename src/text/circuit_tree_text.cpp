#include "circuit_tree_text.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/limits/standing.hpp"
#include "rillwatt/plan/solved_circuit.hpp"
#include "rillwatt/quantity/figure_text.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/line_writer.hpp"
#include "rillwatt/text/utf8.hpp"

#include <fmt/format.h>

#include <span>

namespace rillwatt {

namespace {

constexpr std::size_t label_columns = 30;
constexpr std::size_t deepest_indent = 6; // forks drawn by indentation; deeper ones name what feeds them

constexpr std::size_t mark_columns = 3;    // of "└─ " and its like
constexpr std::size_t figure_columns = 36; // length, cable, volts and amperes

/// What stands before the marks of the nodes below a fork, shared by all of them.
struct Margin {
    std::string text;
    std::size_t columns = 0;
};

/// A node still to be drawn.
struct Pending {
    int node = 0;
    std::size_t margin = 0; ///< before its mark
    std::string_view mark;
    std::size_t fed_margin = 0; ///< before the marks of what it feeds
    std::size_t depth = 0;
};

class TreeText {
  public:
    TreeText(const Assessment& assessment, const TextStyle& style, std::string& out)
        : site_(*assessment.site), style_(style), out_(out), line_(out),
          length_unit_(site_.settings.units == LengthUnit::feet ? metres_per_foot : 1),
          length_style_(decimal_length_style(site_.settings.units)) {}

    void draw(const SolvedCircuit& solved) {
        solved_ = &solved;
        margins_.assign(1, {});
        draw_transformer();
        const std::vector<CircuitRun>& runs = solved.circuit->runs;
        for (std::size_t i = runs.size(); i-- > 0;)
            push(runs[i].node, i + 1 == runs.size(), 0, 0);
        while (!pending_.empty()) {
            const Pending next = pending_.back();
            pending_.pop_back();
            draw_node(next);
            push_fed(next);
        }
        for (const CircuitLink& link : solved.circuit->links)
            draw_link(link);
    }

  private:
    const CircuitNode& written(int node) const {
        return solved_->circuit->nodes[static_cast<std::size_t>(node)];
    }
    const SolvedNode& answer(int node) const { return solved_->nodes[static_cast<std::size_t>(node)]; }
    std::span<const int> fed(int node) const { return solved_->fed(static_cast<std::size_t>(node)); }
    std::string name(int node) const { return printable(node_id(site_, written(node))); }

    void push(int node, bool last, std::size_t margin, std::size_t depth) {
        const std::string_view below = last ? "   " : "│  ";
        margins_.push_back(
            {margins_[margin].text + std::string(below), margins_[margin].columns + mark_columns});
        pending_.push_back({node, margin, last ? "└─ " : "├─ ", margins_.size() - 1, depth + 1});
    }

    void push_fed(const Pending& feed) {
        const std::span<const int> nodes = fed(feed.node);
        const bool forks = nodes.size() > 1;
        for (std::size_t i = nodes.size(); i-- > 0;) {
            if (forks && feed.depth < deepest_indent)
                push(nodes[i], i + 1 == nodes.size(), feed.fed_margin, feed.depth);
            else
                pending_.push_back(
                    {nodes[i], feed.fed_margin, forks ? "·  " : "↓  ", feed.fed_margin, feed.depth});
        }
    }

    std::size_t note_columns() const {
        const std::size_t others = label_columns + figure_columns + 2;
        return style_.width > others ? style_.width - others : 8;
    }

    void draw_transformer();
    void draw_node(const Pending& drawn);
    void draw_link(const CircuitLink& link);
    void add_label(const Pending& drawn);
    void add_cable(const CircuitNode& node);
    void add_remark(const Pending& drawn);
    void add_note(std::string_view note, Ink ink);
    void add_type(const FixtureType* type);

    void add_length(const CircuitNode& node);
    void add_volts(const SolvedNode& node);
    void add_amps(const SolvedNode& node);

    const Site& site_;
    const TextStyle& style_;
    std::string& out_;
    LineWriter line_;
    const SolvedCircuit* solved_ = nullptr; ///< the circuit being drawn
    std::vector<Margin> margins_;
    std::vector<Pending> pending_;
    const double length_unit_; ///< in metres
    const FigureStyle length_style_;
    std::string room_; ///< for a name that is not printable as it stands

    const CableType* last_cable_ = nullptr; ///< neighbours are mostly of one cable and of one kind of lamp:
    std::string cable_cell_;                ///< what is written for it serves the next one too
    const FixtureType* last_type_ = nullptr;
    std::string type_note_;
};

void TreeText::draw_transformer() {
    const Transformer& transformer = site_.transformers[solved_->circuit->transformer];
    std::string about = printable(transformer.id);
    const TransformerType* type = solved_->circuit->type;
    about +=
        type != nullptr ? fmt::format(": {}, {}", printable(type->id), va_text(type->va)) : ": model open";
    if (transformer.circuit) about += ", on circuit " + printable(*transformer.circuit);
    if (solved_->transformer != nullptr)
        about += fmt::format("; carries {}, {} of its rating", va_text(solved_->transformer->load),
                             percent_text(solved_->transformer->loading));
    out_ += wrapped(about, style_.width, "", "    ");
    if (solved_->unsolved != nullptr)
        out_ += wrapped(
            fmt::format("no operating point: carries at most {} of its load; {} on {} gives way first",
                        percent_text(solved_->unsolved->carried_share),
                        printable(site_.fixtures[solved_->unsolved->fixture].id),
                        printable(site_.runs[solved_->unsolved->run].id)),
            style_.width, "    ", "    ");
    else if (solved_->transformer == nullptr)
        out_ += solved_->circuit->complete()
                    ? "    left out of the numbers: joined taps give none, see the findings\n"
                    : "    left out of the numbers: something is still open, see the findings\n";
}

/// What a run hands on; the kind of a lamp, whether its volts leave the window and, where the drawing does
/// not show it, what feeds it.
void TreeText::add_remark(const Pending& drawn) {
    const CircuitNode& node = written(drawn.node);
    if (node.kind == NodeKind::run) {
        const std::optional<Volts> tap = solved_->circuit->runs[static_cast<std::size_t>(node.run)].tap;
        return add_note(tap ? "tap " + nominal_volts_text(*tap) : "tap open", Ink::faint);
    }
    const bool names_feed = drawn.depth >= deepest_indent && node.parent >= 0 && fed(node.parent).size() > 1;
    const LampResult* lamp = answer(drawn.node).lamp;
    const WindowPlace place = node.fixture != nullptr && lamp != nullptr
                                  ? place_in_window(*node.fixture, lamp->volts)
                                  : WindowPlace::inside;
    const bool low = place == WindowPlace::below;
    const bool high = place == WindowPlace::above;
    if (!low && !high && !names_feed) return add_type(node.fixture);
    std::string text = low ? "LOW " : high ? "HIGH " : "";
    if (node.fixture != nullptr) text += printable(node.fixture->id);
    if (names_feed) text += " from " + name(node.parent);
    add_note(text, low || high ? Ink::error : Ink::faint);
}

void TreeText::add_note(std::string_view note, Ink ink) {
    if (note.empty()) return;
    line_.text("  ");
    line_.text(inked(style_, ink, clipped(note, note_columns())));
}

void TreeText::add_type(const FixtureType* type) {
    if (type == nullptr) return;
    if (type != last_type_) {
        type_note_ = "  " + inked(style_, Ink::faint, clipped(printable(type->id), note_columns()));
        last_type_ = type;
    }
    line_.text(type_note_);
}

void TreeText::draw_node(const Pending& drawn) {
    const CircuitNode& node = written(drawn.node);
    const SolvedNode& found = answer(drawn.node);
    add_label(drawn);
    add_length(node);
    add_cable(node);
    add_volts(found);
    add_amps(found);
    add_remark(drawn);
    line_.end_line();
}

/// A label too long for its column gets a line of its own.
void TreeText::add_label(const Pending& drawn) {
    const Margin& margin = margins_[drawn.margin];
    const ShownText name = shown(node_id(site_, written(drawn.node)), room_);
    const std::size_t columns = margin.columns + mark_columns + name.columns;
    if (columns <= label_columns) {
        line_.text(margin.text);
        line_.text(drawn.mark);
        line_.text(name.text);
        line_.blanks(label_columns - columns);
        return;
    }
    line_.text(clipped(fmt::format("{}{}{}", margin.text, drawn.mark, name.text), style_.width));
    line_.end_line();
    line_.blanks(label_columns);
}

void TreeText::add_length(const CircuitNode& node) {
    constexpr std::size_t columns = 9;
    if (node.length)
        line_.figure(node.length->value() / length_unit_, length_style_, columns);
    else
        line_.right(node.kind == NodeKind::run ? "" : "open", columns);
}

void TreeText::add_volts(const SolvedNode& node) {
    constexpr std::size_t columns = 8;
    const std::optional<Volts> volts = node.lamp != nullptr ? node.lamp->volts : node.volts;
    if (volts)
        line_.figure(volts->value(), volts_style, columns);
    else
        line_.right("-", columns);
}

void TreeText::add_amps(const SolvedNode& node) {
    constexpr std::size_t columns = 8;
    if (node.run != nullptr || node.segment != nullptr)
        line_.figure((node.run != nullptr ? node.run->amps : node.segment->amps).value(), amps_style,
                     columns);
    else
        line_.right("-", columns);
}

void TreeText::add_cable(const CircuitNode& node) {
    if (cable_cell_.empty() || node.cable != last_cable_) {
        const std::string cable = node.cable != nullptr ? printable(node.cable->id) : "open";
        cable_cell_ = "  " + padded_right(clipped(cable, 9), 9);
        last_cable_ = node.cable;
    }
    line_.text(cable_cell_);
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

void append_circuit_trees(std::string& out, const Assessment& assessment, const TextStyle& style) {
    out += inked(style, Ink::heading, "CIRCUIT") + "  nominal case; ↓ is fed by the line above it\n";
    out += inked(style, Ink::faint, padded_right("", label_columns) + "   length  cable       volts    amps");
    out += '\n';
    TreeText tree(assessment, style, out);
    for (const SolvedCircuit& solved : solved_circuits(assessment, assessment.solution.nominal()))
        tree.draw(solved);
}

} // namespace rillwatt
