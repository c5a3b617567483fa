#pragma once

#include <string>
#include <string_view>

namespace rillwatt {

/// A file's name as one word of a command that a reader may type: as it stands where a shell takes it so,
/// else in single quotes. What cannot be printed stays out of a command: then the word is SITE.
std::string command_word(std::string_view file);

} // namespace rillwatt
