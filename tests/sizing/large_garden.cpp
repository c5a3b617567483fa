#include "large_garden.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <random>

namespace rillwatt::test {

namespace {

class Grower {
  public:
    Grower(Garden& garden, unsigned seed) : garden_(garden), generator_(seed) {}

    double number(double from, double to) {
        return from + (to - from) * static_cast<double>(generator_()) / static_cast<double>(0xffffffffu);
    }

    void grow_run(const std::string& id, int lamps) {
        Run run;
        run.id = id;
        run.from = garden_.site.transformers.back().id;
        garden_.site.runs.push_back(run);
        std::string trunk = id;
        int hubs = 0;
        const double reach = 55.0 / lamps; // metres of trunk for each lamp
        for (int planted = 0; planted < lamps;) {
            const std::string name = fmt::format("{}-{}", id, planted);
            if (number(0, 1) < 0.25 && lamps - planted > 4) {
                const std::string hub = fmt::format("{}-hub{}", id, hubs++);
                garden_.splice(hub, trunk, length(2 * reach));
                for (int leg = 0; leg < 4; ++leg, ++planted)
                    garden_.fixture(fmt::format("{}-{}", id, planted), hub, length(5), lamp());
                trunk = hub;
                continue;
            }
            const bool spur = number(0, 1) < 0.3;
            garden_.fixture(name, trunk, length(spur ? 4 : reach + 1), lamp());
            if (!spur) trunk = name;
            ++planted;
        }
    }

  private:
    double length(double middle) {
        return feet(std::max(1.0, std::round(number(0.5, 1.5) * middle / 0.3048))).value();
    }
    std::string lamp() { return fmt::format("lamp{}", static_cast<int>(number(0, 3.999))); }

    Garden& garden_;
    std::mt19937 generator_;
};

void add_catalog(Garden& garden) {
    const struct {
        const char* id;
        double ohms_per_kft; // NEC (2017) chapter 9 Table 8, stranded, 75 C
        double ampacity;
        double price_per_foot;
        double section;
    } cables[] = {{"16/2", 4.99, 10, 0.33, 1.31},
                  {"14/2", 3.14, 15, 0.46, 2.08},
                  {"12/2", 1.98, 20, 0.62, 3.31},
                  {"10/2", 1.24, 30, 1.05, 5.26},
                  {"8/2", 0.778, 40, 1.78, 8.37}};
    for (const auto& row : cables) {
        garden.cable(row.id, row.ohms_per_kft / 304.8);
        CableType& type = garden.catalog.cables[row.id];
        type.ampacity = Amperes(row.ampacity);
        type.price = MoneyPerMetre(row.price_per_foot / 0.3048);
        type.section_mm2 = row.section;
        type.direct_burial = true;
    }
    garden.cable("18/2", 7.95 / 304.8);
    const double va[] = {1.4, 2.7, 4.2, 6.4};
    for (int i = 0; i < 4; ++i) {
        const std::string id = fmt::format("lamp{}", i);
        garden.lamp_type(id, {.va = va[i], .lead_metres = 1.0 + i, .lead_cable = "18/2"});
        garden.catalog.fixtures[id].window_low = Volts(10.5);
        garden.catalog.fixtures[id].window_high = Volts(15);
    }
}

void add_models(Garden& garden, double largest) {
    const struct {
        const char* id;
        double va;
        double regulation;
        double price;
    } models[] = {{"mag-150", 150, 0.05, 168},
                  {"mag-300", 300, 0.04, 232},
                  {"mag-600", 600, 0.035, 395},
                  {"mag-900", 900, 0.03, 560},
                  {"large", 0, 0.03, 0}};
    for (const auto& row : models) {
        TransformerType type;
        type.id = row.id;
        type.va = VoltAmperes(row.va > 0 ? row.va : largest);
        type.regulation = row.regulation;
        type.price = Money(row.price > 0 ? row.price : largest * 0.6);
        for (const double tap : {12.0, 13.0, 14.0, 15.0})
            type.taps.push_back(Volts(tap));
        if (row.va > 0 || largest > 900) garden.catalog.transformers[type.id] = type;
    }
}

} // namespace

Garden large_garden(int lamps, int transformers, unsigned seed) {
    Garden garden;
    Grower grower(garden, seed);
    add_catalog(garden);
    const int each = lamps / transformers;
    add_models(garden, each * 6.0);
    int planted = 0;
    for (int t = 0; t < transformers; ++t) {
        Transformer transformer;
        transformer.id = fmt::format("T{}", t);
        garden.site.transformers.push_back(transformer);
        const int share = t + 1 == transformers ? lamps - planted : each;
        const int runs = share > 200 ? share / 25 : 2 + static_cast<int>(grower.number(0, 1.999));
        int left = share;
        for (int r = 0; r < runs; ++r) {
            const int here = r + 1 == runs ? left : share / runs;
            grower.grow_run(fmt::format("T{}R{}", t, r), here);
            left -= here;
        }
        planted += share;
    }
    return garden;
}

Garden chained_garden(int transformers, int runs, int lamps) {
    Garden garden;
    add_catalog(garden);
    add_models(garden, 0);
    TransformerType high = garden.catalog.transformers.at("mag-600");
    high.id = "mag-600-high";
    high.price = Money(440);
    for (const double tap : {16.0, 17.0, 18.0})
        high.taps.push_back(Volts(tap));
    garden.catalog.transformers[high.id] = high;
    garden.catalog.fixtures["lamp1"].window_low = Volts(9);
    int planted = 0;
    for (int t = 0; t < transformers; ++t) {
        Transformer transformer;
        transformer.id = fmt::format("T{}", t);
        garden.site.transformers.push_back(transformer);
        for (int r = 0; r < runs; ++r) {
            Run run;
            run.id = fmt::format("T{}R{}", t, r);
            run.from = transformer.id;
            garden.site.runs.push_back(run);
            std::string feed = run.id;
            for (int k = 0; k < lamps; ++k, ++planted) {
                const std::string id = fmt::format("{}-{}", run.id, k);
                garden.fixture(id, feed, feet(9 + planted * 7 % 13).value(), "lamp1");
                feed = id;
            }
        }
    }
    return garden;
}

} // namespace rillwatt::test
