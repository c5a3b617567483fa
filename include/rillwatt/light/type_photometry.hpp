#pragma once

#include "rillwatt/catalog/catalog.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/light/light_distribution.hpp"
#include "rillwatt/light/light_result.hpp"
#include "rillwatt/light/photometric_file.hpp"

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace rillwatt {

/// The light of one catalog entry.
struct TypePhotometry {
    LightDistribution distribution;
    TiltTable tilt;
};

/// The light of catalog entries by id, with what was odd about their files.
struct Photometry {
    std::map<std::string, std::shared_ptr<const TypePhotometry>, std::less<>> types;
    std::vector<LightRemark> remarks;
    std::vector<LumenMismatch> mismatches;
};

/// Photometric files that these catalog entries name, each once: what to read before asking for light.
std::vector<std::string> photometric_paths(const Catalog& catalog, const std::vector<std::string>& type_ids);

/// Prepares the light of catalog entries. A file that is missing or malformed is an input error.
LoadResult<Photometry> prepare_photometry(const Catalog& catalog, const std::vector<std::string>& type_ids,
                                          const PhotometricFiles& files);

} // namespace rillwatt
