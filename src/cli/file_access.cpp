#include "rillwatt/cli/file_access.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace rillwatt {

namespace {

std::string reason() { return std::strerror(errno); }

/// Closes a file descriptor when it goes out of scope.
class Descriptor {
  public:
    explicit Descriptor(int number) : number_(number) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (number_ >= 0) close(number_);
    }

    int number() const { return number_; }
    bool open() const { return number_ >= 0; }

  private:
    int number_;
};

/// Removes the temporary file unless it was put in place.
class Leftover {
  public:
    explicit Leftover(std::string path) : path_(std::move(path)) {}
    Leftover(const Leftover&) = delete;
    Leftover& operator=(const Leftover&) = delete;
    ~Leftover() {
        if (!path_.empty()) unlink(path_.c_str());
    }

    void keep() { path_.clear(); }

  private:
    std::string path_;
};

/// Where writing to `path` ends up: the file a symbolic link leads to, even one that does not exist yet.
std::string link_target(const std::string& path) {
    std::filesystem::path target = path;
    std::error_code fault;
    for (int hops = 0; hops < 40 && std::filesystem::is_symlink(target, fault); ++hops) {
        const std::filesystem::path next = std::filesystem::read_symlink(target, fault);
        target = next.is_absolute() ? next : target.parent_path() / next;
    }
    return target.string();
}

std::string folder_of(const std::string& path) {
    const std::string folder = std::filesystem::path(path).parent_path().string();
    return folder.empty() ? "." : folder;
}

std::string write_all(int file, const std::string& text) {
    std::size_t done = 0;
    while (done < text.size()) {
        const ssize_t wrote = write(file, text.data() + done, text.size() - done);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote <= 0) return reason();
        done += static_cast<std::size_t>(wrote);
    }
    return fsync(file) == 0 ? std::string() : reason();
}

mode_t mode_for(const std::string& target) {
    struct stat old {};
    if (stat(target.c_str(), &old) == 0) return old.st_mode & 07777;
    const mode_t mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

/// Makes a rename or link lasting: the folder's own entry reaches the disk.
void sync_folder(const std::string& folder) {
    const Descriptor entry(open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (entry.open()) fsync(entry.number());
}

std::string put_in_place(const std::string& target, const std::string& text, bool replace) {
    struct stat old {};
    if (stat(target.c_str(), &old) == 0) {
        if (!replace) return "the file exists already";
        if (!S_ISREG(old.st_mode)) return "is no regular file";
    }
    const std::string folder = folder_of(target);
    std::string temporary = folder + "/.rillwatt-XXXXXX";
    const Descriptor file(mkostemp(temporary.data(), O_CLOEXEC));
    if (!file.open()) return reason();
    Leftover leftover(temporary);
    if (fchmod(file.number(), mode_for(target)) != 0) return reason();
    if (std::string problem = write_all(file.number(), text); !problem.empty()) return problem;
    if (!replace) {
        if (link(temporary.c_str(), target.c_str()) != 0)
            return errno == EEXIST ? "the file exists already" : reason();
        sync_folder(folder);
        return {};
    }
    if (rename(temporary.c_str(), target.c_str()) != 0) return reason();
    leftover.keep();
    sync_folder(folder);
    return {};
}

} // namespace

FileText read_file(const std::string& path) {
    const Descriptor file(open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!file.open()) return {std::nullopt, reason()};
    struct stat facts {};
    if (fstat(file.number(), &facts) != 0) return {std::nullopt, reason()};
    if (S_ISDIR(facts.st_mode)) return {std::nullopt, "it is a folder"};
    // The size is a hint: a pipe has none, and a file may grow while it is read.
    std::string text(std::min(static_cast<std::size_t>(facts.st_size) + 1, largest_input_file + 1), '\0');
    for (std::size_t filled = 0;;) {
        if (filled == text.size()) text.resize(std::max<std::size_t>(2 * filled, 65536));
        const ssize_t got = read(file.number(), text.data() + filled, text.size() - filled);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return {std::nullopt, reason()};
        filled += static_cast<std::size_t>(got);
        if (filled > largest_input_file) return {std::nullopt, "it is larger than 64 MiB"};
        if (got > 0) continue;
        text.resize(filled);
        return {std::move(text), {}};
    }
}

std::string write_file(const std::string& path, const std::string& text) {
    return put_in_place(link_target(path), text, true);
}

std::string write_new_file(const std::string& path, const std::string& text) {
    return put_in_place(path, text, false);
}

} // namespace rillwatt
