#include "rillwatt/cli/asking.hpp"

#include "rillwatt/cli/disk_files.hpp"
#include "rillwatt/cli/process_memory.hpp"

#include <chrono>
#include <filesystem>
#include <ostream>
#include <system_error>

namespace rillwatt {

namespace {

/// Bytes of a file, 0 where nobody can tell.
std::size_t file_size(const std::string& path) {
    std::error_code fault;
    const std::uintmax_t bytes = std::filesystem::file_size(path, fault);
    return fault ? 0 : bytes;
}

double seconds_now() {
    return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

} // namespace

Answer ask(const std::string& command, const Arguments& arguments, const Console& console) {
    prepare_memory_for(file_size(arguments.text("SITE")));
    DiskFiles files;
    return answer({command, arguments, console.colour, seconds_now}, files).value();
}

ExitStatus say(const Answer& answer, Console& console) {
    console.out << answer.out;
    console.err << answer.err;
    return answer.status;
}

ExitStatus ask_and_say(const std::string& command, const Arguments& arguments, Console& console) {
    return say(ask(command, arguments, console), console);
}

void print_errors(const std::vector<InputError>& errors, Console& console) {
    for (const InputError& error : errors)
        console.err << input_error_text(error);
}

} // namespace rillwatt
