#include "pages/headless_browser.hpp"

#include <cstdlib>
#include <stdexcept>

namespace rillwatt::test {

namespace {

void shell(const std::string& command) {
    if (std::system(command.c_str()) != 0) throw std::runtime_error("failed: " + command);
}

} // namespace

HeadlessBrowser::HeadlessBrowser(const std::string& html) { put_file(folder_.file("page.html"), html); }

/// Runs the browser with options; its standard output comes back.
std::string HeadlessBrowser::run(const std::string& options) const {
    shell("timeout 60 chromium --headless --no-sandbox --disable-gpu --disable-quic --no-first-run "
          "--disable-background-networking --disable-component-update --disable-sync --disable-dev-shm-usage "
          "--user-data-dir='" +
          folder_.file("profile") + "' " + options + " 'file://" + folder_.file("page.html") + "' > '" +
          folder_.file("out") + "' 2> '" + folder_.file("err") + "'");
    return file_text(folder_.file("out"));
}

std::string HeadlessBrowser::dom() const { return run("--dump-dom"); }

std::string HeadlessBrowser::network_log() const {
    run("--dump-dom --log-net-log='" + folder_.file("net.json") + "'");
    return file_text(folder_.file("net.json"));
}

int HeadlessBrowser::printed_pages() const {
    run("--no-pdf-header-footer --print-to-pdf='" + folder_.file("page.pdf") + "'");
    shell("pdfinfo '" + folder_.file("page.pdf") + "' > '" + folder_.file("info") + "'");
    const std::string info = file_text(folder_.file("info"));
    const auto at = info.find("Pages:");
    if (at == std::string::npos) throw std::runtime_error("pdfinfo names no pages: " + info);
    return std::atoi(info.c_str() + at + 6);
}

} // namespace rillwatt::test
