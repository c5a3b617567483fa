#include "rillwatt/mains/burial.hpp"

#include <algorithm>
#include <array>

namespace rillwatt {

namespace {

// Columns 1, 2, 3, 4 direct, 4 raceway, 5 direct, 5 raceway; inches. 2017 and 2023 give the same figures.
constexpr std::array<std::array<double, 7>, 6> cover_inches{{{24, 6, 18, 12, 12, 6, 6},
                                                             {18, 6, 12, 6, 6, 6, 6},
                                                             {0, 0, 0, 0, 0, 0, 0},
                                                             {18, 4, 4, 6, 4, 6, 4},
                                                             {24, 24, 24, 24, 24, 24, 24},
                                                             {18, 18, 18, 12, 12, 18, 18}}};

BurialMethod method_of(Wiring wiring) {
    if (wiring == Wiring::rigid_metal) return BurialMethod::rigid_metal;
    return wiring == Wiring::pvc ? BurialMethod::nonmetallic : BurialMethod::direct;
}

} // namespace

Metres minimum_cover(BurialPlace place, BurialMethod method) {
    return inches(cover_inches[static_cast<std::size_t>(place)][static_cast<std::size_t>(method)]);
}

BurialPlace burial_place(Crossing crossing, bool dwelling) {
    if (crossing == Crossing::slab) return BurialPlace::under_slab;
    if (crossing == Crossing::lawn) return BurialPlace::not_listed_below;
    return dwelling ? BurialPlace::home_driveway : BurialPlace::street_or_driveway;
}

std::optional<CoverNeeded> cover_needed(Wiring wiring, Crossing crossing, bool dwelling) {
    if (wiring == Wiring::indoor) return std::nullopt;
    const BurialPlace place = burial_place(crossing, dwelling);
    CoverNeeded needed{minimum_cover(place, method_of(wiring)), std::nullopt};
    if (!dwelling) return needed;
    const Metres home =
        minimum_cover(place, wiring == Wiring::direct_burial ? BurialMethod::home_gfci_direct
                                                             : BurialMethod::home_gfci_raceway);
    needed.as_home_gfci = std::min(home, needed.by_wiring);
    return needed;
}

} // namespace rillwatt
