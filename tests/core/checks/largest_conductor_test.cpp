#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using check_test::spare;
using standards::GutterArticle;
using testing::ElementsAre;
using testing::IsEmpty;

/// A metal wireway marked for 250 kcmil, with one 1/0 "thin" and one of the size asked, "thick".
GutterBuilder wireway(const std::string& size) {
    GutterBuilder builder;
    builder.layout().gutter.article = GutterArticle::metalWireway;
    builder.layout().gutter.largestConductor = units::WireSize::of("250");
    builder.conductor("thin", spare({1, 2, 1}), spare({50, 2, 1})).size =
        units::WireSize::of("1/0");
    builder.conductor("thick", spare({1, 6, 1}), spare({50, 6, 1})).size =
        units::WireSize::of(size);
    return builder;
}

Finding only(const GutterBuilder& builder) {
    const auto findings = checkLargestConductor(builder.build());
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

// Source: NFPA 70 376.21, 378.21: none larger than that for which the wireway is designed.
TEST(LargestConductor, IsNoLargerThanTheWirewayIsDesignedFor) {
    EXPECT_EQ(only(wireway("4/0")).verdict, Verdict::meets);
    EXPECT_EQ(only(wireway("250")).verdict, Verdict::meets);
    EXPECT_EQ(only(wireway("300")).verdict, Verdict::breach);
    EXPECT_EQ(only(wireway("300")).working,
              "The largest conductor is 300 kcmil, where the wireway is designed for 250 kcmil at "
              "most.");
}

TEST(LargestConductor, NamesThoseThatAreTooLargeOrTheLargest) {
    EXPECT_THAT(only(wireway("300")).subjects, ElementsAre(Subject(layout::ConductorId("thick"))));
    EXPECT_THAT(only(wireway("4/0")).subjects, ElementsAre(Subject(layout::ConductorId("thick"))));
    auto builder = wireway("300");
    builder.conductorNamed("thin").size = units::WireSize::of("350");
    EXPECT_THAT(
        only(builder).subjects,
        ElementsAre(Subject(layout::ConductorId("thick")), Subject(layout::ConductorId("thin"))));
}

TEST(LargestConductor, CannotBeToldWithoutTheMark) {
    auto builder = wireway("1/0");
    builder.layout().gutter.largestConductor.reset();
    EXPECT_EQ(only(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(only(builder).missing,
                ElementsAre("the largest conductor the wireway is designed for"));
}

TEST(LargestConductor, IsAskedOfWirewaysOnlyByTheirOwnSections) {
    auto builder = wireway("300");
    EXPECT_EQ(only(builder).citation.section, "376.21");
    builder.layout().gutter.article = GutterArticle::nonmetallicWireway;
    builder.layout().gutter.material = layout::GutterMaterial::nonmetallic;
    EXPECT_EQ(only(builder).citation.section, "378.21");
    builder.layout().gutter.article = GutterArticle::auxiliaryGutter;
    EXPECT_THAT(checkLargestConductor(builder.build()), IsEmpty());
}

TEST(LargestConductor, HasNothingToSayOfAnEmptyWireway) {
    auto builder = wireway("300");
    builder.layout().conductors.clear();
    EXPECT_THAT(checkLargestConductor(builder.build()), IsEmpty());
}

/// Property: marked for more is never worse.
TEST(LargestConductor, MarkedForMoreIsNeverWorse) {
    auto builder = wireway("350");
    bool met = false;
    for (const auto size : units::WireSize::all()) {
        builder.layout().gutter.largestConductor = size;
        const bool meets = only(builder).verdict == Verdict::meets;
        EXPECT_TRUE(meets || !met) << size.text();
        met = meets;
    }
    EXPECT_TRUE(met);
}

}  // namespace
}  // namespace gw::checks
