#pragma once

#include <string>
#include <vector>

namespace rillwatt {

/// Waits for changes of a set of files, or for the user to leave.
///
/// It watches the folders the files lie in, so that an editor that saves by renaming a new file over the old
/// one is noticed as well as one that writes in place. A burst of changes counts as one: it waits until
/// nothing has happened for a moment. While an object lives, Ctrl-C (SIGINT) and SIGTERM end the wait instead
/// of the program.
class FileWatch {
  public:
    FileWatch();
    FileWatch(const FileWatch&) = delete;
    FileWatch& operator=(const FileWatch&) = delete;
    ~FileWatch();

    /// The files to watch from now on. Returns what went wrong, empty when nothing did.
    std::string watch(const std::vector<std::string>& files);

    enum class Event { changed, leave };

    /// Blocks until one of the files changed or the user wants to leave.
    Event wait();

  private:
    bool read_changes();

    int inotify_ = -1;
    int signals_ = -1;
    std::vector<int> folders_;       ///< inotify's numbers of the watched folders
    std::vector<std::string> names_; ///< file names that matter in them
};

} // namespace rillwatt
