#include "labels.hpp"
#include <algorithm>
#include <cmath>
#include <numeric>

namespace rillwatt::sizing {

namespace {

constexpr double rounding = 1e-12;
constexpr double volts_rounding = 1e-11;
constexpr double widest_tolerance = 0.25; ///< beyond it currents are not compared at all

/// How far the better label's curves must be moved to stand for the other as well.
struct Move {
    double down = 0; ///< share to take off the least current
    double up = 0;   ///< share to add to the greatest
};

bool costs_no_more(const Label& a, const Label& b, const LabelFrame& frame) {
    if (a.cost > b.cost + rounding) return false;
    if (!frame.strict_spools) return true;
    if (a.plain > b.plain + rounding) return false;
    for (std::size_t slot = 0; slot < spool_slots; ++slot)
        if (a.spooled[slot] > b.spooled[slot] + rounding) return false;
    return true;
}

bool reaches_no_less(const Label& a, const Label& b) {
    return a.thickness <= b.thickness && a.low <= b.low + volts_rounding && a.high >= b.high - volts_rounding;
}

/// Largest share by which `a` lies above `b` over the voltages of `b`.
double excess(const Curve& a, const Curve& b) {
    std::array<double, curve_samples> amps{};
    sample(a, b.volts, amps);
    double most = 0;
    for (std::size_t j = 0; j < curve_samples; ++j)
        if (amps[j] > 0) most = std::max(most, 1 - b.amps[j] / amps[j]);
    return most;
}

/// Whether the currents of `a` may stand for those of `b`, and what must be given way for that.
bool draws_no_more(const Label& a, const Label& b, double tolerance, const LabelFrame& frame, Move& move) {
    if (tolerance > widest_tolerance && !frame.relax) return true;
    move.down = excess(a.curve, b.curve);
    if (move.down > tolerance + rounding) return false;
    if (!frame.two_sided) return true;
    const double less = excess(b.curve, a.curve);
    if (less > tolerance + rounding) return false;
    move.up = excess(b.most, a.most);
    return move.up <= tolerance + rounding && excess(a.most, b.most) <= tolerance + rounding;
}

void give_way(Label& label, const Move& move) {
    if (move.down > rounding || move.up > rounding) label.exact = false;
    for (double& amps : label.curve.amps)
        amps *= 1 - move.down;
    for (double& amps : label.most.amps)
        amps /= 1 - move.up;
}

bool earlier(const Label& a, const Label& b) {
    if (a.cost != b.cost) return a.cost < b.cost;
    if (a.low != b.low) return a.low < b.low;
    if (a.thickness != b.thickness) return a.thickness < b.thickness;
    return a.origin < b.origin;
}

/// One pass over labels sorted by cost: each is kept unless an earlier one stands for it.
class Sieve {
  public:
    Sieve(std::vector<Label>& labels, const LabelFrame& frame, double tolerance)
        : labels_(labels), frame_(frame), tolerance_(tolerance) {}

    /// Indices of the labels to keep, at most `most` and one more.
    std::size_t run(std::size_t most) {
        for (std::size_t i = 0; i < labels_.size() && kept_.size() <= most; ++i)
            if (!stood_for(labels_[i])) keep(i);
        return kept_.size();
    }

    std::size_t comparisons() const { return comparisons_; }

    void apply() {
        std::vector<Label> rest;
        rest.reserve(kept_.size());
        for (std::size_t k = 0; k < kept_.size(); ++k) {
            Label& label = labels_[kept_[k]];
            if (frame_.relax) give_way(label, moves_[k]);
            rest.push_back(label);
        }
        labels_.swap(rest);
    }

  private:
    /// Without currents, upper limits and spools a label is stood for when a cheaper one of no more thickness
    /// reaches as low: the lowest of each thickness tells.
    bool plain() const { return tolerance_ > widest_tolerance && !frame_.two_sided && !frame_.strict_spools; }

    bool stood_for_plainly(const Label& label) {
        for (std::size_t rank = 0; rank < lowest_.size() && rank <= static_cast<std::size_t>(label.thickness);
             ++rank) {
            ++comparisons_;
            if (lowest_[rank] == none || low_[lowest_[rank]] > label.low + volts_rounding) continue;
            if (!frame_.relax) return true;
            const std::size_t k = lowest_[rank];
            moves_[k].down = std::max(moves_[k].down, excess(labels_[kept_[k]].curve, label.curve));
            return true;
        }
        return false;
    }

    void note_lowest(std::size_t k, const Label& label) {
        const auto rank = static_cast<std::size_t>(label.thickness);
        if (lowest_.size() <= rank) lowest_.resize(rank + 1, none);
        if (lowest_[rank] == none || low_[k] < low_[lowest_[rank]]) lowest_[rank] = k;
    }

    void keep(std::size_t i) {
        kept_.push_back(i);
        moves_.push_back({});
        low_.push_back(labels_[i].low);
        top_amps_.push_back(plain() ? 0 : sample(labels_[i].curve, frame_.top));
        note_lowest(kept_.size() - 1, labels_[i]);
    }

    bool stood_for(const Label& label) {
        if (plain()) return stood_for_plainly(label);
        const double top_amps = sample(label.curve, frame_.top) * (1 + 2 * tolerance_ + rounding) + rounding;
        const bool by_current = tolerance_ <= widest_tolerance;
        for (std::size_t k = 0; k < kept_.size(); ++k) {
            ++comparisons_;
            if (low_[k] > label.low + volts_rounding) continue;
            if (by_current && top_amps_[k] > top_amps) continue;
            const Label& keeper = labels_[kept_[k]];
            Move move;
            if (!costs_no_more(keeper, label, frame_) || !reaches_no_less(keeper, label)) continue;
            if (!draws_no_more(keeper, label, tolerance_, frame_, move)) continue;
            moves_[k].down = std::max(moves_[k].down, move.down);
            moves_[k].up = std::max(moves_[k].up, move.up);
            return true;
        }
        return false;
    }

    std::vector<Label>& labels_;
    const LabelFrame& frame_;
    double tolerance_;
    std::size_t comparisons_ = 0;
    std::vector<std::size_t> kept_;
    std::vector<Move> moves_;
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    std::vector<double> low_;
    std::vector<double> top_amps_;
    std::vector<std::size_t> lowest_; ///< for each thickness the kept label of the least volts
};

/// Heuristic search only: drops labels evenly, keeping the cheapest and the one of the least volts.
void thin_out(std::vector<Label>& labels, std::size_t cap) {
    std::vector<Label> rest;
    for (std::size_t k = 0; k < cap; ++k)
        rest.push_back(labels[k * (labels.size() - 1) / (cap - 1)]);
    labels.swap(rest);
}

/// Relaxed search only: neighbours become one label that is at least as good as each of them.
void blend(std::vector<Label>& labels, const LabelFrame& frame) {
    const std::size_t per_group = (labels.size() + frame.cap - 1) / frame.cap;
    std::vector<Label> rest;
    for (std::size_t start = 0; start < labels.size(); start += per_group) {
        Label best = labels[start];
        for (std::size_t i = start + 1; i < std::min(start + per_group, labels.size()); ++i) {
            const Label& other = labels[i];
            Move move{excess(best.curve, other.curve), 0};
            if (frame.two_sided) move.up = excess(other.most, best.most);
            give_way(best, move);
            best.exact = false;
            best.thickness = std::min(best.thickness, other.thickness);
            best.plain = std::min(best.plain, other.plain);
            for (std::size_t slot = 0; slot < spool_slots; ++slot)
                best.spooled[slot] = std::min(best.spooled[slot], other.spooled[slot]);
            best.high = std::max(best.high, other.high);
            if (other.low >= best.low) continue;
            best.low = other.low;
            best.curve.volts[0] = std::min(best.curve.volts[0], other.low);
        }
        rest.push_back(best);
    }
    labels.swap(rest);
}

} // namespace

Sifting keep_undominated(std::vector<Label>& labels, const LabelFrame& frame) {
    std::sort(labels.begin(), labels.end(), earlier);
    Sifting sifting{frame.tolerance, 0};
    for (bool last = false; !last;) {
        last = sifting.tolerance > widest_tolerance;
        Sieve sieve(labels, frame, sifting.tolerance);
        const std::size_t count = sieve.run(last ? labels.size() : frame.cap);
        sifting.comparisons += sieve.comparisons();
        if (count <= frame.cap || last) {
            sieve.apply();
            break;
        }
        sifting.tolerance = std::max(sifting.tolerance * 4, 1e-5);
    }
    if (labels.size() <= frame.cap) return sifting;
    if (frame.relax)
        blend(labels, frame);
    else
        thin_out(labels, frame.cap);
    return sifting;
}

} // namespace rillwatt::sizing
