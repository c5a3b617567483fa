#pragma once

#include "support/garden.hpp"
#include <optional>
#include <string>

namespace rillwatt::test {

/// The per-length problem of a garden as a mixed-integer linear program in LP format: one transformer without
/// regulation, everything but cables typed, constant-current lamps. Then the currents are known beforehand
/// and the program is exact: one binary variable for each length and cable, one row for each lamp, one for
/// each "not thicker than what feeds it".
std::string per_length_program(const Garden& garden);

/// What a solver answered.
struct ProgramAnswer {
    double cost = 0;
    double seconds = 0; ///< of the whole process
};

/// Runs CBC (Debian's coinor-cbc) or GLPK (glpsol) on a program, to a proven optimum. Empty when it found
/// none or is not installed.
std::optional<ProgramAnswer> solve_with_cbc(const std::string& program, double most_seconds = 600);
std::optional<ProgramAnswer> solve_with_glpk(const std::string& program, double most_seconds = 600);

/// A garden for that comparison: one run of `lengths` lengths, a trunk with branches, cables open.
Garden constant_current_garden(int lengths, unsigned seed);

} // namespace rillwatt::test
