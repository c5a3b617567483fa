#include "rillwatt/search/spool_table.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rillwatt::search {

namespace {

constexpr double smallest_unit = 1e-4;  // metres: spools are counted in tenths of a millimetre
constexpr double covering_slack = 1e-6; // metres: rounding of summed lengths
constexpr std::size_t most_cells = 4'000'000;

} // namespace

SpoolTable::SpoolTable(const std::vector<Metres>& sold, double longest) {
    std::int64_t common = 0;
    for (const Metres spool : sold) {
        sizes_.push_back(std::max<std::int64_t>(1, std::llround(spool.value() / smallest_unit)));
        common = std::gcd(common, sizes_.back());
    }
    if (sizes_.empty()) return;
    std::sort(sizes_.begin(), sizes_.end());
    sizes_.erase(std::unique(sizes_.begin(), sizes_.end()), sizes_.end());
    const double reach = longest / smallest_unit + static_cast<double>(sizes_.back());
    while (reach / static_cast<double>(common) > static_cast<double>(most_cells))
        common *= 2; // only for spools of odd lengths and kilometres of cable: sizes are then rounded down
    for (std::int64_t& size : sizes_)
        size = std::max<std::int64_t>(1, size / common);
    unit_ = static_cast<double>(common) * smallest_unit;
    const auto cells = static_cast<std::size_t>(reach / static_cast<double>(common)) + 2;
    last_.assign(cells, -1);
    for (std::size_t total = 1; total < cells; ++total)
        for (std::size_t k = 0; k < sizes_.size(); ++k) {
            const auto size = static_cast<std::size_t>(sizes_[k]);
            if (size <= total && (size == total || last_[total - size] >= 0))
                last_[total] = static_cast<int>(k);
        }
    next_made_.assign(cells, cells - 1);
    for (std::size_t total = cells; total-- > 1;)
        next_made_[total] = last_[total] >= 0 || total + 1 == cells ? total : next_made_[total + 1];
    next_made_[0] = 0;
}

std::size_t SpoolTable::cell_for(double metres) const {
    if (metres <= covering_slack) return 0;
    const auto cell = static_cast<std::size_t>(std::ceil((metres - covering_slack) / unit_));
    return next_made_[std::min(cell, next_made_.size() - 1)];
}

double SpoolTable::covering(double metres) const {
    if (sizes_.empty()) return metres;
    return static_cast<double>(cell_for(metres)) * unit_;
}

std::vector<Metres> SpoolTable::spools_for(double metres) const {
    std::vector<Metres> spools;
    if (sizes_.empty()) return spools;
    for (std::size_t total = cell_for(metres); total > 0 && last_[total] >= 0;) {
        const std::int64_t size = sizes_[static_cast<std::size_t>(last_[total])];
        spools.push_back(Metres(static_cast<double>(size) * unit_));
        total -= static_cast<std::size_t>(size);
    }
    std::sort(spools.rbegin(), spools.rend());
    return spools;
}

} // namespace rillwatt::search
