#include "rillwatt/mains/breaker.hpp"

#include <algorithm>
#include <array>

namespace rillwatt {

namespace {

struct GroundingRow {
    Amperes not_over;
    std::string_view size;
    double circular_mils;
};

// Table 250.122, copper; circular mils of chapter 9 Table 8.
constexpr std::array<GroundingRow, 5> grounding_rows{{{Amperes(15), "14 AWG", 4110},
                                                      {Amperes(20), "12 AWG", 6530},
                                                      {Amperes(60), "10 AWG", 10380},
                                                      {Amperes(100), "8 AWG", 16510},
                                                      {Amperes(200), "6 AWG", 26240}}};

const GroundingRow* grounding_row(Amperes breaker) {
    for (const auto& row : grounding_rows)
        if (breaker <= row.not_over) return &row;
    return nullptr;
}

} // namespace

std::vector<Amperes> standard_breakers(int code_edition) {
    std::vector<Amperes> ratings;
    if (code_edition >= 2023) ratings.push_back(Amperes(10));
    for (const double rating :
         {15., 20., 25., 30., 35., 40., 45., 50., 60., 70., 80., 90., 100., 110., 125., 150., 175., 200.})
        ratings.push_back(Amperes(rating));
    return ratings;
}

std::optional<Amperes> standard_breaker_for(Amperes amps, int code_edition) {
    for (const Amperes rating : standard_breakers(code_edition))
        if (rating >= amps) return rating;
    return std::nullopt;
}

Amperes largest_breaker(const BranchConductor& conductor, int code_edition) {
    if (conductor.breaker_max) return *conductor.breaker_max;
    const Amperes ampacity = usable_ampacity(conductor);
    return standard_breaker_for(ampacity, code_edition).value_or(ampacity);
}

std::optional<std::string_view> grounding_conductor(Amperes breaker) {
    const auto* row = grounding_row(breaker);
    return row == nullptr ? std::nullopt : std::optional(row->size);
}

std::optional<std::string_view> grounding_conductor(Amperes breaker, const BranchConductor& chosen,
                                                    const BranchConductor& smallest) {
    const auto* row = grounding_row(breaker);
    if (row == nullptr) return std::nullopt;
    const double increase = std::max(1.0, chosen.circular_mils / smallest.circular_mils);
    const double wanted = row->circular_mils * increase;
    // A grounding conductor need not be larger than the circuit conductors.
    if (wanted >= chosen.circular_mils) return chosen.size;
    for (const auto& thicker : grounding_rows)
        if (thicker.circular_mils >= wanted * (1 - 1e-9)) return thicker.size;
    return std::nullopt;
}

} // namespace rillwatt
