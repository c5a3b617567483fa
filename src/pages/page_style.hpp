#pragma once

#include <string_view>

namespace rillwatt {

/// The style sheet of the report page. Its colours are variables of the root, which drawings in the page may
/// use.
std::string_view page_style();

/// The script that marks a part everywhere it is shown.
std::string_view page_script();

/// SHA-256 of the script, base64, for the page's content security policy.
std::string_view page_script_hash();

} // namespace rillwatt
