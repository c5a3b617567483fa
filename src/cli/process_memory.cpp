#include "rillwatt/cli/process_memory.hpp"

#include <cstdint>
#include <cstdlib>

#ifdef __GLIBC__
#include <malloc.h>
#include <sys/mman.h>
#include <unistd.h>
#endif

namespace rillwatt {

#ifdef __GLIBC__

namespace {

constexpr int mebibyte = 1 << 20;
constexpr int heap_step = 64 * mebibyte; // of addresses; memory is taken page by page as it is used
constexpr std::uintptr_t large_page = 2 * mebibyte;

/// Asks for large pages from where the heap may still be untouched up to its end.
void ask_for_large_pages(std::uintptr_t untouched) {
    const std::uintptr_t begin = (untouched + large_page - 1) / large_page * large_page;
    const auto end = reinterpret_cast<std::uintptr_t>(sbrk(0));
    if (begin < end) madvise(reinterpret_cast<void*>(begin), end - begin, MADV_HUGEPAGE);
}

} // namespace

void prepare_memory() {
    mallopt(M_MMAP_THRESHOLD, 16 * mebibyte);
    mallopt(M_TRIM_THRESHOLD, 4 * heap_step);
    mallopt(M_TOP_PAD, heap_step);
    void* const first =
        std::malloc(mebibyte / 4); // more than there is, so that the heap takes its first step
    if (malloc_usable_size(first) > 0)
        ask_for_large_pages(reinterpret_cast<std::uintptr_t>(first) + mebibyte / 2);
    std::free(first);
}

#else

void prepare_memory() {}

#endif

} // namespace rillwatt
