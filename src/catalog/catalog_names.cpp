#include "catalog_names.hpp"

#include "rillwatt/catalog/catalog.hpp"

namespace rillwatt {

const char* fixture_kind_name(FixtureKind kind) {
    return fixture_kind_names[static_cast<std::size_t>(kind)].data();
}

const char* load_model_name(LoadModel model) {
    return load_model_names[static_cast<std::size_t>(model)].data();
}

const char* water_rating_name(WaterRating rating) {
    return water_rating_names[static_cast<std::size_t>(rating)].data();
}

} // namespace rillwatt
