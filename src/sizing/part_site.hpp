#pragma once

#include "rillwatt/circuit/circuit.hpp"

#include <string>
#include <map>

namespace rillwatt::sizing {

/// Volt-amperes of all lamps behind a part, itself included, by id.
using Loads = std::map<std::string, double>;

/// One transformer of a site with all that hangs on it, as a site of its own to try changes on.
struct PartSite {
    Site site;
    SiteLengths lengths;

    /// What hangs on each run and part, found in one walk from the ends inwards.
    Loads loads(const Catalog& catalog) const;
    std::vector<std::string> fed_by(const std::string& part) const;
    std::optional<std::string> feed_of(const std::string& part) const;
    void feed_from(const std::string& part, const std::string& feed);
    /// Length of the cable that leads to a part; null for a run.
    std::optional<Metres>* length_to(const std::string& part);
    /// Parts from the run to the part, the run left out.
    std::vector<std::string> way_to(const std::string& part) const;
    Metres way_length(const std::string& part);
    std::string run_of(const std::string& part) const;

    /// Feeds about half of a run's load from a run of its own, laid along the same way. Returns the new run's
    /// id; empty when the run cannot be split.
    std::string split_run(const Catalog& catalog, const std::string& run);
    /// Hangs about a share of the load on a further transformer. False when there is nothing to move.
    bool add_transformer(const Catalog& catalog, int transformers);
};

PartSite part_site(const Site& site, const SiteLengths& lengths, const TransformerCircuit& circuit);

} // namespace rillwatt::sizing
