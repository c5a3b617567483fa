#include "rillwatt/cli/file_watch.hpp"

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdint>
#include <cstring>
#include <deque>
#include <filesystem>
#include <poll.h>
#include <sys/inotify.h>
#include <sys/signalfd.h>
#include <unistd.h>

namespace rillwatt {

namespace {

/// Editors write, rename and touch in bursts; this long without a change, in milliseconds, and the burst is
/// over.
constexpr int quiet_time = 120;

constexpr std::uint32_t watched_events =
    IN_CLOSE_WRITE | IN_CREATE | IN_MOVED_TO | IN_MOVED_FROM | IN_DELETE | IN_ONLYDIR;

constexpr int most_links = 40; // on the way to one file, as Linux has it

/// The names of a path in front of those that are left.
void put_first(std::deque<std::filesystem::path>& rest, const std::filesystem::path& path) {
    rest.insert(rest.begin(), path.begin(), path.end());
}

sigset_t leaving_signals() {
    sigset_t set;
    sigemptyset(&set);
    sigaddset(&set, SIGINT);
    sigaddset(&set, SIGTERM);
    return set;
}

} // namespace

FileWatch::FileWatch() {
    const sigset_t set = leaving_signals();
    sigprocmask(SIG_BLOCK, &set, nullptr);
    signals_ = signalfd(-1, &set, SFD_CLOEXEC | SFD_NONBLOCK);
    inotify_ = inotify_init1(IN_CLOEXEC | IN_NONBLOCK);
}

FileWatch::~FileWatch() {
    if (inotify_ >= 0) close(inotify_);
    if (signals_ >= 0) close(signals_);
    const sigset_t set = leaving_signals();
    sigprocmask(SIG_UNBLOCK, &set, nullptr);
}

/// Follows the way to a file as the system does, and watches each entry before it is looked at: what is put
/// in its place after that is told of.
std::string FileWatch::watch_way(const std::string& file, std::set<Entry>& entries) const {
    std::error_code fault;
    std::filesystem::path folder("/");
    std::deque<std::filesystem::path> rest;
    put_first(rest, std::filesystem::absolute(file, fault));
    std::string problem;
    for (int links = 0; !rest.empty();) {
        const std::filesystem::path name = rest.front();
        rest.pop_front();
        if (name.empty() || name == "." || name == "/") continue;
        if (name == "..") {
            folder = folder.parent_path();
            continue;
        }
        const int number = inotify_add_watch(inotify_, folder.c_str(), watched_events);
        problem =
            number < 0 ? std::strerror(errno) : ""; // of the last folder: those above may be closed to us
        if (number >= 0) entries.emplace(number, name.string());
        const std::filesystem::path next = folder / name;
        if (!std::filesystem::is_symlink(next, fault)) {
            folder = next;
            continue;
        }
        if (++links > most_links) return "too many symbolic links";
        const std::filesystem::path target = std::filesystem::read_symlink(next, fault);
        if (target.is_absolute()) folder = "/";
        put_first(rest, target);
    }
    return problem;
}

std::string FileWatch::watch(const std::vector<std::string>& files) {
    if (inotify_ < 0 || signals_ < 0) return "this system lends no way to watch files";
    std::set<Entry> entries;
    std::string problem;
    for (const std::string& file : files) {
        const std::string here = watch_way(file, entries);
        if (problem.empty()) problem = here;
    }
    std::set<int> folders;
    for (const auto& [folder, name] : entries)
        folders.insert(folder);
    for (const auto& [folder, name] : entries_)
        if (folders.insert(folder).second) inotify_rm_watch(inotify_, folder);
    entries_ = std::move(entries);
    return problem;
}

bool FileWatch::read_changes() {
    bool ours = false;
    alignas(inotify_event) std::array<char, 16384> buffer{};
    for (;;) {
        const ssize_t got = read(inotify_, buffer.data(), buffer.size());
        if (got <= 0) return ours;
        for (ssize_t at = 0; at < got;) {
            inotify_event event{};
            std::memcpy(&event, buffer.data() + at, sizeof event);
            const char* name = buffer.data() + at + sizeof event;
            if ((event.mask & IN_Q_OVERFLOW) != 0) ours = true; // nobody knows what was lost
            if (event.len > 0 && entries_.contains({event.wd, name})) ours = true;
            at += static_cast<ssize_t>(sizeof event + event.len);
        }
    }
}

FileWatch::Event FileWatch::wait() {
    bool pending = false;
    for (;;) {
        std::array<pollfd, 2> ready{pollfd{inotify_, POLLIN, 0}, pollfd{signals_, POLLIN, 0}};
        const int count = poll(ready.data(), ready.size(), pending ? quiet_time : -1);
        if (count < 0 && errno != EINTR) return Event::leave;
        if (count == 0 && pending) return Event::changed;
        if ((ready[1].revents & POLLIN) != 0) {
            signalfd_siginfo taken{}; // taken in, so that it does not end the program when the watch is over
            while (read(signals_, &taken, sizeof taken) > 0) {
            }
            return Event::leave;
        }
        if ((ready[0].revents & POLLIN) != 0 && read_changes()) pending = true;
    }
}

} // namespace rillwatt
