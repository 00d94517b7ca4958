#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "base/vec3.h"

namespace gw::parts {

/// One of the 24 ways to turn a body with its edges along the gutter's axes: which gutter
/// directions the body's length (x) and height (y) axes point to. Default: as drawn.
class Attitude {
public:
    Attitude() = default;
    /// REQUIRES two different axes; the third follows (right-handed).
    /// Text form: "+x+y" (as drawn), "+y-x", … : length direction, then height direction.
    static std::optional<Attitude> fromText(std::string_view text);
    std::string text() const;
    /// All 24, in a fixed order; the first is as drawn.
    static const std::array<Attitude, 24>& all();

    /// Turns a direction from body to gutter axes. Exact: entries are 0 and ±1.
    Vec3 turn(const Vec3& body) const;
    /// Body extents after turning, all positive.
    Vec3 turnedExtents(const Vec3& extents) const;
    /// This attitude followed by a quarter turn about a gutter axis (0 x, 1 y, 2 z), right-handed.
    Attitude quarterTurned(int axis) const;

    friend bool operator==(const Attitude&, const Attitude&) = default;

private:
    Attitude(const Vec3& lengthAxis, const Vec3& heightAxis);
    Vec3 length_{1, 0, 0};
    Vec3 height_{0, 1, 0};
    Vec3 depth_{0, 0, 1};
};

}  // namespace gw::parts
