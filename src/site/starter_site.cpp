#include "rillwatt/site/starter_site.hpp"

#include "rillwatt/finding/input_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace rillwatt {

namespace {

/// A TOML basic string.
std::string quoted(const std::string& text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f)
            out += fmt::format("\\u{:04X}", static_cast<unsigned>(c));
        else
            out += c;
    }
    return out + '"';
}

/// Writes lengths and points in the site's units.
class Ruler {
  public:
    explicit Ruler(LengthUnit units) : unit_(units == LengthUnit::feet ? metres_per_foot : 1.0) {}

    std::string length(Metres metres) const { return trimmed_text(metres.value() / unit_, 2); }
    std::string point(PlanPoint p) const {
        return fmt::format("[{}, {}]", trimmed_text(p.x / unit_, 2), trimmed_text(p.y / unit_, 2));
    }

  private:
    double unit_;
};

std::string head(const StarterAnswers& a) {
    return fmt::format(
        "# Measured from the left end of the house wall that faces the garden: x along the wall, y away "
        "from it.\n# Bare numbers are in {0}. What is left out is open: `rillwatt size` chooses cables, "
        "taps and\n# transformers, lengths come from the plan.\n"
        "rillwatt = 1\n\n[site]\nname = {1}\nunits = \"{0}\"\n",
        a.units == LengthUnit::feet ? "ft" : "m", quoted(a.name));
}

std::string house(const StarterAnswers& a, const Ruler& ruler) {
    const double w = a.house_width.value();
    const double d = a.house_depth.value();
    std::string text;
    if (w > 0 && d > 0)
        text +=
            fmt::format("\n[[area]]\nid = \"house\"\nkind = \"building\"\noutline = [{}, {}, {}, {}]\n",
                        ruler.point({0, -d}), ruler.point({w, -d}), ruler.point({w, 0}), ruler.point({0, 0}));
    text += "\n# Two points to tape from, easy to find again.\n";
    text += fmt::format(
        "[[mark]]\nid = \"left corner\"\nat = [0, 0]\n\n[[mark]]\nid = \"right corner\"\nat = {}\n",
        ruler.point({w > 0 ? w : feet(10).value(), 0}));
    return text;
}

std::string water(const StarterAnswers& a, const Ruler& ruler) {
    if (!a.pond) return {};
    const PlanPoint c = a.pond->corner;
    const double right = c.x + a.pond->width.value();
    const double far = c.y + a.pond->length.value();
    std::string text = fmt::format(
        "\n[[area]]\nid = \"pond\"\nkind = \"water\"\noutline = [{}, {}, {}, {}]\n", ruler.point(c),
        ruler.point({right, c.y}), ruler.point({right, far}), ruler.point({c.x, far}));
    if (a.falls_width.value() <= 0) return text;
    const double middle = (c.x + right) / 2;
    const double half = a.falls_width.value() / 2;
    text += fmt::format(
        "\n[[falls]]\nid = \"falls\"\nlip = [{}, {}] # left and right for someone in front of it\n"
        "drop = {}\nfaces = 270 # towards the house\n",
        ruler.point({middle - half, far}), ruler.point({middle + half, far}), ruler.length(a.falls_drop));
    if (a.house_width.value() > 0)
        text += fmt::format(
            "\n[[viewpoint]]\nid = \"house door\"\n# a step out of the door\nat = {}\neye = \"5 ft\"\n"
            "looks_at = [\"falls\"]\n",
            ruler.point({a.house_width.value() / 2, feet(2).value()}));
    return text;
}

std::string walk(const StarterAnswers& a, const Ruler& ruler) {
    if (a.path.size() < 2) return {};
    std::string points;
    for (const PlanPoint p : a.path)
        points += (points.empty() ? "" : ", ") + ruler.point(p);
    return fmt::format("\n[[walk]]\nid = \"path\"\nline = [{}]\nwidth = {}\ntarget = \"P5\" # EN 13201-2\n",
                       points, ruler.length(a.path_width));
}

/// The part of an interval that is nearest to a value, a foot inside it where it is wide enough.
double just_inside(double value, double low, double width) {
    const double inset = std::min(feet(1).value(), width / 4);
    return std::clamp(value, low + inset, low + width - inset);
}

/// Pumps side by side in the water, as near to the outlet on the wall as they get.
std::vector<PlanPoint> pump_places(const StarterAnswers& a) {
    if (!a.pond) return {};
    const StarterPond& pond = *a.pond;
    const double y = just_inside(0, pond.corner.y, pond.length.value());
    const double x = just_inside(a.outlet.value(), pond.corner.x, pond.width.value());
    const double step = std::min(feet(1).value(), pond.width.value() / 2 / std::max(a.pumps, 1)) *
                        (x > pond.corner.x + pond.width.value() / 2 ? -1 : 1);
    std::vector<PlanPoint> places;
    for (int i = 0; i < a.pumps; ++i)
        places.push_back({x + i * step, y});
    return places;
}

/// Where the pumps plug in: on the wall where their cords reach it, else on the way to the water, three
/// quarters of a cord from the nearest pump.
PlanPoint pump_outlet(const StarterAnswers& a, const std::vector<PlanPoint>& pumps) {
    const PlanPoint wall{a.outlet.value() + feet(1).value(), 0};
    const double cord = a.pump_cord.value();
    const bool reaches = std::all_of(pumps.begin(), pumps.end(),
                                     [&](PlanPoint p) { return distance(wall, p).value() <= 0.9 * cord; });
    if (pumps.empty() || cord <= 0 || reaches) return wall;
    const PlanPoint near = pumps.front();
    const double share = std::min(1.0, 0.75 * cord / distance(wall, near).value());
    return {near.x + (wall.x - near.x) * share, near.y + (wall.y - near.y) * share};
}

/// A circuit as it is mostly found; nobody has looked, so the file says that.
std::string assumed_circuit(const std::string& id, const std::string& more, PlanPoint at,
                            const Ruler& ruler) {
    return fmt::format("\n[[circuit]]\nid = \"{}\"\n{}"
                       "breaker = 20     # assumed: the electrician confirms\n"
                       "gfci = true      # assumed: the electrician confirms\n"
                       "wet_cover = true # assumed: the electrician confirms\n"
                       "at = {}\n",
                       id, more, ruler.point(at));
}

std::string pump_circuit(const StarterAnswers& a, const std::vector<PlanPoint>& places, const Ruler& ruler) {
    if (a.pumps <= 0) return "";
    std::string more;
    if (a.pump_volts) more += fmt::format("volts = {}\n", trimmed_text(a.pump_volts->value(), 1));
    if (a.pump_hardwired) more += "outlet = \"hardwired\"\n";
    const PlanPoint at = pump_outlet(a, places);
    const bool on_wall = at.y == 0;
    return assumed_circuit("pump circuit", more, at, ruler) +
           (on_wall ? "" : "# `at` is a post on the way to the water, so that the pump's cord reaches it\n");
}

std::string mains(const StarterAnswers& a, const Ruler& ruler) {
    const std::vector<PlanPoint> places = pump_places(a);
    std::string text = "\n# Line voltage: a licensed electrician's work. What is marked as assumed was "
                       "neither asked nor seen.\n"
                       "# `rillwatt circuits` proposes what is open.\n";
    text += pump_circuit(a, places, ruler);
    text += assumed_circuit("light circuit", "", {a.outlet.value(), 0}, ruler);
    for (int i = 1; i <= a.pumps; ++i) {
        text += fmt::format("\n[[pump]]\nid = \"pump {}\"\nmodel = {}\ncircuit = \"pump circuit\"\n", i,
                            quoted(a.pump_model));
        if (a.pond) text += fmt::format("at = {}\n", ruler.point(places[static_cast<std::size_t>(i - 1)]));
    }
    return text;
}

std::string transformer(const std::string& id, PlanPoint at, const Ruler& ruler) {
    return fmt::format(
        "\n[[transformer]]\nid = \"{}\"\n# model: open\ncircuit = \"light circuit\"\nat = {}\n", id,
        ruler.point(at));
}

std::string fixture(const std::string& id, const std::string& model, const std::string& from, PlanPoint at,
                    const std::string& lights, const Ruler& ruler) {
    std::string text = fmt::format("\n[[fixture]]\nid = \"{}\"\nmodel = \"{}\"\nfrom = \"{}\"\nat = {}\n", id,
                                   model, from, ruler.point(at));
    if (!lights.empty()) text += fmt::format("lights = \"{}\"\n", lights);
    return text;
}

/// Lights under the falls, or along the middle of the pond, all from one splice on the bank.
std::string water_lights(const StarterAnswers& a, const Ruler& ruler) {
    if (a.water_lights <= 0 || !a.pond) return {};
    const StarterPond& pond = *a.pond;
    const bool falls = a.falls_width.value() > 0;
    const double middle = pond.corner.x + pond.width.value() / 2;
    const double spread = falls ? a.falls_width.value() : pond.width.value();
    const double y = pond.corner.y + (falls ? pond.length.value() - std::min(0.3, pond.length.value() / 4)
                                            : pond.length.value() / 2);
    std::string text =
        transformer("water lights", {a.outlet.value() + feet(2).value(), feet(1).value()}, ruler);
    text += "\n[[run]]\nid = \"W\"\nfrom = \"water lights\"\n# tap and cable: open\n";
    text += fmt::format("\n[[splice]]\nid = \"bank\"\nfrom = \"W\"\nat = {}\n",
                        ruler.point({middle, pond.corner.y - feet(1).value()}));
    for (int i = 0; i < a.water_lights; ++i) {
        const double x = middle + spread * ((i + 0.5) / a.water_lights - 0.5);
        text +=
            fixture(fmt::format("water-{}", i + 1), "sub-3w", "bank", {x, y}, falls ? "falls" : "", ruler);
    }
    return text;
}

/// A point a share of the way along a line, moved to one side of it.
PlanPoint along(const std::vector<PlanPoint>& line, double share, double aside) {
    double total = 0;
    for (std::size_t i = 1; i < line.size(); ++i)
        total += distance(line[i - 1], line[i]).value();
    double left = share * total;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const PlanPoint p = line[i - 1];
        const PlanPoint q = line[i];
        const double piece = distance(p, q).value();
        if (piece <= 0) continue;
        if (left > piece && i + 1 < line.size()) {
            left -= piece;
            continue;
        }
        const double t = std::min(1.0, left / piece);
        return {p.x + (q.x - p.x) * t - (q.y - p.y) / piece * aside,
                p.y + (q.y - p.y) * t + (q.x - p.x) / piece * aside};
    }
    return line.front();
}

/// A place beside the path, on the other side of it where this one is the house.
PlanPoint beside_path(const StarterAnswers& a, double share, double aside) {
    const PlanPoint place = along(a.path, share, aside);
    const bool in_house =
        place.x > 0 && place.x < a.house_width.value() && place.y < 0 && place.y > -a.house_depth.value();
    return in_house ? along(a.path, share, -aside) : place;
}

/// Path lights in a chain, on one side and then the other; accent lights in a chain along the house.
std::string dry_lights(const StarterAnswers& a, const Ruler& ruler) {
    const bool path = a.path_lights > 0 && a.path.size() >= 2;
    if (!path && a.accent_lights <= 0) return {};
    std::string text = transformer("path and garden", {a.outlet.value(), feet(1).value()}, ruler);
    if (path) text += "\n[[run]]\nid = \"P\"\nfrom = \"path and garden\"\n# tap and cable: open\n";
    const double aside = a.path_width.value() / 2 + inches(9).value();
    for (int i = 0; path && i < a.path_lights; ++i)
        text +=
            fixture(fmt::format("path-{}", i + 1), "path-2w", i == 0 ? "P" : fmt::format("path-{}", i),
                    beside_path(a, (i + 0.5) / a.path_lights, i % 2 == 0 ? aside : -aside), "path", ruler);
    if (a.accent_lights > 0)
        text += "\n[[run]]\nid = \"A\"\nfrom = \"path and garden\"\n# tap and cable: open\n";
    const double wall = std::max(a.house_width.value(), feet(10).value());
    for (int i = 0; i < a.accent_lights; ++i)
        text += fixture(fmt::format("accent-{}", i + 1), "accent-5w-36",
                        i == 0 ? "A" : fmt::format("accent-{}", i),
                        {wall * (i + 0.5) / a.accent_lights, feet(3).value()}, "", ruler);
    return text;
}

} // namespace

std::string starter_site(const StarterAnswers& answers) {
    const Ruler ruler(answers.units);
    return head(answers) + house(answers, ruler) + water(answers, ruler) + walk(answers, ruler) +
           mains(answers, ruler) + water_lights(answers, ruler) + dry_lights(answers, ruler);
}

} // namespace rillwatt
