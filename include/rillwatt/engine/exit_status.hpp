#pragma once

namespace rillwatt {

/// What the program tells the shell; the numbers are part of the results contract.
enum class ExitStatus {
    ok = 0,          ///< no error finding
    findings = 1,    ///< at least one error finding, or sizing infeasible
    wrong_input = 2, ///< the command line or an input file is wrong
    fault = 3,       ///< a fault of the program itself
};

} // namespace rillwatt
