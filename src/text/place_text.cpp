#include "rillwatt/text/place_text.hpp"

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/text/light_text.hpp"

#include <fmt/format.h>

namespace rillwatt {

std::string place_text(const PlaceReport& report, const TextStyle& style) {
    const PlacingProposal& proposal = report.proposal;
    std::string out =
        inked(style, Ink::heading, "PROPOSAL") +
        fmt::format("  {} light{}\n", proposal.lights.size(), proposal.lights.size() == 1 ? "" : "s");
    if (proposal.lights.empty() && proposal.unmet.empty())
        out += "  Every walk and falls has the light it asks for.\n";
    for (const std::string& reason : proposal.reasons)
        out += wrapped(printable(reason), style.width, "  ", "    ");
    for (const UnmetTarget& unmet : proposal.unmet)
        out += wrapped(printable(unmet.part + ": " + unmet.reason + "."), style.width,
                       "  " + inked(style, Ink::warning, "not met") + "  ", "    ");
    if (!proposal.lights.empty())
        out += '\n' + inked(style, Ink::heading, "TO PASTE INTO THE SITE FILE") + "  or use --write\n\n" +
               report.toml;
    return out + '\n' + inked(style, Ink::heading, "LIGHT WITH THEM IN PLACE") + '\n' +
           light_text(report.with_lights, style);
}

} // namespace rillwatt
