#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// Writes one JSON text (RFC 8259) from front to back.
///
/// Numbers are the shortest decimal that reads back to the same double; what is not finite becomes null, for
/// JSON has no NaN. Strings are escaped, and bytes that are no UTF-8 become U+FFFD, so that the text is
/// always valid. The caller keeps the order: inside an object a key comes before each value.
class JsonWriter {
  public:
    /// How the members of an object or array are set: each on a line of its own, or all on one line. What is
    /// inside something that stands on one line stands on that line too.
    enum class Set { lines, line };

    void begin_object(Set set = Set::lines) { begin('{', '}', set); }
    void begin_array(Set set = Set::lines) { begin('[', ']', set); }
    void end(); ///< closes the innermost object or array

    void key(std::string_view name);

    void value(std::string_view text);
    void value(const char* text) { value(std::string_view(text)); }
    void value(const std::string& text) { value(std::string_view(text)); }
    void value(double number);
    void value(int number);
    void value(std::size_t number);
    void value(bool truth);
    void null();

    template<class T>
    void value(const std::optional<T>& maybe) {
        if (maybe)
            value(*maybe);
        else
            null();
    }

    template<class T>
    void member(std::string_view name, const T& thing) {
        key(name);
        value(thing);
    }

    /// Text where there is some, null where it is empty.
    void member_or_null(std::string_view name, std::string_view text);

    /// The text written so far. It ends in a newline once everything is closed.
    std::string take();

  private:
    struct Level {
        char closing = '}';
        Set set = Set::lines;
        bool empty = true;
    };

    void begin(char opening, char closing, Set set);
    void before_value();
    void separate();
    void new_line();
    void grow(std::size_t bytes);
    char* room_for(std::size_t bytes);
    void write(char character);
    void write(std::string_view text);
    void write_string(std::string_view text);
    void write_escaped(std::string_view text);
    template<class Number>
    void write_number(Number number);

    std::string out_;      ///< longer than what is written: the rest is room
    std::size_t used_ = 0; ///< bytes written
    std::vector<Level> levels_;
    bool after_key_ = false;
};

/// Appends text as a JSON string with its quotes.
void append_json_string(std::string& out, std::string_view text);

} // namespace rillwatt
