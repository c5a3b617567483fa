// A catalog file: either a catalog or errors, never both, never neither.

#include "rillwatt/catalog/read_catalog.hpp"

#include <cstdint>
#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    auto read = rillwatt::read_catalog(text, "catalog.toml", {});
    if (read.value.has_value() == !read.errors.empty()) std::abort();
    if (read.value) static_cast<void>(rillwatt::check_catalog(*read.value));
    return 0;
}
