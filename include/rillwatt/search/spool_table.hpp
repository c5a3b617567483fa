#pragma once

#include "rillwatt/quantity/quantity.hpp"

#include <cstdint>
#include <vector>

namespace rillwatt::search {

/// Which total lengths whole spools can make, up to some length.
class SpoolTable {
  public:
    /// Spools as sold, up to `longest` metres needed.
    SpoolTable(const std::vector<Metres>& sold, double longest);

    /// Least total of whole spools that covers `metres`.
    double covering(double metres) const;

    /// The spools of a total that `covering` returned, longest first.
    std::vector<Metres> spools_for(double metres) const;

  private:
    std::size_t cell_for(double metres) const;

    double unit_ = 1;                    ///< metres; every spool is a multiple of it
    std::vector<std::int64_t> sizes_;    ///< in units, ascending
    std::vector<int> last_;              ///< a spool that completes each total; -1: cannot be made
    std::vector<std::size_t> next_made_; ///< least total at or above each that can be made
};

} // namespace rillwatt::search
