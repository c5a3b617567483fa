#pragma once

#include "rillwatt/document/document.hpp"
#include "rillwatt/document/field.hpp"
#include "rillwatt/quantity/point.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

class ValueReader;

/// Points that are not written as coordinates.
class PointSource {
  public:
    virtual ~PointSource() = default;
    /// The point a table such as `{ from = [...], taped = [...] }` stands for; empty after reporting an
    /// error.
    virtual std::optional<PlanPoint> resolve(ValueReader& reader, const Value& value) = 0;
};

/// A value that names another part, to be looked up when all parts are known.
struct PendingReference {
    const FieldSpec* field;
    const Value* value;
};

/// Turns values of one document into typed ones. What does not fit is recorded as an error and read as empty,
/// so that reading goes on and everything wrong is told at once.
class ValueReader {
  public:
    /// `bare_lengths`: the unit of lengths written as bare numbers; none: every length must carry its unit.
    ValueReader(const Document& document, std::optional<LengthUnit> bare_lengths)
        : document_(document), bare_lengths_(bare_lengths) {}

    /// The text lies in the document.
    std::optional<std::string_view> text(const FieldSpec& field, const Value& value);
    std::optional<bool> boolean(const FieldSpec& field, const Value& value);
    /// The number as written; a percentage is not yet divided.
    std::optional<double> number(const FieldSpec& field, const Value& value);
    std::optional<double> metres(const FieldSpec& field, const Value& value);
    std::optional<double> celsius(const FieldSpec& field, const Value& value);
    /// The index of the choice.
    std::optional<std::size_t> choice(const FieldSpec& field, const Value& value);
    std::optional<PlanPoint> point(const FieldSpec& field, const Value& value);
    std::optional<SpacePoint> space_point(const FieldSpec& field, const Value& value);
    std::optional<std::vector<std::string>> texts(const FieldSpec& field, const Value& value);
    std::optional<std::vector<double>> numbers(const FieldSpec& field, const Value& value);
    std::optional<std::vector<double>> lengths(const FieldSpec& field, const Value& value);
    std::optional<std::vector<PlanPoint>> points(const FieldSpec& field, const Value& value);

    void unknown_key(const Entry& entry, const std::vector<std::string>& known);
    void missing_key(int line, std::string_view table, const FieldSpec& field);
    /// "`length` is -4; expected ..."
    void wrong_value(const FieldSpec& field, const Value& value);
    void error(int line, std::string found, std::string expected);
    bool failed() const { return !errors_.empty(); }
    /// All errors so far, by line.
    std::vector<InputError> take_errors();

    const Document& document() const { return document_; }
    std::optional<LengthUnit> bare_lengths() const { return bare_lengths_; }
    void set_bare_lengths(LengthUnit unit) { bare_lengths_ = unit; }
    void set_point_source(PointSource* source) { point_source_ = source; }
    std::vector<PendingReference>& references() { return references_; }

  private:
    const Array* list(const FieldSpec& field, const Value& value);
    bool accepted(const FieldSpec& field, double number) const;

    const Document& document_;
    std::optional<LengthUnit> bare_lengths_;
    PointSource* point_source_ = nullptr;
    std::vector<InputError> errors_;
    std::vector<PendingReference> references_;
};

/// A value as an error message shows it: `"12 yd"`, `-4`, `a list`.
std::string shown_value(const Value& value);

/// A printable id in quotes fit for a message, cut when very long.
std::string shown_id(std::string_view id);

} // namespace rillwatt
