#include "rillwatt/layout/trench.hpp"

#include "rillwatt/layout/places.hpp"

#include "obstacle_map.hpp"
#include <algorithm>
#include <utility>

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

/// Whether a piece lies along a line.
bool lies_on(const Line& line, PlanPoint a, PlanPoint b) {
    return line.aside(a) <= same_trench && line.aside(b) <= same_trench;
}

/// Puts pieces onto lines, each onto the first it lies on of those that it touches.
class LineUp {
  public:
    explicit LineUp(std::vector<Piece> pieces) : pieces_(std::move(pieces)) {
        // Longest first: the line that a long piece gives is the truer one.
        std::stable_sort(pieces_.begin(), pieces_.end(),
                         [](const Piece& p, const Piece& q) { return norm(p.b - p.a) > norm(q.b - q.a); });
        std::vector<PlanBox> boxes;
        for (const Piece& piece : pieces_)
            boxes.push_back(box_of(piece.a, piece.b).grown(same_trench));
        index_ = PlanIndex(boxes);
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            line_up(i);
    }

    std::vector<Line> lines() const {
        std::vector<Line> out;
        for (const Lined& line : lines_) {
            if (line.pieces.empty()) continue;
            out.push_back(line.line);
            for (const std::size_t i : line.pieces) {
                const Piece& piece = pieces_[i];
                const auto [from, to] = std::minmax({line.line.place(piece.a), line.line.place(piece.b)});
                out.back().spans.push_back({from, to, piece.cable});
            }
        }
        return out;
    }

  private:
    struct Lined {
        Line line;
        std::vector<std::size_t> pieces;
    };

    void line_up(std::size_t number) {
        const Piece& piece = pieces_[number];
        std::vector<std::size_t> met;
        for (const std::size_t i : index_.found(box_of(piece.a, piece.b)))
            if (i < number && lies_on(lines_[line_of_[i]].line, piece.a, piece.b)) met.push_back(line_of_[i]);
        std::sort(met.begin(), met.end());
        met.erase(std::unique(met.begin(), met.end()), met.end());
        if (met.empty()) {
            met.push_back(lines_.size());
            lines_.push_back({{piece.a, 1 / norm(piece.b - piece.a) * (piece.b - piece.a), {}}, {}});
        }
        line_of_.push_back(met.front());
        lines_[met.front()].pieces.push_back(number);
        for (std::size_t k = 1; k < met.size(); ++k)
            join(met.front(), met[k]);
    }

    /// A piece that lies on two lines bridges the gap between them: they are one, if all of the second fits.
    void join(std::size_t first, std::size_t second) {
        std::vector<std::size_t>& pieces = lines_[second].pieces;
        const auto fits = [&](std::size_t i) {
            return lies_on(lines_[first].line, pieces_[i].a, pieces_[i].b);
        };
        if (!std::all_of(pieces.begin(), pieces.end(), fits)) return;
        for (const std::size_t i : pieces) {
            line_of_[i] = first;
            lines_[first].pieces.push_back(i);
        }
        pieces.clear();
    }

    std::vector<Piece> pieces_;
    PlanIndex index_;
    std::vector<Lined> lines_;
    std::vector<std::size_t> line_of_; ///< of each piece that is lined up
};

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
    for (const Line& line : LineUp(all_pieces(lengths)).lines())
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

/// What lies on the ground of a site, by where it is.
class Ground {
  public:
    explicit Ground(const Site& site) : site_(&site), map_(site), areas_(site), sleeves_(boxes_of(site)) {}

    const ObstacleMap& map() const { return map_; }

    /// The first sleeve that a stretch lies in.
    const Sleeve* sleeve_along(PlanPoint a, PlanPoint b) const {
        for (const std::size_t i : sleeves_.found(a)) {
            const Sleeve& sleeve = site_->sleeves[i];
            const auto in_it = [&](PlanPoint p) {
                return distance_to_segment(sleeve.a, sleeve.b, p) <= same_trench;
            };
            if (in_it(a) && in_it(b)) return &sleeve;
        }
        return nullptr;
    }

    /// The area on top at a point, of those that a trench notices.
    const Area* area_on_top(PlanPoint p) const {
        const Area* top = nullptr;
        for (const std::size_t i : areas_.covering(p)) {
            const Area& area = site_->areas[i];
            const bool counts = area.kind != AreaKind::bed && area.kind != AreaKind::lawn;
            if (!counts || areas_.locate(i, p) != Location::inside) continue;
            if (area.kind == AreaKind::water) return &area;
            if (!top) top = &area;
        }
        return top;
    }

  private:
    static std::vector<PlanBox> boxes_of(const Site& site) {
        std::vector<PlanBox> boxes;
        for (const Sleeve& sleeve : site.sleeves)
            boxes.push_back(box_of(sleeve.a, sleeve.b).grown(same_trench));
        return boxes;
    }

    const Site* site_;
    ObstacleMap map_;
    AreaIndex areas_;
    PlanIndex sleeves_;
};

/// Cuts a stretch where it goes from one ground to another.
void add_by_ground(const Ground& ground, const TrenchStretch& whole, std::vector<TrenchStretch>& out) {
    if (const Sleeve* sleeve = ground.sleeve_along(whole.a, whole.b)) {
        out.push_back(whole);
        out.back().ground = TrenchGround::sleeve;
        out.back().area = sleeve->id;
        return;
    }
    const std::vector<double> shares = ground.map().cuts(whole.a, whole.b);
    const PlanPoint along = whole.b - whole.a;
    const std::size_t first = out.size();
    for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
        if ((shares[k + 1] - shares[k]) * norm(along) <= touch_tolerance) continue;
        TrenchStretch part = whole;
        part.a = whole.a + shares[k] * along;
        part.b = whole.a + shares[k + 1] * along;
        if (const Area* area = ground.area_on_top(whole.a + (shares[k] + shares[k + 1]) / 2 * along)) {
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
    const Ground ground(site);
    const std::vector<std::string> names = cable_names(site);
    std::vector<TrenchStretch> out;
    for (const Shared& shared : shared_stretches(lengths)) {
        TrenchStretch whole{.a = shared.a, .b = shared.b, .cables = {}, .area = {}};
        for (const std::size_t cable : shared.cables)
            whole.cables.push_back(names.at(cable));
        add_by_ground(ground, whole, out);
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
