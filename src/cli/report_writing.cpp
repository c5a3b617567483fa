#include "rillwatt/cli/report_writing.hpp"

#include "rillwatt/cli/file_access.hpp"
#include "rillwatt/finding/input_error.hpp"

#include <fmt/format.h>

#include <filesystem>

namespace rillwatt {

namespace {

namespace files = std::filesystem;

/// Why the folder cannot take the report; empty when it is there or was made.
std::string make_folder(const files::path& folder) {
    std::error_code problem;
    if (files::is_directory(folder, problem)) return "";
    const std::string name = printable(folder.string());
    if (files::exists(folder, problem)) return fmt::format("`{}` is a file; --output names a folder", name);
    if (files::create_directory(folder, problem)) return "";
    return fmt::format("the folder `{}` cannot be made ({}); the folder it is to stand in must exist", name,
                       problem.message());
}

/// Why the files may not be written; empty when they may. Looked at for all of them before any is written.
std::string look_before_writing(const files::path& folder, const std::vector<ReportFile>& report,
                                bool force) {
    for (const ReportFile& file : report) {
        const files::path path = folder / file.name;
        std::error_code problem;
        const files::file_status status = files::symlink_status(path, problem);
        if (!files::exists(status)) continue;
        const std::string name = printable(path.string());
        if (files::is_symlink(status))
            return fmt::format("`{}` is a link to somewhere else; nothing outside the folder is written",
                               name);
        if (!files::is_regular_file(status)) return fmt::format("`{}` is no file", name);
        if (!force) return fmt::format("`{}` is there already; --force replaces the report", name);
    }
    return "";
}

} // namespace

std::string write_report(const std::vector<ReportFile>& report, const std::string& folder, bool force,
                         std::vector<std::string>& written) {
    std::string problem = look_before_writing(folder, report, force);
    if (problem.empty()) problem = make_folder(folder);
    if (!problem.empty()) return problem;
    for (const ReportFile& file : report) {
        const std::string path = (files::path(folder) / file.name).string();
        problem = write_file(path, file.text);
        if (!problem.empty()) return fmt::format("`{}` cannot be written ({})", printable(path), problem);
        written.push_back(path);
    }
    return {};
}

} // namespace rillwatt
