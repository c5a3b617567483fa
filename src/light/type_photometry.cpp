#include "rillwatt/light/type_photometry.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace rillwatt {
namespace {

constexpr double lumen_agreement = 0.05; ///< a file and its catalog entry may differ by this much

const FileDistribution* named_file(const Catalog& catalog, const std::string& type_id) {
    const FixtureType* type = find_entry(catalog.fixtures, type_id);
    return type != nullptr ? std::get_if<FileDistribution>(&type->distribution) : nullptr;
}

void compare_lumens(const FixtureType& type, double flux, Photometry& photometry) {
    const double stated = type.lumens.value();
    if (stated <= 0 || std::abs(flux - stated) <= lumen_agreement * stated) return;
    photometry.mismatches.push_back({type.id, type.location, type.lumens, Lumens(flux)});
}

/// Reads the file of one entry into `photometry`, or adds what stands in the way to `errors`.
void prepare_from_file(const FixtureType& type, const std::string& path, const PhotometricFiles& files,
                       Photometry& photometry, std::vector<InputError>& errors) {
    const auto text = files.find(path);
    if (text == files.end()) {
        errors.push_back({type.location,
                          fmt::format("the photometric file {} of `{}` cannot be read", path, type.id),
                          "an LM-63 or EULUMDAT file at that place",
                          {}});
        return;
    }
    LoadResult<PhotometricFile> file = read_photometric_file(text->second, path);
    if (!file) {
        errors.insert(errors.end(), file.errors.begin(), file.errors.end());
        return;
    }
    photometry.remarks.insert(photometry.remarks.end(), file.value->remarks.begin(),
                              file.value->remarks.end());
    auto web = std::make_shared<const PhotometricWeb>(std::move(file.value->web));
    compare_lumens(type, web->flux(), photometry);
    photometry.types[type.id] = std::make_shared<const TypePhotometry>(
        TypePhotometry{LightDistribution::web(std::move(web)), std::move(file.value->tilt)});
}

} // namespace

std::vector<std::string> photometric_paths(const Catalog& catalog, const std::vector<std::string>& type_ids) {
    std::vector<std::string> paths;
    for (const std::string& id : type_ids) {
        const FileDistribution* file = named_file(catalog, id);
        if (file != nullptr && std::find(paths.begin(), paths.end(), file->path) == paths.end())
            paths.push_back(file->path);
    }
    return paths;
}

LoadResult<Photometry> prepare_photometry(const Catalog& catalog, const std::vector<std::string>& type_ids,
                                          const PhotometricFiles& files) {
    Photometry photometry;
    std::vector<InputError> errors;
    for (const std::string& id : type_ids) {
        const FixtureType* type = find_entry(catalog.fixtures, id);
        if (type == nullptr || photometry.types.count(id) > 0) continue;
        if (const auto* file = std::get_if<FileDistribution>(&type->distribution)) {
            prepare_from_file(*type, file->path, files, photometry, errors);
            continue;
        }
        photometry.types[id] = std::make_shared<const TypePhotometry>(
            TypePhotometry{LightDistribution::closed_form(type->distribution, type->lumens), {}});
    }
    if (!errors.empty()) return {std::nullopt, std::move(errors)};
    return {std::move(photometry), {}};
}

} // namespace rillwatt
