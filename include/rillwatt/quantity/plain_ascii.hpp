#pragma once

#include <cstdint>
#include <cstring>
#include <string_view>

namespace rillwatt {

/// Whether a text is printable ASCII and nothing else: from the space to the tilde. Most texts are, take one
/// column a byte and need no further thought.
inline bool is_plain_ascii(std::string_view text) {
    // Of eight bytes at once: the top bit of each is set by one above ASCII, by DEL plus one and by a control
    // character less the space. What a byte carries into its neighbour matters only where one of them is not
    // plain anyway.
    const auto all_plain = [](std::uint64_t bytes) {
        constexpr std::uint64_t each = 0x0101010101010101;
        return ((bytes | (bytes + each) | (bytes - 0x20 * each)) & (0x80 * each)) == 0;
    };
    const char* at = text.data();
    std::size_t left = text.size();
    std::uint64_t bytes = 0;
    for (; left >= sizeof bytes; left -= sizeof bytes, at += sizeof bytes) {
        std::memcpy(&bytes, at, sizeof bytes);
        if (!all_plain(bytes)) return false;
    }
    for (; left > 0; --left, ++at)
        if (const auto c = static_cast<unsigned char>(*at); c < 0x20 || c >= 0x7F) return false;
    return true;
}

} // namespace rillwatt
