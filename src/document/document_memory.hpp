#pragma once

#include "rillwatt/document/document.hpp"

#include <cstring>
#include <memory_resource>
#include <span>
#include <type_traits>

namespace rillwatt {

/// Where the texts, lists and tables of one document lie: taken piece by piece, given back all at once.
class DocumentMemory {
  public:
    /// A copy of the text, with a zero byte after its end.
    std::string_view keep(std::string_view text) {
        auto* const kept = static_cast<char*>(memory_.allocate(text.size() + 1, 1));
        kept[text.copy(kept, text.size())] = '\0';
        return {kept, text.size()};
    }

    template<class T>
    Slice<T> keep(std::span<const T> items) {
        static_assert(std::is_trivially_copyable_v<T> && std::is_trivially_destructible_v<T>);
        if (items.empty()) return {};
        void* const kept = memory_.allocate(items.size_bytes(), alignof(T));
        return {static_cast<const T*>(std::memcpy(kept, items.data(), items.size_bytes())), items.size()};
    }

  private:
    std::pmr::monotonic_buffer_resource memory_{1u << 14};
};

} // namespace rillwatt
