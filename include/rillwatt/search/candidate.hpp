#pragma once

#include "rillwatt/search/labels.hpp"
#include "rillwatt/search/trial.hpp"

#include <optional>

namespace rillwatt::search {

/// A complete choice for one transformer, not yet put before the solver.
struct Candidate {
    Proposal proposal;
    double cost = 0;   ///< transformer and open lengths, spools at their price by length; never too high
    bool exact = true; ///< what it stands for is itself alone; otherwise also dearer choices like it
};

/// Hands out candidates by ascending cost.
class CandidateSource {
  public:
    virtual ~CandidateSource() = default;

    /// The next one; empty when there is none left or the effort is spent.
    virtual std::optional<Candidate> next() = 0;

    /// Nothing that is still to come costs less; infinite when nothing is.
    virtual double bound() const = 0;
};

} // namespace rillwatt::search
