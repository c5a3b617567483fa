#pragma once

#include "rillwatt/search/effort.hpp"
#include "rillwatt/search/trial.hpp"

#include "gather_problem.hpp"
#include "part_site.hpp"
#include <functional>

namespace rillwatt::sizing {

/// What is wrong with a transformer when all that is open is at its best.
struct Trouble {
    BreachKind breach = BreachKind::none;
    std::string part; ///< lamp, run or transformer
    std::string run;  ///< the run concerned; empty when it is the transformer as a whole
};

/// Changes that make a transformer work, each tried; smallest first.
struct Remedied {
    std::vector<std::string> ways;
    bool all_tried = true; ///< false: the effort ran out before
};

Remedied find_remedies(const PartSite& part, const Catalog& catalog, const SizeOptions& options,
                       const Trouble& trouble, Effort& effort);

} // namespace rillwatt::sizing
