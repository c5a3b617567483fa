#pragma once

#include <set>
#include <string>
#include <utility>
#include <vector>

namespace rillwatt {

/// Waits for changes of a set of files, or for the user to leave.
///
/// It watches every entry on the way to a file: the folders one in the other, the symbolic links, the file
/// itself. So an editor that saves by renaming a new file over the old one is noticed as well as one that
/// writes in place, and a link or a folder put in the place of another as well. A burst of changes counts as
/// one: it waits until nothing has happened for a moment. While an object lives, Ctrl-C (SIGINT) and SIGTERM
/// end the wait instead of the program.
class FileWatch {
  public:
    FileWatch();
    FileWatch(const FileWatch&) = delete;
    FileWatch& operator=(const FileWatch&) = delete;
    ~FileWatch();

    /// The files to watch from now on, by the ways that lead to them at this moment: to be called again after
    /// each change. Returns why one cannot be watched now, empty when all can; the others are watched all the
    /// same, and so is the way to it as far as it goes.
    std::string watch(const std::vector<std::string>& files);

    enum class Event { changed, leave };

    /// Blocks until one of the files changed or the user wants to leave.
    Event wait();

  private:
    /// A name in a folder, the folder by inotify's number.
    using Entry = std::pair<int, std::string>;

    std::string watch_way(const std::string& file, std::set<Entry>& entries) const;
    bool read_changes();

    int inotify_ = -1;
    int signals_ = -1;
    std::set<Entry> entries_;
};

} // namespace rillwatt
