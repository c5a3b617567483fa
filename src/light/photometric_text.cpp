#include "photometric_text.hpp"

#include <charconv>
#include <cmath>

namespace rillwatt {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr std::string_view blanks = " \t\v\f";
constexpr std::string_view separators = " \t\v\f,";

} // namespace

std::vector<std::string_view> text_lines(std::string_view text) {
    if (text.substr(0, byte_order_mark.size()) == byte_order_mark) text.remove_prefix(byte_order_mark.size());
    text = text.substr(0, text.find('\x1A'));
    std::vector<std::string_view> lines;
    while (!text.empty()) {
        const std::size_t end = text.find_first_of("\r\n");
        lines.push_back(text.substr(0, end));
        if (end == std::string_view::npos) break;
        text.remove_prefix(text.substr(end, 2) == "\r\n" ? end + 2 : end + 1);
    }
    return lines;
}

std::string_view trimmed(std::string_view text) {
    const std::size_t begin = text.find_first_not_of(blanks);
    if (begin == std::string_view::npos) return {};
    return text.substr(begin, text.find_last_not_of(blanks) - begin + 1);
}

std::string capitals(std::string_view text) {
    std::string result(text);
    for (char& c : result)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return result;
}

std::optional<double> finite_number(std::string_view text) {
    if (text.size() > 1 && text.front() == '+' && text[1] != '-') text.remove_prefix(1);
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return {};
    return value;
}

std::vector<Word> words_from(const std::vector<std::string_view>& lines, std::size_t first) {
    std::vector<Word> words;
    for (std::size_t i = first; i < lines.size(); ++i) {
        std::string_view rest = lines[i];
        while (true) {
            const std::size_t begin = rest.find_first_not_of(separators);
            if (begin == std::string_view::npos) break;
            rest.remove_prefix(begin);
            const std::string_view word = rest.substr(0, rest.find_first_of(separators));
            words.push_back({word, static_cast<int>(i) + 1});
            rest.remove_prefix(word.size());
        }
    }
    return words;
}

std::string shown(std::string_view text) {
    constexpr std::size_t longest = 40;
    std::string result(text.substr(0, longest));
    for (char& c : result)
        if (c < ' ' || c > '~') c = '?';
    return text.size() > longest ? result + "..." : result;
}

} // namespace rillwatt
