#include "rillwatt/finding/file_name.hpp"

namespace rillwatt {

std::string beside(std::string_view file, const std::string& name) {
    const std::size_t slash = file.rfind('/');
    if (name.starts_with('/') || slash == std::string_view::npos) return name;
    return std::string(file.substr(0, slash + 1)) + name;
}

} // namespace rillwatt
