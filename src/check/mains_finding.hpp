#pragma once

#include "rillwatt/check/rule.hpp"
#include "rillwatt/mains/limit_source.hpp"
#include "rillwatt/mains/mains_summary.hpp"

#include <optional>
#include <string>
#include <vector>

namespace rillwatt {

// What the rules of the line-voltage side share.

/// A finding about one part, with the source as the site's code and edition have it.
Finding finding_about(const RuleContext& context, const Part& part, Severity severity, std::string message,
                      std::string hint, const LimitSource& source);

/// A note that a rule cannot judge a part: what is missing and what to write; and, where that is nothing but
/// values of the part itself, their keys.
Finding cannot_judge(const RuleContext& context, const Part& part, const std::string& missing,
                     const std::string& write, const LimitSource& source,
                     std::vector<std::string_view> open_keys = {});

/// Where code = "iec": the one note that names the limits of the US code that are not judged there.
Finding not_judged_abroad(const RuleContext& context);

/// The circuit a summary belongs to, as written.
const BranchCircuit& written(const RuleContext& context, const MainsCircuit& circuit);

/// The circuit that feeds a load, or null.
const BranchCircuit* circuit_named(const Site& site, const std::optional<std::string>& id);

/// A distance for a message, in the site's units, fine enough to be told from a limit it just misses: "5.98
/// ft".
std::string length_in(const RuleContext& context, Metres length);

/// A burial depth for a message: "18 in".
std::string depth_in(const RuleContext& context, Metres depth);

/// Distances on the plan are uncertain by rounding only: a point drawn at a limit keeps it.
inline constexpr Metres plan_slack{1e-6};

/// "a", "a and b", "a, b and c".
std::string joined(const std::vector<std::string>& words);

/// The first few names, and how many more.
std::string some_of(std::vector<std::string> ids);

bool abroad(const RuleContext& context);

} // namespace rillwatt
