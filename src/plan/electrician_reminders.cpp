#include "electrician_parts.hpp"

namespace rillwatt {

namespace {

struct Reminder {
    const char* text;
    LimitSource source;
};

/// What the code asks of a fountain beyond what a site file can say.
constexpr Reminder reminders[] = {
    {"Bond and ground: metal piping, fittings, pump metal, metal raceways and metal surfaces within 5 ft of "
     "the "
     "water, and the equipment in it.",
     {"680.53, 680.54", "680.54", "680.54"}},
    {"Metal parts fed by a cord are grounded by an insulated copper conductor inside that cord.",
     {"680.55(B)", "680.55(B)", "680.55(B)"}},
    {"Cords of equipment in water: extra-hard usage with W suffix, ends potted; beyond the water's edge in "
     "an "
     "approved enclosure.",
     {"680.51(E), 680.56", "680.51(E), 680.56", "680.51(E), 680.56"}},
    {"Boxes under water: listed, potted, of copper, brass or another corrosion-resistant material, bonded.",
     {"680.52(B)", "680.52(B)", "680.52(B)"}},
    {"Equipment that water must cool: a low-water cutoff or other means.",
     {"680.51(D)", "680.51(D)", "680.51(D)"}},
    {"Lights in water: lens below the normal level unless listed for above it; serviceable without draining.",
     {"680.51(C), (F)", "680.51(C), (F)", "680.51(C), (F)"}},
    {"The low-voltage secondary is not grounded.", {"411.6", "411.6", "411.7"}},
    {"Test every GFCI with the pumps running on the day of handing over; it does not see leakage on the "
     "isolated "
     "low-voltage side.",
     common_practice},
};

} // namespace

std::vector<SheetLine> water_reminders(const SiteSettings& settings) {
    if (settings.code == CodeFamily::iec)
        return {{"Zones, equipotential bonding and degrees of protection of basins and fountains.",
                 "IEC 60364-7-702, text not at hand, confirm"},
                {reminders[7].text, source_text(reminders[7].source, settings)}};
    std::vector<SheetLine> lines;
    for (const auto& reminder : reminders)
        lines.push_back({reminder.text, source_text(reminder.source, settings)});
    return lines;
}

} // namespace rillwatt
