#pragma once

#include "rillwatt/finding/input_error.hpp"

#include "photometric_text.hpp"
#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// The numbers of an LM-63 file in the order they stand, whatever lines they are on. What is wrong is
/// collected and read as 0, so that one pass finds everything.
class Lm63Numbers {
  public:
    Lm63Numbers(std::vector<Word> words, const std::string& file, int last_line);

    bool failed() const { return !errors_.empty(); }
    const std::vector<InputError>& errors() const { return errors_; }

    /// Line of the next number, the last line of the file when there is none.
    int line() const;

    /// Whether at least `count` words are left; an error that says for what if not. Ask before making room
    /// for them: counts come from the file.
    bool enough(std::size_t count, const std::string& what);

    double number(const char* what);
    int whole(const char* what, int low, int high);
    std::vector<double> list(std::size_t count, const char* what);
    std::vector<double> ascending(std::size_t count, const char* what);

    /// The next word, when there is one.
    std::optional<Word> rest() const;
    std::size_t left() const { return words_.size() - next_; }

    /// Whether commas stand between digits without a space while spaces separate too: decimal commas, most
    /// likely.
    bool digit_commas() const { return digit_commas_; }

  private:
    void error(int line, std::string found, std::string expected);

    std::vector<Word> words_;
    const std::string& file_;
    int last_line_;
    std::size_t next_ = 0;
    bool digit_commas_ = false;
    std::vector<InputError> errors_;
};

} // namespace rillwatt
