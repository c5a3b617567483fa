#include "rillwatt/report/bill_csv.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

TEST_CASE("the bill as CSV keeps numbers numbers and neutralises what a spreadsheet would run") {
    Bill bill;
    BillLine line;
    line.item = "=HYPERLINK(\"x\")";
    line.description = "cable, spools of 250 ft";
    line.quantity = 2;
    line.unit = "spool";
    line.price = Money(145);
    line.cost = Money(290);
    bill.lines.push_back(line);
    line.item = "-1+1";
    line.price.reset();
    line.cost.reset();
    bill.lines.push_back(line);
    bill.unpriced = {"-1+1"};
    bill.total = Money(290);
    CHECK(bill_csv(bill, "USD") ==
          "item,what,description,quantity,unit,price,cost,currency,counted by\r\n"
          "\"'=HYPERLINK(\"\"x\"\")\",cable,\"cable, spools of 250 ft\",2,spool,145,290,USD,\r\n"
          "'-1+1,cable,\"cable, spools of 250 ft\",2,spool,,,,\r\n"
          "total,,,,,,290,USD,items without a price are not in it\r\n");
}
