#include "process_timing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace {

double milliseconds(const timeval& time) {
    return 1e3 * static_cast<double>(time.tv_sec) + 1e-3 * static_cast<double>(time.tv_usec);
}

/// An empty file, open for writing.
int emptied(const std::string& path) {
    const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
    if (file >= 0) return file;
    fmt::print("{} cannot be written\n", path);
    std::exit(1);
}

/// Starts a program by itself: a fork would bill it for this one's memory too.
pid_t started(const std::vector<std::string>& command, int output) {
    std::vector<char*> arguments;
    for (const std::string& word : command)
        arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    posix_spawn_file_actions_t files;
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_adddup2(&files, output, STDOUT_FILENO);
    posix_spawn_file_actions_addopen(&files, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    pid_t child = -1;
    const int fault = posix_spawnp(&child, arguments[0], &files, nullptr, arguments.data(), environ);
    posix_spawn_file_actions_destroy(&files);
    if (fault == 0) return child;
    fmt::print("{} cannot be started\n", command.front());
    std::exit(1);
}

} // namespace

ProcessTiming time_process(const std::vector<std::string>& command, const std::string& output) {
    const int file = emptied(output); // what it held before is not the program's to throw away
    const auto start = std::chrono::steady_clock::now();
    const pid_t child = started(command, file);
    int status = 0;
    rusage usage{};
    wait4(child, &status, 0, &usage);
    const std::chrono::duration<double, std::milli> taken = std::chrono::steady_clock::now() - start;
    close(file);
    ProcessTiming timing;
    timing.wall_milliseconds = taken.count();
    timing.processor_milliseconds = milliseconds(usage.ru_utime) + milliseconds(usage.ru_stime);
    timing.megabytes = static_cast<double>(usage.ru_maxrss) / 1024;
    timing.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    if (timing.status < 0 || timing.status > 1) {
        fmt::print("{} ended with status {}\n", command.front(), timing.status);
        std::exit(1);
    }
    return timing;
}

ProcessTiming best_of(const std::vector<ProcessTiming>& runs) {
    ProcessTiming best = runs.at(0);
    for (const ProcessTiming& run : runs) {
        best.wall_milliseconds = std::min(best.wall_milliseconds, run.wall_milliseconds);
        best.processor_milliseconds = std::min(best.processor_milliseconds, run.processor_milliseconds);
        best.megabytes = std::min(best.megabytes, run.megabytes);
    }
    return best;
}
