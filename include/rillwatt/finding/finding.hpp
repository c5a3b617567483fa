#pragma once

#include "rillwatt/finding/file_name.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// Where something was written. Line 0: not written anywhere (built in, or computed).
struct SourceLocation {
    FileName file;
    int line = 0;
};

/// How bad a finding is.
enum class Severity {
    note,    ///< worth knowing: the plan works
    warning, ///< works, but decide knowingly: a lamp that dims on a weak supply
    error,   ///< do not build it like this: a lamp outside its window, a pump without GFCI
};

/// "note", "warning", "error": the words of the results contract.
const char* severity_name(Severity severity);

/// One thing a rule has to say about one part of the site.
struct Finding {
    std::string rule; ///< stable readable id, "lamp-undervoltage"
    Severity severity = Severity::note;
    std::string part;        ///< id of the part in the site file; empty for the site as a whole
    SourceLocation location; ///< where that part is written
    std::string message;     ///< one sentence with numbers and units
    std::string hint;        ///< how to fix it, may be empty
    std::string
        source; ///< where the limit comes from: document, edition, article; or "common practice, no source"
    std::vector<std::string_view>
        open_keys; ///< of a note that something is not judged: the keys of the part that it waits for
};

/// Whether any of them is an error: such a site must not be built as it stands.
bool any_error(const std::vector<Finding>& findings);

/// Worst first; within a severity in the order given.
void sort_worst_first(std::vector<Finding>& findings);

} // namespace rillwatt
