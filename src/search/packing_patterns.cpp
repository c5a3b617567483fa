#include "rillwatt/search/packing_bounds.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr std::size_t most_lengths = 60; ///< distinct: more are not worth a linear programme
constexpr int most_pivots = 1000;
constexpr std::size_t most_steps = 200'000; ///< of one search for a pattern
constexpr double least_gain = 1e-9;         ///< of a pattern, as a share of its spool
constexpr double scale = 1024;              ///< duals are whole numbers of this part of a unit

/// The cutting pattern of the greatest value, by depth-first search over lengths in the order of their value
/// per length (a bounded knapsack). Values and lengths are whole numbers, so that sums are exact.
class BestPattern {
  public:
    BestPattern(const std::vector<Length>& lengths, const std::vector<std::int64_t>& demand,
                const std::vector<double>& values)
        : lengths_(lengths), demand_(demand), values_(values), order_(lengths.size()),
          times_(lengths.size(), 0), best_times_(lengths.size(), 0) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(),
                         [&](std::size_t a, std::size_t b) { return density(a) > density(b); });
    }

    /// Greatest value; negative when the search was given up.
    double of(Length spool) {
        best_ = 0;
        steps_ = 0;
        std::fill(best_times_.begin(), best_times_.end(), 0);
        fill(0, spool, 0);
        return steps_ > most_steps ? -1 : best_;
    }

    const std::vector<std::int64_t>& times() const { return best_times_; }

  private:
    double density(std::size_t j) const { return values_[j] / static_cast<double>(lengths_[j]); }

    void fill(std::size_t k, Length rest, double value) {
        if (value > best_) {
            best_ = value;
            best_times_ = times_;
        }
        if (k == order_.size() || ++steps_ > most_steps) return;
        const std::size_t j = order_[k];
        constexpr double rounding = 1 + 1e-12;
        if (value + static_cast<double>(rest) * density(j) * rounding <= best_) return;
        for (std::int64_t n = std::min(demand_[j], rest / lengths_[j]); n >= 0; --n) {
            times_[j] = n;
            fill(k + 1, rest - n * lengths_[j], value + static_cast<double>(n) * values_[j]);
        }
        times_[j] = 0;
    }

    const std::vector<Length>& lengths_;
    const std::vector<std::int64_t>& demand_;
    const std::vector<double>& values_;
    std::vector<std::size_t> order_;
    std::vector<std::int64_t> times_;
    std::vector<std::int64_t> best_times_;
    double best_ = 0;
    std::size_t steps_ = 0;
};

/// The revised simplex method on "cut each length as often as it is needed at the least length of spools".
class PatternSimplex {
  public:
    PatternSimplex(const std::vector<Length>& sold, const std::vector<Length>& lengths,
                   const std::vector<std::int64_t>& demand)
        : sold_(sold), lengths_(lengths), demand_(demand), rows_(lengths.size()),
          inverse_(rows_, std::vector<double>(rows_, 0)) {
        for (std::size_t j = 0; j < rows_; ++j) {
            const Length spool = *std::lower_bound(sold_.begin(), sold_.end(), lengths_[j]);
            Pattern pattern{spool, std::vector<std::int64_t>(rows_, 0), 0};
            pattern.times[j] = std::min(demand_[j], spool / lengths_[j]);
            inverse_[j][j] = 1 / static_cast<double>(pattern.times[j]);
            pattern.used = static_cast<double>(demand_[j]) * inverse_[j][j];
            basis_.push_back(std::move(pattern));
        }
    }

    void solve() {
        for (int pivot = 0; pivot < most_pivots; ++pivot)
            if (!enter_better(duals())) return;
    }

    const std::vector<Pattern>& basis() const { return basis_; }

    std::vector<double> duals() const {
        std::vector<double> duals(rows_, 0);
        for (std::size_t i = 0; i < rows_; ++i)
            for (std::size_t j = 0; j < rows_; ++j)
                duals[j] += static_cast<double>(basis_[i].spool) * inverse_[i][j];
        for (double& dual : duals)
            dual = std::max(dual, 0.0);
        return duals;
    }

  private:
    /// Brings the pattern that gains most by its spool's length into the basis. False when none gains.
    bool enter_better(const std::vector<double>& duals) {
        BestPattern search(lengths_, demand_, duals);
        Pattern better;
        double most = 1 + least_gain;
        for (const Length spool : sold_) {
            const double worth = search.of(spool) / static_cast<double>(spool);
            if (worth <= most) continue;
            most = worth;
            better = {spool, search.times(), 0};
        }
        return better.spool > 0 && exchange(std::move(better));
    }

    bool exchange(Pattern entering) {
        std::vector<double> column(rows_, 0);
        for (std::size_t i = 0; i < rows_; ++i)
            for (std::size_t j = 0; j < rows_; ++j)
                column[i] += inverse_[i][j] * static_cast<double>(entering.times[j]);
        std::size_t leaving = rows_;
        for (std::size_t i = 0; i < rows_; ++i)
            if (column[i] > 1e-9 &&
                (leaving == rows_ || basis_[i].used / column[i] < basis_[leaving].used / column[leaving]))
                leaving = i;
        if (leaving == rows_) return false;
        const double step = basis_[leaving].used / column[leaving];
        for (std::size_t j = 0; j < rows_; ++j)
            inverse_[leaving][j] /= column[leaving];
        for (std::size_t i = 0; i < rows_; ++i) {
            if (i == leaving) continue;
            basis_[i].used = std::max(basis_[i].used - step * column[i], 0.0);
            for (std::size_t j = 0; j < rows_; ++j)
                inverse_[i][j] -= column[i] * inverse_[leaving][j];
        }
        entering.used = step;
        basis_[leaving] = std::move(entering);
        return true;
    }

    const std::vector<Length>& sold_; ///< ascending
    const std::vector<Length>& lengths_;
    const std::vector<std::int64_t>& demand_;
    std::size_t rows_;
    std::vector<std::vector<double>> inverse_; ///< of the basis
    std::vector<Pattern> basis_;
};

/// Any values of the lengths bound the cost once they are scaled so that no pattern is worth more than its
/// spool (Farley). They are made whole numbers first: what the patterns are worth is then exact.
Length farley_bound(const std::vector<Length>& sold, const std::vector<Length>& lengths,
                    const std::vector<std::int64_t>& demand, std::vector<double> duals) {
    double total = 0;
    for (std::size_t j = 0; j < duals.size(); ++j) {
        duals[j] = std::floor(duals[j] * scale);
        total += duals[j] * static_cast<double>(demand[j]);
    }
    BestPattern search(lengths, demand, duals);
    double most = 0; ///< worth of a pattern over the length of its spool
    for (const Length spool : sold) {
        const double worth = search.of(spool);
        if (worth < 0) return 0;
        most = std::max(most, worth / static_cast<double>(spool));
    }
    if (most <= 0) return 0;
    const double bound = total / most;
    constexpr double rounding = 1e-9;
    return static_cast<Length>(std::ceil(bound - rounding * bound - rounding));
}

} // namespace

PatternProgram solve_patterns(const std::vector<Length>& sold_in, const std::vector<Length>& pieces) {
    PatternProgram program;
    std::vector<Length> sold = sold_in;
    std::sort(sold.begin(), sold.end());
    std::vector<Length> sorted = pieces;
    std::sort(sorted.rbegin(), sorted.rend());
    std::vector<std::int64_t> demand;
    for (const Length piece : sorted) {
        if (program.lengths.empty() || program.lengths.back() != piece) {
            program.lengths.push_back(piece);
            demand.push_back(0);
        }
        ++demand.back();
    }
    if (program.lengths.empty() || program.lengths.size() > most_lengths) return program;
    PatternSimplex simplex(sold, program.lengths, demand);
    simplex.solve();
    program.patterns = simplex.basis();
    program.bound = farley_bound(sold, program.lengths, demand, simplex.duals());
    return program;
}

} // namespace rillwatt::search
