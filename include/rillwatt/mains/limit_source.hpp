#pragma once

#include "rillwatt/site/site.hpp"

#include <string>
#include <string_view>

namespace rillwatt {

/// Where one limit is written, edition by edition of NFPA 70 (the NEC), and what stands in its place
/// elsewhere. Articles start with their number ("680.51(A)", "Table 310.16", "chapter 9 Table 9"); the first
/// digit is the chapter.
struct LimitSource {
    std::string_view nec_2017;
    std::string_view nec_2020;
    std::string_view nec_2023;
    bool from_memory = false;  ///< the figure itself was remembered, whatever the edition
    std::string_view iec;      ///< document and clause for sites with code = "iec"; always from memory
    std::string_view practice; ///< set instead of the rest: a habit of the trade
};

/// A limit with the place it is written: the figure stands here once and nowhere else.
template<class Value>
struct CodeLimit {
    Value value;
    LimitSource source;
};

/// A limit no code gives.
constexpr LimitSource common_practice{.practice = "common practice, no source"};

/// The article of an NEC edition; empty where that edition has none.
std::string_view article(const LimitSource& source, int edition);

/// Whether the text of that article was read in that edition while the figures were collected: chapters 2, 3,
/// 4, 6, 7 and 9 of 2017; 2, 4 and 6 of 2020; 1 to 4 of 2023.
bool article_was_read(std::string_view article, int edition);

/// The source in one line for the code and edition a site works to: "NFPA 70 (2020) 680.51(A)"; where that
/// edition was not read, with the ones that were, and that it is to be confirmed.
std::string source_text(const LimitSource& source, const SiteSettings& settings);

/// The source over all editions, for the list of rules: "NFPA 70 (2017, 2020) 411.7, (2023) 411.8".
std::string source_of_all_editions(const LimitSource& source);

} // namespace rillwatt
