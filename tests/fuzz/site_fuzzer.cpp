// A site file: either a site or errors; and a site that can be read can be measured, solved and checked.

#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/check/assessment.hpp"
#include "rillwatt/site/read_site.hpp"

#include <cstdint>
#include <cstdlib>
#include <memory>
#include <string_view>

namespace {

/// Larger sites are slow under the sanitizers, not different.
constexpr std::size_t most_parts = 60;

std::shared_ptr<const rillwatt::Catalog> stock() {
    auto built_in = rillwatt::read_built_in_catalog();
    rillwatt::check_catalog(*built_in.value);
    return std::make_shared<const rillwatt::Catalog>(std::move(*built_in.value));
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const auto catalog = stock();
    auto read = rillwatt::read_site(std::string_view(reinterpret_cast<const char*>(data), size), "site.toml");
    if (read.value.has_value() == !read.errors.empty()) std::abort();
    if (!read.value || read.value->fixtures.size() + read.value->areas.size() > most_parts) return 0;
    if (!rillwatt::check_against_catalog(*read.value, *catalog).empty()) return 0;
    const auto assessed =
        rillwatt::assess(std::make_shared<const rillwatt::Site>(std::move(*read.value)), catalog);
    if (assessed.value.has_value() == !assessed.errors.empty()) std::abort();
    return 0;
}
