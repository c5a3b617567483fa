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
    const std::size_t size = text.size();
    const auto plain_from = [&](std::size_t at) {
        std::uint64_t bytes = 0;
        std::memcpy(&bytes, text.data() + at, sizeof bytes);
        return all_plain(bytes);
    };
    if (size >= 8) {
        for (std::size_t at = 0; at + 8 < size; at += 8)
            if (!plain_from(at)) return false;
        return plain_from(size - 8);
    }
    if (size >= 4) { // its first and last four, which may overlap
        std::uint32_t halves[2];
        std::memcpy(&halves[0], text.data(), sizeof halves[0]);
        std::memcpy(&halves[1], text.data() + size - sizeof halves[1], sizeof halves[1]);
        return all_plain(halves[0] | std::uint64_t{halves[1]} << 32);
    }
    if (size == 0) return true;
    constexpr std::uint64_t blanks = 0x2020202020000000;
    const auto byte = [&](std::size_t at) { return std::uint64_t{static_cast<unsigned char>(text[at])}; };
    return all_plain(byte(0) | byte(size / 2) << 8 | byte(size - 1) << 16 | blanks);
}

} // namespace rillwatt
