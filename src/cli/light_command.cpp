#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/load_site.hpp"
#include "rillwatt/exchange/light_json.hpp"
#include "rillwatt/light/compute_light.hpp"
#include "rillwatt/quantity/quantity_text.hpp"
#include "rillwatt/text/light_text.hpp"

#include <fmt/format.h>

#include <charconv>
#include <ostream>

namespace rillwatt {

namespace {

std::string_view without_blanks(std::string_view text) {
    const std::size_t begin = text.find_first_not_of(" \t");
    if (begin == std::string_view::npos) return {};
    return text.substr(begin, text.find_last_not_of(" \t") - begin + 1);
}

/// A length as in a site file: with its unit, or bare in the site's.
std::optional<double> metres_of(std::string_view text, LengthUnit unit) {
    const std::string_view word = without_blanks(text);
    double bare = 0;
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), bare);
    if (error == std::errc() && end == word.data() + word.size() && std::abs(bare) < 1e6)
        return unit == LengthUnit::feet ? feet(bare).value() : bare;
    const std::optional<Metres> length = parse_length(word);
    return length ? std::optional<double>(length->value()) : std::nullopt;
}

/// "X,Y,Z" or "X,Y".
std::optional<SpacePoint> parse_point(std::string_view text, LengthUnit unit) {
    std::vector<double> numbers;
    while (numbers.size() < 4) {
        const std::size_t comma = text.find(',');
        const std::optional<double> number = metres_of(text.substr(0, comma), unit);
        if (!number) return {};
        numbers.push_back(*number);
        if (comma == std::string_view::npos) break;
        text.remove_prefix(comma + 1);
    }
    if (numbers.size() != 2 && numbers.size() != 3) return {};
    return SpacePoint{numbers[0], numbers[1], numbers.size() == 3 ? numbers[2] : 0};
}

std::optional<std::vector<SpacePoint>> points_of(const Arguments& arguments, LengthUnit unit,
                                                 Console& console) {
    std::vector<SpacePoint> points;
    bool good = true;
    for (const std::string& text : arguments.all("--point")) {
        const std::optional<SpacePoint> point = parse_point(text, unit);
        good = good && point;
        if (point)
            points.push_back(*point);
        else
            console.err << fmt::format("error: `--point {}` is no point; expected X,Y,Z as lengths, such as "
                                       "\"12 ft,6 ft,0\"\n",
                                       printable(text));
    }
    return good ? std::optional(std::move(points)) : std::nullopt;
}

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::optional<LoadedSite> loaded = load_site(arguments, console);
    if (!loaded) return ExitStatus::wrong_input;
    const auto points = points_of(arguments, loaded->site->settings.units, console);
    const std::optional<PhotometricFiles> files = load_photometry(*loaded, console);
    if (!points || !files) return ExitStatus::wrong_input;
    LoadResult<Assessment> assessed = assess(loaded->site, loaded->catalog, &*files);
    print_errors(std::move(assessed.errors), *loaded, console);
    if (!assessed) return ExitStatus::wrong_input;
    Assessment& assessment = *assessed.value;
    const auto scene = load_light_scene(*assessment.site, *assessment.catalog, &assessment.solution, *files);
    if (scene) assessment.light->points = level_light_at(*scene.value, *points);
    if (arguments.text("--format") == "json")
        console.out << light_json(assessment);
    else
        console.out << light_text(assessment, {.colour = console.colour});
    return any_error(light_findings(assessment.findings)) ? ExitStatus::findings : ExitStatus::ok;
}

} // namespace

Command light_command() {
    return {
        .name = "light",
        .summary = "Compute the light on walks and falls, and what is seen from the viewpoints",
        .description =
            "Computes direct light point by point at the lamps' solved voltages: on the ground of every "
            "walk, on every falls face (through still water where a light is submerged), at the points "
            "asked for; which falls are seen from where, and which lights shine into the eye. Lights "
            "need no feed yet.",
        .arguments = {site_argument()},
        .options = {{.name = "--point",
                     .value = "X,Y,Z",
                     .help =
                         "Also give the level light at this point (lengths; bare numbers in the site's unit)",
                     .repeatable = true},
                    format_option(),
                    catalog_option()},
        .examples = {{"rillwatt light garden.toml", "every walk and every falls with a verdict"},
                     {"rillwatt light garden.toml --point \"12 ft,6 ft,0\"",
                      "and the light on the third step"}},
        .run = run};
}

} // namespace rillwatt
