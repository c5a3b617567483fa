#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/purchase/bill.hpp"
#include "rillwatt/sizing/size.hpp"

namespace rillwatt {

/// A finished sizing with the site before and after it.
struct SizeReport {
    SizeResult result;
    SizeOptions options;
    Assessment before;
    Assessment after; ///< with the choices in place
    Bill bill;        ///< of the site with the choices in place
};

} // namespace rillwatt
