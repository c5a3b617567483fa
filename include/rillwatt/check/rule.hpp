#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/finding/finding.hpp"
#include "rillwatt/layout/places.hpp"
#include "rillwatt/layout/site_lengths.hpp"
#include "rillwatt/limits/breach.hpp"
#include "rillwatt/site/site.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <concepts>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

struct MainsSummary; // mains/mains_summary.hpp
struct LightResult;  // light/light_result.hpp

/// Everything a rule may look at: what was written and what was computed, nothing else.
struct RuleContext {
    const Site& site;
    const Catalog& catalog;
    const AreaIndex& areas; ///< of the site: where water is
    const SiteLengths& lengths;
    const SiteCircuits& circuits;
    const SiteSolution& solution;
    const std::vector<Breach>& breaches; ///< the limits that the solution breaks
    const MainsSummary& mains;
    const LightResult* light = nullptr; ///< null: light was not computed, light rules do not run
};

/// Which part of the work a rule belongs to; light rules run only where light is computed.
enum class RuleGroup { low_voltage, plan, mains, light };

/// Document, edition, article; or "common practice, no source". Words that have to be put together are so
/// only when somebody asks for them.
class RuleSource {
  public:
    RuleSource() = default;
    RuleSource(const char* words) : words_(words) {}
    RuleSource(std::string_view words) : words_(words) {}
    template<std::convertible_to<std::string (*)()> Compose>
    RuleSource(Compose compose) : compose_(compose) {}

    std::string text() const { return compose_ != nullptr ? compose_() : std::string(words_); }

  private:
    std::string_view words_;
    std::string (*compose_)() = nullptr;
};

/// One rule: what it looks for, where its limit comes from, and the function that finds breaches.
struct Rule {
    std::string_view id;
    RuleGroup group = RuleGroup::low_voltage;
    std::string_view severity;    ///< in words: "error", "error in nominal, warning in weak"
    std::string_view summary;     ///< one line: what it looks for
    std::string_view explanation; ///< why, and how to fix it
    RuleSource source;
    std::vector<Finding> (*find)(const RuleContext&) = nullptr;
};

/// Every rule there is. A new rule is one line in src/check/all_rules.cpp.
const std::vector<Rule>& all_rules();

/// Runs every rule of the groups that can be judged; findings worst first.
std::vector<Finding> run_rules(const RuleContext& context);

} // namespace rillwatt
