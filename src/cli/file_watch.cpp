#include "rillwatt/cli/file_watch.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <csignal>
#include <cstring>
#include <filesystem>
#include <poll.h>
#include <set>
#include <sys/inotify.h>
#include <sys/signalfd.h>
#include <unistd.h>

namespace rillwatt {

namespace {

/// Editors write, rename and touch in bursts; this long without a change, in milliseconds, and the burst is
/// over.
constexpr int quiet_time = 120;

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

std::string FileWatch::watch(const std::vector<std::string>& files) {
    if (inotify_ < 0 || signals_ < 0) return "this system lends no way to watch files";
    std::set<std::string> folders;
    names_.clear();
    for (const std::string& file : files) {
        std::error_code fault;
        const std::filesystem::path real = std::filesystem::weakly_canonical(file, fault);
        folders.insert(real.parent_path().string());
        names_.push_back(real.filename().string());
    }
    std::vector<int> numbers;
    for (const std::string& folder : folders) {
        const int number =
            inotify_add_watch(inotify_, folder.c_str(), IN_CLOSE_WRITE | IN_MOVED_TO | IN_CREATE);
        if (number < 0) return std::strerror(errno);
        numbers.push_back(number);
    }
    for (const int old : folders_)
        if (std::find(numbers.begin(), numbers.end(), old) == numbers.end()) inotify_rm_watch(inotify_, old);
    folders_ = numbers;
    return {};
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
            if (event.len > 0 && std::find(names_.begin(), names_.end(), name) != names_.end()) ours = true;
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
