#pragma once

#include "rillwatt/check/assessment.hpp"

#include <string>
#include <vector>

namespace rillwatt {

/// Branch circuits of one kind: those with pumps, with lights, with both, with nothing.
struct BranchKind {
    std::string heading;
    std::vector<const MainsCircuit*> circuits;
};

/// Pump circuits apart from lighting circuits; kinds without a circuit are left out.
std::vector<BranchKind> branch_kinds(const Assessment& assessment);

} // namespace rillwatt
