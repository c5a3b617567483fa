#pragma once

#include "rillwatt/purchase/bill.hpp"

#include <string>
#include <string_view>

namespace rillwatt {

/// The bill of materials as CSV (RFC 4180): numbers as numbers, user text that a spreadsheet would run
/// neutralised, the total in the last record.
std::string bill_csv(const Bill& bill, std::string_view currency);

} // namespace rillwatt
