#include "rillwatt/search/packing.hpp"

#include "rillwatt/search/packing_bounds.hpp"
#include "rillwatt/search/packing_fit.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace rillwatt::search {

namespace {

constexpr double micrometres = 1e6; ///< in a metre
constexpr std::size_t most_sets = 20'000;
constexpr std::size_t program_effort =
    20'000; ///< with less a linear programme would take longer than the rest

/// Spools as chosen, and for each piece (longest first) the one it is cut from.
struct Cuts {
    std::vector<Length> spools;
    std::vector<std::size_t> places;

    Length bought() const { return std::accumulate(spools.begin(), spools.end(), Length{0}); }
};

/// Packs pieces that are sorted, longest first; spools ascend.
class Packer {
  public:
    Packer(const std::vector<Length>& sold, const std::vector<Length>& pieces, std::size_t effort)
        : sold_(sold), pieces_(pieces), effort_(effort) {}

    void pack() {
        best_ = first_fit(sold_.back(), pieces_);
        for (const Length opened : sold_)
            take(first_fit(opened, pieces_));
        const Length total = std::accumulate(pieces_.begin(), pieces_.end(), Length{0});
        totals_.emplace(sold_, best_.bought());
        raise(total);
        if (sold_.size() == 1) raise(l2_bound(sold_.front(), pieces_) * sold_.front());
        if (open()) try_sets(effort_ / 8);
        if (open() && effort_ >= program_effort) solve_program();
        if (open()) try_sets(effort_);
    }

    const Cuts& best() const { return best_; }
    Length bound() const { return bound_; }

  private:
    bool open() const { return bound_ < best_.bought(); }
    void raise(Length bound) { bound_ = std::max(bound_, totals_->covering(bound)); }
    void take(Cuts cuts) {
        if (cuts.bought() < best_.bought()) best_ = std::move(cuts);
    }

    Cuts first_fit(Length opened, const std::vector<Length>& pieces) const;
    void solve_program();
    void round_down(const PatternProgram& program);
    void list_sets(std::size_t k, Length sum, std::vector<Length>& set);
    void try_sets(std::size_t effort);
    bool try_set(const std::vector<Length>& set, std::size_t& effort);

    const std::vector<Length>& sold_;
    const std::vector<Length>& pieces_;
    std::size_t effort_;
    std::optional<SpoolTotals> totals_;
    Cuts best_;
    Length bound_ = 0;
    std::vector<std::vector<Length>> sets_;
    bool all_listed_ = true;
};

/// New spools are of one length, where it is long enough; each is then exchanged for the shortest that holds
/// what was cut from it.
Cuts Packer::first_fit(Length opened, const std::vector<Length>& pieces) const {
    std::vector<Length> used;
    Cuts cuts;
    for (const Length piece : pieces) {
        std::size_t s = 0;
        while (s < used.size() && used[s] + piece > cuts.spools[s])
            ++s;
        if (s == used.size()) {
            used.push_back(0);
            cuts.spools.push_back(piece > opened ? sold_.back() : opened);
        }
        used[s] += piece;
        cuts.places.push_back(s);
    }
    for (std::size_t s = 0; s < used.size(); ++s)
        cuts.spools[s] = *std::lower_bound(sold_.begin(), sold_.end(), used[s]);
    return cuts;
}

void Packer::solve_program() {
    const PatternProgram program = solve_patterns(sold_, pieces_);
    raise(program.bound);
    if (open()) round_down(program);
}

/// Cuts each pattern of the linear programme as often as it says in whole numbers, and packs the rest anew.
void Packer::round_down(const PatternProgram& program) {
    std::vector<std::size_t> next(program.lengths.size(), 0); // piece of each length to be cut next
    std::vector<std::size_t> end(program.lengths.size(), 0);
    for (std::size_t j = 0, i = 0; j < next.size(); ++j) {
        next[j] = i;
        while (i < pieces_.size() && pieces_[i] == program.lengths[j])
            ++i;
        end[j] = i;
    }
    Cuts cuts{{}, std::vector<std::size_t>(pieces_.size(), 0)};
    for (const Pattern& pattern : program.patterns)
        for (auto times = static_cast<std::int64_t>(pattern.used + 1e-9); times > 0; --times) {
            for (std::size_t j = 0; j < next.size(); ++j)
                for (std::int64_t n = 0; n < pattern.times[j] && next[j] < end[j]; ++n)
                    cuts.places[next[j]++] = cuts.spools.size();
            cuts.spools.push_back(pattern.spool);
        }
    std::vector<Length> rest;
    std::vector<std::size_t> rest_of;
    for (std::size_t j = 0; j < next.size(); ++j)
        for (std::size_t i = next[j]; i < end[j]; ++i) {
            rest.push_back(pieces_[i]);
            rest_of.push_back(i);
        }
    if (rest.empty()) return take(std::move(cuts));
    if (rest.size() == pieces_.size()) return;
    Packer packer(sold_, rest, effort_ / 2);
    packer.pack();
    for (std::size_t i = 0; i < rest.size(); ++i)
        cuts.places[rest_of[i]] = cuts.spools.size() + packer.best().places[i];
    cuts.spools.insert(cuts.spools.end(), packer.best().spools.begin(), packer.best().spools.end());
    take(std::move(cuts));
}

/// Sets of spools, longest first, whose total lies from the bound to below what is known.
void Packer::list_sets(std::size_t k, Length sum, std::vector<Length>& set) {
    const Length most = best_.bought() - 1 - sum;
    if (k == 0) {
        if (sum >= bound_ && most >= 0) sets_.push_back(set);
        all_listed_ = all_listed_ && sets_.size() < most_sets;
        return;
    }
    const Length spool = sold_[k - 1];
    const Length least = k == 1 && sum < bound_ ? (bound_ - sum + spool - 1) / spool : 0;
    const std::size_t before = set.size();
    for (Length n = most / spool; n >= least && all_listed_; --n) {
        set.resize(before);
        set.insert(set.end(), static_cast<std::size_t>(n), spool);
        list_sets(k - 1, sum + n * spool, set);
    }
    set.resize(before);
}

/// False when it stays unknown whether the pieces fit.
bool Packer::try_set(const std::vector<Length>& set, std::size_t& effort) {
    PackingFit fit(set, pieces_, effort);
    auto places = fit.places();
    const bool known = places || !fit.gave_up();
    if (places) take({set, std::move(*places)});
    effort = known ? fit.effort_left() : effort / 2; // the others get their chance
    return known;
}

void Packer::try_sets(std::size_t effort) {
    std::vector<Length> set;
    sets_.clear();
    list_sets(sold_.size(), 0, set);
    if (!all_listed_) return;
    const auto total = [](const std::vector<Length>& spools) {
        return std::accumulate(spools.begin(), spools.end(), Length{0});
    };
    std::stable_sort(sets_.begin(), sets_.end(),
                     [&](const auto& a, const auto& b) { return total(a) < total(b); });
    bool known = true;
    for (const std::vector<Length>& spools : sets_) {
        if (total(spools) >= best_.bought()) break;
        if (known) bound_ = total(spools);
        known = try_set(spools, effort) && known;
    }
    if (known) bound_ = best_.bought();
}

} // namespace

Length whole_length(double metres) { return std::max<Length>(1, std::llround(metres * micrometres)); }

double metres_of(Length length) { return static_cast<double>(length) / micrometres; }

Packing pack(const std::vector<Length>& sold_in, const std::vector<Length>& pieces, std::size_t effort) {
    Packing packing;
    if (pieces.empty()) return packing;
    std::vector<Length> sold = sold_in;
    std::sort(sold.begin(), sold.end());
    sold.erase(std::unique(sold.begin(), sold.end()), sold.end());
    std::vector<std::size_t> order(pieces.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return pieces[a] > pieces[b]; });
    std::vector<Length> sorted;
    for (const std::size_t piece : order)
        sorted.push_back(pieces[piece]);
    Packer packer(sold, sorted, effort);
    packer.pack();
    for (const Length spool : packer.best().spools)
        packing.spools.push_back({spool, {}});
    for (std::size_t i = 0; i < order.size(); ++i)
        packing.spools[packer.best().places[i]].pieces.push_back(order[i]);
    packing.bought = packer.best().bought();
    packing.bound = packer.bound();
    return packing;
}

} // namespace rillwatt::search
