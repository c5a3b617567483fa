// The one model of a lamp's load: the currents of the four load models, their slopes, and what is left of
// them behind a lead.

#include "rillwatt/circuit/lamp_load.hpp"

#include <catch2/catch.hpp>

using namespace rillwatt;

namespace {

constexpr LoadModel models[] = {LoadModel::constant_power, LoadModel::constant_current, LoadModel::filament,
                                LoadModel::resistance};

LampLoad lamp_of(LoadModel model, double lead_ohms = 0) {
    return {.model = model, .power = 18, .rated = 12, .lead_ohms = lead_ohms};
}

} // namespace

TEST_CASE("each load model draws its volt-amperes at rated volts, and less or more beside them") {
    // By hand, 18 VA at 12 V: 1.5 A; at 9 V 18 / 9, 1.5, 1.5 * 0.75 ^ 0.55 and 1.5 * 0.75 A. The exponent is
    // that of Fink and Beaty, Standard Handbook for Electrical Engineers, 11th edition, page 22-8.
    const double at_nine[] = {2, 1.5, 1.280486, 1.125};
    for (std::size_t i = 0; i < std::size(models); ++i) {
        CAPTURE(load_model_name(models[i]));
        CHECK(amps_at_lamp(lamp_of(models[i]), 12) == Approx(1.5));
        CHECK(amps_at_lamp(lamp_of(models[i]), 9) == Approx(at_nine[i]).epsilon(1e-6));
    }
}

TEST_CASE("the solver's columns and the slope are those of the same current") {
    for (const LoadModel model : models) {
        const LampLoad lamp = lamp_of(model);
        const LoadColumns load = load_columns(lamp);
        for (const double volts : {3.0, 9.0, 12.0, 15.5}) {
            CAPTURE(load_model_name(model), volts);
            const double amps = load.power / volts + load.current + load.conductance * volts +
                                filament_amps(load.filament, lamp.rated, volts);
            CHECK(amps == Approx(amps_at_lamp(lamp, volts)).epsilon(1e-12));
            const double step = 1e-5;
            const double slope =
                (amps_at_lamp(lamp, volts + step) - amps_at_lamp(lamp, volts - step)) / (2 * step);
            CHECK(amps_per_volt(lamp, volts) == Approx(slope).margin(1e-8));
        }
    }
}

TEST_CASE("behind a lead the lamp draws what its own volts ask for") {
    for (const LoadModel model : models) {
        const LampLoad lamp = lamp_of(model, 0.8);
        for (const double volts : {9.0, 12.0, 15.0}) {
            CAPTURE(load_model_name(model), volts);
            const double splice = splice_volts(lamp, volts);
            CHECK(splice == Approx(volts + 0.8 * amps_at_lamp(lamp, volts)).epsilon(1e-12));
            REQUIRE(amps_at_splice(lamp, splice));
            CHECK(*amps_at_splice(lamp, splice) == Approx(amps_at_lamp(lamp, volts)).epsilon(1e-9));
        }
    }
}

TEST_CASE("where the lead carries no more there is no current") {
    // 18 VA behind 0.8 ohm: V^2 / 4R = 18 VA at 7.589 V.
    CHECK_FALSE(amps_at_splice(lamp_of(LoadModel::constant_power, 0.8), 7.58));
    CHECK(amps_at_splice(lamp_of(LoadModel::constant_power, 0.8), 7.60));
    // 1.5 A over 0.8 ohm drop 1.2 V.
    CHECK_FALSE(amps_at_splice(lamp_of(LoadModel::constant_current, 0.8), 1.2));
    CHECK(amps_at_splice(lamp_of(LoadModel::constant_current, 0.8), 1.21));
}
