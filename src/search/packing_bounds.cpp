#include "rillwatt/search/packing_bounds.hpp"

#include <algorithm>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr Length most_totals = 1'000'000; ///< tabulated

} // namespace

SpoolTotals::SpoolTotals(const std::vector<Length>& sold, Length longest) {
    if (sold.empty()) return;
    unit_ = 0;
    for (const Length spool : sold)
        unit_ = std::gcd(unit_, spool);
    const Length reach = (longest + *std::max_element(sold.begin(), sold.end())) / unit_ + 1;
    if (reach > most_totals) return;
    std::vector<char> made(static_cast<std::size_t>(reach) + 1, 0);
    made[0] = 1;
    for (std::size_t total = 1; total < made.size(); ++total)
        for (const Length spool : sold) {
            const auto size = static_cast<std::size_t>(spool / unit_);
            if (size <= total && made[total - size] != 0) made[total] = 1;
        }
    next_.assign(made.size(), reach);
    for (std::size_t total = made.size(); total-- > 0;)
        if (made[total] != 0)
            next_[total] = static_cast<Length>(total);
        else if (total + 1 < made.size())
            next_[total] = next_[total + 1];
}

Length SpoolTotals::covering(Length length) const {
    if (length <= 0) return 0;
    const auto cell = static_cast<std::size_t>((length + unit_ - 1) / unit_);
    return cell < next_.size() ? next_[cell] * unit_ : length;
}

/// For a length a of at most half a spool: pieces longer than spool - a take a spool each, those longer than
/// half take one too; what these leave may take of the pieces from a to half a spool, the rest needs more.
std::int64_t l2_bound(Length spool, const std::vector<Length>& pieces) {
    std::vector<Length> marks{0};
    for (const Length piece : pieces)
        if (2 * piece <= spool) marks.push_back(piece);
    std::int64_t best = 0;
    for (const Length a : marks) {
        std::int64_t alone = 0;
        std::int64_t halves = 0;
        Length in_halves = 0;
        Length small = 0;
        for (const Length piece : pieces)
            if (piece > spool - a) {
                ++alone;
            } else if (2 * piece > spool) {
                ++halves;
                in_halves += piece;
            } else if (piece >= a) {
                small += piece;
            }
        const Length over = small - (halves * spool - in_halves);
        best = std::max(best, alone + halves + (over > 0 ? (over + spool - 1) / spool : 0));
    }
    return best;
}

} // namespace rillwatt::search
