#pragma once

#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/light/light_result.hpp"
#include "rillwatt/light/photometric_web.hpp"
#include "rillwatt/quantity/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rillwatt {

/// How a discharge lamp's light changes when the luminaire is tilted (TILT=INCLUDE).
struct TiltTable {
    int geometry = 1;            ///< 1, 2 or 3 of LM-63: how the lamp sits in the luminaire
    std::vector<double> angles;  ///< degrees, ascending
    std::vector<double> factors; ///< of the candela values

    /// Factor at a tilt in degrees, linear between the angles and held beyond them; 1 for an empty table.
    double factor(double at) const;
};

/// A photometric file as read: candela after the file's own factors.
struct PhotometricFile {
    PhotometricWeb web;
    std::string format;                    ///< "LM-63-2002", "EULUMDAT", ...
    std::optional<Lumens> declared_lumens; ///< lamps times lumens per lamp; none: absolute photometry
    double watts = 0;
    TiltTable tilt;
    std::vector<LightRemark> remarks;
};

/// Reads ANSI/IES LM-63 of 1986, 1991, 1995, 2002 and 2019. What is malformed beyond doubt is an error with
/// its line; what is odd but clear is read and remarked upon. `name` is the file's name in messages.
LoadResult<PhotometricFile> read_lm63(std::string_view text, const std::string& name);

/// Reads EULUMDAT (.ldt).
LoadResult<PhotometricFile> read_eulumdat(std::string_view text, const std::string& name);

/// Tells the two formats apart by their content, then reads.
LoadResult<PhotometricFile> read_photometric_file(std::string_view text, const std::string& name);

} // namespace rillwatt
