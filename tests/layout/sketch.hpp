#pragma once

#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/site/site.hpp"

#include <string>
#include <vector>

/// Small plans for tests, in metres, without a site file.
namespace sketch {

using Outline = std::vector<rillwatt::PlanPoint>;

Outline rectangle(double left, double bottom, double right, double top);

rillwatt::Area area(rillwatt::AreaKind kind, Outline outline, std::string id = "");

rillwatt::Sleeve sleeve(std::string id, rillwatt::PlanPoint a, rillwatt::PlanPoint b);

/// A transformer at one point, a light at the other, no allowance, and what lies between.
rillwatt::Site site(rillwatt::PlanPoint from, rillwatt::PlanPoint to, std::vector<rillwatt::Area> areas,
                    std::vector<rillwatt::Sleeve> sleeves = {});

/// The cable to the light of such a plan.
rillwatt::PartLength measured(const rillwatt::Site& site);

/// Its length in metres; -1 when there is no way.
double metres(const rillwatt::Site& site);

} // namespace sketch
