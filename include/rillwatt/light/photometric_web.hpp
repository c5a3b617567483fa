#pragma once

#include "rillwatt/light/vector3.hpp"

#include <cstddef>
#include <vector>

namespace rillwatt {

/// Which way a photometric file's angles run (ANSI/IES LM-63).
enum class PhotometricType {
    a, ///< polar axis vertical, zero on the optical axis
    b, ///< polar axis horizontal, zero on the optical axis (floodlights)
    c, ///< vertical 0 along the axis of the light, horizontal counter-clockwise round it
};

/// A direction seen from a light. Along its axis; then for type C along horizontal 0 and along horizontal 90,
/// for types A and B along the top of the light and to its right. Of length 1.
struct LocalDirection {
    double along = 1;
    double u = 0;
    double w = 0;
};

/// Candela measured on a mesh of angles; between them bilinear in the two angles, outside the stored vertical
/// range none. Symmetry is already unfolded: horizontal angles go from 0 to 360 (type C) or -90 to 90.
class PhotometricWeb {
  public:
    /// Angles in degrees, ascending; `candela[h * vertical.size() + v]`. One horizontal angle: the same all
    /// round.
    PhotometricWeb(PhotometricType type, std::vector<double> vertical, std::vector<double> horizontal,
                   std::vector<double> candela);

    PhotometricType type() const { return type_; }
    const std::vector<double>& vertical() const { return vertical_; }
    const std::vector<double>& horizontal() const { return horizontal_; }

    /// Candela at the file's own angles, in degrees.
    double at(double vertical, double horizontal) const;

    /// Candela in a direction.
    double towards(const LocalDirection& direction) const;

    /// Greatest candela anywhere.
    double peak() const { return peak_; }

    /// No less than the candela in any direction between two angles off the light's axis, in degrees. Type C
    /// by its vertical angles; types A and B, whose poles lie elsewhere, by the greatest anywhere.
    double peak_between(double low, double high) const;

    /// Lumens: exact for the curve between vertical angles, trapezoids round the axis.
    double flux() const;

  private:
    double stored(std::size_t h, std::size_t v) const { return candela_[h * vertical_.size() + v]; }

    PhotometricType type_;
    std::vector<double> vertical_;
    std::vector<double> horizontal_;
    std::vector<double> candela_;
    std::vector<double> peaks_; ///< for each vertical angle, over all horizontal ones
    double peak_ = 0;
};

/// How a file's horizontal angles stand for the whole circle.
enum class WebSymmetry { none, axial, quadrant, mirror_0_180, mirror_90_270 };

/// Unfolds what a type C file stores to 0..360; 360 repeats 0 where the file leaves it out.
PhotometricWeb unfold_type_c(WebSymmetry symmetry, std::vector<double> vertical,
                             const std::vector<double>& horizontal, const std::vector<double>& candela);

/// Unfolds a type A or B file: a first horizontal angle of 0 mirrors about the vertical reference plane.
PhotometricWeb unfold_type_ab(PhotometricType type, std::vector<double> vertical,
                              const std::vector<double>& horizontal, const std::vector<double>& candela);

} // namespace rillwatt
