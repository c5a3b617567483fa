#pragma once

#include "rillwatt/search/problem.hpp"

#include <vector>

/// What can be said of a transformer before anything is chosen, from the least its lamps draw.
namespace rillwatt::search {

/// Least volt-amperes the lamps of a transformer draw, each at whichever end of its window it draws less.
double least_lamp_va(const TransformerProblem& transformer, Supplied supplied = Supplied::nominal);

/// Most amperes through the length that leads to each node of a run, every lamp within its window.
std::vector<double> most_amps(const RunProblem& run);

/// Least amperes through the length that leads to each node of a run, no lamp above `top` volts at its splice
/// and every lamp within its window.
std::vector<double> least_amps(const RunProblem& run, Supplied supplied, double top);

double most_amps_at_head(const RunProblem& run);

/// Whether a model may be loaded that far.
bool carries(const Model& model, double va, double loading);

/// Greatest `sag` (volts at a tap over the tap's nominal volts) of a model that supplies at least `va`.
double sag_under(const Model& model, double va, Supplied supplied = Supplied::nominal);

/// Least `sag` of a model: where the load reaches the loading limit.
double sag_at_limit(const Model& model, double loading);

/// Taps of a model that a run may use and that leave no lamp above its window whatever cable is chosen.
std::vector<double> bearable_taps(const SizeProblem& problem, const Model& model, const RunProblem& run);

/// A model as the head of one run sees it.
struct Supply {
    double price = 0;      ///< of the model
    double volts = 0;      ///< most there can be at the run's head
    double amps = 0;       ///< most one output gives
    double weak_volts = 0; ///< most there can be at the run's head on a weak supply
};

/// The models that may serve the transformer, each with the most it can give the run; by ascending price.
std::vector<Supply> supplies_of(const SizeProblem& problem, const TransformerProblem& transformer,
                                const RunProblem& run);

} // namespace rillwatt::search
