#include "document_limits.hpp"

#include <fmt/format.h>

#include "toml_lexer.hpp"
#include <algorithm>
#include <array>

namespace rillwatt {
namespace {

/// TOML keys and numbers are ASCII; and the library may stumble over such a letter rather than report it.
constexpr const char* stray_words = "not TOML: a letter that is not ASCII outside of quotes";

constexpr std::array<bool, 256> watched_bytes = [] {
    std::array<bool, 256> watched{};
    for (std::size_t c = 0x80; c < 256; ++c)
        watched[c] = true;
    for (const char c : std::string_view("\"'#.,=[]{}\n"))
        watched[static_cast<unsigned char>(c)] = true;
    return watched;
}();

bool is_watched(char c) { return watched_bytes[static_cast<unsigned char>(c)]; }

struct Exceeded {
    std::size_t at;
    std::string found;
    std::string expected;
};

/// One pass over the text that looks only at punctuation outside strings and comments.
class LimitScan {
  public:
    LimitScan(std::string_view text, const DocumentLimits& limits) : text_(text), limits_(limits) {}

    std::optional<Exceeded> run() {
        std::size_t at = 0;
        if (text_.starts_with("\xEF\xBB\xBF")) at = 3;
        for (; at < text_.size(); ++at) {
            const char c = text_[at];
            if (!is_watched(c)) continue;
            if (c == '"' || c == '\'') {
                at = toml_lexer::after_string(text_, at) - 1;
                continue;
            }
            if (c == '#') {
                at = toml_lexer::after_comment(text_, at) - 1;
                continue;
            }
            if (static_cast<unsigned char>(c) >= 0x80)
                return Exceeded{at, stray_words, "straight quotes, \" or ', round a text"};
            count(c);
            if (std::optional<Exceeded> exceeded = judge(at)) return exceeded;
        }
        return std::nullopt;
    }

  private:
    void count(char c) {
        if (c == '.') {
            ++dots_;
            return;
        }
        dots_ = 0;
        if (c == ',' || c == '=' || c == '[' || c == '{') ++values_;
        if (c == '[' || c == '{') ++depth_;
        if ((c == ']' || c == '}') && depth_ > 0) --depth_;
    }

    std::optional<Exceeded> judge(std::size_t at) const {
        if (dots_ >= limits_.dotted_keys)
            return Exceeded{at, "a dotted key of too many parts",
                            fmt::format("at most {}", limits_.dotted_keys)};
        if (depth_ > limits_.nesting)
            return Exceeded{at, "lists and tables nested too deeply",
                            fmt::format("at most {}", limits_.nesting)};
        if (values_ > limits_.values)
            return Exceeded{at, "more values than any site has", fmt::format("at most {}", limits_.values)};
        return std::nullopt;
    }

    std::string_view text_;
    const DocumentLimits& limits_;
    std::size_t dots_ = 0;
    std::size_t depth_ = 0;
    std::size_t values_ = 0;
};

} // namespace

std::optional<InputError> exceeded_limit(std::string_view text, const FileName& file,
                                         const DocumentLimits& limits) {
    if (text.size() > limits.bytes)
        return InputError{{file, 1},
                          fmt::format("a file of {} bytes", text.size()),
                          fmt::format("at most {} bytes", limits.bytes),
                          {}};
    const std::optional<Exceeded> exceeded = LimitScan(text, limits).run();
    if (!exceeded) return std::nullopt;
    const std::string_view before = text.substr(0, exceeded->at);
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    std::vector<InputError> errors{{{file, static_cast<int>(line)}, exceeded->found, exceeded->expected, {}}};
    add_source_lines(errors, file, text);
    return errors.front();
}

} // namespace rillwatt
