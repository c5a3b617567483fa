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
    bool settled = false; ///< run and cable are those that it inherits
};

std::map<std::string, Feed> feeds_of(const Site& site) {
    std::map<std::string, Feed> feeds;
    for (std::size_t i = 0; i < site.runs.size(); ++i) {
        Feed feed{"", site.runs[i].cable, {}, i, false};
        for (const Transformer& transformer : site.transformers)
            if (transformer.id == site.runs[i].from) feed.at = transformer.at;
        feeds[site.runs[i].id] = feed;
    }
    for (const Splice& splice : site.splices)
        feeds[splice.id] = {splice.from, splice.cable, splice.at, {}, false};
    for (const Fixture& fixture : site.fixtures)
        feeds[fixture.id] = {fixture.from.value_or(""), fixture.cable, fixture.at, {}, false};
    return feeds;
}

class CableTracer {
  public:
    explicit CableTracer(const Assessment& assessment)
        : assessment_(&assessment), feeds_(feeds_of(*assessment.site)) {
        if (!assessment.solution.cases.empty())
            for (const SegmentResult& segment : assessment.solution.nominal().segments)
                segments_[segment.link.empty() ? segment.to : segment.link] = &segment;
        for (auto& [id, feed] : feeds_)
            inherit(feed);
    }

    DrawnCable cable(const std::string& part, const std::string& from, const std::optional<std::string>& own,
                     std::optional<PlanPoint> at, const PartLength* length) const {
        DrawnCable out{part, from, {}, own.value_or(""), nullptr, length, {}, at, nullptr};
        if (const auto it = feeds_.find(from); it != feeds_.end()) {
            out.from_at = it->second.at;
            out.run = it->second.run;
            if (out.cable.empty()) out.cable = it->second.cable.value_or("");
        }
        if (assessment_->catalog) out.type = find_entry(assessment_->catalog->cables, out.cable);
        if (const auto it = segments_.find(part); it != segments_.end()) out.segment = it->second;
        return out;
    }

    std::optional<PlanPoint> at(const std::string& id) const {
        const auto it = feeds_.find(id);
        return it == feeds_.end() ? std::nullopt : it->second.at;
    }

  private:
    /// Gives a feed, and those on the way up to its run, the run and the cable that they are part of. What
    /// was given before is not asked for again; a loop of feeds has neither.
    void inherit(Feed& feed) {
        std::vector<Feed*> way;
        Feed* top = &feed;
        for (; !top->settled; top = feed_of(*top)) {
            top->settled = true;
            way.push_back(top);
            if (!feed_of(*top)) break;
        }
        for (auto below = way.rbegin(); below != way.rend(); ++below) {
            const Feed* above = feed_of(**below);
            if (!above) continue;
            if (!(*below)->cable) (*below)->cable = above->cable;
            (*below)->run = above->run;
        }
    }

    Feed* feed_of(const Feed& feed) {
        const auto it = feed.from.empty() ? feeds_.end() : feeds_.find(feed.from);
        return it == feeds_.end() ? nullptr : &it->second;
    }

    const Assessment* assessment_;
    std::map<std::string, Feed> feeds_;
    std::map<std::string_view, const SegmentResult*> segments_;
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
