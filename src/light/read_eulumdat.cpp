// EULUMDAT reader (the open format of the 1990 European proposal): one value on each line, candela per 1000
// lm of lamp flux.
#include "rillwatt/light/photometric_file.hpp"

#include <fmt/format.h>

#include "photometric_text.hpp"
#include <algorithm>
#include <tuple>
#include <utility>

namespace rillwatt {
namespace {

/// Line numbers of the format, counted from 1.
enum Field : std::size_t {
    symmetry_line = 3,
    planes_line = 4,
    angles_line = 6,
    factor_line = 24,
    sets_line = 26
};
constexpr std::size_t lines_per_lamp_set = 6;
constexpr std::size_t direct_ratios = 10;

class EulumdatReader {
  public:
    EulumdatReader(std::string_view text, const std::string& name) : lines_(text_lines(text)), name_(name) {}

    LoadResult<PhotometricFile> read();

  private:
    struct Counts;

    void error(std::size_t line, std::string found, std::string expected) {
        const std::string_view source = line >= 1 && line <= lines_.size() ? lines_[line - 1] : "";
        if (errors_.size() < 20)
            errors_.push_back({{name_, static_cast<int>(line)},
                               std::move(found),
                               std::move(expected),
                               std::string(source)});
    }

    double number(std::size_t line, const char* what);
    std::size_t whole(std::size_t line, const char* what, std::size_t low, std::size_t high);
    std::vector<double> block(std::size_t first, std::size_t count, const char* what);
    void judge_ascending(const std::vector<double>& angles, std::size_t first, double limit,
                         const char* what);
    void read_lamps();
    Counts read_counts();
    std::vector<double> read_planes(const Counts& c);
    std::vector<double> read_intensities(const Counts& c);
    PhotometricWeb web(std::size_t symmetry, std::vector<double> planes, std::vector<double> gamma,
                       std::vector<double> candela) const;

    std::vector<std::string_view> lines_;
    const std::string& name_;
    std::vector<InputError> errors_;
    std::vector<LightRemark> remarks_;
    std::size_t sets_ = 0;
    double lamp_lumens_ = 0;
    double watts_ = 0;
};

double EulumdatReader::number(std::size_t line, const char* what) {
    if (line > lines_.size()) {
        error(lines_.size(), "the end of the file", what);
        return 0;
    }
    std::string text(trimmed(lines_[line - 1]));
    std::replace(text.begin(), text.end(), ',', '.'); // one number a line: a comma can only be a decimal one
    const std::optional<double> value = finite_number(text);
    if (!value) error(line, fmt::format("`{}`", shown(text)), fmt::format("a number: {}", what));
    return value.value_or(0);
}

std::size_t EulumdatReader::whole(std::size_t line, const char* what, std::size_t low, std::size_t high) {
    const std::size_t before = errors_.size();
    const double value = number(line, what);
    if (errors_.size() > before) return low;
    if (value >= static_cast<double>(low) && value <= static_cast<double>(high) && value == std::floor(value))
        return static_cast<std::size_t>(value);
    error(line, fmt::format("{} {}", what, value), fmt::format("a whole number from {} to {}", low, high));
    return low;
}

std::vector<double> EulumdatReader::block(std::size_t first, std::size_t count, const char* what) {
    std::vector<double> values;
    values.reserve(count);
    for (std::size_t i = 0; i < count; ++i)
        values.push_back(number(first + i, what));
    return values;
}

void EulumdatReader::judge_ascending(const std::vector<double>& angles, std::size_t first, double limit,
                                     const char* what) {
    for (std::size_t i = 0; i < angles.size(); ++i) {
        if (angles[i] < 0 || angles[i] > limit)
            error(first + i, fmt::format("{} {}", what, angles[i]), fmt::format("0 to {} degrees", limit));
        else if (i > 0 && angles[i] <= angles[i - 1])
            error(first + i, fmt::format("{} {} after {}", what, angles[i], angles[i - 1]),
                  "each angle greater than the one before");
    }
}

void EulumdatReader::read_lamps() {
    sets_ = whole(sets_line, "number of lamp sets", 1, 20);
    for (std::size_t set = 0; set < sets_ && errors_.empty(); ++set) {
        const std::size_t first = sets_line + 1 + set * lines_per_lamp_set;
        const double lumens = number(first + 2, "total luminous flux of the lamps");
        if (set > 0) continue; // further sets are alternatives
        lamp_lumens_ = lumens;
        watts_ = number(first + 5, "watts of the lamps");
        if (lumens <= 0) error(first + 2, fmt::format("luminous flux {}", lumens), "lumens above 0");
    }
    if (sets_ > 1) remarks_.push_back({{name_, sets_line}, "several lamp sets: the first one is used"});
}

/// How many planes a symmetry stores of `planes` round the circle, and the first one's index.
std::pair<std::size_t, std::size_t> stored_planes(std::size_t symmetry, std::size_t planes) {
    switch (symmetry) {
    case 1:
        return {1, 0};
    case 2:
        return {planes / 2 + 1, 0};
    case 3:
        return {planes / 2 + 1, 3 * planes / 4};
    case 4:
        return {planes / 4 + 1, 0};
    default:
        return {planes, 0};
    }
}

PhotometricWeb EulumdatReader::web(std::size_t symmetry, std::vector<double> planes,
                                   std::vector<double> gamma, std::vector<double> candela) const {
    switch (symmetry) {
    case 1:
        return unfold_type_c(WebSymmetry::axial, std::move(gamma), {0}, candela);
    case 2:
        return unfold_type_c(WebSymmetry::mirror_0_180, std::move(gamma), planes, candela);
    case 4:
        return unfold_type_c(WebSymmetry::quadrant, std::move(gamma), planes, candela);
    case 0:
        return unfold_type_c(WebSymmetry::none, std::move(gamma), planes, candela);
    default:
        break;
    }
    // Stored from 270 over 0 to 90; seen in the mirror plane these are the planes from 270 down to 90.
    std::vector<double> mirrored;
    std::vector<double> groups;
    for (std::size_t j = planes.size(); j-- > 0;) {
        mirrored.push_back(540 - (planes[j] < 180 ? planes[j] + 360 : planes[j]));
        groups.insert(groups.end(), candela.begin() + static_cast<std::ptrdiff_t>(j * gamma.size()),
                      candela.begin() + static_cast<std::ptrdiff_t>((j + 1) * gamma.size()));
    }
    return unfold_type_c(WebSymmetry::mirror_90_270, std::move(gamma), mirrored, groups);
}

/// The counts at the head of the file.
struct EulumdatReader::Counts {
    std::size_t symmetry = 0;
    std::size_t planes = 1;
    std::size_t gammas = 2;
    double factor = 1;
    std::size_t stored = 1; ///< planes whose intensities follow
    std::size_t offset = 0; ///< index of the first of them
    std::size_t first = 0;  ///< line of the first C plane
};

EulumdatReader::Counts EulumdatReader::read_counts() {
    Counts c;
    c.symmetry = whole(symmetry_line, "symmetry", 0, 4);
    c.planes = whole(planes_line, "number of C planes", 1, 721);
    c.gammas = whole(angles_line, "number of angles in each plane", 2, 1801);
    c.factor = number(factor_line, "conversion factor");
    if (c.factor <= 0) error(factor_line, fmt::format("conversion factor {}", c.factor), "a factor above 0");
    const std::size_t part = c.symmetry > 2 ? 4 : c.symmetry == 2 ? 2 : 1;
    if (c.planes % part != 0)
        error(planes_line, fmt::format("{} C planes with symmetry {}", c.planes, c.symmetry),
              fmt::format("a number that {} divides", part));
    read_lamps();
    std::tie(c.stored, c.offset) = stored_planes(c.symmetry, c.planes);
    c.first = sets_line + 1 + sets_ * lines_per_lamp_set + direct_ratios;
    const std::size_t needed = c.first + c.planes + c.gammas + c.stored * c.gammas - 1;
    if (errors_.empty() && lines_.size() < needed)
        error(lines_.size(), fmt::format("the file ends at line {}", lines_.size()),
              fmt::format("{} lines for {} planes of {} angles", needed, c.stored, c.gammas));
    return c;
}

/// The C planes whose intensities are stored, in the order they are.
std::vector<double> EulumdatReader::read_planes(const Counts& c) {
    const std::vector<double> all = block(c.first, c.planes, "C plane");
    judge_ascending(all, c.first, 360, "C plane");
    std::vector<double> used;
    for (std::size_t j = 0; j < c.stored; ++j)
        used.push_back(all[(c.offset + j) % c.planes]);
    const double last = used.back();
    const bool spans = c.symmetry < 2 || (c.symmetry == 2 && last == 180) || (c.symmetry > 2 && last == 90);
    if (!spans || (c.symmetry != 1 && all.front() != 0))
        error(c.first, fmt::format("C planes up to {} for symmetry {}", last, c.symmetry),
              "planes from 0, evenly round the circle");
    return used;
}

std::vector<double> EulumdatReader::read_intensities(const Counts& c) {
    const std::size_t first = c.first + c.planes + c.gammas;
    std::vector<double> candela = block(first, c.stored * c.gammas, "intensity");
    if (std::any_of(candela.begin(), candela.end(), [](double value) { return value < 0; }))
        remarks_.push_back({{name_, static_cast<int>(first)}, "negative intensities taken as 0"});
    for (double& value : candela) {
        value = std::max(0.0, value * c.factor * lamp_lumens_ / 1000);
        if (value > 1e12) error(first, "intensities above 1e12 cd", "intensities of a real light");
    }
    return candela;
}

LoadResult<PhotometricFile> EulumdatReader::read() {
    const Counts counts = read_counts();
    if (!errors_.empty()) return {std::nullopt, std::move(errors_)};
    std::vector<double> planes = read_planes(counts);
    std::vector<double> gamma = block(counts.first + counts.planes, counts.gammas, "angle");
    judge_ascending(gamma, counts.first + counts.planes, 180, "angle");
    std::vector<double> candela = read_intensities(counts);
    if (!errors_.empty()) return {std::nullopt, std::move(errors_)};
    PhotometricWeb result = web(counts.symmetry, std::move(planes), std::move(gamma), std::move(candela));
    if (result.flux() > lamp_lumens_ * 1.02)
        remarks_.push_back(
            {{name_, static_cast<int>(sets_line) + 3},
             fmt::format("the intensities add up to {:.0f} lm, more than the {:.0f} lm of the lamps",
                         result.flux(), lamp_lumens_)});
    return {
        PhotometricFile{std::move(result), "EULUMDAT", Lumens(lamp_lumens_), watts_, {}, std::move(remarks_)},
        {}};
}

bool looks_like_lm63(std::string_view text) {
    for (const std::string_view line : text_lines(text)) {
        const std::string upper = capitals(trimmed(line).substr(0, 40));
        if (upper.substr(0, 5) == "IESNA" || upper.substr(0, 4) == "IES:") return true;
        if (upper.substr(0, 4) == "TILT" && trimmed(std::string_view(upper).substr(4)).substr(0, 1) == "=")
            return true;
    }
    return false;
}

} // namespace

LoadResult<PhotometricFile> read_eulumdat(std::string_view text, const std::string& name) {
    return EulumdatReader(text, name).read();
}

LoadResult<PhotometricFile> read_photometric_file(std::string_view text, const std::string& name) {
    const std::size_t dot = name.rfind('.');
    const bool named_ldt = dot != std::string::npos && capitals(name.substr(dot)) == ".LDT";
    return named_ldt && !looks_like_lm63(text) ? read_eulumdat(text, name) : read_lm63(text, name);
}

} // namespace rillwatt
