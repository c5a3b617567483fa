#pragma once

#include "part_readers.hpp"
#include <string>
#include <unordered_map>

namespace rillwatt {

/// Every id of a site file with its kind and line.
class PartIndex {
  public:
    /// Two parts with the same id are an error that names both lines.
    void add(ValueReader& reader, const Value& id, PartKind kind);
    bool contains(const std::string& id) const { return parts_.contains(id); }
    /// Reports references that name nothing, or a part of the wrong kind.
    void check(ValueReader& reader, const PendingReference& reference);

  private:
    struct Known {
        PartKind kind;
        int line;
    };

    std::string nearest(const std::string& id, std::uint32_t kinds);

    std::unordered_map<std::string, Known> parts_;
    std::vector<std::pair<std::string, PartKind>> in_order_;
    int searches_left_ =
        100; ///< spellings are compared with every id: after so many errors that would be slow
};

/// "a splice", "falls": a kind of part in words.
std::string_view part_kind_words(PartKind kind);

} // namespace rillwatt
