#include "random_garden.hpp"

#include "rillwatt/solver/network.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rillwatt::test {

namespace {

class Dice {
  public:
    explicit Dice(unsigned seed) : generator_(seed) {}
    /// Same numbers with every standard library: none of its distributions is used.
    double number(double from, double to) {
        return from + (to - from) * static_cast<double>(generator_()) / static_cast<double>(0xffffffffu);
    }
    int whole(int from, int to) {
        return from + static_cast<int>(generator_() % static_cast<unsigned>(to - from + 1));
    }
    bool chance(double share) { return number(0, 1) < share; }

  private:
    std::mt19937 generator_;
};

void add_cables(Garden& garden, const GardenShape& shape, Dice& dice) {
    const double ohms[] = {0.0165, 0.0103, 0.0065, 0.00407, 0.00255};
    for (int i = 0; i < shape.cables; ++i) {
        const std::string id = fmt::format("c{}", i);
        garden.cable(id, ohms[i] * dice.number(0.97, 1.03), Celsius(75), shape.warm ? 0.0032 : 0);
        CableType& type = garden.catalog.cables[id];
        type.section_mm2 = 1.3 * (i + 1);
        type.direct_burial = true;
        type.ampacity = Amperes(5.0 + 6.0 * i);
        const double price = shape.rising_prices ? 1.0 + i * dice.number(0.5, 1.2) : dice.number(1, 4);
        type.price = MoneyPerMetre(price);
        if (shape.spools && dice.chance(0.7)) {
            type.spools = {Metres(30), Metres(dice.whole(4, 7) * 10)};
            if (dice.chance(0.5)) type.spools.push_back(Metres(150));
        }
    }
}

void add_lamp_types(Garden& garden, const GardenShape& shape, Dice& dice) {
    for (int i = 0; i < 3; ++i) {
        const std::string id = fmt::format("lamp{}", i);
        LoadModel load = LoadModel::constant_power;
        if (shape.steady_loads) load = LoadModel::constant_current;
        if (shape.rising_loads) load = static_cast<LoadModel>(dice.whole(2, 3));
        if (shape.mixed_loads) load = static_cast<LoadModel>(dice.whole(0, 3));
        garden.lamp_type(id, {.load = load, .va = dice.number(3, 22)});
        FixtureType& type = garden.catalog.fixtures[id];
        type.window_low = Volts(shape.low_windows ? dice.number(1, 8) : dice.number(9, 11.3));
        type.window_high = Volts(shape.narrow_windows ? dice.number(12.2, 13.2) : 15);
    }
}

void add_models(Garden& garden, const GardenShape& shape, Dice& dice) {
    const double ratings[] = {60, 100, 180, 300};
    for (int i = 0; i < shape.models; ++i) {
        TransformerType type;
        type.id = fmt::format("m{}", i);
        type.va = VoltAmperes(ratings[i + (4 - shape.models) / 2]);
        type.regulation = dice.chance(0.2) ? 0 : dice.number(0.02, 0.08);
        for (const double tap : {12.0, 13.0, 14.0})
            if (tap < 13 || dice.chance(0.7)) type.taps.push_back(Volts(tap));
        type.secondary_limit = Amperes(dice.chance(0.3) ? dice.number(4, 10) : 25);
        type.price = Money(60 + ratings[i] * dice.number(0.5, 0.9));
        garden.catalog.transformers[type.id] = type;
    }
}

void add_run(Garden& garden, const GardenShape& shape, const std::string& transformer, const std::string& id,
             Dice& dice) {
    Run run;
    run.id = id;
    run.from = transformer;
    if (shape.typed_some && dice.chance(0.3)) run.tap = Volts(12);
    if (shape.typed_some && dice.chance(0.2)) run.cable = "c1";
    garden.site.runs.push_back(run);
    std::vector<std::string> feeds{id};
    const int lengths = dice.whole(1, shape.most_lengths);
    for (int i = 0; i < lengths; ++i) {
        const std::string from =
            feeds[static_cast<std::size_t>(dice.whole(0, static_cast<int>(feeds.size()) - 1))];
        const double metres = std::round(dice.number(4, 45) * 10) / 10;
        const std::string part = fmt::format("{}-{}", id, i);
        const std::string own = shape.typed_some && dice.chance(0.15) ? "c0" : "";
        if (i + 1 < lengths && dice.chance(0.3))
            garden.splice(part, from, metres, own);
        else
            garden.fixture(part, from, metres, fmt::format("lamp{}", dice.whole(0, 2)), own);
        feeds.push_back(part);
    }
}

/// From the last lamp of the first run to that of the last run; round the run where there is only one.
void add_ring(Garden& garden, const GardenShape& shape, Dice& dice) {
    const auto last_of = [&](const std::string& run) {
        std::string last = run;
        for (const Fixture& fixture : garden.site.fixtures)
            if (fixture.id.starts_with(run + "-")) last = fixture.id;
        return last;
    };
    const std::string first = garden.site.runs.front().id;
    const std::string other = garden.site.runs.back().id;
    const std::string own = shape.typed_some && dice.chance(0.4) ? "c1" : "";
    garden.link("ring", last_of(first), first == other ? first : last_of(other),
                std::round(dice.number(4, 30) * 10) / 10, own);
}

} // namespace

Garden random_garden(const GardenShape& shape, unsigned seed) {
    Dice dice(seed);
    Garden garden;
    if (shape.warm) garden.site.settings.conductor_temperature = Celsius(25);
    add_cables(garden, shape, dice);
    add_lamp_types(garden, shape, dice);
    add_models(garden, shape, dice);
    for (int t = 0; t < shape.transformers; ++t) {
        Transformer transformer;
        transformer.id = fmt::format("T{}", t);
        if (shape.typed_some && dice.chance(0.3)) transformer.model = "m0";
        garden.site.transformers.push_back(transformer);
        const int runs = dice.whole(1, shape.most_runs);
        for (int r = 0; r < runs; ++r)
            add_run(garden, shape, transformer.id, fmt::format("{}{}", static_cast<char>('A' + t), r), dice);
    }
    if (shape.ring) add_ring(garden, shape, dice);
    return garden;
}

double loading_of_some_choice(const Garden& garden, unsigned seed) {
    Dice dice(seed);
    const TransformerCircuit circuit = garden.circuit();
    const OperatingCase nominal = operating_cases(garden.site.settings).front();
    const auto pick = [&](const auto& entries) {
        return std::next(entries.begin(), dice.whole(0, static_cast<int>(entries.size()) - 1));
    };
    const TransformerType& model = pick(garden.catalog.transformers)->second;
    Network network = make_network(circuit, nominal);
    set_transformer(network, model, circuit.supply, nominal);
    std::vector<const CableType*> cables;
    for (std::size_t r = 0; r < circuit.runs.size(); ++r) {
        network.tap[r] = pick(model.taps)->value();
        cables.push_back(&pick(garden.catalog.cables)->second);
    }
    for (std::size_t i = 0; i < circuit.nodes.size(); ++i)
        if (const CircuitNode& node = circuit.nodes[i]; node.length)
            network.ohms[i] =
                cable_ohms(*cables[static_cast<std::size_t>(node.run)], *node.length, nominal.conductor);
    const NetworkSolution solution = solve(network);
    double load = 0;
    for (std::size_t r = 0; solution.converged && r < circuit.runs.size(); ++r)
        load += solution.run_volts[r] * solution.run_amps[r];
    return load / model.va.value();
}

} // namespace rillwatt::test
