#pragma once

#include "rillwatt/mains/branch_conductor.hpp"
#include "rillwatt/mains/limit_source.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace rillwatt {

inline constexpr LimitSource standard_breaker_source{"240.6(A)", "240.6(A)", "Table 240.6(A)"};
inline constexpr LimitSource grounding_source{"Table 250.122", "Table 250.122", "Table 250.122"};
inline constexpr LimitSource grounding_increase_source{"250.122(B)", "250.122(B)", "250.122(B)", true};

/// Standard ratings up to 200 A, ascending. 2023 starts at 10 A, earlier editions at 15 A.
std::vector<Amperes> standard_breakers(int code_edition);

/// The smallest standard rating that is not below `amps`; empty above the table.
std::optional<Amperes> standard_breaker_for(Amperes amps, int code_edition);

/// The largest breaker a conductor may have: 240.4(D) up to 10 AWG; above, the 60 C ampacity or the next
/// standard rating up where it is none (240.4(B)).
Amperes largest_breaker(const BranchConductor& conductor, int code_edition);

/// Copper equipment grounding conductor for a breaker, Table 250.122; empty above 200 A.
std::optional<std::string_view> grounding_conductor(Amperes breaker);

/// The same where the circuit conductors are thicker than the breaker asks for: larger in proportion of their
/// circular mils (250.122(B), from memory). Empty when the table ends.
std::optional<std::string_view> grounding_conductor(Amperes breaker, const BranchConductor& chosen,
                                                    const BranchConductor& smallest);

} // namespace rillwatt
