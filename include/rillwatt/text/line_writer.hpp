#pragma once

#include "rillwatt/quantity/figure_text.hpp"

#include <algorithm>
#include <array>
#include <cstring>
#include <string>
#include <string_view>

namespace rillwatt {

/// Writes a table of many rows at the end of a text: cell after cell into a line of its own, which joins the
/// text when it ends.
class LineWriter {
  public:
    explicit LineWriter(std::string& out) : out_(out) {}

    void text(std::string_view text) {
        make_room(text.size());
        if (text.size() > most_at_once) {
            out_ += text;
            return;
        }
        copy(text, line_.data() + used_);
        used_ += text.size();
    }

    void blanks(std::size_t columns) {
        for (; columns > few; columns -= few)
            few_blanks(few);
        few_blanks(columns);
    }

    /// Text of as many columns as bytes, set to the right of `columns`.
    void right(std::string_view plain, std::size_t columns) {
        if (plain.size() < columns) blanks(columns - plain.size());
        text(plain);
    }

    /// A figure set to the right of `columns`; what is wider takes the room it needs.
    void figure(double value, FigureStyle style, std::size_t columns) {
        constexpr double usual = 999; // what lies below it takes three digits, a point and two decimals
        const std::size_t usual_columns = 6 + style.unit.size();
        if (!(value >= 0 && value < usual) || style.decimals > 2 || usual_columns > columns || columns > few)
            return right(fixed_text(value, style.decimals) + std::string(style.unit), columns);
        few_blanks(columns);
        char* at = line_.data() + used_;
        for (std::size_t i = style.unit.size(); i-- > 0;)
            *--at = style.unit[i];
        write_fixed(at, value, style.decimals);
    }

    void end_line() {
        text("\n");
        flush();
    }

  private:
    static constexpr std::size_t few = 32;
    static constexpr std::size_t most_at_once = 256;

    /// Most cells are short: these are copied by their two ends, which may overlap.
    static void copy(std::string_view text, char* to) {
        const auto by_ends = [&](std::size_t bytes) {
            const std::size_t last = text.size() - bytes;
            char first_end[8];
            char last_end[8];
            std::memcpy(first_end, text.data(), bytes);
            std::memcpy(last_end, text.data() + last, bytes);
            std::memcpy(to, first_end, bytes);
            std::memcpy(to + last, last_end, bytes);
        };
        if (text.size() > 16)
            std::memcpy(to, text.data(), text.size());
        else if (text.size() >= 8)
            by_ends(8);
        else if (text.size() >= 4)
            by_ends(4);
        else
            for (const char c : text)
                *to++ = c;
    }

    void make_room(std::size_t bytes) {
        if (used_ + bytes > most_at_once) flush();
    }

    /// Fewer blanks are as quickly written as `few`; those beyond are written over.
    void few_blanks(std::size_t columns) {
        make_room(few);
        std::memset(line_.data() + used_, ' ', few);
        used_ += columns;
    }

    void flush() {
        out_.append(line_.data(), used_);
        used_ = 0;
    }

    std::string& out_;
    std::array<char, most_at_once + few> line_;
    std::size_t used_ = 0;
};

} // namespace rillwatt
