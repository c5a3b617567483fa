#include "rillwatt/search/labels.hpp"
#include "rillwatt/search/sort_runs.hpp"
#include "rillwatt/search/stairs.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace rillwatt::search {

namespace {

constexpr double rounding = 1e-12;
constexpr double volts_rounding = 1e-11;
constexpr double widest_tolerance = 0.25; ///< beyond it labels are not compared but put together

/// How far the better label must be moved to stand for the other as well.
struct Move {
    double down = 0;                                      ///< share to take off the least current
    double up = 0;                                        ///< share to add to the greatest
    double low = std::numeric_limits<double>::infinity(); ///< volts it must reach down to
    double high = 0;                                      ///< and up to
    double weak_down = 0;                                 ///< as `down`, on a weak supply
    double weak_low = std::numeric_limits<double>::infinity();
};

bool costs_no_more(const Label& a, const Label& b, const LabelFrame& frame) {
    if (a.cost > b.cost + rounding) return false;
    if (!frame.strict_spools) return true;
    if (a.plain > b.plain + rounding) return false;
    for (std::size_t slot = 0; slot < spool_slots; ++slot)
        if (a.pieces[slot] != 0 && a.pieces[slot] != b.pieces[slot]) return false;
    return true;
}

/// Largest share by which `a` lies above `b` over the voltages of `b`.
double excess(const CurvePower& a, const Curve& b) {
    double most = 0;
    for (std::size_t j = 0; j < curve_samples; ++j) {
        const double power = a.at(b.volts[j]);
        const double other = b.amps[j] * b.volts[j];
        if (power > other) most = std::max(most, 1 - other / power);
    }
    return most;
}

/// Largest share by which `a` lies below `b` over the voltages of `b`.
double shortfall(const CurvePower& a, const Curve& b) {
    double most = 0;
    for (std::size_t j = 0; j < curve_samples; ++j) {
        const double power = a.at(b.volts[j]);
        const double other = b.amps[j] * b.volts[j];
        if (power < other) most = std::max(most, 1 - power / other);
    }
    return most;
}

void reach_down(Curve& curve, double low) {
    curve.amps[0] = sample(curve, low);
    curve.volts[0] = low;
}

void give_way_on_weak(Label& label, const Move& move) {
    WeakSide& weak = label.weak;
    if (move.weak_down > rounding || move.weak_low < weak.low - volts_rounding) label.exact = false;
    if (move.weak_low < weak.low) {
        weak.low = move.weak_low;
        reach_down(weak.curve, move.weak_low);
    }
    for (double& amps : weak.curve.amps)
        amps *= 1 - move.weak_down;
}

void give_way(Label& label, const Move& move, const LabelFrame& frame) {
    if (frame.weak()) give_way_on_weak(label, move);
    if (move.down > rounding || move.up > rounding || move.low < label.low - volts_rounding ||
        move.high > label.high + volts_rounding)
        label.exact = false;
    label.high = std::max(label.high, move.high);
    if (move.low < label.low) {
        label.low = move.low;
        reach_down(label.curve, move.low);
        if (frame.two_sided) reach_down(label.most, move.low);
    }
    for (double& amps : label.curve.amps)
        amps *= 1 - move.down;
    for (double& amps : label.most.amps)
        amps /= 1 - move.up;
}

/// A label as it is compared.
struct Place {
    double cost;
    double low;
    int thickness;
    std::size_t label; ///< index
    double top_amps;   ///< at the highest volts, nearly: says whether a closer look is worth it

    bool operator<(const Place& other) const {
        if (cost != other.cost) return cost < other.cost;
        if (low != other.low) return low < other.low;
        if (thickness != other.thickness) return thickness < other.thickness;
        return label < other.label;
    }
};

/// One pass over labels in the order of their cost: each is kept unless an earlier one stands for it.
class Sieve {
  public:
    Sieve(const std::vector<Label>& labels, const std::vector<Place>& places, const LabelFrame& frame,
          double tolerance)
        : labels_(labels), places_(places), frame_(frame), tolerance_(tolerance),
          volts_tolerance_(volts_rounding + tolerance * (frame.top - frame.floor)) {}

    /// Number of labels to keep; stops beyond `most`.
    std::size_t run(std::size_t most) {
        const bool plain = !frame_.strict_spools && !(frame_.two_sided && frame_.strict_volts);
        for (const Place& place : places_) {
            if (kept_.size() > most) break;
            if (plain ? stood_for_on_stairs(place) : stood_for(labels_[place.label], place.top_amps))
                continue;
            keep(place);
        }
        return kept_.size();
    }

    std::size_t comparisons() const { return comparisons_; }

    std::vector<Label> kept_labels() const {
        std::vector<Label> rest;
        rest.reserve(kept_.size());
        for (const Kept& kept : kept_) {
            rest.push_back(labels_[kept.label]);
            if (frame_.relax) give_way(rest.back(), kept.move, frame_);
        }
        return rest;
    }

  private:
    struct Kept {
        std::size_t label;
        double top_amps;
        CurvePower power;
        CurvePower most_power;
        std::optional<CurvePower> weak_power;
        Move move;
    };

    void keep(const Place& place) {
        const Label& label = labels_[place.label];
        const auto rank = static_cast<std::size_t>(place.thickness);
        if (stairs_.size() <= rank) stairs_.resize(rank + 1);
        stairs_[rank].add({place.low, place.top_amps, kept_.size()});
        const CurvePower power(label.curve);
        kept_.push_back({place.label, place.top_amps, power,
                         frame_.two_sided ? CurvePower(label.most) : power, std::nullopt, Move{}});
        if (frame_.weak()) kept_.back().weak_power.emplace(label.weak.curve);
    }

    double amps_limit(double top_amps) const { return top_amps * (1 + tolerance_ + rounding) + rounding; }

    /// The stairs of each thickness tell which label to look at.
    bool stood_for_on_stairs(const Place& place) {
        const double limit = amps_limit(place.top_amps);
        const std::size_t ranks = std::min(stairs_.size(), static_cast<std::size_t>(place.thickness) + 1);
        for (std::size_t rank = 0; rank < ranks; ++rank) {
            ++comparisons_;
            const auto* step = stairs_[rank].least_amps(place.low + volts_tolerance_);
            if (step == nullptr || step->amps > limit) continue;
            const Label& label = labels_[place.label];
            if (labels_[kept_[step->label].label].high < label.high - volts_tolerance_) continue;
            if (take_over(kept_[step->label], label)) return true;
        }
        return false;
    }

    bool stood_for(const Label& label, double top_amps) {
        for (Kept& kept : kept_) {
            ++comparisons_;
            const Label& keeper = labels_[kept.label];
            if (keeper.low > label.low + volts_tolerance_ || kept.top_amps > amps_limit(top_amps)) continue;
            if (frame_.two_sided && frame_.strict_volts && top_amps > amps_limit(kept.top_amps)) continue;
            if (keeper.thickness > label.thickness || keeper.high < label.high - volts_rounding) continue;
            if (costs_no_more(keeper, label, frame_) && take_over(kept, label)) return true;
        }
        return false;
    }

    /// Whether the currents of a kept label may stand for those of another; notes what must be given way.
    bool take_over(Kept& kept, const Label& label) {
        Move move;
        move.down = excess(kept.power, label.curve);
        if (move.down > tolerance_ + rounding) return false;
        if (frame_.two_sided) {
            move.up = shortfall(kept.most_power, label.most);
            if (frame_.strict_volts && !draws_alike(kept, label, move)) return false;
        }
        if (frame_.weak() && !covers_weak(kept, label, move)) return false;
        kept.move.down = std::max(kept.move.down, move.down);
        kept.move.up = std::max(kept.move.up, move.up);
        kept.move.low = std::min(kept.move.low, label.low);
        kept.move.high = std::max(kept.move.high, label.high);
        kept.move.weak_down = std::max(kept.move.weak_down, move.weak_down);
        kept.move.weak_low = std::min(kept.move.weak_low, label.weak.low);
        return true;
    }

    /// The same on a weak supply.
    bool covers_weak(const Kept& kept, const Label& label, Move& move) const {
        const double tolerance = volts_rounding + tolerance_ * (frame_.weak_top - frame_.weak_floor);
        if (labels_[kept.label].weak.low > label.weak.low + tolerance) return false;
        move.weak_down = excess(*kept.weak_power, label.weak.curve);
        return move.weak_down <= tolerance_ + rounding;
    }

    /// Where a lamp may get too many volts, less current is not always better.
    bool draws_alike(const Kept& kept, const Label& label, const Move& move) const {
        const double most = tolerance_ + rounding;
        return move.up <= most && shortfall(kept.power, label.curve) <= most &&
               excess(kept.most_power, label.most) <= most;
    }

    const std::vector<Label>& labels_;
    const std::vector<Place>& places_;
    const LabelFrame& frame_;
    double tolerance_;
    double volts_tolerance_;
    std::size_t comparisons_ = 0;
    std::vector<Kept> kept_;
    std::vector<Stairs> stairs_; ///< of each thickness
};

/// Relaxed search only: neighbours become one label that is at least as good as each of them.
void blend(std::vector<Label>& labels, const LabelFrame& frame) {
    const std::size_t per_group = (labels.size() + frame.cap - 1) / frame.cap;
    std::vector<Label> rest;
    for (std::size_t start = 0; start < labels.size(); start += per_group) {
        Label best = labels[start];
        for (std::size_t i = start + 1; i < std::min(start + per_group, labels.size()); ++i) {
            const Label& other = labels[i];
            Move move{excess(CurvePower(best.curve), other.curve), 0, other.low, other.high};
            if (frame.two_sided) move.up = shortfall(CurvePower(best.most), other.most);
            if (frame.weak()) {
                move.weak_down = excess(CurvePower(best.weak.curve), other.weak.curve);
                move.weak_low = other.weak.low;
            }
            give_way(best, move, frame);
            best.exact = false;
            best.thickness = std::min(best.thickness, other.thickness);
            best.plain = std::min(best.plain, other.plain);
        }
        rest.push_back(best);
    }
    labels.swap(rest);
}

/// From the last sample, which lies near the top.
double nearly_top_amps(const Curve& curve, double top) {
    return curve.volts[curve_samples - 1] * curve.amps[curve_samples - 1] / top;
}

std::vector<Place> places_by_cost(const std::vector<Label>& labels, double top) {
    std::vector<Place> places;
    places.reserve(labels.size());
    for (std::size_t i = 0; i < labels.size(); ++i)
        places.push_back(
            {labels[i].cost, labels[i].low, labels[i].thickness, i, nearly_top_amps(labels[i].curve, top)});
    std::vector<Place> spare;
    sort_runs(places, spare);
    return places;
}

} // namespace

Sifting keep_undominated(const std::vector<Label>& labels, const LabelFrame& frame,
                         std::vector<Label>& kept) {
    const std::vector<Place> places = places_by_cost(labels, frame.top);
    Sifting sifting{frame.tolerance, 0};
    for (bool last = false; !last;) {
        last = sifting.tolerance > widest_tolerance;
        Sieve sieve(labels, places, frame, sifting.tolerance);
        const std::size_t count = sieve.run(last ? labels.size() : frame.cap);
        sifting.comparisons += sieve.comparisons();
        if (count <= frame.cap || last) {
            kept = sieve.kept_labels();
            break;
        }
        sifting.tolerance = std::max(sifting.tolerance * 2, 1e-6);
    }
    if (kept.size() <= frame.cap) return sifting;
    if (frame.relax)
        blend(kept, frame);
    else
        thin_out(kept, frame.cap);
    return sifting;
}

} // namespace rillwatt::search
