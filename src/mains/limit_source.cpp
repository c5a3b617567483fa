#include "rillwatt/mains/limit_source.hpp"

#include <fmt/core.h>

#include <array>

namespace rillwatt {

namespace {

constexpr std::array<int, 3> editions{2017, 2020, 2023};

std::string_view chapters_read(int edition) {
    if (edition == 2017) return "234679";
    if (edition == 2020) return "246";
    return "1234";
}

std::string editions_read(const LimitSource& source) {
    std::string text;
    for (const int edition : editions) {
        if (!article_was_read(article(source, edition), edition)) continue;
        text += fmt::format("{}{}", text.empty() ? "" : " and ", edition);
    }
    return text;
}

/// What is said of a figure that was remembered, not read: whoever acts on it looks it up first.
constexpr const char* not_at_hand = "text not at hand, confirm";

std::string iec_text(const LimitSource& source) { return fmt::format("{}, {}", source.iec, not_at_hand); }

/// "2017, 2020" for the editions that give it the same article as `edition`, when that one is the first of
/// them.
std::string editions_alike(const LimitSource& source, int edition) {
    std::string text;
    for (const int other : editions) {
        if (article(source, other) != article(source, edition)) continue;
        if (other < edition) return {};
        text += fmt::format("{}{}", text.empty() ? "" : ", ", other);
    }
    return text;
}

} // namespace

std::string_view article(const LimitSource& source, int edition) {
    if (edition <= 2017) return source.nec_2017;
    if (edition < 2023) return source.nec_2020;
    return source.nec_2023;
}

bool article_was_read(std::string_view article, int edition) {
    const auto digit = article.find_first_of("123456789");
    if (digit == std::string_view::npos) return false;
    return chapters_read(edition).find(article[digit]) != std::string_view::npos;
}

std::string source_text(const LimitSource& source, const SiteSettings& settings) {
    if (!source.practice.empty()) return std::string(source.practice);
    if (settings.code == CodeFamily::iec && !source.iec.empty()) return iec_text(source);
    const int edition = settings.code_edition;
    const std::string_view where = article(source, edition);
    if (where.empty()) return fmt::format("not in NFPA 70 ({})", edition);
    const std::string cited = fmt::format("NFPA 70 ({}) {}", edition, where);
    if (source.from_memory) return fmt::format("{}, {}", cited, not_at_hand);
    if (article_was_read(where, edition)) return cited;
    const std::string read = editions_read(source);
    return read.empty() ? fmt::format("{}, {}", cited, not_at_hand)
                        : fmt::format("{}, read in {}, confirm for {}", cited, read, edition);
}

std::string source_of_all_editions(const LimitSource& source) {
    if (!source.practice.empty()) return std::string(source.practice);
    std::string text;
    for (const int edition : editions) {
        const std::string alike = editions_alike(source, edition);
        if (alike.empty() || article(source, edition).empty()) continue;
        text += fmt::format("{}({}) {}", text.empty() ? "NFPA 70 " : ", ", alike, article(source, edition));
    }
    if (source.iec.empty()) return text;
    return fmt::format("{}{}{}", text, text.empty() ? "" : "; code = \"iec\": ", iec_text(source));
}

} // namespace rillwatt
