#include "rillwatt/search/packing_fit.hpp"

#include <numeric>

namespace rillwatt::search {

PackingFit::PackingFit(const std::vector<Length>& spools, const std::vector<Length>& pieces,
                       std::size_t effort)
    : pieces_(pieces), rest_(spools), spare_(std::accumulate(spools.begin(), spools.end(), Length{0}) -
                                             std::accumulate(pieces.begin(), pieces.end(), Length{0})),
      effort_(effort), place_(pieces.size(), 0) {}

std::optional<std::vector<std::size_t>> PackingFit::places() {
    if (spare_ < 0 || !put(0)) return std::nullopt;
    return place_;
}

/// Whether an earlier spool has as much left: what fits here fits there.
bool PackingFit::tried_alike(std::size_t first, std::size_t spool) const {
    for (std::size_t earlier = first; earlier < spool; ++earlier)
        if (rest_[earlier] == rest_[spool]) return true;
    return false;
}

/// Pieces of one length go to spools in ascending order. A rest that the shortest piece exceeds is waste.
bool PackingFit::put(std::size_t k) {
    if (k == pieces_.size()) return true;
    const Length piece = pieces_[k];
    const std::size_t first = k > 0 && pieces_[k - 1] == piece ? place_[k - 1] : 0;
    for (std::size_t s = first; s < rest_.size(); ++s) {
        if (effort_ == 0) return false;
        --effort_;
        if (rest_[s] < piece || tried_alike(first, s)) continue;
        rest_[s] -= piece;
        const Length waste = rest_[s] < pieces_.back() ? rest_[s] : 0;
        spare_ -= waste;
        place_[k] = s;
        if (spare_ >= 0 && put(k + 1)) return true;
        spare_ += waste;
        rest_[s] += piece;
    }
    return false;
}

} // namespace rillwatt::search
