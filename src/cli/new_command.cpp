#include "rillwatt/catalog/read_catalog.hpp"
#include "rillwatt/cli/asking.hpp"
#include "rillwatt/cli/commands.hpp"
#include "rillwatt/cli/file_access.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/mains/motor_current.hpp"
#include "rillwatt/site/read_site.hpp"
#include "rillwatt/site/starter_site.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "example_site.hpp"
#include <charconv>
#include <filesystem>
#include <istream>
#include <map>
#include <ostream>

namespace rillwatt {

namespace {

enum class AnswerKind { text, units, length, count, point, size, path, pump };

/// One question: asked when somebody sits at the keyboard, an option for everybody else.
struct Question {
    const char* option;
    const char* value;
    const char* words;
    const char* fallback; ///< taken when nothing is answered
    AnswerKind kind;
    const char* metric = nullptr; ///< the fallback of a garden measured in metres, where it is another

    const char* usual(LengthUnit units) const {
        return units == LengthUnit::metres && metric != nullptr ? metric : fallback;
    }
};

constexpr Question questions[] = {
    {"--name", "TEXT", "What is the garden called", "my garden", AnswerKind::text},
    {"--units", "UNITS", "Measured in ft or m", "ft", AnswerKind::units},
    {"--house-width", "LENGTH", "How wide is the house wall that faces the garden (0: no house)", "40",
     AnswerKind::length, "12"},
    {"--house-depth", "LENGTH", "How deep is the house", "25", AnswerKind::length, "8"},
    {"--outlet", "LENGTH", "How far along that wall, from its left end, is the outdoor outlet", "2",
     AnswerKind::length, "0.6"},
    {"--pond-at", "X,Y",
     "Where is the pond's nearest left corner: along the wall, away from it (empty: no pond)", "",
     AnswerKind::point},
    {"--pond-size", "WxL", "How wide and how long is the pond", "10x8", AnswerKind::size, "3x2.5"},
    {"--falls-width", "LENGTH", "How wide are the falls at its far edge (0: none)", "0", AnswerKind::length},
    {"--falls-drop", "LENGTH", "How high do they fall", "1.5", AnswerKind::length, "0.5"},
    {"--water-lights", "COUNT", "How many lights in the water", "0", AnswerKind::count},
    {"--path", "POINTS", "The path, as points \"X,Y X,Y ...\" along its middle (empty: no path)", "",
     AnswerKind::path},
    {"--path-width", "LENGTH", "How wide is the path", "4", AnswerKind::length, "1.2"},
    {"--path-lights", "COUNT", "How many lights along the path", "0", AnswerKind::count},
    {"--accent-lights", "COUNT", "How many lights on plants and walls", "0", AnswerKind::count},
    {"--pumps", "COUNT", "How many pumps", "0", AnswerKind::count},
    {"--pump-model", "MODEL", "Which pump, as `rillwatt catalog --kind pump` lists them", "pump-180w",
     AnswerKind::pump},
};

using Answers = std::map<std::string, std::string, std::less<>>;

std::vector<std::string> split(const std::string& text, const char* separators) {
    std::vector<std::string> parts;
    std::size_t at = 0;
    while ((at = text.find_first_not_of(separators, at)) != std::string::npos) {
        const std::size_t end = text.find_first_of(separators, at);
        parts.push_back(text.substr(at, end - at));
        at = end;
        if (end == std::string::npos) break;
    }
    return parts;
}

std::optional<Metres> length_answer(const std::string& text, LengthUnit units) {
    Arguments bare;
    bare.set("n", {text});
    if (const std::optional<double> number = bare.number("n"))
        return units == LengthUnit::feet ? feet(*number) : Metres(*number);
    return parse_length(text);
}

std::optional<PlanPoint> point_answer(const std::string& text, LengthUnit units) {
    std::vector<std::string> parts = split(text, ",");
    if (parts.size() != 2) return std::nullopt;
    parts[1].erase(0, parts[1].find_first_not_of(' ')); // "12, 20" is written as people write
    const std::optional<Metres> x = length_answer(parts[0], units);
    const std::optional<Metres> y = length_answer(parts[1], units);
    if (!x || !y) return std::nullopt;
    return PlanPoint{x->value(), y->value()};
}

std::optional<PlanPoint> size_answer(const std::string& text, LengthUnit units) {
    const std::vector<std::string> parts = split(text, "xX");
    if (parts.size() != 2) return std::nullopt;
    return point_answer(parts[0] + "," + parts[1], units);
}

std::optional<std::vector<PlanPoint>> path_answer(const std::string& text, LengthUnit units) {
    std::vector<PlanPoint> points;
    for (const std::string& word : split(text, " ;")) {
        const std::optional<PlanPoint> point = point_answer(word, units);
        if (!point) return std::nullopt;
        points.push_back(*point);
    }
    if (points.size() == 1) return std::nullopt;
    return points;
}

std::optional<int> count_answer(const std::string& text) {
    int count = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), count);
    if (fault != std::errc() || end != text.data() + text.size() || count < 0 || count > 200)
        return std::nullopt;
    return count;
}

/// The built-in pumps; a pump of the crew's own goes into a catalog file, which the first site file cannot
/// name yet.
Catalog known_parts() { return read_built_in_catalog().value.value_or(Catalog()); }

std::string pump_objection(const std::string& answer) {
    const Catalog catalog = known_parts();
    if (catalog.pumps.contains(answer)) return "";
    std::vector<std::string> names;
    for (const auto& [id, pump] : catalog.pumps)
        names.push_back(id);
    const std::optional<std::string> nearest = nearest_spelling(answer, names);
    return fmt::format(
        "there is no such pump in the catalog; {} (a pump of your own: take the nearest one now, then "
        "write yours into a catalog file beside the site)",
        nearest ? fmt::format("nearest is `{}`", *nearest)
                : fmt::format("there are {}", fmt::join(names, ", ")));
}

/// What is wrong with an answer; empty when nothing is.
std::string objection(const Question& question, const std::string& answer, LengthUnit units) {
    switch (question.kind) {
    case AnswerKind::text:
        return answer.empty() || answer.size() > 200 || printable(answer) != answer
                   ? "printable text of at most 200 letters is expected"
                   : "";
    case AnswerKind::units:
        return answer == "ft" || answer == "m" ? "" : "ft or m is expected";
    case AnswerKind::length: {
        const std::optional<Metres> length = length_answer(answer, units);
        if (length && length->value() >= 0 && length->value() <= 1000) return "";
        return "a length is expected: 12, \"12 ft 6 in\", \"3.8 m\"; at most 1 km";
    }
    case AnswerKind::count:
        return count_answer(answer) ? "" : "a whole number from 0 to 200 is expected";
    case AnswerKind::point:
        return answer.empty() || point_answer(answer, units) ? ""
                                                             : "two lengths with a comma are expected: 12,20";
    case AnswerKind::size: {
        const std::optional<PlanPoint> size = size_answer(answer, units);
        return size && size->x > 0 && size->y > 0 ? "" : "two lengths with an x are expected: 10x8";
    }
    case AnswerKind::pump:
        return pump_objection(answer);
    case AnswerKind::path:
        return path_answer(answer, units) ? "" : "at least two points are expected: \"0,4 12,4 20,8\"";
    }
    return "";
}

LengthUnit units_of(const Answers& answers) {
    const auto it = answers.find("--units");
    return it != answers.end() && it->second == "m" ? LengthUnit::metres : LengthUnit::feet;
}

/// Asks until the answer fits or the input ends; then the fallback.
std::string ask(const Question& question, LengthUnit units, Console& console) {
    for (;;) {
        const char* usual = question.usual(units);
        console.err << question.words << (*usual ? fmt::format(" [{}]", usual) : "") << "? " << std::flush;
        std::string answer;
        if (!std::getline(console.in, answer)) return usual;
        if (answer.empty()) answer = usual;
        const std::string problem = objection(question, answer, units);
        if (problem.empty()) return answer;
        console.err << "  " << problem << '\n';
    }
}

/// Every answer, or nothing when an option's value is wrong; all wrong ones are named at once.
std::optional<Answers> gather(const Arguments& arguments, Console& console) {
    Answers answers;
    bool sound = true;
    if (!console.interactive && !arguments.has("--unattended"))
        console.err
            << "rillwatt new: not at a terminal, so nothing is asked and standard input is not read; what no "
               "option says keeps its usual value (--unattended says the same without this remark)\n";
    for (const Question& question : questions) {
        if (arguments.has(question.option)) {
            answers[question.option] = arguments.text(question.option);
            const std::string problem = objection(question, answers[question.option], units_of(answers));
            if (problem.empty()) continue;
            console.err << fmt::format("rillwatt new: {} `{}`: {}\n", question.option,
                                       printable(answers[question.option]), problem);
            sound = false;
        } else if (console.interactive && !arguments.has("--unattended")) {
            answers[question.option] = ask(question, units_of(answers), console);
        } else {
            answers[question.option] = question.usual(units_of(answers));
        }
    }
    if (answers["--pond-at"].empty() && count_answer(answers["--water-lights"]).value_or(0) > 0) {
        console.err << "rillwatt new: lights in the water and no pond: `--pond-at` says where it is\n";
        sound = false;
    }
    if (!sound) return std::nullopt;
    return answers;
}

void describe_pump(StarterAnswers& a) {
    const Catalog catalog = known_parts();
    const PumpType* pump = find_entry(catalog.pumps, a.pump_model);
    if (pump == nullptr) return;
    a.pump_cord = pump->cord;
    a.pump_hardwired = !pump->cord_and_plug;
    if (!nameplate_fits(pump->volts, SiteSettings{}.supply_voltage)) a.pump_volts = pump->volts;
}

StarterAnswers understood(const Answers& answers) {
    const LengthUnit units = units_of(answers);
    const auto length = [&](const char* name) {
        return length_answer(answers.at(name), units).value_or(Metres(0));
    };
    const auto count = [&](const char* name) { return count_answer(answers.at(name)).value_or(0); };
    StarterAnswers a{.name = answers.at("--name"),
                     .units = units,
                     .house_width = length("--house-width"),
                     .house_depth = length("--house-depth"),
                     .outlet = length("--outlet"),
                     .falls_width = length("--falls-width"),
                     .falls_drop = length("--falls-drop"),
                     .path = path_answer(answers.at("--path"), units).value_or(std::vector<PlanPoint>()),
                     .path_width = length("--path-width"),
                     .water_lights = count("--water-lights"),
                     .path_lights = count("--path-lights"),
                     .accent_lights = count("--accent-lights"),
                     .pumps = count("--pumps"),
                     .pump_model = answers.at("--pump-model")};
    if (a.pumps > 0) describe_pump(a);
    if (const auto corner = point_answer(answers.at("--pond-at"), units)) {
        const PlanPoint size = size_answer(answers.at("--pond-size"), units).value_or(PlanPoint{3, 3});
        a.pond = StarterPond{*corner, Metres(size.x), Metres(size.y)};
    }
    return a;
}

ExitStatus refuse(const std::string& path, const std::string& problem, Console& console) {
    console.err << fmt::format("rillwatt new: {}: {}; nothing was written over\n", printable(path), problem);
    return ExitStatus::wrong_input;
}

ExitStatus write_example(const std::string& given, Console& console) {
    const std::string folder = given.empty() ? "fernhollow" : given;
    std::error_code fault;
    if (!std::filesystem::create_directory(folder, fault) && fault)
        return refuse(folder, fault.message(), console);
    for (const ExampleFile& file : example_files())
        if (std::filesystem::exists(folder + "/" + file.name, fault))
            return refuse(folder + "/" + file.name, "the file exists already", console);
    for (const ExampleFile& file : example_files()) {
        const std::string path = folder + "/" + file.name;
        const std::string problem = write_new_file(path, std::string(file.text));
        if (!problem.empty()) return refuse(path, problem, console);
        console.out << path << '\n';
    }
    console.err << fmt::format("Next: rillwatt check {}/site.toml\n", printable(folder));
    return ExitStatus::ok;
}

ExitStatus run(const Arguments& arguments, Console& console) {
    const std::string& path = arguments.text("FILE");
    if (arguments.has("--example")) return write_example(path, console);
    if (path.empty()) return refuse("FILE", "the name of the file to write is missing", console);
    std::error_code fault;
    if (std::filesystem::exists(std::filesystem::symlink_status(path, fault)))
        return refuse(path, "the file exists already", console);
    const std::optional<Answers> answers = gather(arguments, console);
    if (!answers) return ExitStatus::wrong_input;
    const std::string text = starter_site(understood(*answers));
    if (const LoadResult<Site> site = read_site(text, path); !site) {
        console.err << "rillwatt new: these answers make no garden that can be read; nothing was written\n";
        print_errors(site.errors, console);
        return ExitStatus::wrong_input;
    }
    const std::string problem = write_new_file(path, text);
    if (!problem.empty()) return refuse(path, problem, console);
    console.out << path << '\n';
    console.err << fmt::format(
        "Assumed, for the electrician to confirm: breaker, GFCI and cover of each circuit; see "
        "the file.\nNext: rillwatt check {0}\nThen: rillwatt size {0} --write\n",
        printable(path));
    return ExitStatus::ok;
}

std::string help_of(const Question& question) {
    if (!*question.fallback) return question.words;
    const std::string metric =
        question.metric == nullptr ? "" : fmt::format(", in metres {}", question.metric);
    return fmt::format("{} (else {}{})", question.words, question.fallback, metric);
}

std::vector<OptionSpec> options() {
    std::vector<OptionSpec> specs;
    for (const Question& question : questions)
        specs.push_back({.name = question.option, .value = question.value, .help = help_of(question)});
    specs.push_back(
        {.name = "--unattended", .help = "ask nothing: what no option says is left as it is in brackets"});
    specs.push_back({.name = "--example",
                     .help = "write the example garden with its catalog into a folder of that name"});
    return specs;
}

} // namespace

Command new_command() {
    return {.name = "new",
            .summary = "Write a first site file from a dozen questions",
            .description =
                "Asks at a terminal; elsewhere every question is an option. Measures go from the left end of "
                "the house wall that faces the garden: along the wall, then away from it. Never writes over "
                "a file.",
            .arguments = {{.name = "FILE",
                           .help = "the site file to write; with --example a folder",
                           .required = false}},
            .options = options(),
            .examples = {{"rillwatt new garden.toml", "ask, then write garden.toml"},
                         {"rillwatt new --example", "write the example garden into the folder fernhollow"}},
            .run = run};
}

} // namespace rillwatt
