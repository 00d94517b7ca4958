#pragma once

#include <cstddef>
#include <cstdint>
#include <random>

#include "base/vec3.h"

namespace gw::test_support {

/// The same numbers on every machine (the distributions of the standard library are not).
class Random {
public:
    explicit Random(std::uint64_t seed) : engine_(seed) {}

    double between(double least, double greatest) {
        constexpr double kStep = 1.0 / 9007199254740992.0;  // 2^-53
        return least + (greatest - least) * (static_cast<double>(engine_() >> 11) * kStep);
    }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }
    bool chance(double share) { return between(0.0, 1.0) < share; }
    Vec3 in(const Vec3& least, const Vec3& greatest) {
        const double x = between(least.x, greatest.x);
        const double y = between(least.y, greatest.y);
        return {x, y, between(least.z, greatest.z)};
    }
    Vec3 direction() {
        for (;;) {
            const Vec3 v = in({-1, -1, -1}, {1, 1, 1});
            if (squaredNorm(v) > 0.01 && squaredNorm(v) <= 1.0) {
                return unit(v);
            }
        }
    }

private:
    std::mt19937_64 engine_;
};

}  // namespace gw::test_support
