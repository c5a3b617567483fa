#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/search/size_options.hpp"
#include "rillwatt/site/site.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

/// How much is known about an answer.
enum class SizeStatus {
    optimal,    ///< the lower bound meets the cost
    feasible,   ///< it works; how far it may be from the optimum is known
    infeasible, ///< nothing works, or nothing was found
};

const char* size_status_name(SizeStatus status);

/// One value to put into the site file.
struct SizeChoice {
    std::string part;               ///< id in the site file
    std::string what;               ///< "cable", "tap" or "model"
    std::string value;              ///< catalog id, or volts as written
    std::optional<std::string> was; ///< empty: it was open
    std::optional<Volts> volts;     ///< the value of a tap as a number
    std::optional<Volts> was_volts; ///< and what it was
};

/// Why a transformer cannot be served, every figure computed.
struct Infeasibility {
    std::string transformer;
    std::string part;            ///< worst served lamp; the run or transformer where that is not what fails
    std::optional<Volts> best;   ///< the most that lamp can get with everything at its best
    std::optional<Volts> needed; ///< the end of its window it does not reach, margin included
    std::string reason;          ///< one sentence
    std::string suggestion;      ///< the smallest change that fixes it
    std::vector<std::string> other_ways;
    bool proven = true; ///< false: the effort ran out before anything that works was found
};

/// What binds a run: the limit it is nearest to, and what the next cheaper cable would have broken.
struct SizeReason {
    std::string part;    ///< run or transformer
    std::string binds;   ///< "path-9 gets 11.02 V of the 11 V it needs"
    std::string cheaper; ///< "14/2 would leave path-9 10.41 V"; empty when nothing is cheaper
};

struct SizeResult {
    SizeStatus status = SizeStatus::infeasible;
    std::optional<Money> cost; ///< cable and transformers of the whole site; empty when nothing was found
    std::optional<Money> lower_bound; ///< empty when infeasible
    std::vector<SizeChoice> choices;
    std::shared_ptr<const Site> sized; ///< the site with the choices in place
    std::optional<Infeasibility> infeasible;
    std::vector<SizeReason> reasons;
    std::vector<std::string> unpriced;      ///< typed entries without a price, counted at nothing
    std::vector<std::string> left_out;      ///< transformers with a length still open
    std::vector<std::string> beyond_strong; ///< runs that nothing serves with taps that suit a strong supply
    std::size_t steps = 0;                  ///< labels and combinations examined

    /// (cost - bound) / cost; 0 when proven or nothing is known.
    double gap() const;
};

/// Chooses what a site leaves open at the least cost of cable and transformers.
///
/// Method. Each run's tree is searched by label-setting from the lamps to the transformer
/// (search/labels.hpp), the labels of a transformer's runs are joined best first over the one number that
/// couples them, its sag (search/transformer_search.hpp), and whole spools are settled over the site
/// (search/spooled_site.hpp). What is proposed is put before the circuit solver; only what holds there is
/// an answer. The bound is the cost of the cheapest candidate that has not been refuted.
LoadResult<SizeResult> size_site(const std::shared_ptr<const Site>& site,
                                 const std::shared_ptr<const Catalog>& catalog, const SizeOptions& options);

/// As above with the lengths already measured.
LoadResult<SizeResult> size_site(const std::shared_ptr<const Site>& site, const Catalog& catalog,
                                 const SiteLengths& lengths, const SizeOptions& options);

} // namespace rillwatt
