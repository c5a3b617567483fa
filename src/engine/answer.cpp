#include "rillwatt/engine/answer.hpp"

#include "answers.hpp"

namespace rillwatt {

namespace {

struct Answered {
    std::string_view command;
    Answer (*by)(const Request&, FileSource&);
};

constexpr Answered all_answers[] = {
    {"catalog", catalog_answer}, {"check", check_answer},       {"circuits", circuits_answer},
    {"explain", explain_answer}, {"headroom", headroom_answer}, {"light", light_answer},
    {"place", place_answer},     {"plan", plan_answer},         {"report", report_answer},
    {"size", size_answer},
};

} // namespace

std::optional<Answer> answer(const Request& request, FileSource& files) {
    for (const Answered& answered : all_answers)
        if (answered.command == request.command) return answered.by(request, files);
    return std::nullopt;
}

std::vector<std::string_view> answered_commands() {
    std::vector<std::string_view> names;
    for (const Answered& answered : all_answers)
        names.push_back(answered.command);
    return names;
}

} // namespace rillwatt
