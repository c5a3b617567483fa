#include "rillwatt/layout/outline_check.hpp"

#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include "outline_geometry.hpp"
#include <algorithm>
#include <optional>

namespace rillwatt {
namespace {

using Outline = std::vector<PlanPoint>;

std::string point_text(PlanPoint p, LengthUnit unit) {
    const double scale = unit == LengthUnit::feet ? metres_per_foot : 1;
    return fmt::format("[{}, {}]", trimmed_text(p.x / scale, 2), trimmed_text(p.y / scale, 2));
}

/// Two sides of an outline and the place where they meet.
struct Clash {
    std::size_t first = 0; ///< number of the point the side starts at
    std::size_t second = 0;
    PlanPoint at;
};

std::optional<Clash> first_clash(const Outline& outline) {
    const std::size_t n = outline.size();
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t k = i + 1; k < n; ++k) {
            const SegmentCrossing crossing =
                proper_crossing(outline[i], outline[(i + 1) % n], outline[k], outline[(k + 1) % n]);
            if (crossing.crosses) return Clash{i, k, crossing.at};
        }
    }
    return std::nullopt;
}

bool on_one_line(const Outline& outline) {
    const PlanPoint along = outline.back() - outline.front();
    return std::all_of(outline.begin(), outline.end(), [&](PlanPoint p) {
        return std::abs(cross(along, p - outline.front())) <= touch_tolerance * norm(along);
    });
}

/// A side of the outline that does not have the inside on the same hand as the others: the outline crosses
/// itself in one of its own corners.
std::optional<PlanPoint> first_twisted_side(const Outline& written) {
    const Outline outline = tidy_outline(written);
    if (outline.empty()) return written.front();
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const PlanPoint along = outline[i] - outline[j];
        const PlanPoint middle = outline[j] + 0.5 * along;
        const PlanPoint left{-along.y, along.x};
        if (locate(outline, middle + 10 * touch_tolerance / norm(left) * left) == Location::outside)
            return outline[j];
    }
    return std::nullopt;
}

std::optional<std::string> outline_fault(const Area& area, LengthUnit unit) {
    const Outline outline = without_repeats(area.outline);
    if (outline.size() < 3 || on_one_line(outline))
        return fmt::format("the outline of area `{}` has no inside: its points lie on one line",
                           printable(area.id));
    if (const std::optional<Clash> clash = first_clash(outline)) {
        const auto side = [&](std::size_t i) {
            return fmt::format("{} to {}", point_text(outline[i], unit),
                               point_text(outline[(i + 1) % outline.size()], unit));
        };
        return fmt::format("the outline of area `{}` crosses itself at {}: side {} and side {}",
                           printable(area.id), point_text(clash->at, unit), side(clash->first),
                           side(clash->second));
    }
    if (const std::optional<PlanPoint> twisted = first_twisted_side(outline))
        return fmt::format("the outline of area `{}` crosses itself in one of its corners, near {}",
                           printable(area.id), point_text(*twisted, unit));
    return std::nullopt;
}

} // namespace

std::vector<InputError> check_outlines(const Site& site) {
    std::vector<InputError> errors;
    for (const Area& area : site.areas) {
        const std::optional<std::string> fault = outline_fault(area, site.settings.units);
        if (!fault) continue;
        errors.push_back({.location = area.location,
                          .found = *fault,
                          .expected = "points in order round the area, once; two of them may be swapped",
                          .source_line = {}});
    }
    return errors;
}

} // namespace rillwatt
