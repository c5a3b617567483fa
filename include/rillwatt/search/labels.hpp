#pragma once

#include "rillwatt/search/problem.hpp"
#include "rillwatt/search/windowed_lamp.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

/// Labels of the search over one run's tree.
///
/// A label stands for one way to cable the part of a run below some point. It knows what that costs, between
/// which volts at the point every lamp below keeps its window and every length its ampacity, and which
/// current it draws at each voltage. Labels grow from the lamps towards the transformer by two steps:
/// `put_cable_in_front` puts a length of cable in front, `join` connects two of them to one point.
///
/// The current is kept as samples (V_j, I_j). A cable of R ohms in front turns each of them into (V_j + R
/// I_j, I_j) without any error; only joining two subtrees interpolates, on V * I, which is nearly constant
/// for constant-power lamps.
namespace rillwatt::search {

inline constexpr std::size_t curve_samples = 5;
inline constexpr std::size_t spool_slots = 6;

/// Amperes as a function of volts.
struct Curve {
    std::array<double, curve_samples> volts{};
    std::array<double, curve_samples> amps{};
};

/// The power of a curve, volts times amperes, as a polynomial through its samples (Newton's divided
/// differences). For constant-power lamps it is nearly constant, so it is what is interpolated.
struct CurvePower {
    std::array<double, curve_samples> volts;
    std::array<double, curve_samples> differences;

    explicit CurvePower(const Curve& curve);
    double at(double volt) const { ///< VA
        double power = differences[curve_samples - 1];
        for (std::size_t j = curve_samples - 1; j-- > 0;)
            power = power * (volt - volts[j]) + differences[j];
        return power;
    }
};

/// The current at one voltage, near or between the samples.
double sample(const Curve& curve, double volts);

/// Where a label came from.
struct Origin {
    int first = -1;
    int second = -1;
    int node = -1;  ///< of the run, when a cable was put in front
    int cable = -1; ///< which
};

/// What a label asks for on a weak supply.
struct WeakSide {
    double low = 0; ///< least volts at this point
    Curve curve;    ///< current, never above the true one in a relaxed search
};

struct Label {
    double cost = 0;  ///< of the open lengths, spools counted at their price by length
    double plain = 0; ///< of those sold by length
    std::array<std::uint64_t, spool_slots> pieces{}; ///< of each cable sold in spools: sum of their marks
    double low = 0;                                  ///< least volts at this point
    double high = std::numeric_limits<double>::infinity(); ///< most volts at this point
    Curve curve;       ///< current, never above the true one in a relaxed search
    Curve most;        ///< current, never below the true one; kept only where upper limits matter
    WeakSide weak;     ///< kept only where a weak supply counts
    int thickness = 0; ///< rank of the thickest chosen cable at this point
    int origin = -1;   ///< index of where it came from, for the cables chosen
    Origin made;       ///< where it came from, until it is known to be kept
    bool exact = true; ///< no other label was merged into it or into what it came from
};

/// What holds for all labels of one search.
struct LabelFrame {
    double floor = 0;           ///< volts below which no lamp of the run works
    double top = 0;             ///< highest volts at the head of the run
    double weak_floor = 0;      ///< the same on a weak supply
    double weak_top = 0;        ///< 0: a weak supply does not count
    bool weak_decides = false;  ///< what keeps the low end of a window there does so at nominal supply too
    bool two_sided = false;     ///< upper limits can bind: less current is not always better
    bool strict_volts = false;  ///< and then only labels of the same current stand for each other
    bool strict_spools = false; ///< dominance looks at the pieces of each spooled cable
    double tolerance = 0;   ///< when labels are compared: of currents, and of volts as a share of the span
    bool relax = false;     ///< a label takes over the better current of those it displaces
    std::size_t cap = 4000; ///< labels kept at one point
    double cost_limit = std::numeric_limits<double>::infinity(); ///< of a label plus the least of the rest

    bool weak() const { return weak_top > 0; }
};

/// A lamp as a label; empty curve range when it cannot work below the top.
Label lamp_label(const WindowedLamp& lamp, const LabelFrame& frame);

/// A point that draws nothing.
Label idle_label(const LabelFrame& frame);
inline void start_idle(Label& label, const LabelFrame& frame) { label = idle_label(frame); }

/// Spreads the voltages of a curve from `low` to the top, whatever its currents.
void spread(Curve& curve, double low, double top);

/// Connects a lamp to the label's point. False when no voltage suits both.
bool add_lamp(Label& label, const WindowedLamp& lamp, const LabelFrame& frame);

/// The same on a weak supply.
bool add_weak_lamp(Label& label, const WindowedLamp& lamp, const LabelFrame& frame);

/// A label about to be joined with others: its curves as polynomials.
struct Branch {
    const Label* label;
    CurvePower power;
    CurvePower most;
    std::optional<CurvePower> weak;

    Branch(const Label& of, const LabelFrame& frame) : label(&of), power(of.curve), most(of.most) {
        if (frame.weak()) weak.emplace(of.weak.curve);
    }
};

std::vector<Branch> branches_of(const std::vector<Label>& labels, const LabelFrame& frame);
inline const Label& label_of(const Branch& branch) { return *branch.label; }

/// Two labels at one point. False when no voltage suits both.
bool join(const Branch& a, const Branch& b, const LabelFrame& frame, Label& out);

/// Whether one label asks of the supply nothing that another at the same point does not ask too. What
/// constant-power lamps draw depends on the cable: no answer without a look at the curves.
inline bool asks_no_more(const Label& /*a*/, const Label& /*b*/) { return false; }

/// A cable about to be put in front of a label.
struct Front {
    double ohms = 0;      ///< out and back
    double weak_ohms = 0; ///< the same on a weak supply
    double ampacity = 0;
    double amps_at_high = 0; ///< what the label draws at most at its highest volts: of `amps_at_high`
};

/// Most amperes a label draws at its highest volts, and no more than `most`; 0 when nothing limits the volts.
double amps_at_high(const Label& label, double most, const LabelFrame& frame);

/// Whether a label's lowest volts are its lowest in front of a cable too; where they may not be,
/// constant-power lamps would be on their lower root.
bool rises_in_front(const Curve& curve, double ohms);

/// Least volts a label needs in front of a cable, or less.
double low_in_front(const Label& label, double ohms);

/// The same on a weak supply.
double weak_low_in_front(const Label& label, double ohms);

/// Least volts of a label in the case that asks for the most of its cables.
inline double deciding_low(const Label& label, const LabelFrame& frame) {
    return frame.weak() ? label.weak.low : label.low;
}

/// Puts a cable in front. False when it cannot carry the current at any voltage.
bool put_cable_in_front(Label& label, const Front& front, const LabelFrame& frame);

/// Adds a length just put in front to what the label's cables are counted by. Equal sums of marks are equal
/// sets of pieces (but for one chance in 2^64).
void count_metres(Label& label, const Cable& cable, double metres);

/// Heuristic search only: drops labels evenly, keeping the cheapest and the one of the least volts.
template<class L>
void thin_out(std::vector<L>& labels, std::size_t cap) {
    std::vector<L> rest;
    for (std::size_t k = 0; k < cap; ++k)
        rest.push_back(labels[k * (labels.size() - 1) / (cap - 1)]);
    labels.swap(rest);
}

/// What a sifting of labels took.
struct Sifting {
    double tolerance = 0;        ///< that was needed to stay within the cap
    std::size_t comparisons = 0; ///< of one label with another
};

/// Keeps those labels that no other one makes superfluous, by ascending cost.
Sifting keep_undominated(const std::vector<Label>& labels, const LabelFrame& frame, std::vector<Label>& kept);

inline const Label& with_curve(const Label& label, const LabelFrame& /*frame*/) { return label; }

} // namespace rillwatt::search
