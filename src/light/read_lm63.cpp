// ANSI/IES LM-63 reader, editions 1986, 1991, 1995, 2002 and 2019.
//
// A file is labels, a TILT line, and then nothing but numbers. Records may wrap anywhere, so numbers are
// counted, lines are not:
//   [geometry N angles... factors...]                                  (TILT=INCLUDE only)
//   lamps lumens multiplier Nv Nh type units width length height
//   ballast-factor ballast-lamp-factor watts
//   Nv vertical angles, Nh horizontal angles, Nh groups of Nv candela values
#include "rillwatt/light/photometric_file.hpp"

#include <fmt/format.h>

#include "lm63_numbers.hpp"
#include "photometric_text.hpp"
#include <algorithm>
#include <utility>

namespace rillwatt {
namespace {

constexpr double greatest_opening = 20; ///< metres; beyond, feet and metres were mixed up

/// The fixed part between the TILT line and the angles.
struct Header {
    double lamps = 1;
    double lumens_per_lamp = -1;
    double multiplier = 1;
    std::size_t vertical_count = 0;
    std::size_t horizontal_count = 0;
    int type = 1;
    double units = 2; ///< as written: only 1 and 2 mean something
    double opening[3] = {0, 0, 0};
    double ballast_factor = 1;
    double second_factor = 1;
    double watts = 0;
    int line = 0;
};

enum class Edition { y1986, y1991, y1995, y2002, y2019 };

const char* edition_name(Edition edition) {
    switch (edition) {
    case Edition::y1986:
        return "LM-63-1986";
    case Edition::y1991:
        return "LM-63-1991";
    case Edition::y1995:
        return "LM-63-1995";
    case Edition::y2002:
        return "LM-63-2002";
    case Edition::y2019:
        break;
    }
    return "LM-63-2019";
}

bool starts_with(std::string_view text, std::string_view start) {
    return text.substr(0, start.size()) == start;
}

class Lm63Reader {
  public:
    Lm63Reader(std::string_view text, const std::string& name) : lines_(text_lines(text)), name_(name) {}

    LoadResult<PhotometricFile> read() {
        read_labels();
        if (failed()) return give_up();
        numbers_.emplace(words_from(lines_, tilt_line_ + 1), name_, static_cast<int>(lines_.size()));
        if (tilt_included_) read_tilt_table();
        const Header header = read_header();
        if (failed()) return give_up();
        return read_web(header);
    }

  private:
    bool failed() const { return !errors_.empty() || (numbers_ && numbers_->failed()); }

    LoadResult<PhotometricFile> give_up() {
        if (numbers_) errors_.insert(errors_.end(), numbers_->errors().begin(), numbers_->errors().end());
        for (InputError& error : errors_)
            if (error.location.line > 0 && error.location.line <= static_cast<int>(lines_.size()))
                error.source_line = std::string(lines_[static_cast<std::size_t>(error.location.line) - 1]);
        return {std::nullopt, std::move(errors_)};
    }

    void error(int line, std::string found, std::string expected) {
        errors_.push_back({{name_, line}, std::move(found), std::move(expected), {}});
    }

    void remark(int line, std::string text) { remarks_.push_back({{name_, line}, std::move(text)}); }

    void read_labels();
    void read_edition(std::string_view first, int line);
    void read_tilt_line(std::string_view line, int number);
    void read_tilt_table();
    Header read_header();
    void judge_header(const Header& header);
    PhotometricType type_of(const Header& header, double first_vertical);
    double scale_of(const Header& header) const;
    void judge_vertical(PhotometricType type, const std::vector<double>& angles, int line);
    std::optional<WebSymmetry> symmetry_of(const std::vector<double>& angles, int line);
    void judge_horizontal_ab(const std::vector<double>& angles, int line);
    std::vector<double> read_candela(std::size_t count, double scale);
    void judge_trailing();
    void judge_flux(const Header& header, double flux);
    LoadResult<PhotometricFile> read_web(const Header& header);

    std::vector<std::string_view> lines_;
    const std::string& name_;
    std::vector<InputError> errors_;
    std::vector<LightRemark> remarks_;
    Edition edition_ = Edition::y1986;
    std::size_t tilt_line_ = 0;
    bool tilt_included_ = false;
    TiltTable tilt_;
    std::optional<Lm63Numbers> numbers_;
};

void Lm63Reader::read_edition(std::string_view first, int line) {
    const std::string word = capitals(first);
    if (!starts_with(word, "IES")) return;
    const std::pair<const char*, Edition> known[] = {
        {"91", Edition::y1991}, {"1995", Edition::y1995}, {"2002", Edition::y2002}, {"2019", Edition::y2019}};
    for (const auto& [year, edition] : known) {
        if (word.find(year) == std::string::npos) continue;
        edition_ = edition;
        return;
    }
    edition_ = Edition::y2002;
    remark(line, fmt::format("unknown edition `{}`, read as LM-63-2002", shown(first)));
}

void Lm63Reader::read_labels() {
    bool first = true;
    bool labelled = false;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        const std::string_view line = trimmed(lines_[i]);
        const int number = static_cast<int>(i) + 1;
        if (line.empty()) continue;
        const std::string upper = capitals(line.substr(0, 40));
        if (starts_with(upper, "TILT") && starts_with(trimmed(std::string_view(upper).substr(4)), "=")) {
            tilt_line_ = i;
            return read_tilt_line(line, number);
        }
        if (starts_with(upper, "[MORE]") && !labelled) remark(number, "[MORE] continues no label");
        if (line.front() == '[') labelled = true;
        if (std::exchange(first, false)) read_edition(line, number);
    }
    error(static_cast<int>(lines_.size()), "no TILT line before the end of the file",
          "a line `TILT=NONE` or `TILT=INCLUDE` after the labels");
}

void Lm63Reader::read_tilt_line(std::string_view line, int number) {
    const std::string_view value = trimmed(line.substr(line.find('=') + 1));
    const std::string upper = capitals(value);
    if (upper == "INCLUDE") tilt_included_ = true;
    if (upper == "INCLUDE" || upper == "NONE") return;
    error(number, fmt::format("TILT names a file, `{}`", shown(value)),
          "`TILT=NONE`, or `TILT=INCLUDE` with the table in this file");
}

void Lm63Reader::read_tilt_table() {
    const int line = numbers_->line();
    tilt_.geometry = numbers_->whole("lamp-to-luminaire geometry", 1, 3);
    const auto count = static_cast<std::size_t>(numbers_->whole("number of tilt angles", 1, 1000));
    if (numbers_->failed() || !numbers_->enough(2 * count, "tilt angles and factors")) return;
    tilt_.angles = numbers_->ascending(count, "tilt angle");
    tilt_.factors = numbers_->list(count, "tilt factor");
    const bool negative =
        std::any_of(tilt_.factors.begin(), tilt_.factors.end(), [](double f) { return f < 0; });
    if (negative) error(line, "a negative tilt factor", "factors of 0 or more");
}

Header Lm63Reader::read_header() {
    Header h;
    if (failed()) return h;
    h.line = numbers_->line();
    if (!numbers_->enough(13, "the 13 numbers before the angles")) return h;
    h.lamps = numbers_->whole("number of lamps", 0, 100000);
    h.lumens_per_lamp = numbers_->number("lumens per lamp");
    h.multiplier = numbers_->number("candela multiplier");
    h.vertical_count = static_cast<std::size_t>(numbers_->whole("number of vertical angles", 2, 100000));
    h.horizontal_count = static_cast<std::size_t>(numbers_->whole("number of horizontal angles", 1, 100000));
    h.type = numbers_->whole("photometric type (1 = C, 2 = B, 3 = A)", 1, 3);
    h.units = numbers_->number("units (1 = feet, 2 = metres)");
    for (double& side : h.opening)
        side = numbers_->number("dimension of the opening");
    h.ballast_factor = numbers_->number("ballast factor");
    h.second_factor = numbers_->number("ballast-lamp factor");
    h.watts = numbers_->number("input watts");
    judge_header(h);
    return h;
}

void Lm63Reader::judge_header(const Header& h) {
    if (numbers_->failed()) return;
    if (h.multiplier <= 0)
        error(h.line, fmt::format("candela multiplier {}", h.multiplier), "a multiplier above 0, normally 1");
    if (h.ballast_factor <= 0)
        error(h.line, fmt::format("ballast factor {}", h.ballast_factor), "a factor above 0, normally 1");
    if (scale_of(h) == 0 && h.second_factor == 0)
        error(h.line, "ballast-lamp factor 0", "a factor above 0, normally 1");
    if (h.units != 1 && h.units != 2)
        remark(h.line, fmt::format("units {} are neither 1 (feet) nor 2 (metres)", h.units));
    const double to_metres = h.units == 1 ? metres_per_foot : 1;
    for (const double side : h.opening)
        if (std::abs(side) * to_metres > greatest_opening)
            remark(h.line, fmt::format("an opening of {:.1f} m: feet and metres may be mixed up",
                                       std::abs(side) * to_metres));
}

double Lm63Reader::scale_of(const Header& h) const {
    const bool second_counts = edition_ == Edition::y1986 || edition_ == Edition::y1991;
    return h.multiplier * h.ballast_factor * (second_counts ? h.second_factor : 1);
}

/// 1986 files write type 1 for type A too: a first vertical angle below 0 gives those away.
PhotometricType Lm63Reader::type_of(const Header& h, double first_vertical) {
    if (h.type == 3) return PhotometricType::a;
    if (h.type == 2) return PhotometricType::b;
    if (edition_ != Edition::y1986 || first_vertical >= 0) return PhotometricType::c;
    remark(h.line, "vertical angles below 0 in a 1986 file of type 1: read as type A");
    return PhotometricType::a;
}

void Lm63Reader::judge_vertical(PhotometricType type, const std::vector<double>& angles, int line) {
    const double low = type == PhotometricType::c ? 0 : -90;
    const double high = type == PhotometricType::c ? 180 : 90;
    const std::string range = fmt::format("vertical angles from {} to {}", angles.front(), angles.back());
    if (angles.front() < low || angles.back() > high)
        return error(line, range, fmt::format("angles within {} to {} degrees", low, high));
    const bool starts = type == PhotometricType::c ? angles.front() == 0 || angles.front() == 90
                                                   : angles.front() == -90 || angles.front() == 0;
    const bool ends = angles.back() == 90 || angles.back() == high;
    if (!starts || !ends) remark(line, range + ": no light is assumed outside them");
}

std::optional<WebSymmetry> Lm63Reader::symmetry_of(const std::vector<double>& angles, int line) {
    const auto near = [](double a, double b) { return std::abs(a - b) < 1e-6; };
    const double first = angles.front();
    const double last = angles.back();
    if (angles.size() == 1) {
        if (!near(first, 0)) remark(line, fmt::format("the only horizontal angle is {}, taken as 0", first));
        return WebSymmetry::axial;
    }
    if (near(first, 0) && near(last, 90)) return WebSymmetry::quadrant;
    if (near(first, 0) && near(last, 180)) return WebSymmetry::mirror_0_180;
    if (near(first, 90) && near(last, 270)) return WebSymmetry::mirror_90_270;
    if (near(first, 0) && last > 180 && last < 360 + 1e-6) {
        if (!near(last, 360))
            remark(line, fmt::format("horizontal angles end at {}; 360 is taken as 0", last));
        return WebSymmetry::none;
    }
    error(line, fmt::format("horizontal angles from {} to {}", first, last),
          "0 alone, 0 to 90, 0 to 180, 90 to 270, or 0 to more than 180 and at most 360 degrees");
    return {};
}

void Lm63Reader::judge_horizontal_ab(const std::vector<double>& angles, int line) {
    const bool starts = angles.front() == 0 || angles.front() == -90;
    if (angles.size() >= 2 && starts && angles.back() == 90) return;
    error(line,
          fmt::format("horizontal angles from {} to {} in a type A or B file", angles.front(), angles.back()),
          "-90 to 90, or 0 to 90 degrees");
}

std::vector<double> Lm63Reader::read_candela(std::size_t count, double scale) {
    std::vector<double> candela;
    candela.reserve(count);
    int clamped = 0;
    int first_line = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const int line = numbers_->line();
        const double value = numbers_->number("candela value");
        if (value < 0 && clamped++ == 0) first_line = line;
        candela.push_back(std::max(0.0, value * scale));
    }
    if (clamped > 0)
        remark(first_line,
               fmt::format("{} negative candela value{} taken as 0", clamped, clamped == 1 ? "" : "s"));
    const bool overflow = std::any_of(candela.begin(), candela.end(), [](double c) { return c > 1e12; });
    if (overflow) error(numbers_->line(), "candela values above 1e12", "intensities of a real light");
    return candela;
}

void Lm63Reader::judge_trailing() {
    const std::optional<Word> word = numbers_->rest();
    if (!word) return;
    if (numbers_->digit_commas())
        return error(
            word->line,
            fmt::format("{} more words than the counts ask for, and commas between digits", numbers_->left()),
            "decimal points, and as many values as the counts say");
    const std::string upper = capitals(word->text);
    if (starts_with(upper, "IES") || starts_with(upper, "TILT") || starts_with(upper, "["))
        return remark(word->line, "a second data set follows and is not read");
    remark(word->line, fmt::format("{} words after the last candela value are not read", numbers_->left()));
}

void Lm63Reader::judge_flux(const Header& h, double flux) {
    if (h.lumens_per_lamp < 0) return;
    const double declared = h.lamps * h.lumens_per_lamp;
    if (flux > declared * 1.02)
        remark(h.line,
               fmt::format("the candela values add up to {:.0f} lm, more than the {:.0f} lm of the lamps",
                           flux, declared));
}

LoadResult<PhotometricFile> Lm63Reader::read_web(const Header& h) {
    const std::size_t nv = h.vertical_count;
    const std::size_t nh = h.horizontal_count;
    if (!numbers_->enough(
            nv + nh + nv * nh,
            fmt::format("{} vertical angles, {} horizontal angles and {} candela values", nv, nh, nv * nh)))
        return give_up();
    const int vertical_line = numbers_->line();
    std::vector<double> vertical = numbers_->ascending(nv, "vertical angle");
    const int horizontal_line = numbers_->line();
    const std::vector<double> horizontal = numbers_->ascending(nh, "horizontal angle");
    const std::vector<double> candela = read_candela(nv * nh, scale_of(h));
    if (failed()) return give_up();
    const PhotometricType type = type_of(h, vertical.front());
    judge_vertical(type, vertical, vertical_line);
    std::optional<WebSymmetry> symmetry = WebSymmetry::none;
    if (type == PhotometricType::c)
        symmetry = symmetry_of(horizontal, horizontal_line);
    else
        judge_horizontal_ab(horizontal, horizontal_line);
    judge_trailing();
    if (failed() || !symmetry) return give_up();
    PhotometricWeb web = type == PhotometricType::c
                             ? unfold_type_c(*symmetry, std::move(vertical), horizontal, candela)
                             : unfold_type_ab(type, std::move(vertical), horizontal, candela);
    judge_flux(h, web.flux());
    std::optional<Lumens> declared;
    if (h.lumens_per_lamp >= 0) declared = Lumens(h.lamps * h.lumens_per_lamp);
    return {PhotometricFile{std::move(web), edition_name(edition_), declared, h.watts, std::move(tilt_),
                            std::move(remarks_)},
            {}};
}

} // namespace

LoadResult<PhotometricFile> read_lm63(std::string_view text, const std::string& name) {
    return Lm63Reader(text, name).read();
}

} // namespace rillwatt
