#include "rillwatt/light/photometric_web.hpp"

#include <algorithm>
#include <utility>

namespace rillwatt {
namespace {

constexpr double angle_slack = 1e-9;

/// Where an angle falls among ascending angles: the lower neighbour and the share of the way to the next.
struct Place {
    std::size_t below = 0;
    double share = 0;
};

Place place_among(const std::vector<double>& angles, double angle) {
    if (angles.size() < 2 || angle <= angles.front()) return {};
    if (angle >= angles.back()) return {angles.size() - 2, 1.0};
    const auto above = std::upper_bound(angles.begin(), angles.end(), angle);
    const auto below = static_cast<std::size_t>(above - angles.begin()) - 1;
    return {below, (angle - angles[below]) / (angles[below + 1] - angles[below])};
}

double safe_asin_degrees(double sine) { return std::asin(std::clamp(sine, -1.0, 1.0)) / degree; }

/// Integral of (c + m t) cos t between two latitudes, the intensity running linearly from `i0` to `i1`.
double latitude_step(double t0, double i0, double t1, double i1) {
    const double slope = (i1 - i0) / (t1 - t0);
    const auto antiderivative = [&](double t, double i) { return i * std::sin(t) + slope * std::cos(t); };
    return antiderivative(t1, i1) - antiderivative(t0, i0);
}

/// Flux on a mesh of latitudes and longitudes (degrees): exact along latitude, trapezoids along longitude.
template<class Value>
double mesh_flux(const std::vector<double>& latitudes, const std::vector<double>& longitudes, Value value) {
    double flux = 0;
    double before = 0;
    for (std::size_t j = 0; j < longitudes.size(); ++j) {
        double strip = 0;
        for (std::size_t i = 1; i < latitudes.size(); ++i)
            strip +=
                latitude_step(latitudes[i - 1] * degree, value(i - 1, j), latitudes[i] * degree, value(i, j));
        if (j > 0) flux += 0.5 * (before + strip) * (longitudes[j] - longitudes[j - 1]) * degree;
        before = strip;
    }
    return longitudes.size() == 1 ? before * 2 * pi : flux;
}

void copy_group(std::vector<double>& to, const std::vector<double>& from, std::size_t group,
                std::size_t size) {
    const auto begin = from.begin() + static_cast<std::ptrdiff_t>(group * size);
    to.insert(to.end(), begin, begin + static_cast<std::ptrdiff_t>(size));
}

/// The stored angle that stands for `angle` (0 to 360).
double folded(WebSymmetry symmetry, double angle) {
    switch (symmetry) {
    case WebSymmetry::axial:
        return 0;
    case WebSymmetry::quadrant:
        return std::abs(std::fmod(angle + 90, 180) - 90);
    case WebSymmetry::mirror_0_180:
        return std::min(angle, 360 - angle);
    case WebSymmetry::mirror_90_270:
        if (angle < 90) return 180 - angle;
        return angle > 270 ? 540 - angle : angle;
    case WebSymmetry::none:
        break;
    }
    return angle;
}

/// Every angle of the full circle that folds onto a stored one, ascending, 0 and 360 among them.
std::vector<double> unfolded_angles(WebSymmetry symmetry, const std::vector<double>& stored) {
    std::vector<double> angles;
    for (const double a : stored) {
        angles.push_back(a);
        if (symmetry == WebSymmetry::quadrant) angles.insert(angles.end(), {180 - a, 180 + a, 360 - a});
        if (symmetry == WebSymmetry::mirror_0_180) angles.push_back(360 - a);
        if (symmetry == WebSymmetry::mirror_90_270) angles.push_back(a <= 180 ? 180 - a : 540 - a);
    }
    angles.push_back(360);
    std::sort(angles.begin(), angles.end());
    const auto same = [](double a, double b) { return std::abs(a - b) < 1e-7; };
    angles.erase(std::unique(angles.begin(), angles.end(), same), angles.end());
    return angles;
}

std::size_t nearest_stored(const std::vector<double>& stored, double angle) {
    const auto nearer = [angle](double a, double b) { return std::abs(a - angle) < std::abs(b - angle); };
    return static_cast<std::size_t>(std::min_element(stored.begin(), stored.end(), nearer) - stored.begin());
}

} // namespace

PhotometricWeb::PhotometricWeb(PhotometricType type, std::vector<double> vertical,
                               std::vector<double> horizontal, std::vector<double> candela)
    : type_(type), vertical_(std::move(vertical)), horizontal_(std::move(horizontal)),
      candela_(std::move(candela)) {
    if (!candela_.empty()) peak_ = *std::max_element(candela_.begin(), candela_.end());
    peaks_.resize(vertical_.size(), 0);
    for (std::size_t i = 0; i < candela_.size(); ++i)
        peaks_[i % peaks_.size()] = std::max(peaks_[i % peaks_.size()], candela_[i]);
}

double PhotometricWeb::peak_between(double low, double high) const {
    if (type_ != PhotometricType::c) return peak_;
    double peak = 0;
    for (std::size_t v = 0; v < vertical_.size(); ++v) {
        const bool below = v + 1 < vertical_.size() ? vertical_[v + 1] < low : vertical_[v] < low;
        const bool above = v > 0 ? vertical_[v - 1] > high : vertical_[v] > high;
        if (!below && !above) peak = std::max(peak, peaks_[v]);
    }
    return peak;
}

double PhotometricWeb::at(double vertical, double horizontal) const {
    if (vertical < vertical_.front() - angle_slack || vertical > vertical_.back() + angle_slack) return 0;
    const Place v = place_among(vertical_, vertical);
    const auto along_group = [&](std::size_t h) {
        return (1 - v.share) * stored(h, v.below) + v.share * stored(h, v.below + 1);
    };
    if (horizontal_.size() == 1) return along_group(0);
    if (horizontal < horizontal_.front() - angle_slack || horizontal > horizontal_.back() + angle_slack)
        return 0;
    const Place h = place_among(horizontal_, horizontal);
    return (1 - h.share) * along_group(h.below) + h.share * along_group(h.below + 1);
}

double PhotometricWeb::towards(const LocalDirection& d) const {
    switch (type_) {
    case PhotometricType::a:
        return at(safe_asin_degrees(d.u), std::atan2(d.w, d.along) / degree);
    case PhotometricType::b:
        return at(std::atan2(d.u, d.along) / degree, safe_asin_degrees(d.w));
    case PhotometricType::c:
        break;
    }
    const double vertical = std::acos(std::clamp(d.along, -1.0, 1.0)) / degree;
    if (horizontal_.size() == 1) return at(vertical, 0);
    const double horizontal = std::atan2(d.w, d.u) / degree;
    return at(vertical, horizontal < 0 ? horizontal + 360 : horizontal);
}

double PhotometricWeb::flux() const {
    const auto by_vertical = [this](std::size_t v, std::size_t h) { return stored(h, v); };
    const auto by_horizontal = [this](std::size_t h, std::size_t v) { return stored(h, v); };
    if (type_ == PhotometricType::a) return mesh_flux(vertical_, horizontal_, by_vertical);
    if (type_ == PhotometricType::b) return mesh_flux(horizontal_, vertical_, by_horizontal);
    std::vector<double> latitudes = vertical_;
    for (double& latitude : latitudes)
        latitude -= 90; // sin of the angle off the axis is cos of the latitude
    return mesh_flux(latitudes, horizontal_, by_vertical);
}

PhotometricWeb unfold_type_c(WebSymmetry symmetry, std::vector<double> vertical,
                             const std::vector<double>& horizontal, const std::vector<double>& candela) {
    if (symmetry == WebSymmetry::axial || horizontal.size() == 1)
        return {PhotometricType::c, std::move(vertical), {0}, candela};
    const bool closed = symmetry != WebSymmetry::none || horizontal.back() > 360 - 1e-7;
    std::vector<double> angles = unfolded_angles(symmetry, horizontal);
    std::vector<double> unfolded;
    for (const double angle : angles) {
        const bool repeats_zero = !closed && angle > horizontal.back() + 1e-7;
        const std::size_t group = repeats_zero ? 0 : nearest_stored(horizontal, folded(symmetry, angle));
        copy_group(unfolded, candela, group, vertical.size());
    }
    return {PhotometricType::c, std::move(vertical), std::move(angles), std::move(unfolded)};
}

PhotometricWeb unfold_type_ab(PhotometricType type, std::vector<double> vertical,
                              const std::vector<double>& horizontal, const std::vector<double>& candela) {
    if (horizontal.front() < 0) return {type, std::move(vertical), horizontal, candela};
    std::vector<double> angles;
    std::vector<double> unfolded;
    for (std::size_t h = horizontal.size(); h-- > 0;) {
        if (horizontal[h] <= 0) continue;
        angles.push_back(-horizontal[h]);
        copy_group(unfolded, candela, h, vertical.size());
    }
    angles.insert(angles.end(), horizontal.begin(), horizontal.end());
    unfolded.insert(unfolded.end(), candela.begin(), candela.end());
    return {type, std::move(vertical), std::move(angles), std::move(unfolded)};
}

} // namespace rillwatt
