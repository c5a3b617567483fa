#include "rillwatt/cli/file_access.hpp"

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace rillwatt {

namespace {

constexpr const char* file_exists = "the file exists already";

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

/// Holds back signals that would end the program, for as long as it lives: a temporary file is put in place
/// or removed before one of them is obeyed. Faults of the program itself are not held back.
class Undisturbed {
  public:
    Undisturbed() {
        sigset_t held;
        sigfillset(&held);
        for (const int fault : {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGSYS, SIGTRAP})
            sigdelset(&held, fault);
        pthread_sigmask(SIG_BLOCK, &held, &before_);
    }
    Undisturbed(const Undisturbed&) = delete;
    Undisturbed& operator=(const Undisturbed&) = delete;
    ~Undisturbed() { pthread_sigmask(SIG_SETMASK, &before_, nullptr); }

  private:
    sigset_t before_{};
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

/// A text that lies beside the file it is meant for, under a name of its own, until it is put in its place.
class Beside {
  public:
    explicit Beside(std::string target) : target_(std::move(target)) {}

    /// What went wrong; empty when nothing did.
    std::string write(const std::string& text) {
        temporary_ = folder_of(target_) + "/.rillwatt-XXXXXX";
        const Descriptor file(mkostemp(temporary_.data(), O_CLOEXEC));
        if (!file.open()) return reason();
        leftover_.emplace(temporary_);
        if (fchmod(file.number(), mode_for(target_)) != 0) return reason();
        return write_all(file.number(), text);
    }

    std::string replace() {
        if (rename(temporary_.c_str(), target_.c_str()) != 0) return reason();
        leftover_->keep();
        sync_folder(folder_of(target_));
        return {};
    }

    std::string add() {
        if (link(temporary_.c_str(), target_.c_str()) != 0) return errno == EEXIST ? file_exists : reason();
        sync_folder(folder_of(target_));
        return {};
    }

  private:
    Undisturbed until_it_is_gone_;
    std::string target_;
    std::string temporary_;
    std::optional<Leftover> leftover_;
};

/// Why a file cannot be replaced: something else has its name. Empty when it can.
std::string something_else_there(const std::string& target) {
    struct stat old {};
    return stat(target.c_str(), &old) == 0 && !S_ISREG(old.st_mode) ? "is no regular file" : "";
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
    const std::string target = link_target(path);
    std::string problem = something_else_there(target);
    Beside beside(target);
    if (problem.empty()) problem = beside.write(text);
    return problem.empty() ? beside.replace() : problem;
}

Replacing replace_file(const std::string& path, const std::string& as_read, const std::string& text,
                       std::string& problem) {
    const std::string target = link_target(path);
    problem = something_else_there(target);
    Beside beside(target);
    if (problem.empty()) problem = beside.write(text);
    if (!problem.empty()) return Replacing::failed;
    FileText now = read_file(target);
    problem = now.problem;
    if (now.text && *now.text != as_read) return Replacing::changed;
    if (now.text) problem = beside.replace();
    return problem.empty() ? Replacing::done : Replacing::failed;
}

std::string write_new_file(const std::string& path, const std::string& text) {
    struct stat old {};
    if (stat(path.c_str(), &old) == 0) return file_exists;
    Beside beside(path);
    const std::string problem = beside.write(text);
    return problem.empty() ? beside.add() : problem;
}

} // namespace rillwatt
