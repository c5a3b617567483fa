#pragma once

#include "rillwatt/search/packing.hpp"

#include <optional>

namespace rillwatt::search {

/// Depth-first search for a way to cut pieces from given spools. Both lists descend.
class PackingFit {
  public:
    PackingFit(const std::vector<Length>& spools, const std::vector<Length>& pieces, std::size_t effort);

    /// The spool of each piece; empty when there is no way, or none was found.
    std::optional<std::vector<std::size_t>> places();

    bool gave_up() const { return effort_ == 0; }
    std::size_t effort_left() const { return effort_; }

  private:
    bool put(std::size_t k);
    bool tried_alike(std::size_t first, std::size_t spool) const;

    const std::vector<Length>& pieces_;
    std::vector<Length> rest_; ///< of each spool
    Length spare_ = 0;         ///< waste that the spools can still have
    std::size_t effort_;
    std::vector<std::size_t> place_;
};

} // namespace rillwatt::search
