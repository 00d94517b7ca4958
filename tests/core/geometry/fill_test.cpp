#include "geometry/fill.h"

#include <gmock/gmock.h>

#include <cmath>
#include <numbers>

#include "support/fill_sampler.h"
#include "support/paths.h"

namespace gw::geometry {
namespace {

using test_support::arc;
using test_support::FillSampler;
using test_support::leg;
using test_support::pathOf;
using test_support::Random;
using test_support::rounded;
using test_support::wandering;

constexpr double kPi = std::numbers::pi;
constexpr double kRadius = 0.5;
constexpr double kArea = 2.0;  // told apart from pi r^2: the published area is what counts
constexpr double kNear = 1e-6;
constexpr Vec3 kInside{40.0, 12.0, 10.0};

FillProfile profileOf(const Path& path,
                      const std::vector<std::pair<double, double>>& inBlocks = {},
                      const std::vector<Box>& blocks = {}) {
    const FillConductor conductor{&path, kRadius, kArea, inBlocks};
    return fillProfile(kInside, std::span(&conductor, 1), blocks);
}

// ---- one conductor: how often it counts -------------------------------------------------------

struct ShapeRow {
    const char* name;
    Path path;
    std::vector<std::pair<double, int>> steps;  ///< from this x on: this many parts
    const char* source;
};

void PrintTo(const ShapeRow& row, std::ostream* out) {
    *out << row.name << ": " << row.source;
}

std::string caseName(const testing::TestParamInfo<ShapeRow>& info) {
    return info.param.name;
}

/// A bend of 3 in out and back: up the gutter, a half turn in y, down the gutter.
Path hairpin() {
    return pathOf({leg({5, 2, 5}, {20, 2, 5}),
                   arc({20, 2, 5}, {1, 0, 0}, {0, 1, 0}, 3.0, kPi),
                   leg({20, 8, 5}, {10, 8, 5})});
}

/// The same half turn, but made of two quarter bends with a short drop between them.
Path wideHairpin() {
    return rounded({{5, 1, 5}, {20, 1, 5}, {20, 10, 5}, {10, 10, 5}}, 3.0);
}

/// Down, along by less than the conductor is thick, and down again: one part everywhere.
Path jog() {
    return rounded({{20, 11, 5}, {20, 8, 5}, {20.6, 5, 5}, {20.6, 1, 5}}, 2.0);
}

/// Square kink: along x to 20, then straight up.
Path kinked() {
    return pathOf({leg({5, 2, 5}, {20, 2, 5}), leg({20, 2, 5}, {20, 9, 5})});
}

/// A bend tighter than the conductor itself, as a faulty path may hold.
Path knot() {
    return rounded({{5, 2, 5}, {20, 2, 5}, {20, 9, 5}}, 0.2);
}

const double kSlant = kRadius * std::sin(kPi / 6);

// clang-format off
const ShapeRow kShapes[] = {
    {"RunAlongTheGutterCountsOnce", pathOf({leg({5, 2, 5}, {20, 2, 5})}),
     {{0, 0}, {5, 1}, {20, 0}}, "a flat-ended tube from 5 to 20"},
    {"DropCountsOverItsWidth", pathOf({leg({10, 12, 5}, {10, 1, 5})}),
     {{0, 0}, {9.5, 1}, {10.5, 0}}, "10 +- r"},
    {"DropTowardTheCoverCountsOverItsWidth", pathOf({leg({10, 6, 0}, {10, 6, 10})}),
     {{0, 0}, {9.5, 1}, {10.5, 0}}, "10 +- r"},
    {"SlantedLegReachesByItsTiltedDiscs",
     pathOf({leg({10, 2, 5}, {10 + 6 * std::cos(kPi / 6), 2 + 6 * std::sin(kPi / 6), 5})}),
     {{0, 0}, {10 - kSlant, 1}, {10 + 6 * std::cos(kPi / 6) + kSlant, 0}}, "r sin 30 deg beyond its axis"},
    {"QuarterBendIntoADropIsOnePart", rounded({{5, 2, 5}, {20, 2, 5}, {20, 9, 5}}, 3.0),
     {{0, 0}, {5, 1}, {20.5, 0}}, "outer side of the drop: 20 + r"},
    {"HairpinCountsTwiceUpToItsTip", hairpin(),
     {{0, 0}, {5, 1}, {10, 2}, {22.5, 1}, {23.5, 0}}, "tip disc: 20 + 3 +- r"},
    {"WideHairpinCountsTwiceUpToItsDrop", wideHairpin(),
     {{0, 0}, {5, 1}, {10, 2}, {19.5, 1}, {20.5, 0}}, "drop: 20 +- r"},
    {"JogShorterThanItsThicknessIsOnePart", jog(),
     {{0, 0}, {19.5, 1}, {21.1, 0}}, "from 20 - r to 20.6 + r"},
    {"KinkJoinsItsLegs", kinked(),
     {{0, 0}, {5, 1}, {20.5, 0}}, "leg, and drop to 20 + r"},
    {"BendTighterThanTheConductorIsOnePart", knot(),
     {{0, 0}, {5, 1}, {20.5, 0}}, "leg, and drop to 20 + r"},
    {"WhatLiesOutsideTheGutterIsCutOff", pathOf({leg({-3, 2, 5}, {50, 2, 5})}),
     {{0, 1}}, "the gutter runs from 0 to 40"},
    {"NoLengthIsNothing", pathOf({leg({5, 2, 5}, {5, 2, 5})}),
     {{0, 0}}, "nothing there to cut"},
};
// clang-format on

class FillOfOneConductor : public testing::TestWithParam<ShapeRow> {};

TEST_P(FillOfOneConductor, HasTheStepsOfItsShape) {
    const FillProfile profile = profileOf(GetParam().path);
    ASSERT_EQ(profile.slices.size(), GetParam().steps.size());
    for (std::size_t i = 0; i < profile.slices.size(); ++i) {
        EXPECT_NEAR(profile.slices[i].from, GetParam().steps[i].first, kNear);
        EXPECT_NEAR(profile.slices[i].conductors, kArea * GetParam().steps[i].second, 1e-9);
        EXPECT_NEAR(profile.slices[i].outsideBlocks, kArea * GetParam().steps[i].second, 1e-9);
    }
}

INSTANTIATE_TEST_SUITE_P(Shapes, FillOfOneConductor, testing::ValuesIn(kShapes), caseName);

// ---- blocks ------------------------------------------------------------------------------------

const Box kBlock{{18, 3, 3}, {24, 8, 7}};  // face 5 x 4 = 20 in2

TEST(Fill, ConductorInABlockIsNotCountedBesideItsFace) {
    // In the block from x = 18 (13 in along) to its tip at 22.
    const Path path = pathOf({leg({5, 5, 5}, {22, 5, 5})});
    const FillProfile profile = profileOf(path, {{13, 17}}, {kBlock});
    EXPECT_NEAR(profile.at(10).splice(), kArea, 1e-9);
    EXPECT_NEAR(profile.at(20).conductors, kArea, 1e-9);
    EXPECT_NEAR(profile.at(20).splice(), 20.0, 1e-9);
    EXPECT_NEAR(profile.at(23).conductors, 0.0, 1e-9);
}

TEST(Fill, DropThroughABlockCountsOnceWherePartOfItIsOutside) {
    // Cut lengthwise by one plane over its whole height: one part, some of it outside.
    const Path path = pathOf({leg({20, 11, 5}, {20, 1, 5})});
    const FillProfile profile = profileOf(path, {{3, 8}}, {kBlock});
    EXPECT_NEAR(profile.at(20).conductors, kArea, 1e-9);
    EXPECT_NEAR(profile.at(20).outsideBlocks, kArea, 1e-9);
    EXPECT_NEAR(profile.at(20).splice(), kArea + 20.0, 1e-9);
}

TEST(Fill, TwoLimbsOneInsideABlockCountOneOutside) {
    const Path path = hairpin();  // first limb x 5..20 is s 0..15
    const FillProfile profile = profileOf(path, {{13, 15}}, {kBlock});
    EXPECT_NEAR(profile.at(19).conductors, 2 * kArea, 1e-9);
    EXPECT_NEAR(profile.at(19).outsideBlocks, kArea, 1e-9);
    EXPECT_NEAR(profile.at(15).outsideBlocks, 2 * kArea, 1e-9);
}

TEST(Fill, StretchesInBlocksMayComeInAnyOrderAndOverlap) {
    const Path path = pathOf({leg({5, 5, 5}, {35, 5, 5})});
    const FillProfile profile = profileOf(path, {{20, 25}, {13, 15}, {14, 17}}, {});
    EXPECT_NEAR(profile.at(21).outsideBlocks, 0.0, 1e-9);
    EXPECT_NEAR(profile.at(23).outsideBlocks, kArea, 1e-9);
    EXPECT_NEAR(profile.at(28).outsideBlocks, 0.0, 1e-9);
    EXPECT_NEAR(profile.at(31).outsideBlocks, kArea, 1e-9);
}

TEST(Fill, OutsideIsNeverMoreThanAll) {
    constexpr std::uint64_t kSeed = 20240611;
    RecordProperty("seed", std::to_string(kSeed));
    Random random(kSeed);
    for (int i = 0; i < 500; ++i) {
        const Path path = wandering(random, random.in({2, 2, 2}, {38, 10, 8}), 4);
        const double length = path.length().in();
        const double from = random.between(0, length);
        const FillProfile profile = profileOf(path, {{from, random.between(from, length)}});
        for (const FillSlice& slice : profile.slices) {
            EXPECT_LE(slice.outsideBlocks, slice.conductors) << "seed " << kSeed << " scene " << i;
            EXPECT_GE(slice.outsideBlocks, 0.0) << "seed " << kSeed << " scene " << i;
        }
    }
}

// ---- many --------------------------------------------------------------------------------------

TEST(Fill, EmptyGutterIsOneEmptySlice) {
    const FillProfile profile = fillProfile(kInside, {}, {});
    ASSERT_EQ(profile.slices.size(), 1U);
    EXPECT_EQ(profile.slices[0].from, 0.0);
    EXPECT_EQ(profile.slices[0].conductors, 0.0);
    EXPECT_EQ(profile.length, 40.0);
    EXPECT_EQ(profile.interior, 120.0);
    EXPECT_EQ(profile.worstConductors().area, 0.0);
    EXPECT_EQ(profile.worstSplice().area, 0.0);
}

TEST(Fill, ConductorsThatMeetEndToEndDoNotCountTogether) {
    // 0.1 and 0.2 are not exact in binary; the two ends differ by a rounding error.
    const Path before = pathOf({leg({5, 2, 5}, {0.1 + 0.2 + 10, 2, 5})});
    const Path after = pathOf({leg({10.3, 2, 5}, {20, 2, 5})});
    const FillConductor both[] = {{&before, kRadius, kArea, {}}, {&after, kRadius, kArea, {}}};
    EXPECT_NEAR(fillProfile(kInside, both, {}).worstConductors().area, kArea, 1e-9);
}

TEST(Fill, AtABoundaryTheLargerSideCounts) {
    const Path path = pathOf({leg({5, 2, 5}, {20, 2, 5})});
    const FillProfile profile = profileOf(path);
    EXPECT_NEAR(profile.at(5).conductors, kArea, 1e-9);
    EXPECT_NEAR(profile.at(20).conductors, kArea, 1e-9);
    EXPECT_NEAR(profile.at(4.999).conductors, 0.0, 1e-9);
    EXPECT_NEAR(profile.at(20.001).conductors, 0.0, 1e-9);
    EXPECT_NEAR(profile.at(-1).conductors, 0.0, 1e-9);
    EXPECT_NEAR(profile.at(99).conductors, 0.0, 1e-9);
}

TEST(Fill, WorstSpansAllSlicesThatShareIt) {
    const Path path = pathOf({leg({5, 2, 5}, {30, 2, 5})});
    const FillProfile profile = profileOf(path, {}, {kBlock});
    const auto worst = profile.worstConductors();
    EXPECT_NEAR(worst.area, kArea, 1e-9);
    EXPECT_NEAR(worst.fraction, kArea / 120.0, 1e-12);
    EXPECT_NEAR(worst.from, 5.0, kNear);
    EXPECT_NEAR(worst.to, 30.0, kNear);
    const auto beside = profile.worstConductors(true);
    EXPECT_NEAR(beside.from, 18.0, kNear);
    EXPECT_NEAR(beside.to, 24.0, kNear);
    const auto clear = profile.worstConductors(false);
    EXPECT_NEAR(clear.from, 5.0, kNear);
    EXPECT_NEAR(clear.to, 18.0, kNear);
    EXPECT_NEAR(profile.worstSplice().area, 20.0 + kArea, 1e-9);
}

TEST(Fill, TakingEverythingAwayLeavesExactlyNothing) {
    const Path path = pathOf({leg({5, 2, 5}, {20, 2, 5})});
    const std::vector<FillConductor> many(7, FillConductor{&path, kRadius, 0.1, {}});
    const FillProfile profile = fillProfile(kInside, many, {});
    EXPECT_EQ(profile.slices.back().conductors, 0.0);
    EXPECT_EQ(profile.slices.back().outsideBlocks, 0.0);
}

TEST(Fill, PeakIsNeverBelowTheSampledOneAndSamplesAgree) {
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Random random(seed);
        std::vector<Path> paths;
        for (int i = 0; i < 8; ++i) {
            paths.push_back(wandering(random, random.in({0, 0, 0}, kInside), 1 + i % 4));
        }
        std::vector<FillConductor> conductors;
        for (const Path& path : paths) {
            conductors.push_back({&path, random.between(0.2, 0.6), random.between(0.1, 1.2), {}});
        }
        const FillProfile profile = fillProfile(kInside, conductors, {});
        const FillSampler sampler(conductors, kPi / 720);
        const double first = random.between(0.0, 0.1);
        EXPECT_GE(profile.worstConductors().area + 1e-9, sampler.peak(first, 0.1, kInside.x));
        int apart = 0;  // planes within a hair of a boundary may differ
        for (int i = 0; i < 400; ++i) {
            const double x = first + 0.1 * i;
            const double sampled = sampler.areaAt(x);
            apart += std::abs(profile.at(x).conductors - sampled) > 1e-9 ? 1 : 0;
        }
        EXPECT_LE(apart, 1);
    }
}

// ---- kept current ------------------------------------------------------------------------------

void expectSame(const FillProfile& kept, const FillProfile& fresh) {
    ASSERT_EQ(kept.slices.size(), fresh.slices.size());
    for (std::size_t i = 0; i < kept.slices.size(); ++i) {
        EXPECT_EQ(kept.slices[i].from, fresh.slices[i].from);
        EXPECT_EQ(kept.slices[i].conductors, fresh.slices[i].conductors);
        EXPECT_EQ(kept.slices[i].outsideBlocks, fresh.slices[i].outsideBlocks);
        EXPECT_EQ(kept.slices[i].blocks, fresh.slices[i].blocks);
    }
}

/// Moves of 1/16 in, so that things often end where others begin.
double sixteenths(Random& random, double least, double greatest) {
    return std::round(random.between(least, greatest) * 16.0) / 16.0;
}

TEST(Fill, ExchangedOneByOneItIsThatOfWhatIsThere) {
    constexpr std::uint64_t kSeed = 20241126;
    RecordProperty("seed", std::to_string(kSeed));
    Random random(kSeed);
    const auto someX = [&] { return sixteenths(random, -1.0, kInside.x + 1.0); };
    const auto somePath = [&] {
        return random.chance(0.5) ? wandering(random, random.in({0, 0, 0}, kInside), 3)
                                  : pathOf({leg({someX(), 3, 5}, {someX() + 0.03, 3, 5})});
    };
    std::vector<Path> paths;
    for (int i = 0; i < 12; ++i) {
        paths.push_back(somePath());
    }
    std::vector<Box> boxes(3, Box{{2, 1, 1}, {5, 4, 4}});
    const std::vector<std::pair<double, double>> inBlocks{{1.0, 2.5}};
    const auto counted = [&](const Path& path) {
        return FillConductor{&path, kRadius, kArea, inBlocks};
    };
    const auto all = [&] {
        std::vector<FillConductor> conductors;
        for (const Path& path : paths) {
            conductors.push_back(counted(path));
        }
        return fillProfile(kInside, conductors, boxes);
    };
    FillProfile kept = all();
    for (int move = 0; move < 2000; ++move) {
        SCOPED_TRACE("seed " + std::to_string(kSeed) + " move " + std::to_string(move));
        Path& path = paths[random.below(paths.size())];
        Box& box = boxes[random.below(boxes.size())];
        const Path newPath = somePath();
        const double x = someX();
        const Box newBox{{x, 1, 1}, {x + 3.0, 4, 4}};
        const FillConductor out = counted(path);
        const FillConductor in = counted(newPath);
        exchange(kept, {{&out, 1}, {&box, 1}}, {{&in, 1}, {&newBox, 1}});
        path = newPath;
        box = newBox;
        expectSame(kept, all());
        if (HasFailure()) {
            return;
        }
    }
}

}  // namespace
}  // namespace gw::geometry
