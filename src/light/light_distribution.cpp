#include "rillwatt/light/light_distribution.hpp"

#include <algorithm>
#include <utility>

namespace rillwatt {
namespace {

constexpr double field_share = 0.1;  ///< of the greatest intensity: the field angle (CIE and IES alike)
constexpr double angle_slack = 1e-6; ///< radians: bounds allow for more than the rounding of an angle
constexpr double rim_slack = 1e-12;  ///< the rim of a hat or batwing belongs to it, rounding or not

template<class... Ts>
struct Overloaded : Ts... {
    using Ts::operator()...;
};
template<class... Ts>
Overloaded(Ts...) -> Overloaded<Ts...>;

double web_half_field(const PhotometricWeb& web, const LocalDirection& side) {
    const double across = std::hypot(side.u, side.w);
    const double u = across > 0 ? side.u / across : 1;
    const double w = across > 0 ? side.w / across : 0;
    constexpr int steps = 720;
    for (int i = steps; i > 0; --i) {
        const double angle = pi * i / steps;
        if (web.towards({std::cos(angle), std::sin(angle) * u, std::sin(angle) * w}) >=
            field_share * web.peak())
            return angle;
    }
    return 0;
}

} // namespace

LightDistribution LightDistribution::beam(Degrees beam_angle, Lumens lumens) {
    const double half = std::clamp(beam_angle.value() / 2, 0.1, 90.0) * degree;
    const double exponent = half >= pi / 2 ? 0 : std::log(0.5) / std::log(std::cos(half));
    LightDistribution result;
    result.form_ = Beam{lumens.value() * (exponent + 1) / (2 * pi), exponent};
    return result;
}

LightDistribution LightDistribution::hat(Degrees shadow, Degrees cutoff, Lumens lumens) {
    const double inner = std::cos(shadow.radians());
    const double outer = std::cos(cutoff.radians());
    LightDistribution result;
    if (inner > outer) result.form_ = Hat{lumens.value() / (2 * pi * (inner - outer)), inner, outer};
    return result;
}

LightDistribution LightDistribution::batwing(Degrees cutoff, Lumens lumens) {
    const double rim = std::clamp(cutoff.value(), 0.1, 89.0) * degree;
    LightDistribution result;
    result.form_ = Batwing{lumens.value() / (pi * std::tan(rim) * std::tan(rim)), std::cos(rim)};
    return result;
}

LightDistribution LightDistribution::web(std::shared_ptr<const PhotometricWeb> web) {
    LightDistribution result;
    if (web) result.form_ = std::move(web);
    return result;
}

LightDistribution LightDistribution::closed_form(const DistributionSpec& spec, Lumens lumens) {
    if (const auto* b = std::get_if<BeamDistribution>(&spec)) return beam(b->beam_angle, lumens);
    if (const auto* h = std::get_if<HatDistribution>(&spec)) return hat(h->shadow, h->cutoff, lumens);
    if (const auto* b = std::get_if<BatwingDistribution>(&spec)) return batwing(b->cutoff, lumens);
    return {};
}

double LightDistribution::candela(const LocalDirection& d) const {
    return std::visit(
        Overloaded{[](std::monostate) { return 0.0; },
                   [&](const Beam& b) { return d.along > 0 ? b.peak * std::pow(d.along, b.exponent) : 0.0; },
                   [&](const Hat& h) {
                       const bool lit =
                           d.along <= h.shadow_cosine + rim_slack && d.along >= h.cutoff_cosine - rim_slack;
                       return lit ? h.candela : 0.0;
                   },
                   [&](const Batwing& b) {
                       const double c = d.along;
                       return c >= b.cutoff_cosine - rim_slack ? b.centre / (c * c * c) : 0.0;
                   },
                   [&](const Web& web) { return web->towards(d); }},
        form_);
}

double LightDistribution::peak() const {
    return std::visit(Overloaded{[](std::monostate) { return 0.0; }, [](const Beam& b) { return b.peak; },
                                 [](const Hat& h) { return h.candela; },
                                 [](const Batwing& b) { return b.centre / std::pow(b.cutoff_cosine, 3); },
                                 [](const Web& web) { return web->peak(); }},
                      form_);
}

double LightDistribution::peak_between(double low, double high) const {
    const double nearest = std::cos(std::clamp(low - angle_slack, 0.0, pi));
    const double farthest = std::cos(std::clamp(high + angle_slack, 0.0, pi));
    return std::visit(
        Overloaded{[](std::monostate) { return 0.0; },
                   [&](const Beam& b) { return nearest > 0 ? b.peak * std::pow(nearest, b.exponent) : 0.0; },
                   [&](const Hat& h) {
                       return farthest <= h.shadow_cosine && nearest >= h.cutoff_cosine ? h.candela : 0.0;
                   },
                   [&](const Batwing& b) {
                       const double c = std::max(farthest, b.cutoff_cosine);
                       return nearest >= b.cutoff_cosine ? b.centre / (c * c * c) : 0.0;
                   },
                   [&](const Web& web) {
                       return web->peak_between((low - angle_slack) / degree, (high + angle_slack) / degree);
                   }},
        form_);
}

double LightDistribution::flux() const {
    return std::visit(
        Overloaded{[](std::monostate) { return 0.0; },
                   [](const Beam& b) { return 2 * pi * b.peak / (b.exponent + 1); },
                   [](const Hat& h) { return 2 * pi * h.candela * (h.shadow_cosine - h.cutoff_cosine); },
                   [](const Batwing& b) {
                       const double cosine2 = b.cutoff_cosine * b.cutoff_cosine;
                       return pi * b.centre * (1 - cosine2) / cosine2;
                   },
                   [](const Web& web) { return web->flux(); }},
        form_);
}

double LightDistribution::half_field(const LocalDirection& side) const {
    return std::visit(Overloaded{[](std::monostate) { return 0.0; },
                                 [](const Beam& b) {
                                     return b.exponent > 0 ? std::acos(std::pow(field_share, 1 / b.exponent))
                                                           : pi / 2;
                                 },
                                 [](const Hat& h) { return std::acos(h.cutoff_cosine); },
                                 [](const Batwing& b) { return std::acos(b.cutoff_cosine); },
                                 [&](const Web& web) { return web_half_field(*web, side); }},
                      form_);
}

PhotometricType LightDistribution::type() const {
    const auto* web = std::get_if<Web>(&form_);
    return web != nullptr ? (*web)->type() : PhotometricType::c;
}

} // namespace rillwatt
