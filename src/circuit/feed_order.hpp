#pragma once

#include <vector>

namespace rillwatt {

/// Loops among parts of which each has at most one feed (-1: none): each loop as its parts, every one after
/// the one that feeds it, starting with the least.
std::vector<std::vector<int>> feed_loops(const std::vector<int>& feed);

/// Everything fed from `starts`, level by level, parts of one level in the order of their feeds and then of
/// their numbers.
std::vector<int> level_order(const std::vector<int>& feed, const std::vector<int>& starts);

} // namespace rillwatt
