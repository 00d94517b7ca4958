#include "geometry/section.h"

#include <gtest/gtest.h>

#include <cmath>

namespace gw::geometry {
namespace {

constexpr double kPi = 3.14159265358979323846;

/// One conductor of 1 in over a polyline, in an otherwise empty gutter.
BuiltLayout oneConductor(const Vec3& start, std::vector<CornerInput> corners, const Vec3& end) {
    BuiltLayout built;
    BuiltConductor conductor;
    conductor.diameter = units::Inches::of(1.0);
    conductor.built = buildPath(start, corners, end);
    built.conductors.push_back(std::move(conductor));
    return built;
}

TEST(Section, RunAlongTheGutterIsItsCircle) {
    const auto section = sectionAt(oneConductor({0, 3, 2}, {}, {40, 3, 2}), 20.0);
    ASSERT_EQ(section.conductors.size(), 1U);
    // Closed form: pi r^2; 48 chords take 0.3 % of it.
    EXPECT_NEAR(outlineArea(section.conductors[0].outline), kPi * 0.25, 0.004 * kPi);
    EXPECT_NEAR(section.conductors[0].centre.x, 2.0, 1e-9);
    EXPECT_NEAR(section.conductors[0].centre.y, 3.0, 1e-9);
}

TEST(Section, SlantingRunIsAnEllipse) {
    // 45 degrees: t.x = 1/sqrt 2, area pi r^2 sqrt 2.
    const auto section = sectionAt(oneConductor({0, 0, 2}, {}, {20, 20, 2}), 10.0);
    ASSERT_EQ(section.conductors.size(), 1U);
    EXPECT_NEAR(outlineArea(section.conductors[0].outline), kPi * 0.25 * std::sqrt(2.0), 0.01);
}

TEST(Section, DropAcrossTheGutterIsAStripeOverItsWholeWidth) {
    const auto drop = oneConductor({10, 0, 2}, {}, {10, 8, 2});
    // Through the axis the stripe is a diameter wide; at 0.3 in aside 2 sqrt(0.25 - 0.09) = 0.8.
    const auto middle = sectionAt(drop, 10.0);
    const auto aside = sectionAt(drop, 10.3);
    ASSERT_EQ(middle.conductors.size(), 1U);
    ASSERT_EQ(aside.conductors.size(), 1U);
    EXPECT_NEAR(outlineArea(middle.conductors[0].outline), 8.0, 1e-6);
    EXPECT_NEAR(outlineArea(aside.conductors[0].outline), 8.0 * 0.8, 1e-6);
    EXPECT_TRUE(sectionAt(drop, 10.6).conductors.empty());
}

TEST(Section, ConductorThatTurnsBackIsCutTwice) {
    const auto back = oneConductor({0, 1, 2}, {{{20, 1, 2}, 4.0}, {{20, 11, 2}, 4.0}}, {0, 11, 2});
    EXPECT_EQ(sectionAt(back, 8.0).conductors.size(), 2U);
    EXPECT_EQ(sectionAt(back, 20.0).conductors.size(), 1U);
}

TEST(Silhouette, StraightConductorIsARoundEndedStrip) {
    const auto built = oneConductor({0, 3, 2}, {}, {10, 3, 2});
    for (const auto view : {View::front, View::top}) {
        const auto outlines = silhouette(built.conductors[0], view);
        ASSERT_EQ(outlines.size(), 1U);
        EXPECT_NEAR(outlineArea(outlines[0]), 10.0 + kPi * 0.25, 0.01);
    }
}

TEST(Silhouette, BendIsASectorOfARing) {
    // Quarter bend of 4 in between legs of 6 in: legs 12, ring pi/2 * 4 * 1, two half ends pi/4.
    const auto built = oneConductor({0, 0, 0}, {{{10, 0, 0}, 4.0}}, {10, 10, 0});
    const auto outlines = silhouette(built.conductors[0], View::front);
    ASSERT_EQ(outlines.size(), 1U);
    EXPECT_NEAR(outlineArea(outlines[0]), 12.0 + kPi * 2.0 + kPi * 0.25, 0.03);
}

}  // namespace
}  // namespace gw::geometry
