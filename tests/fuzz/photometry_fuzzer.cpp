// A photometric file: either its light or errors, never both, never neither; and light that was read is
// finite, not below zero in any direction, and its flux is that of finite light.

#include "rillwatt/light/photometric_file.hpp"

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace {

void check(const rillwatt::LoadResult<rillwatt::PhotometricFile>& read) {
    if (read.value.has_value() == !read.errors.empty()) std::abort();
    if (!read.value) return;
    const rillwatt::PhotometricWeb& web = read.value->web;
    if (!std::isfinite(web.flux())) std::abort();
    for (int i = 0; i < 64; ++i) {
        const double v = i * 0.05;
        const double h = i * 0.7;
        const double candela =
            web.towards({std::cos(v), std::sin(v) * std::cos(h), std::sin(v) * std::sin(h)});
        if (!(candela >= 0) || !(candela <= web.peak() * (1 + 1e-9))) std::abort();
    }
    if (!std::isfinite(read.value->tilt.factor(45))) std::abort();
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    check(rillwatt::read_lm63(text, "light.ies"));
    check(rillwatt::read_eulumdat(text, "light.ldt"));
    return 0;
}
