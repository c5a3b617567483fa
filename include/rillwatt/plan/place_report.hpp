#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/placing/propose_lights.hpp"
#include "rillwatt/plan/load_site.hpp"

#include <string>

namespace rillwatt {

/// The kinds of lights there are to choose from, in the order in which they are tried.
inline constexpr FixtureKind placed_kinds[] = {FixtureKind::path,        FixtureKind::step,
                                               FixtureKind::downlight,   FixtureKind::accent,
                                               FixtureKind::submersible, FixtureKind::other};

/// A proposal of lights, and the site with them in place.
struct PlaceReport {
    PlacingProposal proposal;
    std::string toml;       ///< the lights as tables to paste into the site file; empty when there are none
    std::string text;       ///< the site file with the lights behind it
    Assessment with_lights; ///< that file computed, with its light
};

/// What is put behind the site file to add the lights.
std::string appended_text(const std::string& toml);

/// Proposes lights for a site and computes it with them.
LoadResult<PlaceReport> report_placing(const LoadedSite& loaded, const PlacingOptions& options,
                                       FileSource& files);

} // namespace rillwatt
