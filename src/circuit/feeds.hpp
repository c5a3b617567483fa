#pragma once

#include "rillwatt/circuit/circuit.hpp"

#include <string_view>
#include <unordered_map>
#include <vector>

namespace rillwatt {

/// A run, splice or fixture and what feeds it.
struct WiredPart {
    NodeKind kind = NodeKind::run;
    std::size_t index = 0;             ///< into Site::runs, ::splices or ::fixtures
    const Part* part = nullptr;        ///< id and line
    const std::string* from = nullptr; ///< null: a fixture not wired yet
    int feed = -1;                     ///< index into Feeds::parts; -1: a run, or nothing
    int transformer = -1;              ///< index into Site::transformers; runs only
};

/// Who feeds whom on the low-voltage side of a site, transformer trees not yet told apart.
struct Feeds {
    std::vector<WiredPart> parts; ///< in file order
    std::vector<int> order;       ///< all that hangs on a run, level by level, each level in file order
};

/// Runs, splices and fixtures by their ids.
class PartsById {
  public:
    explicit PartsById(const std::vector<WiredPart>& parts) : parts_(parts) {}

    /// Index of the part with this id; -1 when there is none.
    int find(std::string_view id);
    /// The same for what feeds a part, which is mostly the part written before it or what feeds that.
    int find_near(std::string_view id, std::size_t part);

  private:
    const std::vector<WiredPart>& parts_;
    std::unordered_map<std::string_view, int> index_; ///< made when first needed
};

/// Looks up every `from`. Adds an error for each that names nothing or the wrong kind of part.
Feeds wire_up(const Site& site, std::vector<InputError>& errors);

/// One error for each loop of parts that feed each other.
std::vector<InputError> loop_errors(const Feeds& feeds);

} // namespace rillwatt
