#include "part_site.hpp"

#include <algorithm>

namespace rillwatt::sizing {

namespace {

template<class Parts>
auto find_part(Parts& parts, const std::string& id) {
    return std::find_if(parts.begin(), parts.end(), [&](const auto& part) { return part.id == id; });
}

std::string fresh_id(const Site& site, std::string id) {
    const auto taken = [&](const auto& parts) { return find_part(parts, id) != parts.end(); };
    while (taken(site.runs) || taken(site.splices) || taken(site.fixtures) || taken(site.transformers))
        id += "'";
    return id;
}

} // namespace

PartSite part_site(const Site& site, const SiteLengths& lengths, const TransformerCircuit& circuit) {
    PartSite part{site, {}};
    part.site.transformers = {site.transformers[circuit.transformer]};
    part.site.runs.clear();
    part.site.splices.clear();
    part.site.fixtures.clear();
    part.site.links.clear();
    for (const CircuitNode& node : circuit.nodes) {
        if (node.kind == NodeKind::run) part.site.runs.push_back(site.runs[node.part]);
        if (node.kind == NodeKind::splice) {
            part.site.splices.push_back(site.splices[node.part]);
            part.lengths.splices.push_back(lengths.splices[node.part]);
        }
        if (node.kind == NodeKind::fixture) {
            part.site.fixtures.push_back(site.fixtures[node.part]);
            part.lengths.fixtures.push_back(lengths.fixtures[node.part]);
        }
    }
    for (const CircuitLink& link : circuit.links) {
        part.site.links.push_back(site.links[link.link]);
        part.lengths.links.push_back(lengths.links[link.link]);
    }
    return part;
}

std::vector<std::string> PartSite::fed_by(const std::string& part) const {
    std::vector<std::string> fed;
    for (const Splice& splice : site.splices)
        if (splice.from == part) fed.push_back(splice.id);
    for (const Fixture& fixture : site.fixtures)
        if (fixture.from == part) fed.push_back(fixture.id);
    return fed;
}

std::optional<std::string> PartSite::feed_of(const std::string& part) const {
    if (const auto splice = find_part(site.splices, part); splice != site.splices.end()) return splice->from;
    if (const auto fixture = find_part(site.fixtures, part); fixture != site.fixtures.end())
        return fixture->from;
    return std::nullopt;
}

void PartSite::feed_from(const std::string& part, const std::string& feed) {
    if (const auto splice = find_part(site.splices, part); splice != site.splices.end()) splice->from = feed;
    if (const auto fixture = find_part(site.fixtures, part); fixture != site.fixtures.end())
        fixture->from = feed;
}

std::optional<Metres>* PartSite::length_to(const std::string& part) {
    if (const auto splice = find_part(site.splices, part); splice != site.splices.end())
        return &lengths.splices[static_cast<std::size_t>(splice - site.splices.begin())].length;
    if (const auto fixture = find_part(site.fixtures, part); fixture != site.fixtures.end())
        return &lengths.fixtures[static_cast<std::size_t>(fixture - site.fixtures.begin())].length;
    return nullptr;
}

std::vector<std::string> PartSite::way_to(const std::string& part) const {
    std::vector<std::string> way;
    for (auto at = std::optional(part); at && feed_of(*at); at = feed_of(*at))
        way.push_back(*at);
    std::reverse(way.begin(), way.end());
    return way;
}

Metres PartSite::way_length(const std::string& part) {
    Metres length;
    for (const std::string& step : way_to(part))
        length += length_to(step)->value_or(Metres(0));
    return length;
}

std::string PartSite::run_of(const std::string& part) const {
    std::string at = part;
    while (const auto feed = feed_of(at))
        at = *feed;
    return at;
}

Loads PartSite::loads(const Catalog& catalog) const {
    Loads loads;
    std::map<std::string, std::string> feeds;
    std::map<std::string, int> waits_for; // parts fed by it whose load is not yet added
    for (const Run& run : site.runs)
        loads[run.id] = 0;
    const auto add = [&](const std::string& id, const std::string& from, double va) {
        loads[id] = va;
        feeds[id] = from;
        ++waits_for[from];
    };
    for (const Splice& splice : site.splices)
        add(splice.id, splice.from, 0);
    for (const Fixture& fixture : site.fixtures) {
        const FixtureType* type = find_entry(catalog.fixtures, fixture.model);
        add(fixture.id, fixture.from.value_or(""), type != nullptr ? type->va.value() : 0);
    }
    std::vector<std::string> done; // from the ends inwards
    for (const auto& [id, feed] : feeds)
        if (waits_for[id] == 0) done.push_back(id);
    while (!done.empty()) {
        const std::string id = std::move(done.back());
        done.pop_back();
        const auto feed = feeds.find(id);
        if (feed == feeds.end()) continue;
        loads[feed->second] += loads[id];
        if (--waits_for[feed->second] == 0) done.push_back(feed->second);
    }
    return loads;
}

/// Follows the heavier branch until no branch carries more than half, then moves branches from there.
std::string PartSite::split_run(const Catalog& catalog, const std::string& run) {
    Loads loads = this->loads(catalog);
    const double half = loads[run] / 2;
    std::string fork = run;
    std::vector<std::string> branches = fed_by(fork);
    const auto heavier = [&](const std::string& a, const std::string& b) { return loads[a] > loads[b]; };
    for (;;) {
        std::stable_sort(branches.begin(), branches.end(), heavier);
        if (branches.empty() || loads[branches.front()] <= half) break;
        fork = branches.front();
        branches = fed_by(fork);
    }
    if (branches.empty() || (branches.size() == 1 && fork == run)) return "";
    Run added = *find_part(site.runs, run);
    added.id = fresh_id(site, run + "2");
    site.runs.push_back(added);
    std::string feed = added.id;
    if (fork != run) {
        Splice end;
        end.id = fresh_id(site, fork + "2");
        end.from = added.id;
        site.splices.push_back(end);
        PartLength length;
        length.origin = LengthOrigin::typed;
        length.length = way_length(fork);
        lengths.splices.push_back(length);
        feed = end.id;
    }
    double moved = 0;
    for (const std::string& branch : branches) {
        const double va = loads[branch];
        if (moved > 0 && moved + va > half * 1.0001) continue;
        moved += va;
        feed_from(branch, feed);
    }
    return added.id;
}

bool PartSite::add_transformer(const Catalog& catalog, int transformers) {
    const std::string first = site.transformers.front().id;
    while (static_cast<int>(site.transformers.size()) < transformers) {
        Transformer added = site.transformers.front();
        added.id = fresh_id(site, first + "-" + std::to_string(site.transformers.size() + 1));
        site.transformers.push_back(added);
    }
    Loads loads = this->loads(catalog);
    const auto by_load = [&](const Run& a, const Run& b) { return loads[a.id] > loads[b.id]; };
    while (static_cast<int>(site.runs.size()) < transformers) {
        const auto largest = std::min_element(site.runs.begin(), site.runs.end(), by_load);
        if (largest == site.runs.end() || split_run(catalog, std::string(largest->id)).empty()) return false;
        loads = this->loads(catalog);
    }
    std::stable_sort(site.runs.begin(), site.runs.end(), by_load);
    std::vector<double> load(site.transformers.size(), 0);
    for (Run& run : site.runs) {
        const auto least =
            static_cast<std::size_t>(std::min_element(load.begin(), load.end()) - load.begin());
        run.from = site.transformers[least].id;
        load[least] += loads[run.id];
    }
    return true;
}

} // namespace rillwatt::sizing
