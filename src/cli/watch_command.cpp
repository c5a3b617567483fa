#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/disk_files.hpp"
#include "rillwatt/cli/file_watch.hpp"
#include "rillwatt/cli/report_writing.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/light/compute_light.hpp"
#include "rillwatt/plan/site_report.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/text/check_text.hpp"

#include <fmt/format.h>

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

void rewrite_report(const SiteReport& report, const std::string& folder, Console& console) {
    std::vector<std::string> written;
    const std::string problem = write_report(report_files(report), folder, true, written);
    if (!problem.empty()) console.err << "rillwatt watch: " << problem << '\n';
}

/// One pass: read, judge, rewrite the report. Errors are said and the last good report stays.
std::optional<LoadedSite> look(const Arguments& arguments, Console& console) {
    DiskFiles disk;
    LoadResult<LoadedSite> loaded = load_site({arguments.text("SITE"), arguments.all("--catalog")}, disk);
    LoadResult<SiteReport> report;
    if (loaded) report = report_site(*loaded.value, disk);
    print_errors(loaded.errors, console);
    print_errors(report.errors, console);
    if (report) {
        print_verdict(report.value->assessment, console);
        if (arguments.has("--output")) rewrite_report(*report.value, arguments.text("--output"), console);
    }
    console.out << std::flush;
    console.err << std::flush;
    return std::move(loaded.value);
}

/// Everything a check of a site reads. What a file names that cannot be read is not known: as long as one
/// cannot be, the files of before stay in sight.
class FilesRead {
  public:
    explicit FilesRead(const Arguments& arguments)
        : site_(arguments.text("SITE")), catalogs_(arguments.all("--catalog")) {}

    /// To be asked before each pass: the catalogs that the site names by now count already.
    std::vector<std::string> before_pass() const {
        std::vector<std::string> files = {site_};
        add(files, catalogs_);
        add(files, named_);
        const FileText file = DiskFiles().read(site_);
        const SiteDraft draft = file.text ? read_site_draft(*file.text, site_) : SiteDraft();
        if (draft.site) add(files, catalogs_of(*draft.site));
        return files;
    }

    void after_pass(const std::optional<LoadedSite>& loaded) {
        if (!loaded) return;
        named_ = catalogs_of(*loaded->site);
        add(named_, photometric_paths(*loaded->site, *loaded->catalog));
    }

  private:
    static void add(std::vector<std::string>& files, const std::vector<std::string>& more) {
        files.insert(files.end(), more.begin(), more.end());
    }

    std::vector<std::string> catalogs_of(const Site& site) const {
        std::vector<std::string> files;
        for (const std::string& name : site.settings.catalogs)
            files.push_back(beside(site_, name));
        return files;
    }

    std::string site_;
    std::vector<std::string> catalogs_; ///< of the command line
    std::vector<std::string> named_;    ///< by the last site and catalogs that could be read
};

ExitStatus run(const Arguments& arguments, Console& console) {
    FileWatch watch;
    FilesRead files(arguments);
    // A folder that is missing from the beginning is a wrong name; later it may be about to be replaced.
    if (const std::string problem = watch.watch(files.before_pass()); !problem.empty()) {
        console.err << fmt::format("rillwatt watch: {}\n", problem);
        return ExitStatus::wrong_input;
    }
    do {
        // The watch is set before the files are read, so that no change in between is missed.
        watch.watch(files.before_pass());
        files.after_pass(look(arguments, console));
        watch.watch(files.before_pass());
    } while (watch.wait() == FileWatch::Event::changed);
    return ExitStatus::ok;
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
