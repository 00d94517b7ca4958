#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::spare;
using layout::BondedBy;
using layout::Phase;
using standards::Metal;
using standards::RacewayType;

/// `sets` conductors of phase A of a service through one entry in a metal raceway.
GutterBuilder entering(std::optional<BondedBy> means,
                       const std::string& size = "250",
                       int sets = 1) {
    GutterBuilder builder;
    builder.circuitNamed("S").sets = sets;
    builder.entry("in", layout::Wall::left, 6.0, 6.0);
    auto& entry = builder.layout().entries.front();
    entry.raceway = RacewayType::rmc;
    entry.bondedBy = means;
    for (int set = 1; set <= sets; ++set) {
        auto& conductor = builder.conductor(
            "w" + std::to_string(set), atEntry("in", set), spare({30.0, 2.0 + 2.0 * set, 6.0}));
        conductor.size = units::WireSize::of(size);
        conductor.set = set;
    }
    return builder;
}

GutterBuilder withJumper(const std::string& jumper, const std::string& size, int sets = 1) {
    auto builder = entering(BondedBy::bushingAndJumper, size, sets);
    builder.layout().entries.front().bondingJumper = units::WireSize::of(jumper);
    return builder;
}

std::vector<Finding> of(const GutterBuilder& builder) {
    return checkServiceBonding(builder.build());
}

// Source: NFPA 70 250.92(B): standard locknuts are not the sole means.
TEST(ServiceBonding, StandardLocknutsAloneAreNotEnough) {
    EXPECT_EQ(of(entering(BondedBy::standardLocknuts)).at(0).verdict, Verdict::breach);
    for (const auto means : {BondedBy::threadedHub,
                             BondedBy::threadlessFitting,
                             BondedBy::bondingLocknut,
                             BondedBy::groundedConductor}) {
        EXPECT_EQ(of(entering(means)).at(0).verdict, Verdict::meets);
    }
}

struct JumperRow {
    const char* name;
    const char* size;
    int sets;
    const char* enough;
    const char* tooThin;
};

void PrintTo(const JumperRow& row, std::ostream* out) {
    *out << row.name;
}

class ServiceJumper : public testing::TestWithParam<JumperRow> {};

TEST_P(ServiceJumper, IsAsLargeAsTheTableAsks) {
    const auto& row = GetParam();
    EXPECT_EQ(of(withJumper(row.enough, row.size, row.sets)).at(0).verdict, Verdict::meets);
    EXPECT_EQ(of(withJumper(row.tooThin, row.size, row.sets)).at(0).verdict, Verdict::breach);
}

// Sources: "Sizing a supply side or main bond with parallel conductors" (thebuildingcodeforum.com):
// 250 kcmil 2 AWG, three paralleled 250 kcmil 2/0. NFPA 70 Table 250.102(C)(1) for the rest; 1250
// kcmil: 12.5 % are 156.25 kcmil, 3/0 is 167.8.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Published, ServiceJumper, testing::Values(
    JumperRow{"One250",     "250", 1, "2",   "3"},
    JumperRow{"Three250",   "250", 3, "2/0", "1/0"},
    JumperRow{"One2",       "2",   1, "8",   "10"},
    JumperRow{"One2Ought",  "2/0", 1, "4",   "6"},
    JumperRow{"One350",     "350", 1, "2",   "3"},
    JumperRow{"One400",     "400", 1, "1/0", "1"},
    JumperRow{"Five250",    "250", 5, "3/0", "2/0"}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

// 4/0 aluminium is in the row of 4 AWG copper, 4/0 copper in that of 2 AWG (Table 250.102(C)(1)).
TEST(ServiceJumper, GoesByTheMetalOfTheConductors) {
    auto builder = withJumper("4", "4/0");
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::breach);
    builder.conductorNamed("w1").metal = Metal::aluminium;
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::meets);
    builder.conductorNamed("w1").metal.reset();
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::cannotTell);
}

TEST(ServiceJumper, BeyondTheTableOfTwoMetalsCannotBeTold) {
    auto builder = withJumper("250", "1000", 3);
    for (const char* id : {"w1", "w2", "w3"}) {
        builder.conductorNamed(id).metal = Metal::aluminium;
    }
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::cannotTell);
    EXPECT_THAT(of(builder).at(0).missing, testing::SizeIs(1));
}

TEST(ServiceBonding, WhatIsNotStatedIsNamed) {
    EXPECT_THAT(of(entering(std::nullopt)).at(0).missing,
                testing::ElementsAre("what bonds the raceway to the gutter at entry in"));
    EXPECT_THAT(of(entering(BondedBy::bushingAndJumper)).at(0).missing,
                testing::ElementsAre("the size of the bonding jumper at entry in"));
    auto builder = entering(BondedBy::threadedHub);
    builder.layout().entries.front().raceway.reset();
    EXPECT_THAT(of(builder).at(0).missing,
                testing::ElementsAre("whether the raceway is of metal at entry in"));
}

TEST(ServiceBonding, OfWhatMayBeAServiceCannotBeTold) {
    auto builder = entering(BondedBy::threadedHub);
    builder.circuitNamed("S").role = layout::Role::tap;
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::cannotTell);
    EXPECT_THAT(of(builder).at(0).missing, testing::SizeIs(1));
}

TEST(ServiceJumper, WithNothingToSizeItByCannotBeTold) {
    auto builder = withJumper("2", "250");
    builder.conductorNamed("w1").phase = Phase::n;
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::cannotTell);
}

TEST(ServiceBonding, IsNotAskedOfOthersNorOfPlastic) {
    auto feeder = entering(BondedBy::standardLocknuts);
    feeder.circuitNamed("S").role = layout::Role::feeder;
    EXPECT_THAT(of(feeder), testing::IsEmpty());
    auto plastic = entering(BondedBy::standardLocknuts);
    plastic.layout().entries.front().raceway = RacewayType::pvc40;
    EXPECT_THAT(of(plastic), testing::IsEmpty());
    auto box = entering(BondedBy::standardLocknuts);
    box.layout().gutter.material = layout::GutterMaterial::nonmetallic;
    EXPECT_THAT(of(box), testing::IsEmpty());
}

/// Property: a larger jumper is never worse.
TEST(ServiceJumper, LargerIsNeverWorse) {
    bool met = false;
    for (const auto size : units::WireSize::all()) {
        const bool meets =
            of(withJumper(std::string(size.label()), "500", 2)).at(0).verdict == Verdict::meets;
        EXPECT_TRUE(meets || !met) << size.text();
        met = meets;
    }
    EXPECT_TRUE(met);
}

}  // namespace
}  // namespace gw::checks
