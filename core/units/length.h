#pragma once

#include <compare>
#include <string>
#include <string_view>

#include "base/result.h"

/// Lengths, areas and angles, and how people type and read them.
namespace gw::units {

/// A length in inches held in a double: 1/64 in is exact. Any finite value; zero by default.
class Inches {
public:
    constexpr Inches() = default;
    static constexpr Inches of(double inches) { return Inches(inches); }
    static constexpr Inches fromMillimetres(double millimetres) {
        return Inches(millimetres / kMillimetresPerInch);
    }
    static constexpr Inches fromFeet(double feet) { return Inches(feet * 12.0); }

    constexpr double in() const { return inches_; }
    constexpr double mm() const { return inches_ * kMillimetresPerInch; }

    friend constexpr auto operator<=>(Inches, Inches) = default;
    friend constexpr Inches operator+(Inches a, Inches b) { return Inches(a.inches_ + b.inches_); }
    friend constexpr Inches operator-(Inches a, Inches b) { return Inches(a.inches_ - b.inches_); }
    friend constexpr Inches operator-(Inches a) { return Inches(-a.inches_); }
    friend constexpr Inches operator*(Inches a, double k) { return Inches(a.inches_ * k); }
    friend constexpr Inches operator*(double k, Inches a) { return Inches(a.inches_ * k); }
    friend constexpr Inches operator/(Inches a, double k) { return Inches(a.inches_ / k); }
    friend constexpr double operator/(Inches a, Inches b) { return a.inches_ / b.inches_; }

    static constexpr double kMillimetresPerInch = 25.4;  // exact by definition of the inch

private:
    explicit constexpr Inches(double inches) : inches_(inches) {}
    double inches_ = 0.0;
};

/// An area in square inches.
class SquareInches {
public:
    constexpr SquareInches() = default;
    static constexpr SquareInches of(double squareInches) { return SquareInches(squareInches); }
    static constexpr SquareInches ofCircle(Inches diameter) {
        return SquareInches(diameter.in() * diameter.in() * 0.78539816339744830962);
    }
    constexpr double in2() const { return value_; }

    friend constexpr auto operator<=>(SquareInches, SquareInches) = default;
    friend constexpr SquareInches operator+(SquareInches a, SquareInches b) {
        return SquareInches(a.value_ + b.value_);
    }
    friend constexpr SquareInches operator*(SquareInches a, double k) {
        return SquareInches(a.value_ * k);
    }
    friend constexpr double operator/(SquareInches a, SquareInches b) {
        return a.value_ / b.value_;
    }

private:
    explicit constexpr SquareInches(double value) : value_(value) {}
    double value_ = 0.0;
};

constexpr SquareInches operator*(Inches a, Inches b) {
    return SquareInches::of(a.in() * b.in());
}

/// An angle in radians inside, degrees on screen.
class Radians {
public:
    constexpr Radians() = default;
    static constexpr Radians of(double radians) { return Radians(radians); }
    static constexpr Radians fromDegrees(double degrees) { return Radians(degrees * kPerDegree); }
    constexpr double rad() const { return value_; }
    constexpr double degrees() const { return value_ / kPerDegree; }
    friend constexpr auto operator<=>(Radians, Radians) = default;

private:
    static constexpr double kPerDegree = 0.017453292519943295769;
    explicit constexpr Radians(double value) : value_(value) {}
    double value_ = 0.0;
};

/// The unit of a number typed without one, and the unit to print in.
enum class LengthUnit { inch, millimetre };

/// Reads a length as people type it: `5`, `5.5`, `5 1/2`, `5-1/2"`, `5½`, `5.5 in`, `.5`, `140mm`,
/// `14 cm`, `1' 3 1/4"`, `1 ft 3 in`, `-2 1/4`. White space is free. A number without a unit is in
/// `unitless`. Error `syntax` (with what was expected and found) on anything else, a zero
/// denominator included; `outOfRange` beyond ±1200 in (100 ft). Never depends on the locale.
Result<Inches> parseLength(std::string_view text, LengthUnit unitless = LengthUnit::inch);

/// Which way a printed length may differ from the exact one. Limits and cut lengths round so that
/// nobody is told a shorter need or a longer allowance than the true one.
enum class Rounding { nearest, up, down };

/// `5 1/2 in`, `-3/16 in`, `0 in`: the nearest (ties away from zero), next higher or next lower
/// multiple of 1/denominator, in lowest terms. denominator: 2, 4, 8, 16, 32 or 64.
/// A value within 1e-6 in of a multiple counts as that multiple whatever the rounding.
std::string formatInches(Inches length,
                         Rounding rounding = Rounding::nearest,
                         int denominator = 16);

/// `5 1/2"` as written on a drawing; from 12 in on still in inches.
std::string formatInchMark(Inches length,
                           Rounding rounding = Rounding::nearest,
                           int denominator = 16);

/// `139.7 mm`: one decimal, rounded as asked; whole numbers without decimals.
std::string formatMillimetres(Inches length, Rounding rounding = Rounding::nearest);

/// In the unit asked: formatInches to 1/16 in or formatMillimetres.
std::string formatLength(Inches length, LengthUnit unit, Rounding rounding = Rounding::nearest);

/// `value` with at most `decimals` decimals, trailing zeros cut, a point whatever the locale:
/// formatDecimal(0.2150, 3) is "0.215", formatDecimal(4, 2) is "4", never "-0".
std::string formatDecimal(double value, int decimals);

}  // namespace gw::units
