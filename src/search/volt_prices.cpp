#include "rillwatt/search/volt_prices.hpp"

#include "rillwatt/search/supply.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rillwatt::search {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr int steps = 80;
constexpr int patience = 12;         ///< steps without gain before they are made shorter
constexpr double least_gain = 1e-5;  ///< of the bound, that counts as one
constexpr double least_share = 1e-6; ///< of the distance to the limit, below which no step is made

std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace

VoltPrices::VoltPrices(const SizeProblem& problem, const RunProblem& run, Supplied supplied, double top,
                       double limit)
    : top_(top) {
    for (const Cable& cable : problem.cables)
        thickest_ = std::max(thickest_, cable.thickness);
    ranks_ = at(thickest_) + 1;
    gather(problem, run, supplied);
    climb(limit);
    sweep_down();
}

std::size_t VoltPrices::feed_of(std::size_t node) const {
    return parts_[node].parent < 0 ? parts_.size() : at(parts_[node].parent);
}

void VoltPrices::gather(const SizeProblem& problem, const RunProblem& run, Supplied supplied) {
    const std::vector<double> amps = least_amps(run, supplied, top_);
    for (std::size_t i = 0; i < run.nodes.size(); ++i) {
        const RunNode& node = run.nodes[i];
        Part part;
        part.parent = node.parent;
        part.has_lamp = node.lamp.has_value();
        if (const auto& lamp = node.lamp_in(supplied)) part.low = splice_volts(*lamp, lamp->low);
        const bool ordered = node.typed < 0 && !problem.options.any_order;
        const auto add = [&](int c) {
            const Cable& cable = problem.cables[at(c)];
            if (amps[i] > cable.ampacity || (node.typed < 0 && !cable.holds(node.metres))) return;
            part.options.push_back({node.typed < 0 ? cable.price * node.metres : 0,
                                    cable.ohms_in(supplied) * node.metres * amps[i],
                                    ordered ? cable.thickness : thickest_, ordered ? cable.thickness : 0});
        };
        if (node.typed >= 0) add(node.typed);
        if (node.typed < 0) std::for_each(problem.candidates.begin(), problem.candidates.end(), add);
        parts_.push_back(std::move(part));
    }
    price_.resize(parts_.size());
    least_.resize(parts_.size() * ranks_);
    below_.resize((parts_.size() + 1) * ranks_);
}

/// The least of every part at the present prices. Returns that of the run.
double VoltPrices::sweep_up() {
    looked_at_ += parts_.size();
    std::fill(price_.begin(), price_.end(), 0.0);
    std::fill(below_.begin(), below_.end(), 0.0);
    for (std::size_t i = parts_.size(); i-- > 0;) {
        const Part& part = parts_[i];
        const std::size_t feed = feed_of(i);
        price_[i] += part.price;
        if (feed < parts_.size()) price_[feed] += price_[i];
        const double lacking = part.price * (part.low - top_);
        double* const least = &least_[i * ranks_];
        const double* const below = &below_[i * ranks_];
        for (std::size_t k = 0; k < ranks_; ++k)
            least[k] = infinity;
        for (const Option& option : part.options)
            least[option.rank] = std::min(least[option.rank], option.cost + price_[i] * option.volts +
                                                                  below[option.below] + lacking);
        for (std::size_t k = 1; k < ranks_; ++k)
            least[k] = std::min(least[k], least[k - 1]);
        for (std::size_t k = 0; k < ranks_; ++k)
            below_[feed * ranks_ + k] += least[k];
    }
    return below_.back();
}

/// The volts each lamp lacks (or has to spare, negative) with the choice that is least at the present prices.
void VoltPrices::find_lacks(std::vector<double>& lacks) const {
    std::vector<double> drop(parts_.size() + 1, 0); // last: at the head
    std::vector<int> allowed(parts_.size() + 1, thickest_);
    for (std::size_t i = 0; i < parts_.size(); ++i) {
        const Part& part = parts_[i];
        const Option* best = nullptr;
        double least = infinity;
        for (const Option& option : part.options) {
            const double here = option.cost + price_[i] * option.volts + below_[cell(i, option.below)];
            if (option.rank > allowed[feed_of(i)] || here >= least) continue;
            least = here;
            best = &option;
        }
        if (best == nullptr) continue;
        drop[i] = drop[feed_of(i)] + best->volts;
        allowed[i] = best->below;
        lacks[i] = part.has_lamp ? part.low + drop[i] - top_ : 0;
    }
}

/// Moves the prices towards what is lacking, as far as should gain `distance`. False where nothing is
/// lacking.
bool VoltPrices::move_prices(std::vector<double>& lacks, double distance) {
    double square = 0;
    for (std::size_t i = 0; i < parts_.size(); ++i) {
        if (lacks[i] < 0 && parts_[i].price <= 0) lacks[i] = 0;
        square += lacks[i] * lacks[i];
    }
    if (square <= 0) return false;
    for (std::size_t i = 0; i < parts_.size(); ++i)
        parts_[i].price = std::max(0.0, parts_[i].price + distance / square * lacks[i]);
    return true;
}

std::vector<double> VoltPrices::prices() const {
    std::vector<double> prices;
    for (const Part& part : parts_)
        prices.push_back(part.price);
    return prices;
}

void VoltPrices::set_prices(const std::vector<double>& prices) {
    for (std::size_t i = 0; i < parts_.size(); ++i)
        parts_[i].price = prices[i];
}

/// Steps shorten each time they have not gained for a while, and go on from the best prices.
void VoltPrices::climb(double limit) {
    std::vector<double> lacks(parts_.size(), 0);
    std::vector<double> best = prices();
    double share = 1;
    int in_vain = 0;
    bound_ = -infinity;
    for (int step = 0; step < steps && share > least_share; ++step) {
        double bound = sweep_up();
        if (bound > bound_ + least_gain * std::abs(bound)) in_vain = 0;
        if (bound > bound_) {
            bound_ = bound;
            best = prices();
        }
        if (++in_vain > patience) {
            share /= 2;
            in_vain = 0;
            set_prices(best);
            bound = sweep_up();
        }
        if (bound_ >= limit) break;
        find_lacks(lacks);
        if (!move_prices(lacks, share * (limit - bound))) break;
    }
    set_prices(best);
    bound_ = sweep_up();
}

/// What costs a child's rest: `others` that hang at the same point (row of their sums), the cable that feeds
/// the point, and all beyond it; over the ranks the child may have.
void VoltPrices::bound_child(std::size_t child, const Table& others, std::size_t row, Table& table) const {
    const std::size_t point = feed_of(child);
    double* const least = &table[child * ranks_];
    if (point == parts_.size()) {
        std::fill(least, least + ranks_, others[row * ranks_ + ranks_ - 1]);
        return;
    }
    const Part& part = parts_[point];
    const double lacking = part.price * (part.low - top_);
    for (const Option& option : part.options)
        least[option.below] = std::min(least[option.below], option.cost + price_[point] * option.volts +
                                                                lacking + rest_[cell(point, option.rank)] +
                                                                others[row * ranks_ + at(option.below)]);
    for (std::size_t k = ranks_ - 1; k-- > 0;)
        least[k] = std::min(least[k], least[k + 1]);
}

/// The least of everything outside each part, from the head down.
void VoltPrices::sweep_down() {
    const std::size_t count = parts_.size();
    rest_.assign(least_.size(), infinity);
    joined_.assign(least_.size(), infinity);
    joined_price_.assign(count, 0);
    std::vector<std::vector<std::size_t>> fed(count + 1);
    for (std::size_t i = 0; i < count; ++i)
        fed[feed_of(i)].push_back(i);
    for (std::size_t step = 0; step <= count; ++step) {
        const std::vector<std::size_t>& children = fed[step == 0 ? count : step - 1];
        Table before((children.size() + 1) * ranks_, 0); // sums over the children before each
        for (std::size_t c = 0; c < children.size(); ++c)
            for (std::size_t k = 0; k < ranks_; ++k)
                before[(c + 1) * ranks_ + k] = before[c * ranks_ + k] + least_[children[c] * ranks_ + k];
        Table after(ranks_, 0);
        double price = 0;
        for (std::size_t c = children.size(); c-- > 0;) {
            const std::size_t child = children[c];
            price += price_[child];
            joined_price_[child] = price;
            bound_child(child, before, c, joined_);
            Table others = after;
            for (std::size_t k = 0; k < ranks_; ++k) {
                others[k] += before[c * ranks_ + k];
                after[k] += least_[child * ranks_ + k];
            }
            bound_child(child, others, 0, rest_);
        }
    }
}

} // namespace rillwatt::search
