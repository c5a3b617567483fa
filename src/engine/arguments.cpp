#include "rillwatt/engine/arguments.hpp"

#include <charconv>

namespace rillwatt {

namespace {

const std::string no_text;
const std::vector<std::string> no_values;

} // namespace

bool Arguments::has(std::string_view name) const { return values_.find(name) != values_.end(); }

const std::string& Arguments::text(std::string_view name) const {
    const auto it = values_.find(name);
    return it == values_.end() || it->second.empty() ? no_text : it->second.back();
}

const std::vector<std::string>& Arguments::all(std::string_view name) const {
    const auto it = values_.find(name);
    return it == values_.end() ? no_values : it->second;
}

std::optional<double> Arguments::number(std::string_view name) const {
    const std::string& word = text(name);
    double value = 0;
    const auto [end, fault] = std::from_chars(word.data(), word.data() + word.size(), value);
    if (fault != std::errc() || end != word.data() + word.size()) return std::nullopt;
    return value;
}

} // namespace rillwatt
