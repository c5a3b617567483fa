#pragma once

#include "rillwatt/catalog/distribution.hpp"
#include "rillwatt/light/photometric_web.hpp"

#include <memory>
#include <variant>

namespace rillwatt {

/// How a light spreads what it gives, ready to be asked for candela. Angles are off the light's own axis.
///
/// The closed forms, for Φ lumens:
///   beam     I = Imax cos^n θ, n = ln 0.5 / ln cos(B/2), Imax = Φ (n + 1) / 2π;  none beyond 90 degrees
///   hat      I = Φ / (2π (cos shadow - cos cutoff)) between shadow and cutoff;     none elsewhere
///   batwing  I = I0 / cos³ θ up to the cutoff, I0 = Φ / (π tan² cutoff);           none beyond
/// A photometric file gives candela as they stand in it.
class LightDistribution {
  public:
    /// Gives no light.
    LightDistribution() = default;

    static LightDistribution beam(Degrees beam_angle, Lumens lumens);
    static LightDistribution hat(Degrees shadow, Degrees cutoff, Lumens lumens);
    static LightDistribution batwing(Degrees cutoff, Lumens lumens);
    static LightDistribution web(std::shared_ptr<const PhotometricWeb> web);

    /// From the catalog's closed forms. A file has to be read first: it gives no light here, nor does a light
    /// of which the catalog says nothing.
    static LightDistribution closed_form(const DistributionSpec& spec, Lumens lumens);

    /// Candela in a direction.
    double candela(const LocalDirection& direction) const;

    /// Greatest candela in any direction.
    double peak() const;

    /// No less than the candela in any direction between two angles off the axis, in radians.
    double peak_between(double low, double high) const;

    /// Lumens over all directions.
    double flux() const;

    /// Radians off the axis within which candela reach a tenth of the greatest, on the side the direction
    /// lies.
    double half_field(const LocalDirection& side) const;

    /// Which axes a direction has to be given in.
    PhotometricType type() const;

    /// Whether the light goes somewhere at all.
    bool dark() const { return std::holds_alternative<std::monostate>(form_); }

  private:
    struct Beam {
        double peak;
        double exponent;
    };
    struct Hat {
        double candela;
        double shadow_cosine;
        double cutoff_cosine;
    };
    struct Batwing {
        double centre;
        double cutoff_cosine;
    };
    using Web = std::shared_ptr<const PhotometricWeb>;

    std::variant<std::monostate, Beam, Hat, Batwing, Web> form_;
};

} // namespace rillwatt
