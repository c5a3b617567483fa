#pragma once

#include "support/temporary_folder.hpp"
#include <string>

namespace rillwatt::test {

/// Chromium on one page of ours, in a folder of its own that goes away with it.
class HeadlessBrowser {
  public:
    explicit HeadlessBrowser(const std::string& html);

    std::string dom() const;         ///< the document after loading, as markup
    std::string network_log() const; ///< what the browser asked for while it loaded the page
    int printed_pages() const;       ///< pages of its print to PDF

  private:
    std::string run(const std::string& options) const;

    TemporaryFolder folder_;
};

} // namespace rillwatt::test
