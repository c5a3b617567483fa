#include "answers.hpp"

#include "rillwatt/exchange/errors_json.hpp"

namespace rillwatt {

bool wants_json(const Request& request) { return request.arguments.text("--format") == "json"; }

TextStyle text_style(const Request& request) { return {.colour = request.colour}; }

SiteFiles site_files(const Request& request) {
    return {request.arguments.text("SITE"), request.arguments.all("--catalog")};
}

ExitStatus status_of(const std::vector<Finding>& findings) {
    return any_error(findings) ? ExitStatus::findings : ExitStatus::ok;
}

Answer refused(const Request& request, const std::vector<InputError>& errors) {
    Answer answer{.status = ExitStatus::wrong_input};
    for (const InputError& error : errors)
        answer.err += input_error_text(error);
    if (wants_json(request)) answer.out = errors_json(request.command, errors);
    return answer;
}

Answer refused(const Request& request, const std::string& who, const std::string& words) {
    Answer answer{.status = ExitStatus::wrong_input, .err = who + ": " + words + "\n"};
    if (wants_json(request)) answer.out = errors_json(request.command, {{.found = words}});
    return answer;
}

} // namespace rillwatt
