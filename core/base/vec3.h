#pragma once

#include <cmath>

namespace gw {

/// A point or direction in space. Points are in inches, in the coordinates the place says
/// (gutter: x right along the length, y up, z from the back wall toward the viewer).
struct Vec3 {
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;

    friend constexpr bool operator==(const Vec3&, const Vec3&) = default;
    friend constexpr Vec3 operator+(const Vec3& a, const Vec3& b) {
        return {a.x + b.x, a.y + b.y, a.z + b.z};
    }
    friend constexpr Vec3 operator-(const Vec3& a, const Vec3& b) {
        return {a.x - b.x, a.y - b.y, a.z - b.z};
    }
    friend constexpr Vec3 operator-(const Vec3& a) { return {-a.x, -a.y, -a.z}; }
    friend constexpr Vec3 operator*(const Vec3& a, double k) { return {a.x * k, a.y * k, a.z * k}; }
    friend constexpr Vec3 operator*(double k, const Vec3& a) { return a * k; }
    friend constexpr Vec3 operator/(const Vec3& a, double k) { return {a.x / k, a.y / k, a.z / k}; }
};

constexpr double dot(const Vec3& a, const Vec3& b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

constexpr Vec3 cross(const Vec3& a, const Vec3& b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

constexpr double squaredNorm(const Vec3& a) {
    return dot(a, a);
}
inline double norm(const Vec3& a) {
    return std::sqrt(squaredNorm(a));
}
inline double distance(const Vec3& a, const Vec3& b) {
    return norm(b - a);
}

/// a / |a|. REQUIRES |a| > 0.
inline Vec3 unit(const Vec3& a) {
    return a / norm(a);
}

/// Angle between two unit directions, 0 to pi, accurate near 0 and pi (where acos is not).
inline double angleBetween(const Vec3& a, const Vec3& b) {
    return std::atan2(norm(cross(a, b)), dot(a, b));
}

}  // namespace gw
