#include "rillwatt/search/spool_classes.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr std::size_t most_classes = 200'000;
constexpr double piece_rounding = 1e-6; ///< metres: pieces are whole micrometres

std::size_t at(int index) { return static_cast<std::size_t>(index); }

struct OpenLengths {
    double metres = 0;
    double count = 0;

    void add(double length) {
        metres += length;
        ++count;
    }
};

OpenLengths open_lengths(const SizeProblem& problem) {
    OpenLengths open;
    for (const TransformerProblem& transformer : problem.transformers) {
        for (const RunProblem& run : transformer.runs)
            for (const RunNode& node : run.nodes)
                if (node.typed < 0) open.add(node.metres);
        const TransformerCircuit& circuit = problem.circuits->transformers[transformer.circuit];
        for (std::size_t k = 0; k < transformer.link_typed.size(); ++k)
            if (transformer.link_typed[k] < 0) open.add(circuit.links[k].length->value());
    }
    return open;
}

} // namespace

SpoolClasses::SpoolClasses(const SizeProblem& problem)
    : problem_(problem), open_(problem.spools.size(), 0), fixed_cost_(problem.typed_cost) {
    const OpenLengths open = open_lengths(problem);
    most_open_ = open.metres;
    rounding_ = piece_rounding * (1 + open.count);
    for (const int candidate : problem.candidates) {
        const int spool = problem.cables[at(candidate)].spool;
        if (spool >= 0)
            open_[at(spool)] = 1;
        else
            all_spooled_ = false;
    }
    for (std::size_t k = 0; k < problem.spools.size(); ++k) {
        const SpoolCable& cable = problem.spools[k];
        typed_.push_back(std::accumulate(cable.typed.begin(), cable.typed.end(), Length{0}));
        totals_.emplace_back(cable.sold, typed_.back() + whole_length(most_open_));
        if (open_[k] == 0 && !cable.typed.empty())
            fixed_cost_ += cable.price * metres_of(pack(cable.sold, cable.typed).bound);
    }
}

bool SpoolClasses::list(double limit, double least_rest) {
    metres_.clear();
    costs_.clear();
    bounds_.clear();
    listed_ = std::all_of(totals_.begin(), totals_.end(),
                          [](const SpoolTotals& totals) { return totals.tabulated(); });
    std::vector<double> metres(problem_.spools.size(), 0);
    listed_ = listed_ && list_from(0, fixed_cost_ + least_rest, metres, limit);
    for (double& cost : costs_)
        cost -= least_rest;
    aside_.assign(bounds_.size(), 0);
    if (!listed_) {
        metres_.clear();
        costs_.clear();
        bounds_.clear();
    }
    return listed_;
}

bool SpoolClasses::list_from(std::size_t spool, double cost, std::vector<double>& metres, double limit) {
    if (spool == metres.size()) {
        if (all_spooled_) {
            double room = rounding_;
            for (std::size_t k = 0; k < metres.size(); ++k)
                if (open_[k] != 0) room += metres[k] - metres_of(typed_[k]);
            if (room < most_open_) return true;
        }
        metres_.push_back(metres);
        costs_.push_back(cost);
        bounds_.push_back(cost);
        return metres_.size() <= most_classes;
    }
    if (open_[spool] == 0) return list_from(spool + 1, cost, metres, limit);
    const double price = problem_.spools[spool].price;
    const Length most = totals_[spool].covering(typed_[spool] + whole_length(most_open_));
    for (Length total = totals_[spool].covering(typed_[spool]); total <= most;
         total = totals_[spool].covering(total + 1)) {
        metres[spool] = metres_of(total);
        const double here = cost + price * metres[spool];
        if (here >= limit) break;
        if (!list_from(spool + 1, here, metres, limit)) return false;
    }
    return true;
}

double SpoolClasses::class_bound(std::size_t index, const SpoolPrices& prices, double value) const {
    double bound = costs_[index] + value;
    for (std::size_t k = 0; k < prices.size(); ++k)
        if (open_[k] != 0) bound -= prices[k] * (metres_[index][k] - metres_of(typed_[k]) + rounding_);
    return bound;
}

void SpoolClasses::add(const SpoolPrices& prices, double value) {
    for (std::size_t i = 0; i < bounds_.size(); ++i)
        bounds_[i] = std::max(bounds_[i], class_bound(i, prices, value));
}

void SpoolClasses::drop(double limit) {
    std::size_t kept = 0;
    for (std::size_t i = 0; i < bounds_.size(); ++i) {
        if (bounds_[i] >= limit) continue;
        if (kept != i) metres_[kept].swap(metres_[i]);
        costs_[kept] = costs_[i];
        aside_[kept] = aside_[i];
        bounds_[kept++] = bounds_[i];
    }
    metres_.resize(kept);
    costs_.resize(kept);
    bounds_.resize(kept);
    aside_.resize(kept);
}

bool SpoolClasses::worth_work() const { return std::find(aside_.begin(), aside_.end(), 0) != aside_.end(); }

std::size_t SpoolClasses::cheapest() const {
    std::size_t best = bounds_.size();
    for (std::size_t i = 0; i < bounds_.size(); ++i)
        if (aside_[i] == 0 && (best == bounds_.size() || bounds_[i] < bounds_[best])) best = i;
    return best;
}

double SpoolClasses::bound_or(double limit) const {
    for (const double bound : bounds_)
        limit = std::min(limit, bound);
    return limit;
}

double SpoolClasses::value_needed(const SpoolPrices& prices, double limit) const {
    double needed = 0;
    for (std::size_t i = 0; i < bounds_.size(); ++i)
        needed = std::max(needed, limit - class_bound(i, prices, 0));
    return needed;
}

double SpoolClasses::bound_above(const SpoolPrices& prices, double value, double limit) const {
    double least = limit;
    for (std::size_t i = 0; i < bounds_.size(); ++i)
        least = std::min(least, std::max(bounds_[i], class_bound(i, prices, value)));
    return least;
}

std::vector<double> SpoolClasses::room(std::size_t index) const {
    std::vector<double> room = metres_[index];
    for (std::size_t k = 0; k < room.size(); ++k)
        room[k] -= metres_of(typed_[k]);
    return room;
}

} // namespace rillwatt::search
