#include "rillwatt/finding/command_word.hpp"

#include "rillwatt/finding/input_error.hpp"

#include <algorithm>

namespace rillwatt {

namespace {

bool is_plain(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '/' ||
           c == '.' || c == '_' || c == '-';
}

} // namespace

std::string command_word(std::string_view file) {
    if (file.empty() || !is_printable(file)) return "SITE";
    if (file.starts_with('-')) return command_word("./" + std::string(file)); // else it would be an option
    if (std::all_of(file.begin(), file.end(), is_plain)) return std::string(file);
    std::string word = "'";
    for (const char c : file)
        word += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return word + '\'';
}

} // namespace rillwatt
