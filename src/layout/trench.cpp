#include "rillwatt/layout/trench.hpp"

#include "obstacle_map.hpp"
#include <algorithm>
#include <map>
#include <optional>

namespace rillwatt {
namespace {

/// Routes this near each other share a trench, in metres.
constexpr double same_trench = 0.001;

/// A straight piece of one cable's route.
struct Piece {
    PlanPoint a;
    PlanPoint b;
    std::size_t cable = 0;
};

void add_pieces(const std::vector<PartLength>& lengths, std::size_t& cable, std::vector<Piece>& out) {
    for (const PartLength& length : lengths) {
        for (std::size_t k = 0; k + 1 < length.route.size(); ++k)
            if (!same_place(length.route[k], length.route[k + 1]))
                out.push_back({length.route[k], length.route[k + 1], cable});
        ++cable;
    }
}

std::vector<Piece> all_pieces(const SiteLengths& lengths) {
    std::vector<Piece> pieces;
    std::size_t cable = 0;
    add_pieces(lengths.splices, cable, pieces);
    add_pieces(lengths.fixtures, cable, pieces);
    add_pieces(lengths.links, cable, pieces);
    return pieces;
}

/// Pieces that lie on one straight line, as spans along it.
struct Line {
    PlanPoint origin;
    PlanPoint along; ///< unit length
    struct Span {
        double from;
        double to;
        std::size_t cable;
    };
    std::vector<Span> spans;

    double place(PlanPoint p) const { return dot(p - origin, along); }
    double aside(PlanPoint p) const { return std::abs(cross(along, p - origin)); }
};

std::vector<Line> lines_of(std::vector<Piece> pieces) {
    // Longest first: the line that a long piece gives is the truer one.
    std::stable_sort(pieces.begin(), pieces.end(),
                     [](const Piece& p, const Piece& q) { return norm(p.b - p.a) > norm(q.b - q.a); });
    std::vector<Line> lines;
    for (const Piece& piece : pieces) {
        auto line = std::find_if(lines.begin(), lines.end(), [&](const Line& l) {
            return l.aside(piece.a) <= same_trench && l.aside(piece.b) <= same_trench;
        });
        if (line == lines.end())
            line = lines.insert(line, {piece.a, 1 / norm(piece.b - piece.a) * (piece.b - piece.a), {}});
        const auto [from, to] = std::minmax({line->place(piece.a), line->place(piece.b)});
        line->spans.push_back({from, to, piece.cable});
    }
    return lines;
}

/// A stretch between two places of a line with the same cables all along.
struct Shared {
    PlanPoint a;
    PlanPoint b;
    std::vector<std::size_t> cables;
};

void add_shared(const Line& line, std::vector<Shared>& out) {
    std::vector<double> ends;
    for (const Line::Span& span : line.spans) {
        ends.push_back(span.from);
        ends.push_back(span.to);
    }
    std::sort(ends.begin(), ends.end());
    for (std::size_t k = 0; k + 1 < ends.size(); ++k) {
        if (ends[k + 1] - ends[k] <= touch_tolerance) continue;
        const double middle = (ends[k] + ends[k + 1]) / 2;
        std::vector<std::size_t> cables;
        for (const Line::Span& span : line.spans)
            if (span.from < middle && middle < span.to) cables.push_back(span.cable);
        if (cables.empty()) continue;
        std::sort(cables.begin(), cables.end());
        cables.erase(std::unique(cables.begin(), cables.end()), cables.end());
        out.push_back({line.origin + ends[k] * line.along, line.origin + ends[k + 1] * line.along, cables});
    }
}

std::vector<Shared> shared_stretches(const SiteLengths& lengths) {
    std::vector<Shared> out;
    for (const Line& line : lines_of(all_pieces(lengths)))
        add_shared(line, out);
    return out;
}

std::vector<std::string> cable_names(const Site& site) {
    std::vector<std::string> names;
    for (const Splice& splice : site.splices)
        names.push_back(splice.id);
    for (const Fixture& fixture : site.fixtures)
        names.push_back(fixture.id);
    for (const Link& link : site.links)
        names.push_back(link.id);
    return names;
}

const Sleeve* sleeve_along(const Site& site, PlanPoint a, PlanPoint b) {
    for (const Sleeve& sleeve : site.sleeves) {
        const auto in_it = [&](PlanPoint p) {
            return norm(nearest_on_segment(sleeve.a, sleeve.b, p) - p) <= same_trench;
        };
        if (in_it(a) && in_it(b)) return &sleeve;
    }
    return nullptr;
}

/// The kind of area on top at a point.
const Area* area_on_top(const Site& site, PlanPoint p) {
    const Area* top = nullptr;
    for (const Area& area : site.areas) {
        const bool counts =
            area.kind != AreaKind::bed && area.kind != AreaKind::lawn && !area.outline.empty();
        if (!counts || locate(area.outline, p) != Location::inside) continue;
        if (area.kind == AreaKind::water) return &area;
        if (!top) top = &area;
    }
    return top;
}

/// Cuts a stretch where it goes from one ground to another.
void add_by_ground(const Site& site, const ObstacleMap& map, const TrenchStretch& whole,
                   std::vector<TrenchStretch>& out) {
    if (const Sleeve* sleeve = sleeve_along(site, whole.a, whole.b)) {
        out.push_back(whole);
        out.back().ground = TrenchGround::sleeve;
        out.back().area = sleeve->id;
        return;
    }
    const std::vector<double> shares = map.cuts(whole.a, whole.b);
    const PlanPoint along = whole.b - whole.a;
    const std::size_t first = out.size();
    for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
        if ((shares[k + 1] - shares[k]) * norm(along) <= touch_tolerance) continue;
        TrenchStretch part = whole;
        part.a = whole.a + shares[k] * along;
        part.b = whole.a + shares[k + 1] * along;
        if (const Area* area = area_on_top(site, whole.a + (shares[k] + shares[k + 1]) / 2 * along)) {
            part.ground = area->kind == AreaKind::water ? TrenchGround::water : TrenchGround::paving;
            part.area = area->id;
        }
        const bool goes_on =
            out.size() > first && out.back().ground == part.ground && out.back().area == part.area;
        if (goes_on)
            out.back().b = part.b;
        else
            out.push_back(std::move(part));
    }
}

} // namespace

std::vector<TrenchStretch> trench_stretches(const Site& site, const SiteLengths& lengths) {
    const ObstacleMap map(site);
    const std::vector<std::string> names = cable_names(site);
    std::vector<TrenchStretch> out;
    for (const Shared& shared : shared_stretches(lengths)) {
        TrenchStretch whole{.a = shared.a, .b = shared.b, .cables = {}, .area = {}};
        for (const std::size_t cable : shared.cables)
            whole.cables.push_back(names.at(cable));
        add_by_ground(site, map, whole, out);
    }
    return out;
}

Metres trench_length(const std::vector<TrenchStretch>& stretches, TrenchGround ground) {
    Metres sum;
    for (const TrenchStretch& stretch : stretches)
        if (stretch.ground == ground) sum += stretch.length();
    return sum;
}

Metres trench_length(const SiteLengths& lengths) {
    Metres sum;
    for (const Shared& shared : shared_stretches(lengths))
        sum += distance(shared.a, shared.b);
    return sum;
}

} // namespace rillwatt
