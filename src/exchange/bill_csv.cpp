#include "rillwatt/exchange/bill_csv.hpp"

#include "rillwatt/plan/bill_figures.hpp"
#include "rillwatt/text/escape.hpp"

#include <array>

namespace rillwatt {

namespace {

using Record = std::array<std::string, 9>;

constexpr int quantity_decimals = 3;

std::string money_cell(const std::optional<Money>& money) {
    return money ? csv_number(money->value(), 2) : std::string();
}

/// With as many decimals as its product with the quantity takes.
std::string price_cell(const BillLine& line) {
    const std::string price = bill_figures(line, quantity_decimals).price;
    const std::size_t point = price.find('.');
    return line.price
               ? csv_number(line.price->value(),
                            point == std::string::npos ? 2 : static_cast<int>(price.size() - point - 1))
               : std::string();
}

Record line_record(const BillLine& line, std::string_view currency) {
    return {csv_text(line.item),        csv_text(bill_kind_name(line.kind)),
            csv_text(line.description), csv_number(line.quantity, quantity_decimals),
            csv_text(line.unit),        price_cell(line),
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
