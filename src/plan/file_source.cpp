#include "rillwatt/plan/file_source.hpp"

namespace rillwatt {

FileText FilesInMemory::read(const std::string& name) {
    const auto file = files_.find(name);
    if (file == files_.end()) return {std::nullopt, "No such file or directory"};
    return {file->second, {}};
}

} // namespace rillwatt
