#include "parts/attitude.h"

#include <cmath>

namespace gw::parts {
namespace {

// Components are 0 and ±1, never -0: adding zero turns -0 into 0.
Vec3 withoutMinusZero(const Vec3& v) {
    return v + Vec3{};
}

Vec3 axisOf(int axis, double sign) {
    return {axis == 0 ? sign : 0.0, axis == 1 ? sign : 0.0, axis == 2 ? sign : 0.0};
}

std::optional<Vec3> axisFromText(std::string_view text) {
    const std::size_t axis = std::string_view("xyz").find(text[1]);
    if (axis == std::string_view::npos || (text[0] != '+' && text[0] != '-')) {
        return std::nullopt;
    }
    return axisOf(static_cast<int>(axis), text[0] == '+' ? 1.0 : -1.0);
}

std::string axisText(const Vec3& axis) {
    const double sum = axis.x + axis.y + axis.z;
    const char letter = axis.x != 0.0 ? 'x' : axis.y != 0.0 ? 'y' : 'z';
    return {sum > 0.0 ? '+' : '-', letter};
}

}  // namespace

Attitude::Attitude(const Vec3& lengthAxis, const Vec3& heightAxis)
    : length_(lengthAxis),
      height_(heightAxis),
      depth_(withoutMinusZero(cross(lengthAxis, heightAxis))) {}

std::optional<Attitude> Attitude::fromText(std::string_view text) {
    constexpr std::size_t kLength = 4;
    if (text.size() != kLength) {
        return std::nullopt;
    }
    const auto length = axisFromText(text.substr(0, 2));
    const auto height = axisFromText(text.substr(2, 2));
    if (!length || !height || dot(*length, *height) != 0.0) {
        return std::nullopt;
    }
    return Attitude(*length, *height);
}

std::string Attitude::text() const {
    return axisText(length_) + axisText(height_);
}

const std::array<Attitude, 24>& Attitude::all() {
    static const std::array<Attitude, 24> kAll = [] {
        std::array<Attitude, 24> found;
        std::size_t count = 0;
        for (int side = 0; side < 36; ++side) {
            const int length = side / 6;
            const int height = side % 6;
            if (length / 2 != height / 2) {
                found.at(count++) = Attitude(axisOf(length / 2, length % 2 == 0 ? 1.0 : -1.0),
                                             axisOf(height / 2, height % 2 == 0 ? 1.0 : -1.0));
            }
        }
        return found;
    }();
    return kAll;
}

Vec3 Attitude::turn(const Vec3& body) const {
    return withoutMinusZero(length_ * body.x + height_ * body.y + depth_ * body.z);
}

Vec3 Attitude::turnedExtents(const Vec3& extents) const {
    const Vec3 turned = turn(extents);
    return {std::abs(turned.x), std::abs(turned.y), std::abs(turned.z)};
}

Attitude Attitude::quarterTurned(int axis) const {
    const Vec3 about = axisOf(axis, 1.0);
    // A quarter turn keeps what lies along the axis and takes the rest to its cross product.
    const auto quarter = [&about](const Vec3& v) {
        return withoutMinusZero(about * dot(about, v) + cross(about, v));
    };
    return {quarter(length_), quarter(height_)};
}

}  // namespace gw::parts
