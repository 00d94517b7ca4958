#include "parts/attitude.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace gw::parts {
namespace {

Attitude of(const char* text) {
    return Attitude::fromText(text).value();
}

TEST(Attitude, ThereAreTwentyFourDistinctAndTheFirstIsAsDrawn) {
    std::set<std::string> texts;
    for (const Attitude& attitude : Attitude::all()) {
        texts.insert(attitude.text());
    }
    EXPECT_EQ(texts.size(), 24U);  // 6 directions for the length, 4 left for the height
    EXPECT_EQ(Attitude::all().front(), Attitude());
    EXPECT_EQ(Attitude().text(), "+x+y");
}

TEST(Attitude, EveryTextIsReadBack) {
    for (const Attitude& attitude : Attitude::all()) {
        EXPECT_EQ(Attitude::fromText(attitude.text()), attitude) << attitude.text();
    }
}

TEST(Attitude, OtherTextsAreRefused) {
    for (const char* text : {"",
                             "+x",
                             "+x+x",
                             "+x-x",
                             "-z+z",
                             "+x+",
                             "+x+y+z",
                             "xy",
                             "+X+Y",
                             "+x+w",
                             " +x+y",
                             "+x+y ",
                             "*x+y",
                             "+x y"}) {
        EXPECT_FALSE(Attitude::fromText(text).has_value()) << text;
    }
}

// Proper turns: lengths kept, right-handed (length x height = depth), entries 0 and ±1.
TEST(Attitude, EveryOneIsAProperTurn) {
    for (const Attitude& attitude : Attitude::all()) {
        SCOPED_TRACE(attitude.text());
        const Vec3 x = attitude.turn({1, 0, 0});
        const Vec3 y = attitude.turn({0, 1, 0});
        const Vec3 z = attitude.turn({0, 0, 1});
        EXPECT_EQ(cross(x, y), z);
        EXPECT_EQ(squaredNorm(x), 1.0);
        EXPECT_EQ(squaredNorm(y), 1.0);
        EXPECT_EQ(dot(x, y), 0.0);
        for (const double entry : {x.x, x.y, x.z, y.x, y.y, y.z, z.x, z.y, z.z}) {
            EXPECT_FALSE(entry == 0.0 && std::signbit(entry));
        }
    }
}

struct TurnedRow {
    const char* attitude;
    Vec3 turned;   // of (1, 2, 3)
    Vec3 extents;  // of (1, 2, 3)
    const char* why;
};

void PrintTo(const TurnedRow& row, std::ostream* out) {
    *out << row.attitude << ": " << row.why;
}

class Turned : public testing::TestWithParam<TurnedRow> {};

TEST_P(Turned, FollowsItsAxes) {
    const TurnedRow& row = GetParam();
    EXPECT_EQ(of(row.attitude).turn({1, 2, 3}), row.turned);
    EXPECT_EQ(of(row.attitude).turnedExtents({1, 2, 3}), row.extents);
}

// length axis * 1 + height axis * 2 + (length x height) * 3
const TurnedRow kTurned[] = {
    {"+x+y", {1, 2, 3}, {1, 2, 3}, "as drawn"},
    {"+y-x", {-2, 1, 3}, {2, 1, 3}, "y x -x = z: a quarter turn about z"},
    {"-x+y", {-1, 2, -3}, {1, 2, 3}, "-x x y = -z: a half turn about y"},
    {"+z+y", {-3, 2, 1}, {3, 2, 1}, "z x y = -x"},
    {"-y-z", {3, -1, -2}, {3, 1, 2}, "-y x -z = x"},
};
INSTANTIATE_TEST_SUITE_P(ByHand, Turned, testing::ValuesIn(kTurned));

TEST(Attitude, QuarterTurnsCloseTheGroup) {
    for (int axis = 0; axis < 3; ++axis) {
        std::set<std::string> reached;
        for (const Attitude& attitude : Attitude::all()) {
            const Attitude once = attitude.quarterTurned(axis);
            EXPECT_TRUE(Attitude::fromText(once.text()).has_value());
            EXPECT_NE(once, attitude);
            EXPECT_EQ(once.quarterTurned(axis).quarterTurned(axis).quarterTurned(axis), attitude);
            reached.insert(once.text());
        }
        EXPECT_EQ(reached.size(), 24U);  // one to one
    }
}

TEST(Attitude, EveryOneIsReachedFromAsDrawnByQuarterTurns) {
    std::set<std::string> reached{"+x+y"};
    for (int round = 0; round < 6; ++round) {
        const std::set<std::string> before = reached;
        for (const std::string& text : before) {
            for (int axis = 0; axis < 3; ++axis) {
                reached.insert(of(text.c_str()).quarterTurned(axis).text());
            }
        }
    }
    EXPECT_EQ(reached.size(), 24U);
}

// Right-handed: about x, y goes to z; about y, z goes to x; about z, x goes to y.
TEST(Attitude, QuarterTurnIsRightHandedAboutTheGuttersAxis) {
    EXPECT_EQ(Attitude().quarterTurned(0).turn({0, 1, 0}), (Vec3{0, 0, 1}));
    EXPECT_EQ(Attitude().quarterTurned(1).turn({0, 0, 1}), (Vec3{1, 0, 0}));
    EXPECT_EQ(Attitude().quarterTurned(2).turn({1, 0, 0}), (Vec3{0, 1, 0}));
    // After a turn about z the body's length is along y; about the gutter's x it then goes to z.
    EXPECT_EQ(Attitude().quarterTurned(2).quarterTurned(0).turn({1, 0, 0}), (Vec3{0, 0, 1}));
}

}  // namespace
}  // namespace gw::parts
