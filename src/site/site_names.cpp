#include "site_names.hpp"

#include "rillwatt/site/site.hpp"

namespace rillwatt {

const char* wiring_name(Wiring wiring) { return wiring_names[static_cast<std::size_t>(wiring)].data(); }

const char* crossing_name(Crossing crossing) {
    return crossing_names[static_cast<std::size_t>(crossing)].data();
}

const char* area_kind_name(AreaKind kind) { return area_kind_names[static_cast<std::size_t>(kind)].data(); }

} // namespace rillwatt
