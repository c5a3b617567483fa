#include "rillwatt/document/value_reader.hpp"

#include <algorithm>
#include <cmath>

namespace rillwatt {
namespace {

bool is_id_kind(FieldKind kind) { return kind == FieldKind::id || kind == FieldKind::reference; }

bool is_good_id(std::string_view text, const FieldSpec& field) {
    return !text.empty() && text.size() <= field.most_bytes && is_printable(text);
}

} // namespace

std::optional<std::string_view> ValueReader::text(const FieldSpec& field, const Value& value) {
    const std::string_view* text = value.text();
    if (text != nullptr && (!is_id_kind(field.kind) || is_good_id(*text, field))) return *text;
    wrong_value(field, value);
    return std::nullopt;
}

std::optional<bool> ValueReader::boolean(const FieldSpec& field, const Value& value) {
    if (const bool* boolean = value.boolean()) return *boolean;
    wrong_value(field, value);
    return std::nullopt;
}

bool ValueReader::accepted(const FieldSpec& field, double number) const {
    if (!std::isfinite(number) || number > field.range.high) return false;
    if (field.kind == FieldKind::whole_number && number != std::floor(number)) return false;
    return field.range.above_low ? number > field.range.low : number >= field.range.low;
}

std::optional<double> ValueReader::number(const FieldSpec& field, const Value& value) {
    const std::optional<double> number = value.number();
    if (number && accepted(field, *number)) return number;
    wrong_value(field, value);
    return std::nullopt;
}

std::optional<double> ValueReader::metres(const FieldSpec& field, const Value& value) {
    std::optional<double> metres = bare_lengths_ ? value.number() : std::nullopt;
    if (metres && bare_lengths_ == LengthUnit::feet) *metres *= metres_per_foot;
    if (const std::string_view* text = value.text())
        if (const std::optional<Metres> length = parse_length(*text)) metres = length->value();
    if (metres && accepted(field, *metres)) return metres;
    wrong_value(field, value);
    return std::nullopt;
}

std::optional<double> ValueReader::celsius(const FieldSpec& field, const Value& value) {
    std::optional<double> celsius = value.number();
    if (const std::string_view* text = value.text())
        if (const std::optional<Celsius> temperature = parse_temperature(*text))
            celsius = temperature->value();
    if (celsius && accepted(field, *celsius)) return celsius;
    wrong_value(field, value);
    return std::nullopt;
}

std::optional<std::size_t> ValueReader::choice(const FieldSpec& field, const Value& value) {
    if (const std::string_view* text = value.text()) {
        const auto match = std::find(field.choices.begin(), field.choices.end(), *text);
        if (match != field.choices.end()) return static_cast<std::size_t>(match - field.choices.begin());
    }
    wrong_value(field, value);
    return std::nullopt;
}

std::optional<PlanPoint> ValueReader::point(const FieldSpec& field, const Value& value) {
    if (value.table() != nullptr && point_source_ != nullptr) return point_source_->resolve(*this, value);
    const Array* items = value.array();
    if (items == nullptr || items->size() != 2) {
        wrong_value(field, value);
        return std::nullopt;
    }
    const FieldSpec coordinate{.key = field.key, .kind = FieldKind::length, .range = field.range};
    const std::optional<double> x = metres(coordinate, (*items)[0]);
    const std::optional<double> y = metres(coordinate, (*items)[1]);
    return x && y ? std::optional(PlanPoint{*x, *y}) : std::nullopt;
}

std::optional<SpacePoint> ValueReader::space_point(const FieldSpec& field, const Value& value) {
    const Array* items = value.array();
    if (items == nullptr || items->size() != 3) {
        const std::optional<PlanPoint> flat = point(field, value);
        return flat ? std::optional(SpacePoint{flat->x, flat->y, 0}) : std::nullopt;
    }
    const FieldSpec coordinate{.key = field.key, .kind = FieldKind::length, .range = field.range};
    const std::optional<double> x = metres(coordinate, (*items)[0]);
    const std::optional<double> y = metres(coordinate, (*items)[1]);
    const std::optional<double> z = metres(coordinate, (*items)[2]);
    return x && y && z ? std::optional(SpacePoint{*x, *y, *z}) : std::nullopt;
}

const Array* ValueReader::list(const FieldSpec& field, const Value& value) {
    const Array* items = value.array();
    if (items != nullptr && items->size() >= field.least_items && items->size() <= field.most_items)
        return items;
    wrong_value(field, value);
    return nullptr;
}

std::optional<std::vector<std::string>> ValueReader::texts(const FieldSpec& field, const Value& value) {
    const Array* items = list(field, value);
    if (items == nullptr) return std::nullopt;
    const FieldSpec item_spec{.key = field.key, .kind = FieldKind::id, .most_bytes = field.most_bytes};
    std::vector<std::string> texts;
    for (const Value& item : *items)
        if (const std::optional<std::string_view> read = text(item_spec, item)) texts.emplace_back(*read);
    return texts;
}

std::optional<std::vector<double>> ValueReader::numbers(const FieldSpec& field, const Value& value) {
    const Array* items = list(field, value);
    if (items == nullptr) return std::nullopt;
    const FieldSpec item_spec{
        .key = field.key, .kind = FieldKind::number, .range = field.range, .unit = field.unit};
    std::vector<double> numbers;
    for (const Value& item : *items)
        if (const std::optional<double> read = number(item_spec, item)) numbers.push_back(*read);
    return numbers.size() == items->size() ? std::optional(numbers) : std::nullopt;
}

std::optional<std::vector<double>> ValueReader::lengths(const FieldSpec& field, const Value& value) {
    const Array* items = list(field, value);
    if (items == nullptr) return std::nullopt;
    const FieldSpec item_spec{.key = field.key, .kind = FieldKind::length, .range = field.range};
    std::vector<double> lengths;
    for (const Value& item : *items)
        if (const std::optional<double> read = metres(item_spec, item)) lengths.push_back(*read);
    return lengths.size() == items->size() ? std::optional(lengths) : std::nullopt;
}

std::optional<std::vector<PlanPoint>> ValueReader::points(const FieldSpec& field, const Value& value) {
    const Array* items = list(field, value);
    if (items == nullptr) return std::nullopt;
    const FieldSpec item_spec{.key = field.key, .kind = FieldKind::point, .range = field.range};
    std::vector<PlanPoint> points;
    for (const Value& item : *items)
        if (const std::optional<PlanPoint> read = point(item_spec, item)) points.push_back(*read);
    return points.size() == items->size() ? std::optional(points) : std::nullopt;
}

} // namespace rillwatt
