#include "rillwatt/light/photometric_file.hpp"

#include <algorithm>

namespace rillwatt {

double TiltTable::factor(double at) const {
    if (angles.empty()) return 1;
    if (at <= angles.front()) return factors.front();
    if (at >= angles.back()) return factors.back();
    const auto above = std::upper_bound(angles.begin(), angles.end(), at);
    const auto i = static_cast<std::size_t>(above - angles.begin());
    const double share = (at - angles[i - 1]) / (angles[i] - angles[i - 1]);
    return (1 - share) * factors[i - 1] + share * factors[i];
}

} // namespace rillwatt
