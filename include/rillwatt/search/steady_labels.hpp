#pragma once

#include "rillwatt/search/labels.hpp"
#include "rillwatt/search/problem.hpp"

#include <algorithm>
#include <cstdint>
#include <vector>

/// Where a weak supply counts, such a label is one of the weak case: what keeps the low end of every window
/// there does so at nominal supply too, where no more is asked.
///
/// Labels for a run whose lamps draw the same current at any voltage. All labels at a point then draw the
/// same, so that of two the better one is known from cost, volts and thickness alone, without a look at
/// curves. The functions are those of labels.hpp and do the same; the search is written once for both kinds.
namespace rillwatt::search {

struct SteadyLabel {
    double cost = 0;            ///< of the open lengths
    double low = 0;             ///< least volts at this point
    double amps = 0;            ///< drawn at this point
    std::int16_t thickness = 0; ///< rank of the thickest chosen cable at this point
    bool exact = true;          ///< no other label was merged into it or into what it came from
    int origin = -1;            ///< index of where it came from, for the cables chosen
    Origin made;                ///< where it came from, until it is known to be kept
};

/// Whether all lamps of a run draw the same current at any voltage.
bool has_steady_currents(const RunProblem& run);

/// Whether a run may be searched with steady labels: such lamps only, no upper limit that could bind, one
/// case that decides, and no metres of spooled cable to be compared.
bool draws_steadily(const RunProblem& run, const LabelFrame& frame);

inline bool add_weak_lamp(SteadyLabel& /*label*/, const WindowedLamp& /*lamp*/, const LabelFrame& /*frame*/) {
    return true;
}
inline double weak_low_in_front(const SteadyLabel& /*label*/, double /*ohms*/) { return 0; }
inline double deciding_low(const SteadyLabel& label, const LabelFrame& /*frame*/) { return label.low; }

void start_idle(SteadyLabel& label, const LabelFrame& frame);

bool add_lamp(SteadyLabel& label, const WindowedLamp& lamp, const LabelFrame& frame);

inline std::vector<const SteadyLabel*> branches_of(const std::vector<SteadyLabel>& labels,
                                                   const LabelFrame& /*frame*/) {
    std::vector<const SteadyLabel*> branches;
    branches.reserve(labels.size());
    for (const SteadyLabel& label : labels)
        branches.push_back(&label);
    return branches;
}
inline const SteadyLabel& label_of(const SteadyLabel* branch) { return *branch; }

inline bool join(const SteadyLabel* a, const SteadyLabel* b, const LabelFrame& /*frame*/, SteadyLabel& out) {
    out.cost = a->cost + b->cost;
    out.low = std::max(a->low, b->low);
    out.amps = a->amps + b->amps;
    out.thickness = std::max(a->thickness, b->thickness);
    out.exact = a->exact && b->exact;
    return true;
}

inline bool asks_no_more(const SteadyLabel& a, const SteadyLabel& b) {
    return a.low <= b.low && a.thickness <= b.thickness;
}

inline double amps_at_high(const SteadyLabel& /*label*/, double /*most*/, const LabelFrame& /*frame*/) {
    return 0;
}

inline double low_in_front(const SteadyLabel& label, double ohms) { return label.low + ohms * label.amps; }

bool put_cable_in_front(SteadyLabel& label, const Front& front, const LabelFrame& frame);

inline void count_metres(SteadyLabel& /*label*/, const Cable& /*cable*/, double /*metres*/) {}

Sifting keep_undominated(const std::vector<SteadyLabel>& labels, const LabelFrame& frame,
                         std::vector<SteadyLabel>& kept);

/// The frame of a search with steady labels: that of the case that decides.
LabelFrame steady_frame(LabelFrame frame);

/// The same label with its current as a curve, for the whole frame of the search.
Label with_curve(const SteadyLabel& label, const LabelFrame& frame);

} // namespace rillwatt::search
