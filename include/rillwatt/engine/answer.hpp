#pragma once

#include "rillwatt/engine/arguments.hpp"
#include "rillwatt/engine/exit_status.hpp"
#include "rillwatt/pages/report_files.hpp"
#include "rillwatt/plan/file_source.hpp"
#include "rillwatt/plan/site_update.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What one command is asked.
struct Request {
    std::string command; ///< "check"
    Arguments arguments; ///< as the command line has them; "SITE" names the site file among the files
    bool colour = false; ///< text may be set in a terminal's colours
    std::function<double()> seconds; ///< a clock for `--time`, from any moment on; empty: it is not kept
};

/// The site file with what a command proposes put into it.
struct SiteEdit {
    std::string as_read; ///< the file that it was worked out from
    std::string text;    ///< the file with it; all that is not concerned stands there byte for byte as before
    SiteUpdate update;   ///< what is new in it
    std::string changes; ///< the same in words, to say once it is written: "3 values written"
};

/// What one command answers.
struct Answer {
    ExitStatus status = ExitStatus::ok;
    std::string out;                ///< the result: text, JSON or a drawing
    std::string err;                ///< remarks, or what is wrong with the input
    std::optional<SiteEdit> edit;   ///< of commands that propose something for the site file
    std::vector<ReportFile> report; ///< of `report`, in the order they are to be written
};

/// Answers a command that computes: check, size, place, light, headroom, circuits, explain, plan, report,
/// catalog. The one way in: the same request over the same files has the same answer whoever asks, and
/// nothing but `files` and the clock is looked at. Wrong input ends in ExitStatus::wrong_input with the words
/// in `err`, and in `out` as JSON where `--format` asks for that. Empty when there is no such command.
std::optional<Answer> answer(const Request& request, FileSource& files);

/// The commands that `answer` knows.
std::vector<std::string_view> answered_commands();

} // namespace rillwatt
