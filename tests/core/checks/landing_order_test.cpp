#include "checks/landing_order.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "checks/support.h"
#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;
using layout::Wall;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

using Pairs = std::set<std::pair<std::size_t, std::size_t>>;

Pairs pairsOf(const geometry::BuiltLayout& built) {
    Pairs pairs;
    for (const auto& one : landingConstraints(built)) {
        pairs.emplace(one.first, one.second);
    }
    return pairs;
}

/// A conductor that thick, left spare at both ends.
void lay(GutterBuilder& builder,
         const std::string& id,
         const std::vector<Vec3>& points,
         double thickness = 0.5) {
    std::vector<layout::Corner> corners;
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        corners.push_back(corner(points[i], 1.0));
    }
    builder.conductor(id, spare(points.front()), spare(points.back()), corners).outsideDiameter =
        units::Inches::of(thickness);
}

Finding onlyOf(const GutterBuilder& builder) {
    const auto findings = checkLandingOrder(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

// ---- one pair -------------------------------------------------------------------------------

TEST(LandingConstraints, WhatCrossesInFrontComesLater) {
    GutterBuilder builder;
    lay(builder, "front", {{10, 2, 6}, {10, 10, 6}});
    lay(builder, "behind", {{5, 5, 3}, {20, 5, 3}});
    const auto constraints = landingConstraints(builder.build());
    ASSERT_EQ(constraints.size(), 1U);
    EXPECT_EQ(constraints[0].first, 1U);
    EXPECT_EQ(constraints[0].second, 0U);
    EXPECT_FALSE(constraints[0].screw.has_value());
    EXPECT_NEAR(distance(constraints[0].place, {10, 5, 6}), 0.0, 1e-9);
}

struct BesideRow {
    std::string name;
    double aside;  ///< inches between centrelines in the front view
    double depth;  ///< inches between centrelines from back to front
    bool ordered;
};

void PrintTo(const BesideRow& row, std::ostream* out) {
    *out << row.name;
}

class OneBesideTheOther : public testing::TestWithParam<BesideRow> {};

TEST_P(OneBesideTheOther, IsInFrontOnlyWhereItCovers) {
    const auto& row = GetParam();
    GutterBuilder builder;
    lay(builder, "P", {{5, 5, 3}, {20, 5, 3}}, 0.5);
    lay(builder, "Q", {{8, 5 + row.aside, 3 + row.depth}, {30, 5 + row.aside, 3 + row.depth}}, 0.8);
    EXPECT_EQ(pairsOf(builder.build()), row.ordered ? Pairs({{0, 1}}) : Pairs());
}

// Source: arithmetic. Radii 0.25 and 0.4: they cover one another up to 0.65 in, and are alike in
// depth up to a quarter of 0.25, 0.0625 in.
INSTANTIATE_TEST_SUITE_P(Rows,
                         OneBesideTheOther,
                         testing::Values(BesideRow{"Covering", 0.0, 2.0, true},
                                         BesideRow{"JustCovering", 0.649, 2.0, true},
                                         BesideRow{"Touching", 0.65, 2.0, false},
                                         BesideRow{"Apart", 0.66, 2.0, false},
                                         BesideRow{"AlikeInDepth", 0.6, 0.0625, false},
                                         BesideRow{"ALittleInFront", 0.6, 0.0635, true}),
                         [](const auto& row) { return row.param.name; });

TEST(LandingConstraints, WhatLooksAtTheCoverIsHeldByItsWholeDepth) {
    GutterBuilder builder;
    lay(builder, "up", {{10, 5, 2}, {10, 5, 6}});
    lay(builder, "over", {{5, 5, 7}, {20, 5, 7}});
    lay(builder, "under", {{5, 5, 1}, {20, 5, 1}});
    lay(builder, "through", {{5, 5, 4}, {9.9, 5, 4}});
    const Pairs pairs = pairsOf(builder.build());
    EXPECT_TRUE(pairs.count({0, 1}));
    EXPECT_TRUE(pairs.count({2, 0}));
    EXPECT_FALSE(pairs.count({0, 3}) || pairs.count({3, 0})) << "it runs into it: neither first";
}

TEST(LandingConstraints, BendsAreComparedWhereTheyAre) {
    // A bend of 4 in radius about (10, 4): its middle is at 10 + 4 sin 45°, 4 + 4 cos 45°.
    const double middle = 4.0 * std::sqrt(0.5);
    GutterBuilder builder;
    builder.conductor("bend", spare({4, 8, 3}), spare({14, 1, 3}), {corner({14, 8, 3}, 4.0)})
        .outsideDiameter = units::Inches::of(0.5);
    lay(builder, "middle", {{10 + middle, 4 + middle, 6}, {20, 20, 6}});
    lay(builder, "corner", {{13.6, 7.6, 6}, {20, 20, 6}});
    EXPECT_EQ(pairsOf(builder.build()), Pairs({{0, 1}})) << "the corner is cut off";
}

// ---- mouths ---------------------------------------------------------------------------------

/// Two out of one raceway, one slot in front of the other, straight down as far as that.
GutterBuilder outOfOneRaceway(double reach) {
    GutterBuilder builder;
    builder.entry("in", Wall::top, 20.0, 5.0);
    for (int slot = 1; slot <= 4; ++slot) {
        builder.conductor("C" + std::to_string(slot), atEntry("in", slot), spare({}))
            .outsideDiameter = units::Inches::of(0.5);
    }
    const auto built = builder.build();
    for (std::size_t i = 0; i < 4; ++i) {
        const Vec3 mouth = built.conductors[i].from.mouth;
        std::get<layout::Spare>(builder.layout().conductors[i].to).tip = mouth - Vec3{0, reach, 0};
    }
    return builder;
}

TEST(LandingConstraints, ConductorsOfOneRacewayAreNotComparedAtItsMouth) {
    // Source: kBesideMouth, four thicknesses of 0.5 in.
    EXPECT_THAT(pairsOf(outOfOneRaceway(1.99).build()), IsEmpty());
    EXPECT_FALSE(pairsOf(outOfOneRaceway(2.5).build()).empty()) << "beyond it they are";
    auto builder = outOfOneRaceway(1.99);
    double z = 3.0;
    for (auto& conductor : builder.layout().conductors) {
        z += 0.6;
        const std::string own = "of-" + conductor.id.text();
        builder.entry(own, Wall::top, 20.0, z);
        conductor.from = atEntry(own);
        std::get<layout::Spare>(conductor.to).tip = {20.0, 10.0, z};
    }
    EXPECT_EQ(pairsOf(builder.build()).size(), 6U) << "out of raceways of their own they are";
}

TEST(LandingConstraints, WhatLiesInBoresIsNotLaidIn) {
    auto builder = check_test::straightSplice();
    lay(builder, "X", {{5, 6, 6}, {20, 6, 6}});
    EXPECT_THAT(pairsOf(builder.build()), IsEmpty()) << "in front of the body, between the screws";
}

// ---- screws ---------------------------------------------------------------------------------

/// The straight splice's lower screw, which holds T-A (conductor 1), stands at (10, 4.75, 4).
GutterBuilder overTheScrew() {
    auto builder = check_test::straightSplice();
    lay(builder, "X", {{3, 4.75, 6}, {17, 4.75, 6}});
    return builder;
}

TEST(LandingConstraints, ScrewIsTightenedBeforeAConductorGoesOverIt) {
    const auto constraints = landingConstraints(overTheScrew().build());
    ASSERT_EQ(constraints.size(), 1U);
    EXPECT_EQ(constraints[0].first, 1U);
    EXPECT_EQ(constraints[0].second, 2U);
    ASSERT_TRUE(constraints[0].screw.has_value());
    EXPECT_EQ(constraints[0].screw->port, 1U);
    const auto finding = onlyOf(overTheScrew());
    EXPECT_EQ(finding.verdict, Verdict::meets);
    EXPECT_THAT(finding.working, HasSubstr("first S-A and T-A; then X"));
}

/// X goes over T-A's screw, and T-A in front of X below it.
GutterBuilder knotOverTheScrew() {
    auto builder = check_test::straightSplice();
    builder.layout().conductors.at(1).to = spare({4, 2, 8});
    builder.layout().conductors.at(1).corners = {corner({10, 2, 3}, 0.5), corner({10, 2, 8}, 0.5)};
    lay(builder, "X", {{6, 1, 6}, {6, 4.75, 6}, {17, 4.75, 6}});
    return builder;
}

TEST(LandingOrder, KnotOfAScrewAndACrossing) {
    const auto finding = onlyOf(knotOverTheScrew());
    EXPECT_EQ(finding.verdict, Verdict::caution);
    EXPECT_THAT(
        finding.subjects,
        ElementsAre(Subject(layout::ConductorId("T-A")), Subject(layout::ConductorId("X"))));
    EXPECT_THAT(finding.working, HasSubstr("X over the screw that holds T-A in port 2 of block A"));
    EXPECT_THAT(finding.working, HasSubstr("T-A in front of X at x = 6, y = 2 in"));
    EXPECT_EQ(finding.citation.basis, standards::Basis::commonPractice);
}

struct SectionRow {
    std::string name;
    standards::Edition edition;
    standards::GutterArticle article;
    std::string section;
};

void PrintTo(const SectionRow& row, std::ostream* out) {
    *out << row.name;
}

class KnotOverABlocksScrew : public testing::TestWithParam<SectionRow> {};

// Source: NFPA 70 376.56(B)(5) for power distribution blocks in metal wireways, 314.28(E)(5) its
// twin for boxes; numbers alike from 2017 to 2026.
TEST_P(KnotOverABlocksScrew, NamesTheSectionThatKeepsItFree) {
    auto builder = knotOverTheScrew();
    builder.part("splice").listing.kind = parts::ConnectorKind::distributionBlock;
    builder.layout().edition = GetParam().edition;
    builder.layout().gutter.article = GetParam().article;
    EXPECT_EQ(onlyOf(builder).citation.section, GetParam().section);
}

INSTANTIATE_TEST_SUITE_P(Editions,
                         KnotOverABlocksScrew,
                         testing::Values(SectionRow{"Wireway2017",
                                                    standards::Edition::nec2017,
                                                    standards::GutterArticle::metalWireway,
                                                    "376.56(B)(5)"},
                                         SectionRow{"Gutter2026",
                                                    standards::Edition::nec2026,
                                                    standards::GutterArticle::auxiliaryGutter,
                                                    "314.28(E)(5)"}),
                         [](const auto& row) { return row.param.name; });

TEST(LandingOrder, DriveNotStatedCannotTell) {
    auto builder = overTheScrew();
    builder.part("splice").screws.at(1).drive.clear();
    const auto finding = onlyOf(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, ElementsAre("drive of screw 2 of part splice"));
}

TEST(LandingOrder, ScrewsNotStatedCannotTellBesideAKnot) {
    auto builder = overTheScrew();
    builder.part("splice").screws.clear();
    lay(builder, "Y", {{20, 1, 2}, {20, 9, 2}, {30, 9, 6}, {30, 1, 6}});
    lay(builder, "Z", {{15, 3, 4}, {40, 3, 4}});
    const auto findings = checkLandingOrder(builder.build());
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].verdict, Verdict::caution);
    EXPECT_EQ(findings[1].verdict, Verdict::cannotTell);
    EXPECT_THAT(findings[1].missing,
                ElementsAre("screws of port 1 of part splice", "screws of port 2 of part splice"));
}

// ---- knots ----------------------------------------------------------------------------------

/// Behind the straight one at x = 20, in front of it at x = 30.
GutterBuilder woven(double y = 5.0) {
    GutterBuilder builder;
    lay(builder, "straight", {{15, y, 4}, {40, y, 4}});
    lay(builder, "weaving", {{20, 2, 2}, {20, 9, 2}, {30, 9, 6}, {30, 2, 6}});
    return builder;
}

TEST(LandingOrder, EachInFrontOfTheOtherIsAKnotOfTwo) {
    const auto finding = onlyOf(woven());
    EXPECT_EQ(finding.verdict, Verdict::caution);
    EXPECT_THAT(finding.subjects,
                ElementsAre(Subject(layout::ConductorId("straight")),
                            Subject(layout::ConductorId("weaving"))));
    EXPECT_THAT(finding.working, HasSubstr("weaving in front of straight at x = 30, y = 5 in"));
    EXPECT_THAT(finding.working, HasSubstr("straight in front of weaving at x = 20, y = 5 in"));
    EXPECT_NEAR(finding.place->x, 30.0, 1e-6);
}

TEST(LandingOrder, ThreeEachOverTheNextAreOneKnot) {
    // Three straight ones round the triangle (20, 2), (28, 2), (24, 8): each starts behind the one
    // before and ends in front of the next.
    GutterBuilder builder;
    lay(builder, "P", {{18, 2, 2}, {30, 2, 8}});
    lay(builder, "Q", {{29, 0.5, 2}, {23, 9.5, 8}});
    lay(builder, "R", {{25, 9.5, 2}, {19, 0.5, 8}});
    const auto built = builder.build();
    EXPECT_EQ(pairsOf(built), Pairs({{1, 0}, {2, 1}, {0, 2}}));
    const auto finding = onlyOf(builder);
    EXPECT_EQ(finding.verdict, Verdict::caution);
    EXPECT_EQ(finding.subjects.size(), 3U);
    EXPECT_THAT(finding.working, HasSubstr("P, Q and R block one another"));
    EXPECT_THAT(finding.working, HasSubstr("R in front of P"));
    EXPECT_THAT(finding.working, HasSubstr("and so on round"));
}

TEST(LandingOrder, KnotOfUnknownThicknessCannotTell) {
    auto builder = woven();
    auto& weaving = builder.conductorNamed("weaving");
    weaving.outsideDiameter.reset();
    weaving.insulation.reset();
    EXPECT_EQ(onlyOf(builder).verdict, Verdict::caution) << "a knot however thin it is";
    // Source: NFPA 70 Chapter 9 Table 8, 500 kcmil bare 0.813 in; with insulation at the most
    // about 1.1: the ends at y = 2 cover the straight one 0.7 in below only if it is thick.
    builder = woven(2.0 - 0.25 - 0.45);
    auto& thick = builder.conductorNamed("weaving");
    thick.outsideDiameter.reset();
    thick.insulation.reset();
    const auto finding = onlyOf(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, ElementsAre("insulation of conductor weaving"));
}

TEST(LandingOrder, SureKnotAndTheLargerOneItMayBelongTo) {
    auto builder = woven();
    // Behind the straight one where it is woven already, in front of it at x = 16 only if thick:
    // its centreline ends 0.7 in above.
    lay(builder, "other", {{38, 3, 2}, {38, 11, 2}, {16, 11, 6}, {16, 5.7, 6}});
    auto& other = builder.conductorNamed("other");
    EXPECT_EQ(onlyOf(builder).subjects.size(), 2U) << "0.5 in thick it ends aside";
    other.outsideDiameter.reset();
    other.insulation.reset();
    const auto findings = checkLandingOrder(builder.build());
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].verdict, Verdict::caution);
    EXPECT_EQ(findings[0].subjects.size(), 2U);
    EXPECT_EQ(findings[1].verdict, Verdict::cannotTell);
    EXPECT_EQ(findings[1].subjects.size(), 3U);
    EXPECT_THAT(findings[1].missing, ElementsAre("insulation of conductor other"));
}

class MovedOutOfAKnot : public testing::TestWithParam<std::uint64_t> {};

TEST_P(MovedOutOfAKnot, NeverMakesTheVerdictWorse) {
    test_support::Random random(GetParam());
    int worst = 3;
    for (double y = 5.0; y > 0.8; y -= random.between(0.1, 0.6)) {
        const int now = gravity(onlyOf(woven(y)).verdict);
        EXPECT_LE(now, worst) << "seed " << GetParam() << ", y " << y;
        worst = now;
    }
    EXPECT_EQ(gravity(onlyOf(woven(0.8)).verdict), 0);
}

INSTANTIATE_TEST_SUITE_P(Seeds, MovedOutOfAKnot, testing::Range<std::uint64_t>(1, 9));

// ---- the order ------------------------------------------------------------------------------

TEST(LandingOrder, OfNoConductorSaysNothing) {
    EXPECT_TRUE(checkLandingOrder(GutterBuilder().build()).empty());
}

/// As many conductors as ids, far apart.
GutterBuilder apart(const std::vector<std::string>& ids) {
    GutterBuilder builder;
    double x = 0.0;
    for (const auto& id : ids) {
        x += 5.0;
        lay(builder, id, {{x, 2, 2}, {x, 8, 2}});
    }
    return builder;
}

LandingConstraint before(std::size_t first, std::size_t second) {
    LandingConstraint constraint;
    constraint.first = first;
    constraint.second = second;
    return constraint;
}

TEST(LandingOrder, GoesByRoundsAndWithinThemById) {
    const auto built = apart({"e", "d", "c", "b", "a"}).build();
    const auto order = landingOrder(built, {before(4, 0), before(0, 2), before(3, 2)});
    EXPECT_THAT(order.order, ElementsAre(4, 3, 1, 0, 2));
    EXPECT_THAT(order.rounds, ElementsAre(1, 0, 2, 0, 0));
    EXPECT_THAT(order.knots, IsEmpty());
}

TEST(LandingOrder, KnotsStandTogetherBetweenWhatComesBeforeAndAfter) {
    const auto built = apart({"a", "b", "c", "d", "e"}).build();
    const auto order =
        landingOrder(built, {before(3, 1), before(1, 4), before(4, 3), before(4, 0), before(2, 3)});
    EXPECT_THAT(order.order, ElementsAre(2, 1, 3, 4, 0));
    EXPECT_THAT(order.rounds, ElementsAre(2, 1, 0, 1, 1));
    EXPECT_THAT(order.knots, ElementsAre(ElementsAre(1, 3, 4)));
}

TEST(LandingOrder, TellsTheOrderByTags) {
    GutterBuilder builder;
    lay(builder, "Q", {{10, 2, 6}, {10, 10, 6}});
    lay(builder, "P", {{5, 5, 3}, {20, 5, 3}});
    lay(builder, "O", {{5, 1, 3}, {20, 1, 3}});
    EXPECT_EQ(onlyOf(builder).working,
              "3 conductors can be laid in and landed from back to front: first O and P; then Q.");
}

TEST(LandingOrder, LongOrdersAreCutShort) {
    GutterBuilder builder;
    for (int i = 0; i < 40; ++i) {
        const double z = 1.0 + 0.25 * i;
        const std::string id = (i < 10 ? "conductor-0" : "conductor-") + std::to_string(i);
        lay(builder, id, {{10.0 + 0.1 * i, 2, z}, {14.0 - 0.1 * i, 10, z}}, 0.2);
    }
    const auto finding = onlyOf(builder);
    EXPECT_LE(finding.working.size(), 225U) << finding.working;
    EXPECT_THAT(finding.working, HasSubstr("first conductor-00; then conductor-01; and so on"));
    EXPECT_THAT(finding.working, HasSubstr("last conductor-39."));
}

// ---- laws -----------------------------------------------------------------------------------

/// Straight ones, each at one depth.
struct Stick {
    Vec3 from;
    Vec3 to;
    double thickness = 0.5;
};

std::vector<Stick> randomSticks(test_support::Random& random, std::size_t count) {
    std::vector<Stick> sticks;
    for (std::size_t i = 0; i < count; ++i) {
        const double z = random.between(1.0, 11.0);
        const auto point = [&] {
            return Vec3{random.between(1.0, 59.0), random.between(1.0, 11.0), z};
        };
        const Vec3 from = point();
        sticks.push_back({from, point(), random.between(0.2, 1.2)});
    }
    return sticks;
}

/// Distance in the front view, by halving thirds: along one stick the distance to the other is
/// convex.
double apartInFrontView(const Stick& a, const Stick& b) {
    const auto toB = [&](double t) {
        const Vec3 p = a.from + (a.to - a.from) * t;
        const Vec3 d = b.to - b.from;
        const double along = (p.x - b.from.x) * d.x + (p.y - b.from.y) * d.y;
        const double s = std::clamp(along / (d.x * d.x + d.y * d.y), 0.0, 1.0);
        return std::hypot(p.x - b.from.x - d.x * s, p.y - b.from.y - d.y * s);
    };
    double low = 0.0;
    double high = 1.0;
    for (int i = 0; i < 100; ++i) {
        const double left = low + (high - low) / 3.0;
        const double right = high - (high - low) / 3.0;
        (toB(left) < toB(right) ? high : low) = toB(left) < toB(right) ? right : left;
    }
    return toB((low + high) / 2.0);
}

/// Empty where it is a matter of rounding.
std::optional<bool> mustPrecede(const Stick& a, const Stick& b) {
    const double overlap = (a.thickness + b.thickness) / 2.0 - apartInFrontView(a, b);
    const double alike = std::min(a.thickness, b.thickness) / 8.0;
    const double inFront = b.from.z - a.from.z;
    if (std::abs(overlap) < 1e-4 || std::abs(inFront - alike) < 1e-4) {
        return std::nullopt;
    }
    return overlap > 0.0 && inFront > alike;
}

class RandomSticks : public testing::TestWithParam<std::uint64_t> {};

TEST_P(RandomSticks, AreOrderedAsEveryPairAsks) {
    test_support::Random random(GetParam());
    const auto sticks = randomSticks(random, 40);
    GutterBuilder builder;
    for (std::size_t i = 0; i < sticks.size(); ++i) {
        lay(builder, "C" + std::to_string(i), {sticks[i].from, sticks[i].to}, sticks[i].thickness);
    }
    const auto built = builder.build();
    const Pairs pairs = pairsOf(built);
    const auto order = landingOrder(built);
    ASSERT_EQ(std::set<std::size_t>(order.order.begin(), order.order.end()).size(), sticks.size());
    EXPECT_THAT(order.knots, IsEmpty());
    int asked = 0;
    for (std::size_t a = 0; a < sticks.size(); ++a) {
        for (std::size_t b = 0; b < sticks.size(); ++b) {
            const auto must = mustPrecede(sticks[a], sticks[b]);
            if (a == b || !must) {
                continue;
            }
            EXPECT_EQ(pairs.count({a, b}) == 1, *must) << "seed " << GetParam();
            const auto at = [&](std::size_t one) {
                return std::find(order.order.begin(), order.order.end(), one);
            };
            EXPECT_TRUE(!*must || at(a) < at(b)) << "seed " << GetParam();
            asked += *must ? 1 : 0;
        }
    }
    EXPECT_GT(asked, 50) << "seed " << GetParam();
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomSticks, testing::Range<std::uint64_t>(1, 13));

/// In by the top, along, and down into ports or out by the bottom, at random depths; the same
/// mirrored from left to right.
GutterBuilder tangle(std::uint64_t seed, bool mirrored) {
    test_support::Random random(seed);
    const auto x = [&](double value) { return mirrored ? 60.0 - value : value; };
    GutterBuilder builder;
    builder.add(check_test::rowPart(3));
    builder.block("A", "row", {mirrored ? 60.0 - 35.0 : 30.0, 3.0, 1.0});
    for (int i = 0; i < 14; ++i) {
        const std::string name = std::to_string(i);
        const double z = random.between(1.0, 11.0);
        const double start = random.between(3.0, 57.0);
        const double end = i < 3 ? 31.0 + 1.5 * i : random.between(3.0, 57.0);
        const double lane = random.between(6.5, 9.5);
        builder.entry("in" + name, Wall::top, x(start), z);
        const std::string port = std::to_string(mirrored ? 3 - i : i + 1);
        const auto to = i < 3 ? inPort("A", port) : spare({x(end), 1.0, random.between(1, 11)});
        builder
            .conductor("C" + name,
                       atEntry("in" + name),
                       to,
                       {corner({x(start), lane, z}, 1.0), corner({x(end), lane, 2.0}, 1.0)})
            .outsideDiameter = units::Inches::of(0.5);
    }
    return builder;
}

class Mirrored : public testing::TestWithParam<std::uint64_t> {};

TEST_P(Mirrored, LayoutsAskForTheSameOrder) {
    const auto built = tangle(GetParam(), false).build();
    const auto mirrored = tangle(GetParam(), true).build();
    EXPECT_GT(pairsOf(built).size(), 10U) << "seed " << GetParam();
    EXPECT_EQ(pairsOf(built), pairsOf(mirrored)) << "seed " << GetParam();
    EXPECT_EQ(landingOrder(built).order, landingOrder(mirrored).order) << "seed " << GetParam();
}

INSTANTIATE_TEST_SUITE_P(Seeds, Mirrored, testing::Range<std::uint64_t>(1, 13));

/// Points every 1/16 in along what lies outside bores.
std::vector<Vec3> pointsOf(const geometry::BuiltConductor& conductor) {
    const auto& path = conductor.built.path;
    const double end = conductor.to.kind == geometry::BuiltEnd::Kind::port ? conductor.to.mouthAt
                                                                           : path.length().in();
    std::vector<Vec3> points;
    for (int i = 0; 0.0625 * i < end; ++i) {
        points.push_back(path.pointAt(0.0625 * i));
    }
    return points;
}

double aside(const Vec3& a, const Vec3& b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

class Tangles : public testing::TestWithParam<std::uint64_t> {};

TEST_P(Tangles, EveryConstraintIsSeenFromTheCover) {
    const auto built = tangle(GetParam(), false).build();
    int seen = 0;
    for (const auto& one : landingConstraints(built)) {
        if (one.screw) {
            continue;
        }
        const auto behind = pointsOf(built.conductors[one.first]);
        EXPECT_TRUE(std::any_of(behind.begin(),
                                behind.end(),
                                [&](const Vec3& point) {
                                    return aside(point, one.place) < 0.5 && point.z < one.place.z;
                                }))
            << "seed " << GetParam();
        ++seen;
    }
    EXPECT_GT(seen, 10) << "seed " << GetParam();
}

TEST_P(Tangles, WhereTwoComeNearestTheOneInFrontComesLater) {
    const auto built = tangle(GetParam(), false).build();
    const Pairs pairs = pairsOf(built);
    int asked = 0;
    for (std::size_t a = 0; a < built.conductors.size(); ++a) {
        const auto pointsA = pointsOf(built.conductors[a]);
        for (std::size_t b = a + 1; b < built.conductors.size(); ++b) {
            double least = 1e9;
            double inFront = 0.0;
            for (const Vec3& q : pointsOf(built.conductors[b])) {
                for (const Vec3& p : pointsA) {
                    if (aside(p, q) < least) {
                        least = aside(p, q);
                        inFront = q.z - p.z;
                    }
                }
            }
            if (least < 0.4 && std::abs(inFront) > 0.3) {
                EXPECT_TRUE(pairs.count(inFront > 0.0 ? std::pair(a, b) : std::pair(b, a)))
                    << "seed " << GetParam() << ", " << a << " and " << b;
                ++asked;
            }
        }
    }
    EXPECT_GT(asked, 10) << "seed " << GetParam();
}

INSTANTIATE_TEST_SUITE_P(Seeds, Tangles, testing::Range<std::uint64_t>(1, 4));

}  // namespace
}  // namespace gw::checks
