#include "rillwatt/cli/site_update.hpp"

#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/file_access.hpp"
#include "rillwatt/document/content_changes.hpp"

#include <fmt/format.h>

#include <ostream>

namespace rillwatt {

namespace {

bool not_written(const std::string& path, std::string_view why, Console& console) {
    console.err << fmt::format("rillwatt: {} was not written: {}\n", printable(path), why);
    return false;
}

/// The text of the file by now, where what is new in it has no bearing on the update.
std::optional<std::string> text_by_now(const std::string& path, const std::string& as_read,
                                       const SiteUpdate& update, Console& console) {
    FileText now = read_file(path);
    if (!now.text) {
        not_written(path, now.problem, console);
        return std::nullopt;
    }
    const std::vector<InputError> changes = content_changes(as_read, *now.text, path, update.no_bearing);
    if (changes.empty()) return std::move(now.text);
    print_errors(changes, console);
    not_written(path, "it was saved with these changes in the meantime, which stay; run the command again",
                console);
    return std::nullopt;
}

} // namespace

bool update_site_file(const std::string& path, const std::string& as_read, const SiteUpdate& update,
                      Console& console) {
    constexpr int most_attempts = 10; // somebody who saves as often is no user
    std::optional<std::string> text = as_read;
    for (int attempt = 0; text && attempt < most_attempts; ++attempt) {
        const LoadResult<std::string> edited = edited_document(*text, path, update.values, update.appended);
        print_errors(edited.errors, console);
        if (!edited) return false;
        std::string problem;
        switch (replace_file(path, *text, *edited.value, problem)) {
        case Replacing::done:
            return true;
        case Replacing::failed:
            return not_written(path, problem, console);
        case Replacing::changed:
            text = text_by_now(path, as_read, update, console);
        }
    }
    return text && not_written(path, "it is being saved over and over", console);
}

} // namespace rillwatt
