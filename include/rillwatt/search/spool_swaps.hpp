#pragma once

#include "rillwatt/search/effort.hpp"
#include "rillwatt/search/packing_bounds.hpp"
#include "rillwatt/search/spool_cost.hpp"

#include <optional>
#include <vector>

namespace rillwatt::search {

/// Looks for a choice whose pieces go well into whole spools, starting from one that works.
///
/// Simulated annealing (Kirkpatrick, Gelatt, Vecchi, Science 220 (1983) 671-680): a length, or all open
/// lengths of a run, gets another cable, with what order asks of the lengths that feed it or follow it; now
/// and then a run gets another tap or a transformer another model. What is weighed is half the cost by length
/// and half that of the least whole spools that cover the metres: steps towards fewer spools are seen before
/// a spool is saved. Only what holds before the circuit solver is gone to. The choices that promise to beat
/// the best known one are packed. Chance comes from a fixed seed.
class SpoolSwaps {
  public:
    SpoolSwaps(const SizeProblem& problem, Effort& effort);

    /// Anneals from a choice that works. Improves `best` and its `cost` where something cheaper is found.
    void anneal(const std::vector<std::optional<Proposal>>& start, std::size_t steps,
                std::vector<std::optional<Proposal>>& best, double& cost);

  private:
    /// Open lengths that get a cable together: of a run (links apart).
    struct Group {
        std::size_t transformer = 0;
        std::size_t run = 0;
        std::vector<std::size_t> nodes;
        int link = -1; ///< or a link
    };
    struct Change {
        std::size_t transformer;
        Proposal before;
    };

    void add_groups(std::size_t t);
    std::uint64_t draw();
    double draw_share();
    bool change_something(std::vector<Change>& changes);
    bool change_cable(std::vector<Change>& changes);
    bool change_supply(std::vector<Change>& changes);
    void keep_before(std::size_t t, std::vector<Change>& changes) const;
    void set_cable(const Group& group, int cable);
    void set_length(std::size_t t, std::size_t run, std::size_t node, int cable);
    void lay(int cable, double metres, double sign);
    void undo(std::vector<Change>& changes);
    double weight() const;
    double covering_cost() const;
    bool holds(const std::vector<Change>& changes);
    void measure();

    const SizeProblem& problem_;
    Effort& effort_;
    SpoolCost cost_;
    std::vector<SpoolTotals> totals_;
    std::vector<Trial> trials_;
    std::vector<Group> groups_;
    std::vector<std::vector<std::vector<std::vector<std::size_t>>>> fed_; ///< by transformer, run, node
    std::vector<Proposal> now_;
    double plain_ = 0;
    std::vector<double> metres_; ///< of each spooled cable, typed ones included
    std::uint64_t state_ = 1;
};

} // namespace rillwatt::search
