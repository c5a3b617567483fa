#include "lm63_numbers.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace rillwatt {
namespace {

constexpr std::size_t most_errors = 20; ///< a file of another kind would otherwise print thousands

/// Words of one line that touch but for a comma ("1,5"), beside words set apart by spaces.
bool commas_between_digits(const std::vector<Word>& words) {
    bool touching = false;
    bool apart = false;
    for (std::size_t i = 1; i < words.size(); ++i) {
        if (words[i].line != words[i - 1].line) continue;
        const auto gap = words[i].text.data() - (words[i - 1].text.data() + words[i - 1].text.size());
        const bool comma = gap == 1 && words[i].text.data()[-1] == ',';
        (comma ? touching : apart) = true;
    }
    return touching && apart;
}

} // namespace

Lm63Numbers::Lm63Numbers(std::vector<Word> words, const std::string& file, int last_line)
    : words_(std::move(words)), file_(file), last_line_(last_line),
      digit_commas_(commas_between_digits(words_)) {}

void Lm63Numbers::error(int line, std::string found, std::string expected) {
    if (digit_commas_) expected += " (a comma separates numbers here: write decimals with a point)";
    if (errors_.size() < most_errors)
        errors_.push_back({{file_, line}, std::move(found), std::move(expected), {}});
}

int Lm63Numbers::line() const { return next_ < words_.size() ? words_[next_].line : last_line_; }

bool Lm63Numbers::enough(std::size_t count, const std::string& what) {
    if (left() >= count) return true;
    error(last_line_, fmt::format("the file ends after {} of {} numbers", left(), count), what);
    return false;
}

double Lm63Numbers::number(const char* what) {
    if (next_ >= words_.size()) {
        error(last_line_, "the end of the file", what);
        return 0;
    }
    const Word word = words_[next_++];
    const std::optional<double> value = finite_number(word.text);
    if (!value) error(word.line, fmt::format("`{}`", shown(word.text)), fmt::format("a number: {}", what));
    return value.value_or(0);
}

int Lm63Numbers::whole(const char* what, int low, int high) {
    const int at = line();
    const std::size_t before = errors_.size();
    const double value = number(what);
    if (errors_.size() > before) return low;
    if (value >= low && value <= high && std::abs(value - std::round(value)) < 1e-6)
        return static_cast<int>(std::lround(value));
    error(at, fmt::format("{} {}", what, value), fmt::format("a whole number from {} to {}", low, high));
    return low;
}

std::vector<double> Lm63Numbers::list(std::size_t count, const char* what) {
    std::vector<double> values;
    values.reserve(count);
    for (std::size_t i = 0; i < count; ++i)
        values.push_back(number(what));
    return values;
}

std::vector<double> Lm63Numbers::ascending(std::size_t count, const char* what) {
    std::vector<double> values;
    values.reserve(count);
    for (std::size_t i = 0; i < count; ++i) {
        const int at = line();
        values.push_back(number(what));
        if (i > 0 && !failed() && values[i] <= values[i - 1])
            error(at, fmt::format("{} {} after {}", what, values[i], values[i - 1]),
                  "each angle greater than the one before");
    }
    return values;
}

std::optional<Word> Lm63Numbers::rest() const {
    if (next_ >= words_.size()) return {};
    return words_[next_];
}

} // namespace rillwatt
