#pragma once

#include <iosfwd>

namespace rillwatt {

/// Where a command speaks. Results go to `out` and nothing else does; remarks and errors go to `err`.
struct Console {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    bool colour = false;      ///< `out` is a terminal that knows colours and NO_COLOR is not set
    bool interactive = false; ///< `in` is a terminal: questions may be asked
};

} // namespace rillwatt
