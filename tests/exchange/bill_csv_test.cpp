#include "rillwatt/exchange/bill_csv.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <sstream>

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

TEST_CASE("on every bill the printed quantity times the printed price is the printed cost, to the cent") {
    // What a metre costs is often no round figure a foot, and lengths are no round figures at all.
    for (double feet_needed : {0.37, 41.058, 121.4, 293.284, 389.583, 1234.567})
        for (double price_per_metre : {0.16, 1.51, 2.03, 3.61, 11.9}) {
            BillLine line;
            line.item = "tape";
            line.quantity = feet_needed;
            line.unit = "ft";
            line.price = Money(price_per_metre * 0.3048);
            line.cost = *line.price * line.quantity;
            Bill bill;
            bill.lines = {line};
            std::vector<std::string> cells; // item, what, description, quantity, unit, price, cost
            std::istringstream record(bill_csv(bill, "USD").substr(bill_csv(bill, "USD").find('\n') + 1));
            for (std::string cell; std::getline(record, cell, ',');)
                cells.push_back(cell);
            CAPTURE(feet_needed, price_per_metre, cells[3], cells[5], cells[6]);
            const double product = std::stod(cells[3]) * std::stod(cells[5]);
            CHECK(std::round(product * 100) == std::round(std::stod(cells[6]) * 100));
        }
}
