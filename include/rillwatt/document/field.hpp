#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What kind of value a key takes.
enum class FieldKind {
    id,        ///< printable text, not empty
    text,      ///< any text
    reference, ///< the id of another part of the same file
    boolean,
    whole_number,
    number,
    percent, ///< a number read as a ratio
    length,
    temperature,
    choice,      ///< one of `choices`
    point,       ///< `[x, y]`, or taped from two marks
    space_point, ///< `[x, y]` or `[x, y, z]`
    id_list,
    reference_list,
    number_list,
    length_list,
    point_list,
    table, ///< a table with keys of its own
};

/// Which numbers a key accepts, in the unit they are kept in (metres for lengths).
struct FieldRange {
    double low = -std::numeric_limits<double>::infinity();
    double high = std::numeric_limits<double>::infinity();
    bool above_low = false; ///< `low` itself is refused
};

constexpr FieldRange at_least_zero(double high) { return {0, high, false}; }
constexpr FieldRange above_zero(double high) { return {0, high, true}; }
constexpr FieldRange between(double low, double high) { return {low, high, false}; }

/// Limits beyond which no garden goes: such a value is a slip of the pen, and is refused where it is written.
inline constexpr double longest_metres = 10'000;
inline constexpr double greatest_volts = 1'000;
inline constexpr double greatest_ohms_per_km = 10'000;

/// Everything the reader knows about one key: it reads by it, errors quote it, and a schema can be made from
/// it.
struct FieldSpec {
    std::string_view key;
    FieldKind kind = FieldKind::text;
    bool required = false;
    FieldRange range;                          ///< numbers, lengths, temperatures, and those in lists
    std::span<const std::string_view> choices; ///< FieldKind::choice
    std::string_view unit;                     ///< of a bare number: "V", "A", "h"
    std::size_t least_items = 0;               ///< lists
    std::size_t most_items = std::numeric_limits<std::size_t>::max();
    std::size_t most_bytes = 200;  ///< ids, and those in lists
    std::uint32_t targets = 0;     ///< references: a bit for each kind of part that may be named
    std::string_view target_words; ///< the same in words, also of ids that name catalog entries
};

/// One kind of table in a file and its keys.
struct TableSpec {
    std::string_view name;
    bool repeated = false; ///< written `[[name]]`, any number of times
    bool named = false;    ///< written `[name.id]`, any number of times
    std::vector<FieldSpec> fields;
    bool nested = false; ///< stands inside a value of another table, never at the top of the file
};

/// What a key expects, in words: "a length from 0 to 10 km, such as ...".
std::string expected_words(const FieldSpec& field, bool bare_lengths);

} // namespace rillwatt
