#pragma once

#include <optional>
#include <string_view>

namespace rillwatt::scan {

/// Text read from left to right.
class TextScan {
  public:
    explicit TextScan(std::string_view text) : rest_(text) {}

    bool at_end() const { return rest_.empty(); }
    std::string_view rest() const { return rest_; }
    char next() const { return rest_.empty() ? '\0' : rest_.front(); }
    void skip(std::size_t bytes) { rest_.remove_prefix(bytes); }

    /// Steps over `word` when it comes next.
    bool take(std::string_view word) {
        if (!rest_.starts_with(word)) return false;
        rest_.remove_prefix(word.size());
        return true;
    }

    /// Steps over blanks, tabs and no-break spaces.
    void skip_spaces() {
        while (take(" ") || take("\t") || take("\u00a0") || take("\u202f")) {
        }
    }

  private:
    std::string_view rest_;
};

/// +1 or -1; "+", "-" and the typographic minus are signs.
double take_sign(TextScan& text);

/// A number without sign as people write measures: "12", "12.5", ".5", "1/2", "6 1/2", "6-1/2". Never a
/// locale's separators, an exponent, "inf" or "nan".
std::optional<double> take_number(TextScan& text);

} // namespace rillwatt::scan
