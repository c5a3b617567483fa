#include "rillwatt/cli/disk_files.hpp"

#include "rillwatt/cli/file_access.hpp"

namespace rillwatt {

FileText DiskFiles::read(const std::string& name) { return read_file(name); }

} // namespace rillwatt
