#include "feeds.hpp"

#include <fmt/format.h>

#include "feed_order.hpp"
#include <algorithm>

namespace rillwatt {

namespace {

const char* kind_name(NodeKind kind) {
    switch (kind) {
    case NodeKind::run:
        return "run";
    case NodeKind::splice:
        return "splice";
    case NodeKind::fixture:
        return "fixture";
    }
    return "part";
}

std::vector<WiredPart> parts_in_file_order(const Site& site) {
    std::vector<WiredPart> parts;
    parts.reserve(site.runs.size() + site.splices.size() + site.fixtures.size());
    for (std::size_t i = 0; i < site.runs.size(); ++i)
        parts.push_back({NodeKind::run, i, &site.runs[i], &site.runs[i].from});
    for (std::size_t i = 0; i < site.splices.size(); ++i)
        parts.push_back({NodeKind::splice, i, &site.splices[i], &site.splices[i].from});
    for (std::size_t i = 0; i < site.fixtures.size(); ++i) {
        const auto& from = site.fixtures[i].from;
        parts.push_back({NodeKind::fixture, i, &site.fixtures[i], from ? &*from : nullptr});
    }
    const auto before = [](const WiredPart& a, const WiredPart& b) {
        return a.part->location.line < b.part->location.line;
    };
    const auto splices = parts.begin() + static_cast<std::ptrdiff_t>(site.runs.size());
    const auto fixtures = splices + static_cast<std::ptrdiff_t>(site.splices.size());
    if (std::is_sorted(parts.begin(), splices, before) && std::is_sorted(splices, fixtures, before) &&
        std::is_sorted(fixtures, parts.end(), before)) { // as they come from a file
        std::inplace_merge(parts.begin(), splices, fixtures, before);
        std::inplace_merge(parts.begin(), fixtures, parts.end(), before);
    } else {
        std::stable_sort(parts.begin(), parts.end(), before);
    }
    return parts;
}

/// What a part's `from` may name.
std::string wanted_feed(NodeKind kind) {
    return kind == NodeKind::run ? "the id of a transformer" : "the id of a run, a splice or a fixture";
}

/// ids that a part's `from` may name, for the nearest spelling.
std::vector<std::string> feed_candidates(const Site& site, NodeKind kind) {
    std::vector<std::string> ids;
    const auto add = [&ids](const auto& parts) {
        for (const auto& part : parts)
            ids.push_back(part.id);
    };
    if (kind == NodeKind::run) {
        add(site.transformers);
        return ids;
    }
    add(site.runs);
    add(site.splices);
    add(site.fixtures);
    return ids;
}

InputError unknown_feed(const Site& site, const WiredPart& part) {
    std::string expected = wanted_feed(part.kind);
    if (const auto nearest = nearest_spelling(*part.from, feed_candidates(site, part.kind)))
        expected += fmt::format("; nearest is \"{}\"", *nearest);
    return {part.part->location,
            fmt::format("`from = \"{}\"` of {} \"{}\" names nothing that could feed it", *part.from,
                        kind_name(part.kind), part.part->id),
            expected,
            {},
            "from"};
}

InputError wrong_feed(const WiredPart& part, std::string_view what) {
    std::string expected = wanted_feed(part.kind);
    if (what == "transformer") expected += "; a [[run]] is what starts at a transformer";
    return {
        part.part->location,
        fmt::format("{} \"{}\" is fed from {} \"{}\"", kind_name(part.kind), part.part->id, what, *part.from),
        expected,
        {},
        "from"};
}

using TransformerIndex = std::unordered_map<std::string_view, int>;

/// What is wrong with a `from`, given the part of the wiring it names, if any.
InputError feed_error(const Site& site, const TransformerIndex& transformers, const Feeds& feeds,
                      const WiredPart& part, int named) {
    if (transformers.contains(*part.from)) return wrong_feed(part, "transformer");
    if (named < 0) return unknown_feed(site, part);
    return wrong_feed(part, kind_name(feeds.parts[static_cast<std::size_t>(named)].kind));
}

/// Looks up one `from`; leaves the part without feed and adds an error when it cannot be.
void find_feed(const Site& site, const TransformerIndex& transformers, PartsById& by_id, Feeds& feeds,
               std::size_t number, std::vector<InputError>& errors) {
    WiredPart& part = feeds.parts[number];
    if (!part.from) return;
    const bool is_run = part.kind == NodeKind::run;
    if (is_run) {
        if (const auto found = transformers.find(*part.from); found != transformers.end()) {
            part.transformer = found->second;
            return;
        }
    }
    const int named = by_id.find_near(*part.from, number);
    if (!is_run && named >= 0)
        part.feed = named;
    else
        errors.push_back(feed_error(site, transformers, feeds, part, named));
}

InputError loop_error(const Feeds& feeds, const std::vector<int>& loop) {
    const auto part = [&feeds](int i) { return feeds.parts[static_cast<std::size_t>(i)].part; };
    const auto first = part(loop.front());
    std::string chain = fmt::format("\"{}\" (line {})", first->id, first->location.line);
    for (std::size_t k = 1; k < loop.size(); ++k)
        chain += fmt::format(" feeds \"{}\" (line {})", part(loop[k])->id, part(loop[k])->location.line);
    const std::string found =
        loop.size() == 1 ? fmt::format("{} feeds itself", chain)
                         : fmt::format("parts that feed each other: {} feeds \"{}\"", chain, first->id);
    return {first->location, found, "every part to be reached from a run by following `from`", {}, "from"};
}

std::vector<int> feed_of_each(const Feeds& feeds) {
    std::vector<int> feed;
    feed.reserve(feeds.parts.size());
    for (const WiredPart& part : feeds.parts)
        feed.push_back(part.feed);
    return feed;
}

std::vector<int> runs_of(const Feeds& feeds) {
    std::vector<int> runs;
    for (std::size_t i = 0; i < feeds.parts.size(); ++i)
        if (feeds.parts[i].kind == NodeKind::run) runs.push_back(static_cast<int>(i));
    return runs;
}

} // namespace

int PartsById::find(std::string_view id) {
    if (index_.empty()) {
        index_.reserve(parts_.size());
        for (std::size_t i = 0; i < parts_.size(); ++i)
            index_.emplace(parts_[i].part->id, static_cast<int>(i));
    }
    const auto found = index_.find(id);
    return found == index_.end() ? -1 : found->second;
}

int PartsById::find_near(std::string_view id, std::size_t part) {
    if (part > 0) {
        const WiredPart& before = parts_[part - 1];
        if (before.part->id == id) return static_cast<int>(part) - 1;
        if (before.feed >= 0 && parts_[static_cast<std::size_t>(before.feed)].part->id == id)
            return before.feed;
    }
    return find(id);
}

Feeds wire_up(const Site& site, std::vector<InputError>& errors) {
    Feeds feeds;
    feeds.parts = parts_in_file_order(site);
    TransformerIndex transformers;
    for (std::size_t i = 0; i < site.transformers.size(); ++i)
        transformers.emplace(site.transformers[i].id, static_cast<int>(i));
    PartsById by_id(feeds.parts);
    for (std::size_t i = 0; i < feeds.parts.size(); ++i)
        find_feed(site, transformers, by_id, feeds, i, errors);

    feeds.order = level_order(feed_of_each(feeds), runs_of(feeds));
    return feeds;
}

std::vector<InputError> loop_errors(const Feeds& feeds) {
    std::vector<InputError> errors;
    if (feeds.order.size() == feeds.parts.size()) return errors; // all hang on runs
    for (const std::vector<int>& loop : feed_loops(feed_of_each(feeds)))
        errors.push_back(loop_error(feeds, loop));
    return errors;
}

} // namespace rillwatt
