#pragma once

#include "rillwatt/document/value_reader.hpp"
#include "rillwatt/site/site.hpp"

#include <map>

namespace rillwatt {

/// The `[[mark]]` points of a site, and the points that are taped from them. A mark may be taped from other
/// marks, in any order of the file, as long as none is taped from itself.
class TapedPoints : public PointSource {
  public:
    /// Reads every `[[mark]]`, resolving those that are taped.
    void read_marks(ValueReader& reader, const Array& tables, Site& site);

    std::optional<PlanPoint> resolve(ValueReader& reader, const Value& value) override;

  private:
    enum class State { unread, reading, known, failed };
    struct MarkEntry {
        const Value* value;
        State state = State::unread;
        PlanPoint at;
    };

    std::optional<PlanPoint> mark_named(ValueReader& reader, const std::string& id, int line);
    void settle(ValueReader& reader, MarkEntry& mark);

    static constexpr int longest_chain = 500; ///< of marks each taped from the next
    int chain_ = 0;                           ///< how far along one we are

    std::map<std::string, MarkEntry, std::less<>> marks_;
};

std::vector<FieldSpec> mark_keys();
std::vector<FieldSpec> taped_point_keys();

} // namespace rillwatt
