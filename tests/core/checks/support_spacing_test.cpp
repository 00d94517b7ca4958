#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using layout::GutterMaterial;
using layout::Orientation;
using standards::GutterArticle;
using units::Inches;

constexpr double kLong = 400.0;

GutterBuilder hung(GutterArticle article,
                   Orientation orientation,
                   GutterMaterial material,
                   std::optional<double> spacing) {
    GutterBuilder builder({kLong, 8.0, 8.0});
    auto& gutter = builder.layout().gutter;
    gutter.article = article;
    gutter.orientation = orientation;
    gutter.material = material;
    if (spacing) {
        gutter.supportSpacing = Inches::of(*spacing);
    }
    return builder;
}

Finding only(const GutterBuilder& builder) {
    const auto findings = checkSupportSpacing(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct SupportRow {
    const char* name;
    GutterArticle article;
    Orientation orientation;
    GutterMaterial material;
    double spacing;
    Verdict verdict;
    double limit;
};

void PrintTo(const SupportRow& row, std::ostream* out) {
    *out << row.name;
}

class Supports : public testing::TestWithParam<SupportRow> {};

TEST_P(Supports, AreHeldAgainstTheLimitOfTheirKind) {
    const auto& row = GetParam();
    const auto finding = only(hung(row.article, row.orientation, row.material, row.spacing));
    EXPECT_EQ(finding.verdict, row.verdict);
    EXPECT_EQ(finding.limit->value, row.limit);
    EXPECT_EQ(finding.measured->value, row.spacing);
    EXPECT_EQ(finding.missing.empty(), row.verdict != Verdict::cannotTell);
}

constexpr auto kGutter = GutterArticle::auxiliaryGutter;
constexpr auto kMetal = GutterArticle::metalWireway;
constexpr auto kPlastic = GutterArticle::nonmetallicWireway;
constexpr auto kAcross = Orientation::horizontal;
constexpr auto kUpright = Orientation::vertical;
constexpr auto kSteel = GutterMaterial::steel;
constexpr auto kNonmetallic = GutterMaterial::nonmetallic;

// Source: NFPA 70 366.30(A) and (B) (5 ft; 3 ft), 376.30(A) and (B) (5 ft, 10 ft; 15 ft),
// 378.30(A) and (B) (3 ft, 10 ft as listed; 4 ft).
// clang-format off
INSTANTIATE_TEST_SUITE_P(Kinds, Supports, testing::Values(
    SupportRow{"SheetMetalAtTheLimit",     kGutter,  kAcross,  kSteel,       60.0,  Verdict::meets,      60.0},
    SupportRow{"SheetMetalOver",           kGutter,  kAcross,  kSteel,       60.1,  Verdict::breach,     60.0},
    SupportRow{"SheetMetalUprightOver",    kGutter,  kUpright, kSteel,       61.0,  Verdict::breach,     60.0},
    SupportRow{"PlasticGutterAtTheLimit",  kGutter,  kAcross,  kNonmetallic, 36.0,  Verdict::meets,      36.0},
    SupportRow{"PlasticGutterOver",        kGutter,  kAcross,  kNonmetallic, 36.1,  Verdict::breach,     36.0},
    SupportRow{"WirewayAtTheLimit",        kMetal,   kAcross,  kSteel,       60.0,  Verdict::meets,      60.0},
    SupportRow{"WirewayOnTheCondition",    kMetal,   kAcross,  kSteel,       61.0,  Verdict::cannotTell, 120.0},
    SupportRow{"WirewayAtItsFurthest",     kMetal,   kAcross,  kSteel,       120.0, Verdict::cannotTell, 120.0},
    SupportRow{"WirewayBeyond",            kMetal,   kAcross,  kSteel,       120.1, Verdict::breach,     120.0},
    SupportRow{"WirewayUprightAtTheLimit", kMetal,   kUpright, kSteel,       180.0, Verdict::meets,      180.0},
    SupportRow{"WirewayUprightOver",       kMetal,   kUpright, kSteel,       180.1, Verdict::breach,     180.0},
    SupportRow{"PlasticAtTheLimit",        kPlastic, kAcross,  kNonmetallic, 36.0,  Verdict::meets,      36.0},
    SupportRow{"PlasticAsListed",          kPlastic, kAcross,  kNonmetallic, 37.0,  Verdict::cannotTell, 120.0},
    SupportRow{"PlasticBeyond",            kPlastic, kAcross,  kNonmetallic, 121.0, Verdict::breach,     120.0},
    SupportRow{"PlasticUprightAtTheLimit", kPlastic, kUpright, kNonmetallic, 48.0,  Verdict::meets,      48.0},
    SupportRow{"PlasticUprightOver",       kPlastic, kUpright, kNonmetallic, 48.1,  Verdict::breach,     48.0}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(SupportsNotStated, CannotBeTold) {
    const auto finding = only(hung(kGutter, kAcross, kSteel, std::nullopt));
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing, testing::SizeIs(1));
}

TEST(SupportsNotStated, OfAGutterNoLongerThanTheLimitAreCloseEnough) {
    auto builder = hung(kGutter, kAcross, kSteel, std::nullopt);
    builder.layout().gutter.inside.x = 60.0;
    EXPECT_EQ(only(builder).verdict, Verdict::meets);
    builder.layout().gutter.inside.x = 60.1;
    EXPECT_EQ(only(builder).verdict, Verdict::cannotTell);
}

TEST(SupportsStated, FurtherApartThanTheGutterIsLongAreAtItsEnds) {
    auto builder = hung(kGutter, kAcross, kSteel, 66.0);
    builder.layout().gutter.inside.x = 48.0;
    EXPECT_EQ(only(builder).measured->value, 48.0);
    EXPECT_EQ(only(builder).verdict, Verdict::meets);
}

/// Property: closer supports never worsen the verdict.
TEST(SupportsStated, CloserAreNeverWorse) {
    const auto badness = [](Verdict verdict) {
        return verdict == Verdict::breach ? 2 : verdict == Verdict::cannotTell ? 1 : 0;
    };
    for (const auto article : {kGutter, kMetal, kPlastic}) {
        for (const auto orientation : {kAcross, kUpright}) {
            int worst = 2;
            for (double spacing = 200.0; spacing > 10.0; spacing -= 1.0) {
                const int now = badness(only(hung(article, orientation, kSteel, spacing)).verdict);
                EXPECT_LE(now, worst) << spacing;
                worst = now;
            }
            EXPECT_EQ(worst, 0);
        }
    }
}

}  // namespace
}  // namespace gw::checks
