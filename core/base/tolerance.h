#pragma once

/// Every tolerance of the program, in one place: value, unit, why, and what breaks without it.
namespace gw {

/// inches. Two points nearer than this are one point; a leg shorter than this has no direction.
/// Far below anything a tape can show, far above the noise of double at 120 in (1e-14).
inline constexpr double kSamePoint = 1e-7;

/// inches. Slack for comparing a measured length with a limit (atMost, atLeast). Coordinates read
/// from a file are rounded to 1e-9 by whoever typed them; without the slack a block placed exactly
/// at the limit would breach by 1e-15.
inline constexpr double kLimitSlack = 1e-6;

/// inches. Clearances are exact to this; the promise of the geometry's headers.
inline constexpr double kClearanceError = 1e-3;

/// radians. Two unit directions nearer than this are parallel. At 120 in it is 1.2e-4 in aside.
/// Without it a leg drawn along the entry's axis would count as a kink.
inline constexpr double kSameDirection = 1e-6;

/// radians. A corner that turns more than this cannot be filleted (its tangent length explodes:
/// at 175 degrees it is 23 radii).
inline constexpr double kLargestTurn = 3.05432619099008;  // 175 degrees

/// radians. A conductor that leaves its raceway or port within this of straight counts as straight;
/// beyond it the start is a bend without a radius. Half a degree: common practice, no source. With
/// none at all, a path drawn by hand would breach everywhere; with much more, a kink would pass.
inline constexpr double kLargestKink = 0.00872664625997165;  // 0.5 degrees

/// inches. A conductor that strays less than this from a bore's axis runs on it: what a steady hand
/// does. *Common practice, no source.* Without it corners rounded in a file would be off axis.
inline constexpr double kOnAxis = 1.0 / 64.0;

/// The one comparison of a measured value with a greatest allowed one.
constexpr bool atMost(double measured, double limit) {
    return measured <= limit + kLimitSlack;
}

/// The one comparison of a measured value with a least allowed one.
constexpr bool atLeast(double measured, double limit) {
    return measured >= limit - kLimitSlack;
}

}  // namespace gw
