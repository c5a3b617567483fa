// Text of a quantity: whatever is read must be finite and print back as text.

#include "rillwatt/quantity/quantity_text.hpp"

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    if (const auto length = rillwatt::parse_length(text)) {
        if (!std::isfinite(length->value())) std::abort();
        if (rillwatt::length_text(*length, rillwatt::LengthUnit::feet).empty()) std::abort();
    }
    if (const auto temperature = rillwatt::parse_temperature(text))
        if (!std::isfinite(temperature->value())) std::abort();
    return 0;
}
