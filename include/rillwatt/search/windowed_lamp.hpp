#pragma once

#include "rillwatt/circuit/lamp_load.hpp"

namespace rillwatt::search {

/// One lamp as the search sees it: its load behind its lead, and the volts within which it has to be.
struct WindowedLamp : LampLoad {
    double low = 0;  ///< least volts at the lamp, margin included
    double high = 0; ///< most volts at the lamp, margin included
};

} // namespace rillwatt::search
