#include "support/random_garden.hpp"

namespace rillwatt::test {

namespace {

constexpr double rating = 300;

std::size_t random_index(std::mt19937& source, std::size_t count) { return source() % count; }

void add_types(Garden& garden, std::mt19937& source, const RandomGardenSpec& spec) {
    const double copper = 0.00323; // NFPA 70 chapter 9 Table 8, note 2
    garden.cable("12/2", 1.98e-3 / 0.3048, Celsius(75), copper);
    garden.cable("10/2", 1.24e-3 / 0.3048, Celsius(75), copper);
    garden.cable("18/2", 7.95e-3 / 0.3048, Celsius(75), copper);
    const LoadModel models[] = {LoadModel::constant_power, LoadModel::constant_current, LoadModel::filament,
                                LoadModel::resistance};
    for (int k = 0; k < 4; ++k) {
        const double va = spec.load_share * rating / spec.lamps * random_between(source, 0.7, 1.3);
        garden.lamp_type("lamp " + std::to_string(k), {.load = spec.mixed_loads ? models[k] : models[0],
                                                       .va = va,
                                                       .watts = 0.8 * va,
                                                       .lead_metres = k % 2 == 0 ? 6.0 : 0.0,
                                                       .lead_cable = "18/2"});
    }
}

/// Something downstream of a run to hang the next part on: mostly what was added last, so that chains grow.
const std::string& random_feed(std::mt19937& source, const std::vector<std::string>& parts) {
    return source() % 3 == 0 ? parts[random_index(source, parts.size())] : parts.back();
}

} // namespace

double random_between(std::mt19937& source, double low, double high) {
    return low + (high - low) * (static_cast<double>(source()) / 4294967296.0);
}

Garden random_garden(unsigned seed, const RandomGardenSpec& spec) {
    std::mt19937 source(seed);
    Garden garden;
    add_types(garden, source, spec);
    garden.transformer("T", rating, spec.regulation, {12, 13, 14, 15});
    std::vector<std::vector<std::string>> parts;
    for (int q = 0; q < spec.runs; ++q) {
        const std::string id = "run " + std::to_string(q);
        garden.run(id, "T", 12 + static_cast<double>(random_index(source, 4)), "12/2");
        parts.push_back({id});
    }
    for (int k = 0; k < spec.lamps; ++k) {
        auto& run = parts[random_index(source, parts.size())];
        if (source() % 4 == 0) {
            const std::string id = "splice " + std::to_string(k);
            garden.splice(id, random_feed(source, run), random_between(source, 0.5, 8),
                          source() % 5 == 0 ? "10/2" : "");
            run.push_back(id);
        }
        const std::string id = "light " + std::to_string(k);
        garden.fixture(id, random_feed(source, run), random_between(source, 0, 4),
                       "lamp " + std::to_string(source() % 4));
        run.push_back(id);
    }
    for (int k = 0; k < spec.links; ++k) {
        const auto& run = parts[random_index(source, parts.size())];
        if (run.size() < 4) continue;
        garden.link("link " + std::to_string(k), run[run.size() - 1 - static_cast<std::size_t>(k) % 2],
                    run[random_index(source, run.size() - 2)], random_between(source, 2, 12), "12/2");
    }
    return garden;
}

} // namespace rillwatt::test
