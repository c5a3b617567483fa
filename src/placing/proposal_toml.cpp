#include "rillwatt/document/document_edit.hpp"
#include "rillwatt/placing/propose_lights.hpp"
#include "rillwatt/quantity/quantity_text.hpp"

#include <fmt/format.h>

#include <cmath>

namespace rillwatt {
namespace {

/// A bare length in the site's unit, rounded where only noise is left.
std::string bare(double metres, LengthUnit unit) {
    const double value = unit == LengthUnit::feet ? metres / metres_per_foot : metres;
    return trimmed_text(value, 4);
}

/// A height: inches where the site is in feet.
std::string height(double metres, LengthUnit unit) {
    if (unit == LengthUnit::metres) return trimmed_text(metres, 4);
    return toml_string(trimmed_text(metres / metres_per_foot * 12, 2) + " in");
}

std::string comment(std::string_view text) {
    std::string line = "# " + printable(text);
    return line + '\n';
}

std::string aim_lines(const Aim& aim, LengthUnit unit) {
    std::string lines;
    if (aim.at)
        lines += fmt::format("aim = [{}, {}, {}]\n", bare(aim.at->x, unit), bare(aim.at->y, unit),
                             bare(aim.at->z, unit));
    if (aim.bearing) lines += fmt::format("bearing = {}\n", trimmed_text(aim.bearing->value(), 2));
    if (aim.tilt) lines += fmt::format("tilt = {}\n", trimmed_text(aim.tilt->value(), 2));
    return lines;
}

std::string table_of(const ProposedLight& light, LengthUnit unit) {
    const Fixture& f = light.fixture;
    std::string text = comment(light.why) + "[[fixture]]\n";
    text += fmt::format("id = {}\nmodel = {}\n", toml_string(f.id), toml_string(f.model));
    text += fmt::format("at = [{}, {}]\n", bare(f.at->x, unit), bare(f.at->y, unit));
    if (f.elevation) text += fmt::format("elevation = {}\n", height(f.elevation->value(), unit));
    if (f.mounting) text += fmt::format("mounting = {}\n", height(f.mounting->value(), unit));
    text += aim_lines(f.aim, unit);
    if (f.lights) text += fmt::format("lights = {}\n", toml_string(*f.lights));
    return text;
}

} // namespace

std::string proposal_toml(const PlacingProposal& proposal, const SiteSettings& settings) {
    std::string text;
    for (const ProposedLight& light : proposal.lights)
        text += (text.empty() ? "" : "\n") + table_of(light, settings.units);
    return text;
}

} // namespace rillwatt
