#pragma once

#include "part_readers.hpp"
#include <memory_resource>
#include <string>
#include <unordered_map>

namespace rillwatt {

/// Every id of a site file with its kind and line. The ids lie in the document.
class PartIndex {
  public:
    explicit PartIndex(std::size_t parts) {
        parts_.reserve(parts);
        in_order_.reserve(parts);
    }
    /// Two parts with the same id are an error that names both lines.
    void add(ValueReader& reader, const Value& id, PartKind kind);
    bool contains(std::string_view id) const { return parts_.contains(id); }
    /// Reports references that name nothing, or a part of the wrong kind.
    void check(ValueReader& reader, const PendingReference& reference);

  private:
    struct Known {
        PartKind kind;
        int line;
        std::size_t place; ///< in the order of the file
    };

    /// Whether an id is that of the part named last, or of the one written after it, as in a chain of lights.
    bool is_near(std::string_view id, std::uint32_t kinds);

    std::string nearest(std::string_view id, std::uint32_t kinds);

    std::pmr::monotonic_buffer_resource memory_;
    std::pmr::unordered_map<std::string_view, Known> parts_{&memory_};
    std::vector<std::pair<std::string_view, PartKind>> in_order_;
    std::size_t near_ = 0; ///< place of the part named last
    int searches_left_ =
        100; ///< spellings are compared with every id: after so many errors that would be slow
};

/// "a splice", "falls": a kind of part in words.
std::string_view part_kind_words(PartKind kind);

} // namespace rillwatt
