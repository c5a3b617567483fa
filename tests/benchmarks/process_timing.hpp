#pragma once

#include <string>
#include <vector>

/// What one run of a program cost.
struct ProcessTiming {
    double wall_milliseconds = 0;
    double processor_milliseconds = 0; ///< user and system
    double megabytes = 0;              ///< most memory resident
    int status = 0;                    ///< exit status
};

/// Runs a program (looked up on the path) with its output to a file and its remarks thrown away. Ends this
/// program when it cannot be started or faults.
ProcessTiming time_process(const std::vector<std::string>& command, const std::string& output);

/// The least of each figure: what the program costs when nothing else gets in its way.
ProcessTiming best_of(const std::vector<ProcessTiming>& runs);
