#pragma once

#include "rillwatt/circuit/circuit.hpp"
#include "rillwatt/solver/site_solution.hpp"

#include <string>

namespace rillwatt::test {

/// What a lamp of a test garden is like; left out: a plain constant-power lamp without lead.
struct LampSpec {
    LoadModel load = LoadModel::constant_power;
    double va = 0;
    double rated_volts = 12;
    double watts = -1; ///< left out: as many as volt-amperes
    double lead_metres = 0;
    std::string lead_cable;
};

/// A site and its catalog, written down in code: no file is read. Lengths are metres, resistances those of
/// ONE conductor. Parts stand in the "file" in the order in which they are added, one on each line.
class Garden {
  public:
    Site site;
    Catalog catalog;

    Garden();

    /// A cable type with the same resistance at every temperature.
    Garden& cable(const std::string& id, double ohms_per_metre);
    Garden& cable(const std::string& id, double ohms_per_metre, Celsius reference, double coefficient);
    Garden& lamp_type(const std::string& id, const LampSpec& spec);
    /// An ideal transformer: it has every tap asked for, and no regulation.
    Garden& ideal_transformer(const std::string& id);
    Garden& transformer(const std::string& id, double va, double regulation, const std::vector<double>& taps);
    Garden& run(const std::string& id, const std::string& from, double tap, const std::string& cable);
    Garden& splice(const std::string& id, const std::string& from, double metres,
                   const std::string& cable = {});
    Garden& fixture(const std::string& id, const std::string& from, double metres, const std::string& model,
                    const std::string& cable = {});
    Garden& link(const std::string& id, const std::string& a, const std::string& b, double metres,
                 const std::string& cable);

    /// Typed lengths only.
    SiteLengths lengths() const;
    LoadResult<SiteCircuits> build() const;
    /// The only circuit of the garden; fails the test when there are errors.
    TransformerCircuit circuit() const;
    SiteSolution solve() const;

  private:
    SourceLocation next_line();
    int line_ = 0;
};

/// The lamp of a fixture in a case; throws when it is not there.
const LampResult& lamp(const Garden& garden, const CaseResult& result, const std::string& fixture);

/// The segment that leads to a part (or the link of that id).
const SegmentResult& segment_to(const CaseResult& result, const std::string& id);

} // namespace rillwatt::test
