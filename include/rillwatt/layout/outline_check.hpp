#pragma once

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/site/site.hpp"

#include <vector>

namespace rillwatt {

/// What is wrong with the outlines of a site's areas: one that crosses itself has no inside to speak of.
/// Each error names the area, its line and the place. To be asked by whoever loads a site, before anything is
/// measured on it.
std::vector<InputError> check_outlines(const Site& site);

} // namespace rillwatt
