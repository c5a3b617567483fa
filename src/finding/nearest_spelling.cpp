#include "rillwatt/finding/input_error.hpp"

#include <algorithm>
#include <cctype>

namespace rillwatt {
namespace {

char lower(char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); }

/// Number of letters to insert, drop, change or swap with their neighbour (optimal string alignment
/// distance); a letter in the wrong case costs nothing. More than `limit` is told as `limit + 1`.
std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit) {
    const std::size_t difference = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
    if (difference > limit) return limit + 1;
    std::vector<std::size_t> before_last(b.size() + 1);
    std::vector<std::size_t> last(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        last[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1;
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
            const bool swapped =
                i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) && lower(a[i - 2]) == lower(b[j - 1]);
            if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
        }
        if (*std::min_element(row.begin(), row.end()) > limit) return limit + 1;
        std::swap(before_last, last);
        std::swap(last, row);
    }
    return last[b.size()];
}

std::size_t common_beginning(std::string_view a, std::string_view b) {
    std::size_t length = 0;
    while (length < std::min(a.size(), b.size()) && lower(a[length]) == lower(b[length]))
        ++length;
    return length;
}

/// Whether a word is the beginning of a longer name, up to where one of its parts ends: "sub-5w" of
/// "sub-5w-40".
bool begins(std::string_view word, std::string_view name) {
    constexpr std::size_t telling = 3; // letters
    return word.size() >= telling && name.size() > word.size() &&
           common_beginning(word, name) == word.size() &&
           std::isalnum(static_cast<unsigned char>(name[word.size()])) == 0;
}

/// The shortest name that the word begins, of those as short the first.
const std::string* begun_by(std::string_view word, const std::vector<std::string>& candidates) {
    const std::string* shortest = nullptr;
    for (const std::string& candidate : candidates)
        if (begins(word, candidate) && (shortest == nullptr || candidate.size() < shortest->size()))
            shortest = &candidate;
    return shortest;
}

} // namespace

std::optional<std::string> nearest_spelling(std::string_view word,
                                            const std::vector<std::string>& candidates) {
    constexpr std::size_t longest_word = 64; // beyond it nobody mistypes, and the search would be slow
    if (word.empty() || word.size() > longest_word) return std::nullopt;
    if (const std::string* longer = begun_by(word, candidates)) return *longer;
    std::size_t limit = std::max<std::size_t>(1, word.size() / 3);
    const std::string* nearest = nullptr;
    for (const std::string& candidate : candidates) {
        const std::size_t distance = edit_distance(word, candidate, limit);
        if (distance > limit || distance >= std::max(word.size(), candidate.size())) continue;
        const bool as_near = nearest != nullptr && distance == limit;
        if (as_near && common_beginning(word, candidate) <= common_beginning(word, *nearest)) continue;
        nearest = &candidate;
        limit = distance;
    }
    return nearest ? std::optional(*nearest) : std::nullopt;
}

} // namespace rillwatt
