#include "rillwatt/purchase/spools.hpp"

#include "rillwatt/search/spool_table.hpp"

#include <algorithm>
#include <numeric>
#include <queue>

namespace rillwatt {

namespace {

constexpr double cut_slack = 1e-6; // metres

/// Tries to cut pieces, longest first, from given spools.
class Packing {
  public:
    Packing(const std::vector<Metres>& pieces, const std::vector<std::size_t>& order, std::size_t& effort)
        : pieces_(pieces), order_(order), effort_(effort) {}

    bool fits(const std::vector<Metres>& spools) {
        rest_ = spools;
        place_.assign(order_.size(), 0);
        return put(0);
    }

    const std::vector<std::size_t>& places() const { return place_; }

  private:
    bool put(std::size_t k) {
        if (k == order_.size()) return true;
        const Metres piece = pieces_[order_[k]];
        for (std::size_t s = 0; s < rest_.size(); ++s) {
            if (effort_ == 0) return false;
            --effort_;
            if (rest_[s] + Metres(cut_slack) < piece || tried_alike(s)) continue;
            rest_[s] -= piece;
            place_[k] = s;
            if (put(k + 1)) return true;
            rest_[s] += piece;
        }
        return false;
    }

    bool tried_alike(std::size_t s) const {
        for (std::size_t earlier = 0; earlier < s; ++earlier)
            if (std::abs((rest_[earlier] - rest_[s]).value()) < cut_slack) return true;
        return false;
    }

    const std::vector<Metres>& pieces_;
    const std::vector<std::size_t>& order_;
    std::size_t& effort_;
    std::vector<Metres> rest_;
    std::vector<std::size_t> place_;
};

CutList cut_list(const std::vector<Metres>& spools, const std::vector<std::size_t>& order,
                 const std::vector<std::size_t>& places, const std::vector<Metres>& pieces) {
    CutList list;
    for (const Metres spool : spools) {
        list.spools.push_back({spool, {}, spool});
        list.bought += spool;
    }
    list.waste = list.bought;
    for (std::size_t k = 0; k < order.size(); ++k) {
        CutSpool& spool = list.spools[places[k]];
        spool.pieces.push_back(order[k]);
        spool.rest -= pieces[order[k]];
        list.waste -= pieces[order[k]];
    }
    for (CutSpool& spool : list.spools)
        spool.rest = std::max(spool.rest, Metres(0));
    list.waste = std::max(list.waste, Metres(0));
    return list;
}

/// First fit, new spools of one size; each is exchanged for the shortest that holds what was cut from it.
CutList first_fit(const std::vector<Metres>& sold, Metres opened, const std::vector<std::size_t>& order,
                  const std::vector<Metres>& pieces) {
    std::vector<Metres> used;
    std::vector<Metres> capacity;
    std::vector<std::size_t> places;
    for (const std::size_t piece : order) {
        std::size_t s = 0;
        while (s < used.size() && used[s] + pieces[piece] > capacity[s] + Metres(cut_slack))
            ++s;
        if (s == used.size()) {
            used.push_back(Metres(0));
            capacity.push_back(pieces[piece] > opened ? sold.back() : opened);
        }
        used[s] += pieces[piece];
        places.push_back(s);
    }
    for (std::size_t s = 0; s < used.size(); ++s)
        capacity[s] = *std::find_if(sold.begin(), sold.end(),
                                    [&](Metres spool) { return spool + Metres(cut_slack) >= used[s]; });
    return cut_list(capacity, order, places, pieces);
}

/// Sets of spools by ascending total, each set once.
class SpoolSets {
  public:
    explicit SpoolSets(const std::vector<Metres>& sold) : sold_(sold) { push({}, Metres(0)); }

    struct Set {
        Metres total;
        std::vector<std::size_t> sizes; ///< indices into `sold`, ascending
    };

    Set next() {
        Set set = open_.top();
        open_.pop();
        for (std::size_t k = set.sizes.empty() ? 0 : set.sizes.back(); k < sold_.size(); ++k) {
            std::vector<std::size_t> sizes = set.sizes;
            sizes.push_back(k);
            push(std::move(sizes), set.total + sold_[k]);
        }
        return set;
    }

  private:
    struct Later {
        bool operator()(const Set& a, const Set& b) const {
            return a.total != b.total ? a.total > b.total : a.sizes < b.sizes;
        }
    };

    void push(std::vector<std::size_t> sizes, Metres total) { open_.push({total, std::move(sizes)}); }

    const std::vector<Metres>& sold_;
    std::priority_queue<Set, std::vector<Set>, Later> open_;
};

CutList each_by_itself(const std::vector<Metres>& pieces, std::vector<std::size_t> order) {
    CutList list;
    for (const std::size_t piece : order) {
        list.spools.push_back({pieces[piece], {piece}, Metres(0)});
        list.bought += pieces[piece];
    }
    return list;
}

/// Improves on a first packing by looking at every set of spools that costs less.
CutList best_packing(const std::vector<Metres>& sold, const std::vector<Metres>& pieces,
                     const std::vector<std::size_t>& order, CutList best, std::size_t effort) {
    Metres total(0);
    for (const std::size_t piece : order)
        total += pieces[piece];
    Packing packing(pieces, order, effort);
    SpoolSets sets(sold);
    while (effort > 0) {
        const SpoolSets::Set set = sets.next();
        --effort;
        if (set.total + Metres(cut_slack) >= best.bought) return best;
        if (set.total + Metres(cut_slack) < total) continue;
        std::vector<Metres> spools;
        for (const std::size_t k : set.sizes)
            spools.insert(spools.begin(), sold[k]);
        if (packing.fits(spools)) return cut_list(spools, order, packing.places(), pieces);
    }
    best.proven = false;
    return best;
}

} // namespace

SpoolPurchase cheapest_spools(const std::vector<Metres>& sold, Metres needed) {
    SpoolPurchase purchase;
    purchase.spools = search::SpoolTable(sold, needed.value()).spools_for(needed.value());
    for (const Metres spool : purchase.spools)
        purchase.total += spool;
    return purchase;
}

Metres purchased_length(const std::vector<Metres>& sold, Metres needed) {
    return sold.empty() ? needed : Metres(search::SpoolTable(sold, needed.value()).covering(needed.value()));
}

CutList pack_cut_list(const std::vector<Metres>& sold_in, const std::vector<Metres>& pieces,
                      std::size_t effort) {
    std::vector<Metres> sold = sold_in;
    std::sort(sold.begin(), sold.end());
    std::vector<std::size_t> order(pieces.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return pieces[a] > pieces[b]; });
    if (sold.empty()) return each_by_itself(pieces, order);
    std::vector<std::size_t> too_long;
    std::erase_if(order, [&](std::size_t piece) {
        const bool longer = pieces[piece] > sold.back() + Metres(cut_slack);
        if (longer) too_long.push_back(piece);
        return longer;
    });
    CutList best = first_fit(sold, sold.back(), order, pieces);
    for (const Metres opened : sold)
        if (CutList other = first_fit(sold, opened, order, pieces); other.bought < best.bought) best = other;
    best = best_packing(sold, pieces, order, std::move(best), effort);
    best.too_long = too_long;
    return best;
}

} // namespace rillwatt
