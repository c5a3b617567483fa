#include "rillwatt/search/steady_labels.hpp"

#include "rillwatt/search/sort_runs.hpp"

#include <algorithm>
#include <limits>

namespace rillwatt::search {

namespace {

constexpr double volts_rounding = 1e-10;
constexpr double alike_volts = 1e-11;     ///< labels that differ by less need the same volts
constexpr double widest_tolerance = 0.25; ///< beyond it labels are not compared but put together

/// A label as it is compared.
struct Place {
    double cost;
    double low;
    std::int32_t thickness;
    std::uint32_t label; ///< index

    bool operator<(const Place& other) const {
        if (cost != other.cost) return cost < other.cost;
        if (low != other.low) return low < other.low;
        if (thickness != other.thickness) return thickness < other.thickness;
        return label < other.label;
    }
};

std::vector<Place> places_by_cost(const std::vector<SteadyLabel>& labels) {
    std::vector<Place> places;
    places.reserve(labels.size());
    for (std::uint32_t i = 0; i < labels.size(); ++i)
        places.push_back({labels[i].cost, labels[i].low, labels[i].thickness, i});
    std::vector<Place> spare;
    sort_runs(places, spare);
    return places;
}

/// A label that was kept, and the volts of those it stands for.
struct Kept {
    std::uint32_t label;
    double least_low;
};

/// Of the labels kept so far, that of the least volts among those no thicker than each thickness.
class Lowest {
  public:
    struct Entry {
        double low = std::numeric_limits<double>::infinity();
        std::size_t kept = 0;
    };

    Entry of(std::int32_t thickness) const {
        return entries_.empty() ? Entry{} : entries_[std::min(rank(thickness), entries_.size() - 1)];
    }
    void add(std::int32_t thickness, const Entry& entry) {
        if (entries_.size() <= rank(thickness)) entries_.resize(rank(thickness) + 1, of(thickness));
        for (std::size_t k = rank(thickness); k < entries_.size(); ++k)
            if (entry.low < entries_[k].low) entries_[k] = entry;
    }

  private:
    static std::size_t rank(std::int32_t thickness) { return static_cast<std::size_t>(thickness); }

    std::vector<Entry> entries_;
};

/// One pass over labels in the order of their cost: each is kept unless an earlier one stands for it. Stops
/// beyond `most`.
void sieve(const std::vector<Place>& places, double tolerance, std::size_t most, std::vector<Kept>& kept) {
    kept.clear();
    Lowest lowest;
    for (const Place& place : places) {
        if (kept.size() > most) break;
        const Lowest::Entry best = lowest.of(place.thickness);
        if (best.low <= place.low + tolerance) {
            double& least = kept[best.kept].least_low;
            least = std::min(least, place.low);
            continue;
        }
        lowest.add(place.thickness, {place.low, kept.size()});
        kept.push_back({place.label, place.low});
    }
}

void give_way(SteadyLabel& label, double low) {
    if (low < label.low - alike_volts) label.exact = false;
    label.low = std::min(label.low, low);
}

/// Relaxed search only: neighbours become one label that is at least as good as each of them.
void blend(std::vector<SteadyLabel>& labels, std::size_t cap) {
    const std::size_t per_group = (labels.size() + cap - 1) / cap;
    std::vector<SteadyLabel> rest;
    for (std::size_t k = 0; k < labels.size(); ++k) {
        if (k % per_group == 0) {
            rest.push_back(labels[k]);
            continue;
        }
        give_way(rest.back(), labels[k].low);
        rest.back().exact = false;
        rest.back().thickness = std::min(rest.back().thickness, labels[k].thickness);
    }
    labels.swap(rest);
}

} // namespace

bool has_steady_currents(const RunProblem& run) {
    return std::all_of(run.nodes.begin(), run.nodes.end(), [](const RunNode& node) {
        return !node.lamp || node.lamp->model == LoadModel::constant_current;
    });
}

bool draws_steadily(const RunProblem& run, const LabelFrame& frame) {
    if (frame.weak() && !frame.weak_decides) return false;
    return !frame.two_sided && !frame.strict_spools && has_steady_currents(run);
}

LabelFrame steady_frame(LabelFrame frame) {
    if (!frame.weak()) return frame;
    frame.floor = frame.weak_floor;
    frame.top = frame.weak_top;
    frame.weak_top = 0;
    return frame;
}

void start_idle(SteadyLabel& label, const LabelFrame& frame) { label.low = frame.floor; }

bool add_lamp(SteadyLabel& label, const WindowedLamp& lamp, const LabelFrame& frame) {
    label.low = std::max(label.low, splice_volts(lamp, lamp.low));
    label.amps += amps_at_lamp(lamp, label.low);
    return label.low <= frame.top + volts_rounding;
}

bool put_cable_in_front(SteadyLabel& label, const Front& front, const LabelFrame& frame) {
    if (label.amps > front.ampacity) return false;
    label.low += front.ohms * label.amps;
    return label.low <= frame.top + volts_rounding;
}

Sifting keep_undominated(const std::vector<SteadyLabel>& labels, const LabelFrame& frame,
                         std::vector<SteadyLabel>& kept) {
    const std::vector<Place> places = places_by_cost(labels);
    const double span = frame.top - frame.floor;
    Sifting sifting{frame.tolerance, 0};
    std::vector<Kept> found;
    for (bool last = false; !last;) {
        last = sifting.tolerance > widest_tolerance;
        sieve(places, alike_volts + sifting.tolerance * span, last ? labels.size() : frame.cap, found);
        sifting.comparisons += places.size();
        if (found.size() <= frame.cap || last) break;
        sifting.tolerance = std::max(sifting.tolerance * 2, 1e-6);
    }
    kept.reserve(found.size());
    for (const Kept& entry : found) {
        kept.push_back(labels[entry.label]);
        if (frame.relax) give_way(kept.back(), entry.least_low);
    }
    if (kept.size() <= frame.cap) return sifting;
    if (frame.relax)
        blend(kept, frame.cap);
    else
        thin_out(kept, frame.cap);
    return sifting;
}

Label with_curve(const SteadyLabel& label, const LabelFrame& frame) {
    Label curved = idle_label(frame);
    curved.cost = label.cost;
    curved.low = frame.weak() ? frame.floor : label.low;
    spread(curved.curve, curved.low, frame.top);
    curved.curve.amps.fill(label.amps);
    curved.most = curved.curve;
    if (frame.weak()) {
        curved.weak.low = label.low;
        spread(curved.weak.curve, label.low, frame.weak_top);
        curved.weak.curve.amps.fill(label.amps);
    }
    curved.thickness = label.thickness;
    curved.exact = label.exact;
    curved.origin = label.origin;
    return curved;
}

} // namespace rillwatt::search
