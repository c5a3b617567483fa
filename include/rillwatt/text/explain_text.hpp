#pragma once

#include "rillwatt/check/assessment.hpp"
#include "rillwatt/text/text_style.hpp"

#include <optional>
#include <string>

namespace rillwatt {

/// The arithmetic behind one part's volts and amperes, with tables and formulas named, in steps that a pocket
/// calculator follows: a fixture, a splice, a run or a transformer; of a branch circuit or a pump, what is on
/// the circuit. `result` is the case to explain. Empty when `id` names no such part.
std::optional<std::string> explain_text(const Assessment& assessment, const CaseResult& result,
                                        const std::string& id, const TextStyle& style);

} // namespace rillwatt
