#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::inPort;
using units::WireSize;

/// The straight splice, its ports' screws stating 250 lbf-in up to 250 kcmil and 375 to 500 kcmil.
GutterBuilder stated() {
    auto builder = check_test::straightSplice();
    for (auto& screw : builder.part("splice").screws) {
        screw.torque = {{WireSize::of("1/0"), WireSize::of("250"), 250.0},
                        {WireSize::of("300"), WireSize::of("500"), 375.0}};
    }
    return builder;
}

Finding upper(const GutterBuilder& builder) {
    const auto findings =
        check_test::about(checkTorqueKnown(builder.build()), Subject(layout::ConductorId("S-A")));
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct SizeRow {
    std::string name;
    std::string size;
    Verdict verdict;
    std::string text;
};

void PrintTo(const SizeRow& row, std::ostream* out) {
    *out << row.size;
}

class TorqueForASize : public testing::TestWithParam<SizeRow> {};

// Source: the rows stated above; of drive hex 3/8 in NFPA 70 Informative Annex I Table I.3 says
// 375.
TEST_P(TorqueForASize, IsThatOfThePartsOwnRow) {
    auto builder = stated();
    builder.conductorNamed("S-A").size = WireSize::of(GetParam().size);
    const auto finding = upper(builder);
    EXPECT_EQ(finding.verdict, GetParam().verdict) << finding.working;
    EXPECT_THAT(finding.working, testing::HasSubstr(GetParam().text));
    EXPECT_EQ(finding.missing.empty(), finding.verdict == Verdict::meets);
}

INSTANTIATE_TEST_SUITE_P(
    Rows,
    TorqueForASize,
    testing::Values(
        SizeRow{"BelowTheFirst", "1", Verdict::cannotTell, "only to ask the maker about"},
        SizeRow{"FirstOfTheFirst", "1/0", Verdict::meets, "states 250 lbf-in on 1 screw"},
        SizeRow{"LastOfTheFirst", "250", Verdict::meets, "states 250 lbf-in on 1 screw"},
        SizeRow{"FirstOfTheSecond", "300", Verdict::meets, "states 375 lbf-in on 1 screw"},
        SizeRow{"LastOfTheSecond", "500", Verdict::meets, "states 375 lbf-in on 1 screw"},
        SizeRow{"BeyondTheLast", "600", Verdict::cannotTell, "375 lbf-in by"}),
    [](const auto& row) { return row.param.name; });

struct DriveRow {
    std::string name;
    std::string drive;
    std::string text;
};

void PrintTo(const DriveRow& row, std::ostream* out) {
    *out << row.drive;
}

class FallbackForADrive : public testing::TestWithParam<DriveRow> {};

// Source: NFPA 70 Informative Annex I Table I.3, recessed hex or square: 3/16 in 120, 3/8 in 375;
// Table I.1, slotted, slot over 0.047 in wide or 0.25 in long, 1/0 and larger: 50.
TEST_P(FallbackForADrive, IsTheAnnexsAndOnlyToAskAbout) {
    auto builder = stated();
    builder.part("splice").screws.at(0).torque.clear();
    builder.part("splice").screws.at(0).drive = GetParam().drive;
    const auto finding = upper(builder);
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.working, testing::HasSubstr(GetParam().text));
    EXPECT_FALSE(finding.measured.has_value());
    EXPECT_LE(finding.working.size(), 225U) << finding.working;
}

INSTANTIATE_TEST_SUITE_P(Rows,
                         FallbackForADrive,
                         testing::Values(DriveRow{"SmallHex", "hex 3/16 in", ": 120 lbf-in by"},
                                         DriveRow{"Hex", "hex 3/8 in", ": 375 lbf-in by"},
                                         DriveRow{"Square", "square 3/8 in", ": 375 lbf-in by"},
                                         DriveRow{"Slot", "slot 1/4 in", ": 50 lbf-in by"},
                                         DriveRow{"NotStated", "", "; ask the maker."},
                                         DriveRow{"NotInTheAnnex", "hex 2 in", "; ask the maker."},
                                         DriveRow{"Other", "star", "; ask the maker."}),
                         [](const auto& row) { return row.param.name; });

TEST(TorqueKnown, OneSilentScrewOfTwoCannotTell) {
    auto builder = stated();
    auto& screws = builder.part("splice").screws;
    screws.push_back(screws.at(0));
    screws.back().name = parts::ScrewName("1b");
    EXPECT_THAT(upper(builder).working, testing::HasSubstr("375 lbf-in on 2 screws"));
    screws.back().torque.clear();
    EXPECT_EQ(upper(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(upper(builder).missing,
                testing::ElementsAre("torque of part splice for 500 kcmil, screw 1b"));
}

TEST(TorqueKnown, TwoScrewsOfDifferentTorqueAreBothTold) {
    auto builder = stated();
    auto& screws = builder.part("splice").screws;
    screws.push_back(screws.at(0));
    screws.back().name = parts::ScrewName("1b");
    screws.back().torque = {{WireSize::of("500"), WireSize::of("500"), 300.0}};
    EXPECT_THAT(upper(builder).working,
                testing::HasSubstr("300 lbf-in and 375 lbf-in on 2 screws"));
}

TEST(TorqueKnown, NoScrewsStatedCannotTell) {
    auto builder = stated();
    builder.part("splice").screws.clear();
    EXPECT_EQ(upper(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(upper(builder).missing, testing::SizeIs(2));
}

TEST(TorqueKnown, IsAskedOfEveryConductorInAPort) {
    EXPECT_EQ(checkTorqueKnown(stated().build()).size(), 2U);
    auto builder = stated();
    builder.layout().conductors.pop_back();
    EXPECT_EQ(checkTorqueKnown(builder.build()).size(), 1U);
}

TEST(TorqueKnown, SectionIsAlikeInEveryEdition) {
    // Source: NFPA 70 110.14(D), in the code since 2017.
    for (const auto edition : {standards::Edition::nec2017,
                               standards::Edition::nec2020,
                               standards::Edition::nec2023,
                               standards::Edition::nec2026}) {
        auto builder = stated();
        builder.layout().edition = edition;
        EXPECT_EQ(upper(builder).citation.section, "110.14(D)");
    }
}

TEST(TorqueKnown, ARowMoreNeverMakesAVerdictWorse) {
    auto builder = stated();
    for (const char* size : {"6", "1", "1/0", "250", "350", "500", "600", "1000"}) {
        builder.conductorNamed("S-A").size = WireSize::of(size);
        const auto before = upper(builder).verdict;
        auto more = builder;
        for (auto& screw : more.part("splice").screws) {
            screw.torque.push_back({WireSize::of("600"), WireSize::of("750"), 400.0});
        }
        const auto after = upper(more).verdict;
        EXPECT_TRUE(after == before || after == Verdict::meets) << size;
        EXPECT_EQ(after == Verdict::meets, before == Verdict::meets || std::string(size) == "600")
            << size;
    }
}

}  // namespace
}  // namespace gw::checks
