#include "rillwatt/plan/site_wiring.hpp"

#include <map>

namespace rillwatt {
namespace {

/// What a feed hands on.
struct Feed {
    std::string from; ///< empty for a run
    std::optional<std::string> cable;
    std::optional<PlanPoint> at;
    std::optional<std::size_t> run;
};

std::map<std::string, Feed> feeds_of(const Site& site) {
    std::map<std::string, Feed> feeds;
    for (std::size_t i = 0; i < site.runs.size(); ++i) {
        Feed feed{"", site.runs[i].cable, {}, i};
        for (const Transformer& transformer : site.transformers)
            if (transformer.id == site.runs[i].from) feed.at = transformer.at;
        feeds[site.runs[i].id] = feed;
    }
    for (const Splice& splice : site.splices)
        feeds[splice.id] = {splice.from, splice.cable, splice.at, {}};
    for (const Fixture& fixture : site.fixtures)
        feeds[fixture.id] = {fixture.from.value_or(""), fixture.cable, fixture.at, {}};
    return feeds;
}

class CableTracer {
  public:
    explicit CableTracer(const Assessment& assessment)
        : assessment_(&assessment), feeds_(feeds_of(*assessment.site)) {}

    DrawnCable cable(const std::string& part, const std::string& from, const std::optional<std::string>& own,
                     std::optional<PlanPoint> at, const PartLength* length) const {
        DrawnCable out{part, from, {}, own.value_or(""), nullptr, length, {}, at, nullptr};
        if (const auto it = feeds_.find(from); it != feeds_.end()) out.from_at = it->second.at;
        inherit(out);
        if (assessment_->catalog) out.type = find_entry(assessment_->catalog->cables, out.cable);
        if (!assessment_->solution.cases.empty())
            for (const SegmentResult& segment : assessment_->solution.nominal().segments)
                if (segment.link.empty() ? segment.to == part : segment.link == part) out.segment = &segment;
        return out;
    }

    std::optional<PlanPoint> at(const std::string& id) const {
        const auto it = feeds_.find(id);
        return it == feeds_.end() ? std::nullopt : it->second.at;
    }

  private:
    /// Walks up the feeds to the run; a loop of feeds ends after as many steps as there are parts.
    void inherit(DrawnCable& cable) const {
        std::string id = cable.from;
        for (std::size_t step = 0; step <= feeds_.size() && !id.empty(); ++step) {
            const auto it = feeds_.find(id);
            if (it == feeds_.end()) return;
            if (cable.cable.empty() && it->second.cable) cable.cable = *it->second.cable;
            if (it->second.run) cable.run = it->second.run;
            id = it->second.from;
        }
    }

    const Assessment* assessment_;
    std::map<std::string, Feed> feeds_;
};

const PartLength* at_or_null(const std::vector<PartLength>& lengths, std::size_t i) {
    return i < lengths.size() ? &lengths[i] : nullptr;
}

} // namespace

std::vector<DrawnCable> drawn_cables(const Assessment& assessment) {
    const Site& site = *assessment.site;
    const CableTracer wiring(assessment);
    std::vector<DrawnCable> cables;
    for (std::size_t i = 0; i < site.splices.size(); ++i) {
        const Splice& splice = site.splices[i];
        cables.push_back(wiring.cable(splice.id, splice.from, splice.cable, splice.at,
                                      at_or_null(assessment.lengths.splices, i)));
    }
    for (std::size_t i = 0; i < site.fixtures.size(); ++i) {
        const Fixture& fixture = site.fixtures[i];
        if (!fixture.from) continue;
        cables.push_back(wiring.cable(fixture.id, *fixture.from, fixture.cable, fixture.at,
                                      at_or_null(assessment.lengths.fixtures, i)));
    }
    for (std::size_t i = 0; i < site.links.size(); ++i) {
        const Link& link = site.links[i];
        cables.push_back(wiring.cable(link.id, link.a, link.cable, wiring.at(link.b),
                                      at_or_null(assessment.lengths.links, i)));
    }
    return cables;
}

} // namespace rillwatt
