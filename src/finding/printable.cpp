#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/quantity/plain_ascii.hpp"

#include <fmt/format.h>

namespace rillwatt {
namespace {

struct CodePoint {
    char32_t value = 0;
    std::size_t bytes = 0; ///< 0: no valid UTF-8 here
};

/// Decodes one character as RFC 3629 has it: no overlong forms, no surrogates, nothing above U+10FFFF.
CodePoint decode(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80) return {lead, 1};
    const std::size_t bytes = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || text.size() < bytes) return {};
    char32_t value = lead & (0xFFu >> (bytes + 1));
    for (std::size_t i = 1; i < bytes; ++i) {
        if ((byte(i) & 0xC0u) != 0x80u) return {};
        value = (value << 6) | (byte(i) & 0x3Fu);
    }
    const char32_t least = bytes == 4 ? 0x10000 : bytes == 3 ? 0x800 : 0x80;
    if (value < least || value > 0x10FFFF || (value >= 0xD800 && value <= 0xDFFF)) return {};
    return {value, bytes};
}

/// Control characters, and the invisible ones that turn the direction of writing or hide.
bool is_invisible(char32_t c) {
    return c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0xAD || c == 0x61C || (c >= 0x200B && c <= 0x200F) ||
           (c >= 0x2028 && c <= 0x202E) || (c >= 0x2060 && c <= 0x206F) || c == 0xFEFF ||
           (c >= 0xFFF9 && c <= 0xFFFB) || (c >= 0xE0000 && c <= 0xE0FFF);
}

std::string escaped(char32_t c) {
    switch (c) {
    case '\n':
        return "\\n";
    case '\r':
        return "\\r";
    case '\t':
        return "\\t";
    default:
        return c < 0x80 ? fmt::format("\\x{:02x}", static_cast<unsigned>(c))
                        : fmt::format("\\u{{{:04x}}}", static_cast<unsigned>(c));
    }
}

} // namespace

std::string printable(std::string_view text) {
    if (is_plain_ascii(text)) return std::string(text);
    std::string result;
    result.reserve(text.size());
    while (!text.empty()) {
        const CodePoint next = decode(text);
        const std::size_t bytes = next.bytes == 0 ? 1 : next.bytes;
        if (next.bytes == 0)
            result += fmt::format("\\x{:02x}", static_cast<unsigned>(static_cast<unsigned char>(text[0])));
        else if (is_invisible(next.value))
            result += escaped(next.value);
        else
            result += text.substr(0, bytes);
        text.remove_prefix(bytes);
    }
    return result;
}

bool is_printable(std::string_view text) {
    if (is_plain_ascii(text)) return true;
    while (!text.empty()) {
        const CodePoint next = decode(text);
        if (next.bytes == 0 || is_invisible(next.value)) return false;
        text.remove_prefix(next.bytes);
    }
    return true;
}

} // namespace rillwatt
