#pragma once

#include "rillwatt/plan/file_source.hpp"

namespace rillwatt {

/// Files as they lie on the disk.
class DiskFiles : public FileSource {
  public:
    FileText read(const std::string& name) override;
};

} // namespace rillwatt
