#pragma once

#include "rillwatt/plan/file_source.hpp"

#include <cstddef>
#include <string>

namespace rillwatt {

/// Largest file the program reads, so that a wrong path cannot fill the memory.
inline constexpr std::size_t largest_input_file = 64u * 1024u * 1024u;

FileText read_file(const std::string& path);

/// Writes a file whole or not at all: a temporary file in the same folder, fsync, rename. An existing file
/// keeps its mode; a symbolic link is followed to the file itself. Returns what went wrong, empty when
/// nothing did.
std::string write_file(const std::string& path, const std::string& text);

/// How replacing a file went that somebody else may be writing, too.
enum class Replacing {
    done,
    changed, ///< it does not say what it said when it was read: nothing was written
    failed,
};

/// As write_file, but only where the file still says what it said when it was read. It is read again when the
/// new text already lies beside it, just before the two change places.
Replacing replace_file(const std::string& path, const std::string& as_read, const std::string& text,
                       std::string& problem);

/// As write_file, but never replaces an existing file, not even one that appears at the same moment.
std::string write_new_file(const std::string& path, const std::string& text);

} // namespace rillwatt
