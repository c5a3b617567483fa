#include "rillwatt/cli/process_memory.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <vector>

#ifdef __GLIBC__
#include <malloc.h>
#include <sys/mman.h>
#include <unistd.h>
#endif

namespace rillwatt {

#ifdef __GLIBC__

namespace {

constexpr std::size_t mebibyte = 1 << 20;
constexpr std::size_t heap_step = 64 * mebibyte; // of addresses; memory is taken page by page as it is used
constexpr std::uintptr_t large_page = 2 * mebibyte;
constexpr std::size_t worth_a_large_page = 32 << 10; // bytes of input
constexpr std::size_t bytes_for_each = 30;           // of memory, for each byte of input, or some more
constexpr std::size_t most_ahead = 1024 * mebibyte;
constexpr std::size_t less_than_mapped = 8 * mebibyte; // is taken from the heap

std::uintptr_t address_of(void* memory) { return reinterpret_cast<std::uintptr_t>(memory); }

constexpr std::size_t probe_bytes = mebibyte / 8; // more than any gap there can be yet

/// Where what is asked for next will lie. Touches nothing but there and a few bytes behind `probe_bytes`.
std::uintptr_t next_address() {
    void* const probe = std::malloc(probe_bytes);
    const std::uintptr_t address = address_of(probe);
    std::free(probe);
    return address;
}

/// Lets the heap's end be so far ahead that all that the input takes lies before it.
void reach_ahead(std::size_t bytes) {
    if (bytes <= heap_step) return;
    mallopt(M_TOP_PAD, static_cast<int>(bytes));
    mallopt(M_TRIM_THRESHOLD, static_cast<int>(2 * bytes));
    void* const end = sbrk(0);
    std::vector<void*> taken;
    while (sbrk(0) == end && taken.size() * less_than_mapped <= 2 * heap_step)
        taken.push_back(std::malloc(less_than_mapped));
    for (void* const memory : taken)
        std::free(memory);
}

} // namespace

void prepare_memory() {
    mallopt(M_MMAP_THRESHOLD, static_cast<int>(16 * mebibyte));
    mallopt(M_TRIM_THRESHOLD, static_cast<int>(4 * heap_step));
    mallopt(M_TOP_PAD, static_cast<int>(heap_step));
}

void prepare_memory_for(std::size_t input_bytes) {
    static const void* skipped = nullptr; // what lies before the first large page, never used
    if (input_bytes < worth_a_large_page || skipped != nullptr) return;
    reach_ahead(std::min(bytes_for_each * input_bytes, most_ahead));
    const std::uintptr_t from = next_address();
    const std::uintptr_t begin = (from + probe_bytes + large_page) / large_page * large_page;
    const std::uintptr_t end = address_of(sbrk(0));
    if (begin >= end) return;
    madvise(reinterpret_cast<void*>(begin), end - begin, MADV_HUGEPAGE); // before anything of it is touched
    skipped = std::malloc(begin - from);
}

#else

void prepare_memory() {}

void prepare_memory_for(std::size_t) {}

#endif

} // namespace rillwatt
