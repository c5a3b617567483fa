#include "taped_points.hpp"

#include <fmt/format.h>

#include "part_readers.hpp"
#include "site_names.hpp"
#include "two_circles.hpp"

namespace rillwatt {
namespace {

struct Tape {
    std::vector<std::string> from;
    std::vector<Metres> taped;
    std::size_t side = 0; ///< index into `side_names`
};

void read_from(ValueReader& reader, const FieldSpec& field, const Value& value, Tape& tape) {
    assign_list(tape.from, reader.texts(field, value));
}

void read_taped(ValueReader& reader, const FieldSpec& field, const Value& value, Tape& tape) {
    assign_list(tape.taped, reader.lengths(field, value));
}

constexpr Field<Tape> tape_fields[] = {
    {{.key = "from",
      .kind = FieldKind::reference_list,
      .required = true,
      .least_items = 2,
      .most_items = 2,
      .targets = mark_part,
      .target_words = "a mark"},
     read_from},
    {{.key = "taped",
      .kind = FieldKind::length_list,
      .required = true,
      .range = length_above_zero(),
      .least_items = 2,
      .most_items = 2},
     read_taped},
    choice_field<Tape, &Tape::side>("side", side_names, true),
};

constexpr FieldSpec position_spec{
    .key = "at", .kind = FieldKind::point, .required = true, .range = any_length()};

void read_position(ValueReader& reader, const FieldSpec&, const Value&, Mark&);

constexpr Field<Mark> mark_fields[] = {id_field<Mark>(), {position_spec, read_position}};

/// Positions are settled apart, since marks may be taped from marks further down.
void read_position(ValueReader&, const FieldSpec&, const Value&, Mark&) {}

std::string gap_words(Metres gap, bool feet_first) {
    if (!feet_first) return trimmed_text(gap.value(), 3) + " m";
    return gap < feet(1) ? trimmed_text(gap / inches(1), 1) + " in"
                         : decimal_length_text(gap, LengthUnit::feet, 2);
}

} // namespace

void TapedPoints::read_marks(ValueReader& reader, const Array& tables, Site& site) {
    for (const Value& value : tables)
        if (const Table* table = value.table()) {
            const Value* id = table->find("id");
            const Value* at = table->find("at");
            if (id != nullptr && id->text() != nullptr && at != nullptr)
                marks_.try_emplace(std::string(*id->text()), MarkEntry{at, {}, {}});
        }
    for (const Value& value : tables) {
        const Table* table = value.table();
        if (table == nullptr) continue;
        Mark& mark = site.marks.emplace_back();
        read_fields(reader, *table, value.line, "[[mark]]", mark_fields, mark);
        mark.location = location_of(reader, value.line);
        const auto entry = marks_.find(mark.id);
        if (entry == marks_.end()) continue;
        if (entry->second.state == State::unread) settle(reader, entry->second);
        mark.at = entry->second.at;
    }
}

void TapedPoints::settle(ValueReader& reader, MarkEntry& mark) {
    mark.state = State::reading;
    if (chain_ >= longest_chain) {
        reader.error(mark.value->line,
                     fmt::format("marks taped from one another in a chain of more than {}", longest_chain),
                     "marks taped from some that lie nearer to two with coordinates");
        mark.state = State::failed;
        return;
    }
    ++chain_;
    const std::optional<PlanPoint> at = reader.point(position_spec, *mark.value);
    --chain_;
    mark.state = at ? State::known : State::failed;
    if (at) mark.at = *at;
}

std::optional<PlanPoint> TapedPoints::mark_named(ValueReader& reader, const std::string& id, int line) {
    const auto entry = marks_.find(id);
    if (entry == marks_.end()) {
        std::vector<std::string> ids;
        for (const auto& [name, mark] : marks_)
            ids.push_back(name);
        const std::optional<std::string> nearest = nearest_spelling(id, ids);
        reader.error(line, fmt::format("taped from {}, which is no mark", shown_id(id)),
                     nearest ? fmt::format("the id of a mark; nearest is {}", shown_id(*nearest))
                             : "the id of a mark");
        return std::nullopt;
    }
    MarkEntry& mark = entry->second;
    if (mark.state == State::reading) {
        reader.error(line,
                     fmt::format("mark {} is taped, by way of others or at once, from itself", shown_id(id)),
                     "marks that lead back to two with coordinates");
        return std::nullopt;
    }
    if (mark.state == State::unread) settle(reader, mark);
    return mark.state == State::known ? std::optional(mark.at) : std::nullopt;
}

std::optional<PlanPoint> TapedPoints::resolve(ValueReader& reader, const Value& value) {
    Tape tape;
    read_fields(reader, *value.table(), value.line, "taped point", tape_fields, tape);
    if (tape.from.size() != 2 || tape.taped.size() != 2) return std::nullopt;
    const std::optional<PlanPoint> first = mark_named(reader, tape.from[0], value.line);
    const std::optional<PlanPoint> second = mark_named(reader, tape.from[1], value.line);
    if (!first || !second) return std::nullopt;
    const CircleMeeting meeting = meet({*first, tape.taped[0]}, {*second, tape.taped[1]});
    if (meeting.points) return tape.side == 0 ? meeting.points->left : meeting.points->right;
    const std::string ends = fmt::format("{} and {}", shown_id(tape.from[0]), shown_id(tape.from[1]));
    if (*first == *second)
        reader.error(value.line, fmt::format("taped from {}, which are at the same place", ends),
                     "two marks apart from each other");
    else
        reader.error(
            value.line,
            fmt::format("tapes from {} that miss each other by {}", ends,
                        gap_words(meeting.gap, reader.bare_lengths() != LengthUnit::metres)),
            fmt::format("two lengths that can meet: the marks are {} apart",
                        gap_words(distance(*first, *second), reader.bare_lengths() != LengthUnit::metres)));
    return std::nullopt;
}

std::vector<FieldSpec> mark_keys() { return field_specs(mark_fields); }
std::vector<FieldSpec> taped_point_keys() { return field_specs(tape_fields); }

} // namespace rillwatt
