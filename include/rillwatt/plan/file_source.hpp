#pragma once

#include <map>
#include <optional>
#include <string>

namespace rillwatt {

/// A file's text, or why it could not be read.
struct FileText {
    std::optional<std::string> text;
    std::string problem; ///< "No such file or directory", "it is a folder", ...; empty when it was read
};

/// Where the files come from that a site, a catalog or a question names: the one way in which anything below
/// `cli` comes by a file.
class FileSource {
  public:
    virtual ~FileSource() = default;

    /// The file of that name: as it was given for the site, for others put beside the file that names them.
    virtual FileText read(const std::string& name) = 0;
};

/// Files that lie in memory, by name.
class FilesInMemory : public FileSource {
  public:
    FilesInMemory() = default;
    explicit FilesInMemory(std::map<std::string, std::string> files) : files_(std::move(files)) {}

    FileText read(const std::string& name) override;

  private:
    std::map<std::string, std::string> files_;
};

} // namespace rillwatt
