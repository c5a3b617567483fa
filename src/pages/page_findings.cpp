#include "rillwatt/text/cautions.hpp"
#include "rillwatt/text/check_text.hpp"
#include "rillwatt/text/escape.hpp"
#include "rillwatt/text/findings_words.hpp"

#include <fmt/format.h>

#include "page_html.hpp"
#include "page_sections.hpp"

namespace rillwatt {

namespace {

std::string about_light_html(const std::vector<Finding>& findings) {
    const std::string words = about_light_text(findings);
    return words.empty() ? "" : ", " + sentence_html(words);
}

std::string finding_html(const Finding& finding) {
    const char* severity = severity_name(finding.severity);
    std::string out =
        fmt::format("<div class=\"finding {}\"{}>\n<p>{}{} <span class=\"rule\">[{}]</span></p>\n", severity,
                    finding.part.empty() ? "" : part_attribute(finding.part), state_word(severity, severity),
                    sentence_html(finding.message), html_text(finding.rule));
    if (!finding.hint.empty()) out += fmt::format("<p><b>Fix:</b> {}</p>\n", sentence_html(finding.hint));
    std::string origin = "Source: " + html_text(finding.source);
    if (finding.location.line > 0)
        origin += fmt::format(". Written in {}, line {}", html_text(name_of_file(finding.location.file)),
                              finding.location.line);
    return out + fmt::format("<p class=\"small soft\">{}.</p>\n</div>\n", origin);
}

} // namespace

std::string findings_section(const ReportPageParts& parts) {
    const std::vector<Finding>& findings = parts.site.assessment.findings;
    std::string out = section_open("findings", "Findings");
    out += fmt::format(
        "<p>{}{}. An error: do not build it like this. A warning: it works, but decide knowingly. A note: "
        "worth knowing.</p>\n",
        findings_count_text(findings), about_light_html(findings));
    for (const Finding& finding : findings)
        out += finding_html(finding);
    return out + "</section>\n";
}

std::string cautions_section() {
    std::string out = section_open("cautions", "Cautions") + "<div class=\"caution\"><ul>\n";
    for (std::string_view sentence : cautions())
        out += fmt::format("<li>{}</li>\n", html_text(sentence));
    return out + "</ul></div>\n</section>\n";
}

} // namespace rillwatt
