#include "editing/measure.h"

#include <gtest/gtest.h>

#include "core/support/sample_layouts.h"

namespace gw::editing {
namespace {

using geometry::View;
using gw::test::oneTap;

const std::array<bool, 3> kAll{true, true, true};

struct Row {
    const char* situation;
    Vec3 from;
    Vec3 to;
    std::array<bool, 3> known;
    double distance;
    const char* inches;
    const char* millimetres;
};

// Pythagoras: 3, 4, 12 make 13; 1 in is 25.4 mm.
TEST(Measuring, TheDistanceAndItsThreePartsInTheUnitAsked) {
    // clang-format off
    const std::vector<Row> rows{
        {"all three", {1, 1, 1}, {4, 5, 13}, kAll, 13.0,
         "13 in: 3 in right, 4 in up, 12 in forward", "330.2 mm: 76.2 mm right, 101.6 mm up, 304.8 mm forward"},
        {"the other way", {4, 5, 13}, {1, 1, 1}, kAll, 13.0,
         "13 in: 3 in left, 4 in down, 12 in back", "330.2 mm: 76.2 mm left, 101.6 mm down, 304.8 mm back"},
        {"no depth", {0, 0, 0}, {3, 4, 9}, {true, true, false}, 5.0,
         "5 in: 3 in right, 4 in up, depth not known", "127 mm: 76.2 mm right, 101.6 mm up, depth not known"},
        {"a sixty-fourth", {0, 0, 0}, {1.0 / 64, 0, 0}, kAll, 1.0 / 64,
         "1/64 in: 1/64 in right", "0.4 mm: 0.4 mm right"},
        {"none", {2, 2, 2}, {2, 2, 2}, kAll, 0.0, "0 in", "0 mm"},
    };
    // clang-format on
    for (const Row& row : rows) {
        const Measured result = measured({row.from, row.known, {}}, {row.to, kAll, {}});
        EXPECT_NEAR(result.distance.in(), row.distance, 1e-12) << row.situation;
        EXPECT_EQ(measuredText(result, units::LengthUnit::inch), row.inches) << row.situation;
        EXPECT_EQ(measuredText(result, units::LengthUnit::millimetre), row.millimetres)
            << row.situation;
    }
}

TEST(Measuring, AMouthIsPickedInAllThreeDimensions) {
    const auto sample = oneTap();
    const auto built = geometry::build(sample.layout, sample.shelf);
    SnapOptions options;
    // Port "2" of the row at (30, 4, 1) is at (33, 4, 2).
    const Picked picked = pick(built, View::front, {33.05, 3.95}, 0.0, options);
    EXPECT_LT(distance(picked.at, {33, 4, 2}), 1e-9);
    EXPECT_EQ(picked.known, kAll);
    EXPECT_EQ(picked.what, "port 2 of block A");
}

TEST(Measuring, ABlocksFaceGivesTheDepthAndEmptySpaceNone) {
    const auto sample = oneTap();
    const auto built = geometry::build(sample.layout, sample.shelf);
    SnapOptions options;
    options.held = true;
    const Picked face = pick(built, View::front, {32, 5.4}, 0.0, options);
    EXPECT_EQ(face.at, (Vec3{32, 5.4, 3}));
    EXPECT_EQ(face.known, kAll);
    const Picked space = pick(built, View::front, {5, 6}, 0.0, options);
    EXPECT_EQ(space.at.x, 5.0);
    EXPECT_EQ(space.at.y, 6.0);
    EXPECT_FALSE(space.known[2]);
    const Picked fromAbove = pick(built, View::top, {5, -6}, 0.0, options);
    EXPECT_EQ(fromAbove.at.z, 6.0);
    EXPECT_FALSE(fromAbove.known[1]);
    const Picked cut = pick(built, View::end, {6, 7}, 5.0, options);
    EXPECT_EQ(cut.at, (Vec3{5, 7, 6}));
    EXPECT_EQ(cut.known, kAll);
}

}  // namespace
}  // namespace gw::editing
