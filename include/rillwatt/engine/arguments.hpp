#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// What a command is asked for, by the names of the command line: "SITE", "--format", "--margin".
class Arguments {
  public:
    /// Whether a flag, an option or a positional argument was given (or has a fallback).
    bool has(std::string_view name) const;
    /// The value of an option or positional argument; empty text when it was not given.
    const std::string& text(std::string_view name) const;
    /// Every value of a repeatable option, in the order typed.
    const std::vector<std::string>& all(std::string_view name) const;
    /// The value of an option that takes a number; empty when it was not given.
    std::optional<double> number(std::string_view name) const;

    void set(const std::string& name, std::vector<std::string> values) { values_[name] = std::move(values); }

  private:
    std::map<std::string, std::vector<std::string>, std::less<>> values_;
};

} // namespace rillwatt
