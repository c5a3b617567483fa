#pragma once

#include "rillwatt/document/value_reader.hpp"

#include <span>
#include <type_traits>

namespace rillwatt {

/// The longest path the usual systems take (PATH_MAX of Linux).
inline constexpr std::size_t longest_path = 4096;

/// A key of a table and how its value gets into a `Part`. A table's keys are one array of these: the reader
/// walks it, unknown keys are those that are not in it, and `field_specs` gives it to whoever documents the
/// format.
template<class Part>
struct Field {
    FieldSpec spec;
    void (*read)(ValueReader&, const FieldSpec&, const Value&, Part&);
};

template<class T>
struct SlotOf {
    using Type = T;
};
template<class T>
struct SlotOf<std::optional<T>> {
    using Type = T;
};

/// Puts what was read into a member that holds it directly or as an optional; leaves the default where
/// nothing was.
template<class Slot, class T>
void assign(Slot& slot, const std::optional<T>& read) {
    using Inner = typename SlotOf<Slot>::Type;
    if (!read) return;
    if constexpr (std::is_enum_v<Inner> || std::is_arithmetic_v<Inner>)
        slot = static_cast<Inner>(*read);
    else if constexpr (std::is_same_v<Slot, std::optional<Inner>>)
        slot.emplace(*read);
    else if constexpr (std::is_same_v<Inner, std::string>)
        slot.assign(*read);
    else
        slot = Inner(*read);
}

template<class Slot, class T>
void assign_list(Slot& slot, const std::optional<std::vector<T>>& read) {
    if (!read) return;
    typename SlotOf<Slot>::Type list;
    for (const T& item : *read)
        list.emplace_back(item);
    slot = std::move(list);
}

template<class Part, auto Member>
constexpr Field<Part> text_field(FieldSpec spec) {
    return {spec, [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign(part.*Member, reader.text(field, value));
            }};
}

template<class Part, auto Member>
constexpr Field<Part> reference_field(FieldSpec spec) {
    return {spec, [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                const std::optional<std::string_view> id = reader.text(field, value);
                assign(part.*Member, id);
                if (id) reader.references().push_back({&field, &value});
            }};
}

template<class Part, auto Member>
constexpr Field<Part> boolean_field(std::string_view key) {
    return {{.key = key, .kind = FieldKind::boolean},
            [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign(part.*Member, reader.boolean(field, value));
            }};
}

template<class Part, auto Member>
constexpr Field<Part> number_field(FieldSpec spec) {
    return {spec, [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign(part.*Member, reader.number(field, value));
            }};
}

template<class Part, auto Member>
constexpr Field<Part> percent_field(std::string_view key, double low, double high) {
    return {{.key = key, .kind = FieldKind::percent, .range = between(low, high), .unit = "%"},
            [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                if (const auto percent = reader.number(field, value)) part.*Member = *percent / 100;
            }};
}

template<class Part, auto Member>
constexpr Field<Part> length_field(std::string_view key, FieldRange range, bool required = false) {
    return {{.key = key, .kind = FieldKind::length, .required = required, .range = range},
            [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign(part.*Member, reader.metres(field, value));
            }};
}

template<class Part, auto Member>
constexpr Field<Part> temperature_field(std::string_view key, FieldRange range, bool required = false) {
    return {{.key = key, .kind = FieldKind::temperature, .required = required, .range = range},
            [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign(part.*Member, reader.celsius(field, value));
            }};
}

/// `names` in the order of the enumeration.
template<class Part, auto Member>
constexpr Field<Part> choice_field(std::string_view key, std::span<const std::string_view> names,
                                   bool required = false) {
    return {{.key = key, .kind = FieldKind::choice, .required = required, .choices = names},
            [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign(part.*Member, reader.choice(field, value));
            }};
}

template<class Part, auto Member>
constexpr Field<Part> point_field(std::string_view key, bool required = false) {
    return {{.key = key,
             .kind = FieldKind::point,
             .required = required,
             .range = between(-longest_metres, longest_metres)},
            [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign(part.*Member, reader.point(field, value));
            }};
}

template<class Part, auto Member>
constexpr Field<Part> points_field(std::string_view key, std::size_t least, std::size_t most) {
    return {{.key = key,
             .kind = FieldKind::point_list,
             .required = true,
             .range = between(-longest_metres, longest_metres),
             .least_items = least,
             .most_items = most},
            [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign_list(part.*Member, reader.points(field, value));
            }};
}

/// A list of texts: ids of the catalog, file names.
template<class Part, auto Member>
constexpr Field<Part> texts_field(std::string_view key, std::size_t most_bytes = 200) {
    return {{.key = key, .kind = FieldKind::id_list, .most_bytes = most_bytes},
            [](ValueReader& reader, const FieldSpec& field, const Value& value, Part& part) {
                assign_list(part.*Member, reader.texts(field, value));
            }};
}

/// Place of a key among the fields, N when it is none of them. Keys mostly come in the order of the fields,
/// so that the search begins at `first` and goes round.
template<class Part, std::size_t N>
std::size_t field_index(const Field<Part> (&fields)[N], std::string_view key, std::size_t first) {
    for (std::size_t i = first; i < N; ++i)
        if (fields[i].spec.key == key) return i;
    for (std::size_t i = 0; i < first; ++i)
        if (fields[i].spec.key == key) return i;
    return N;
}

/// Reads every key of a table into `part`; unknown and missing keys are errors of their own.
template<class Part, std::size_t N>
void read_fields(ValueReader& reader, const Table& table, int line, std::string_view name,
                 const Field<Part> (&fields)[N], Part& part) {
    static_assert(N <= 64);
    std::uint64_t given = 0;
    std::size_t next = 0;
    for (const Entry& entry : table.entries) {
        const std::size_t i = field_index(fields, entry.key, next);
        if (i < N) {
            fields[i].read(reader, fields[i].spec, entry.value, part);
            given |= std::uint64_t{1} << i;
            next = i + 1;
            continue;
        }
        std::vector<std::string> known;
        for (const Field<Part>& field : fields)
            known.emplace_back(field.spec.key);
        reader.unknown_key(entry, known);
    }
    for (std::size_t i = 0; i < N; ++i)
        if (fields[i].spec.required && (given >> i & 1u) == 0) reader.missing_key(line, name, fields[i].spec);
}

template<class Part, std::size_t N>
std::vector<FieldSpec> field_specs(const Field<Part> (&fields)[N]) {
    std::vector<FieldSpec> specs;
    for (const Field<Part>& field : fields)
        specs.push_back(field.spec);
    return specs;
}

} // namespace rillwatt
