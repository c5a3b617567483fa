#pragma once

#include <compare>

namespace rillwatt {

/// Exponents of the base units a quantity is made of. Two quantities add only when all of them agree.
///
/// `real` separates real power (watts) from apparent power (volt-amperes): a power factor carries it, so that
/// volt-amperes times a power factor are watts, and watts plus volt-amperes does not compile.
struct Dimension {
    int volt = 0;
    int ampere = 0;
    int metre = 0;
    int hour = 0;
    int real = 0;
    int lumen = 0;
    int steradian = 0;
    int money = 0;

    friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
};

constexpr Dimension operator+(Dimension a, Dimension b) {
    return {a.volt + b.volt, a.ampere + b.ampere, a.metre + b.metre,         a.hour + b.hour,
            a.real + b.real, a.lumen + b.lumen,   a.steradian + b.steradian, a.money + b.money};
}

constexpr Dimension operator-(Dimension a, Dimension b) {
    return {a.volt - b.volt, a.ampere - b.ampere, a.metre - b.metre,         a.hour - b.hour,
            a.real - b.real, a.lumen - b.lumen,   a.steradian - b.steradian, a.money - b.money};
}

/// A number with its unit in the type. The value is always in the base units (V, A, m, h, lm, sr), never
/// scaled.
template<Dimension D>
class Quantity {
  public:
    constexpr Quantity() = default;
    constexpr explicit Quantity(double value) : value_(value) {}

    constexpr double value() const { return value_; }

    constexpr Quantity& operator+=(Quantity other) {
        value_ += other.value_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other) {
        value_ -= other.value_;
        return *this;
    }
    constexpr Quantity& operator*=(double factor) {
        value_ *= factor;
        return *this;
    }

    friend constexpr auto operator<=>(Quantity, Quantity) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
    friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value_); }
    friend constexpr Quantity operator*(Quantity a, double factor) { return Quantity(a.value_ * factor); }
    friend constexpr Quantity operator*(double factor, Quantity a) { return Quantity(a.value_ * factor); }
    friend constexpr Quantity operator/(Quantity a, double divisor) { return Quantity(a.value_ / divisor); }

  private:
    double value_ = 0;
};

/// Product of two quantities; a plain number where the units cancel.
template<Dimension A, Dimension B>
constexpr auto operator*(Quantity<A> a, Quantity<B> b) {
    if constexpr (A + B == Dimension{})
        return a.value() * b.value();
    else
        return Quantity<A + B>(a.value() * b.value());
}

/// Quotient of two quantities; a plain number where the units cancel.
template<Dimension A, Dimension B>
constexpr auto operator/(Quantity<A> a, Quantity<B> b) {
    if constexpr (A == B)
        return a.value() / b.value();
    else
        return Quantity<A - B>(a.value() / b.value());
}

using Volts = Quantity<Dimension{.volt = 1}>;
using Amperes = Quantity<Dimension{.ampere = 1}>;
using Ohms = Quantity<Dimension{.volt = 1, .ampere = -1}>;
using VoltAmperes = Quantity<Dimension{.volt = 1, .ampere = 1}>;
using Watts = Quantity<Dimension{.volt = 1, .ampere = 1, .real = 1}>;
using PowerFactor = Quantity<Dimension{.real = 1}>;
using Metres = Quantity<Dimension{.metre = 1}>;
using SquareMetres = Quantity<Dimension{.metre = 2}>;
using PerMetre = Quantity<Dimension{.metre = -1}>;
using OhmsPerMetre = Quantity<Dimension{.volt = 1, .ampere = -1, .metre = -1}>;
using Hours = Quantity<Dimension{.hour = 1}>;
using WattHours = Quantity<Dimension{.volt = 1, .ampere = 1, .hour = 1, .real = 1}>;
using Lumens = Quantity<Dimension{.lumen = 1}>;
using Candela = Quantity<Dimension{.lumen = 1, .steradian = -1}>;
using Lux = Quantity<Dimension{.metre = -2, .lumen = 1}>;
using Money = Quantity<Dimension{.money = 1}>;
using MoneyPerMetre = Quantity<Dimension{.metre = -1, .money = 1}>;

/// Real power turned to heat by `current` in `resistance`: the power factor of a resistance is one.
constexpr Watts dissipated(Amperes current, Ohms resistance) {
    return current * current * resistance * PowerFactor(1);
}

/// A temperature on the Celsius scale. Temperatures do not add; their difference is a number of kelvins.
class Celsius {
  public:
    constexpr Celsius() = default;
    constexpr explicit Celsius(double degrees) : degrees_(degrees) {}

    constexpr double value() const { return degrees_; }

    friend constexpr auto operator<=>(Celsius, Celsius) = default;
    friend constexpr double operator-(Celsius a, Celsius b) { return a.degrees_ - b.degrees_; }

  private:
    double degrees_ = 0;
};

/// A plane angle in degrees, as users and photometric files write it.
class Degrees {
  public:
    constexpr Degrees() = default;
    constexpr explicit Degrees(double degrees) : degrees_(degrees) {}

    constexpr double value() const { return degrees_; }
    constexpr double radians() const { return degrees_ * (3.14159265358979323846 / 180.0); }

    friend constexpr auto operator<=>(Degrees, Degrees) = default;

  private:
    double degrees_ = 0;
};

/// Metres in one foot, exactly (international foot, 1959).
inline constexpr double metres_per_foot = 0.3048;

constexpr Metres feet(double value) { return Metres(value * metres_per_foot); }
constexpr Metres inches(double value) { return Metres(value * metres_per_foot / 12); }

} // namespace rillwatt
