#pragma once

#include "rillwatt/cli/console.hpp"
#include "rillwatt/plan/site_update.hpp"

#include <string>

namespace rillwatt {

/// Puts an update into the site file as it stands by now; `as_read` is what it was worked out from. What was
/// saved there since then stays: where that has no bearing on the update (comments, spacing, other tables),
/// the update goes into the new text, else nothing is written. Errors go to `console.err`. Returns whether
/// the file holds the update.
bool update_site_file(const std::string& path, const std::string& as_read, const SiteUpdate& update,
                      Console& console);

} // namespace rillwatt
