#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/file_watch.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/cli/report_writing.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/text/check_text.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <ostream>

namespace rillwatt {

namespace {

void print_verdict(const Assessment& assessment, Console& console) {
    const std::vector<Finding>& findings = assessment.findings;
    console.out << fmt::format("{}: {}\n", printable(assessment.site->settings.name),
                               findings_count_text(findings));
    for (const Finding& finding : findings)
        if (finding.severity == Severity::error)
            console.out << fmt::format("  {} [{}]\n", printable(finding.message), finding.rule);
}

void rewrite_report(const Assessment& assessment, const std::string& folder, Console& console) {
    std::vector<std::string> written;
    const std::string problem = write_report(assessment, folder, true, written);
    if (!problem.empty()) console.err << "rillwatt watch: " << problem << '\n';
}

/// One pass: read, judge, rewrite the report. Errors are said and the last good report stays.
void look(const Arguments& arguments, Console& console, std::vector<std::string>& files) {
    const std::optional<LoadedSite> loaded = load_site(arguments, console);
    if (loaded) {
        for (const std::string& name : loaded->site->settings.catalogs)
            files.push_back((std::filesystem::path(loaded->path).parent_path() / name).string());
        const std::optional<Assessment> assessment = assess_with_light(*loaded, console);
        if (assessment) {
            print_verdict(*assessment, console);
            if (arguments.has("--output")) rewrite_report(*assessment, arguments.text("--output"), console);
        }
    }
    console.out << std::flush;
    console.err << std::flush;
}

ExitStatus run(const Arguments& arguments, Console& console) {
    FileWatch watch;
    std::vector<std::string> files = {arguments.text("SITE")};
    for (const std::string& catalog : arguments.all("--catalog"))
        files.push_back(catalog);
    const std::vector<std::string> always = files;
    for (;;) {
        // The watch is set before the files are read, so that no change in between is missed.
        if (const std::string problem = watch.watch(files); !problem.empty()) {
            console.err << fmt::format("rillwatt watch: {}\n", problem);
            return ExitStatus::wrong_input;
        }
        std::vector<std::string> named = always;
        look(arguments, console, named);
        if (named != files) {
            files = named;
            watch.watch(files);
        }
        if (watch.wait() == FileWatch::Event::leave) return ExitStatus::ok;
    }
}

} // namespace

Command watch_command() {
    return {.name = "watch",
            .summary = "Check again whenever the site file or a catalog changes",
            .description =
                "Prints the short verdict after every change and, with --output, rewrites the report. A file "
                "that cannot be read half-way through typing is said and waited out. Ctrl-C leaves.",
            .arguments = {site_argument()},
            .options = {{.name = "--output", .value = "DIR", .help = "rewrite the report in this folder too"},
                        catalog_option()},
            .examples = {{"rillwatt watch garden.toml", "keep this open beside the editor"}},
            .run = run};
}

} // namespace rillwatt
