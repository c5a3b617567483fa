#include "rillwatt/report/bill_csv.hpp"

#include "rillwatt/report/escape.hpp"

#include <array>

namespace rillwatt {

namespace {

using Record = std::array<std::string, 9>;

std::string money_cell(const std::optional<Money>& money) {
    return money ? csv_number(money->value(), 2) : std::string();
}

Record line_record(const BillLine& line, std::string_view currency) {
    return {csv_text(line.item),        csv_text(bill_kind_name(line.kind)),
            csv_text(line.description), csv_number(line.quantity, 3),
            csv_text(line.unit),        money_cell(line.price),
            money_cell(line.cost),      line.cost ? csv_text(currency) : std::string(),
            csv_text(line.why)};
}

} // namespace

std::string bill_csv(const Bill& bill, std::string_view currency) {
    std::string csv = csv_record(
        Record{"item", "what", "description", "quantity", "unit", "price", "cost", "currency", "counted by"});
    for (const auto& line : bill.lines)
        csv += csv_record(line_record(line, currency));
    const std::string note = bill.unpriced.empty() ? "" : "items without a price are not in it";
    csv += csv_record(
        Record{"total", "", "", "", "", "", csv_number(bill.total.value(), 2), csv_text(currency), note});
    return csv;
}

} // namespace rillwatt
