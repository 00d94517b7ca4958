#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::about;
using check_test::atEntry;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;
using standards::Metal;
using standards::Stranding;
using test_support::Random;

const Subject kUpper = layout::ConductorId("S-A");

Finding upper(const GutterBuilder& builder) {
    const auto findings = about(checkPortSuitsConductor(builder.build()), kUpper);
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

struct SuitRow {
    std::string name;
    std::string size;
    Metal metal;
    Stranding stranding;
    Verdict verdict;
    std::string section;
};

void PrintTo(const SuitRow& row, std::ostream* out) {
    *out << row.name;
}

class OneConductor : public testing::TestWithParam<SuitRow> {};

TEST_P(OneConductor, HasToBeWithinARowOfTheWireTable) {
    const SuitRow& row = GetParam();
    auto builder = check_test::straightSplice();
    auto& conductor = builder.conductorNamed("S-A");
    conductor.size = units::WireSize::of(row.size);
    conductor.metal = row.metal;
    conductor.stranding = row.stranding;
    conductor.outsideDiameter = units::Inches::of(0.9);
    const auto finding = upper(builder);
    EXPECT_EQ(finding.verdict, row.verdict) << finding.working;
    EXPECT_EQ(finding.measured->value, 1.0);
    EXPECT_EQ(finding.limit->value, row.verdict == Verdict::meets ? 1.0 : 0.0);
    EXPECT_EQ(finding.citation.section, row.section);
}

// The port takes copper class B, 1/0 to 600 kcmil, one conductor.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Sides, OneConductor, testing::Values(
    SuitRow{"smallest size",      "1/0", Metal::copper,    Stranding::classB,  Verdict::meets,  "110.3(B)"},
    SuitRow{"below the smallest", "1",   Metal::copper,    Stranding::classB,  Verdict::breach, "110.3(B)"},
    SuitRow{"largest size",       "600", Metal::copper,    Stranding::classB,  Verdict::meets,  "110.3(B)"},
    SuitRow{"above the largest",  "700", Metal::copper,    Stranding::classB,  Verdict::breach, "110.3(B)"},
    SuitRow{"other metal",        "500", Metal::aluminium, Stranding::classB,  Verdict::breach, "110.14"},
    SuitRow{"copper-clad",        "500", Metal::copperCladAluminium, Stranding::classB, Verdict::breach, "110.14"},
    SuitRow{"fine strands",       "500", Metal::copper,    Stranding::classK,  Verdict::breach, "110.14(A)"},
    SuitRow{"compact",            "500", Metal::copper,    Stranding::compact, Verdict::breach, "110.14(A)"}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });
// clang-format on

TEST(PortSuitsConductor, TakesFineStrandsWhereTheyAreListed) {
    auto builder = check_test::straightSplice();
    builder.conductorNamed("S-A").stranding = Stranding::classK;
    builder.conductorNamed("S-A").outsideDiameter = units::Inches::of(0.9);
    builder.part("splice").ports[0].accepts[0].strandings.push_back(Stranding::classK);
    EXPECT_EQ(upper(builder).verdict, Verdict::meets);
}

/// Two conductors into the first port of a row.
GutterBuilder two(std::optional<int> allowed) {
    GutterBuilder builder;
    builder.add(check_test::rowPart(2)).block("A", "row", {9.0, 4.0, 2.0});
    for (auto& port : builder.part("row").ports) {
        port.accepts[0].conductors = allowed;
    }
    builder.conductor("S-A", spare({10, 11, 3}), inPort("A", "1"));
    builder.conductor("S-B", spare({12, 11, 3}), inPort("A", "1"));
    return builder;
}

TEST(NumberInAPort, IsHeldAgainstTheRowOnBothSides) {
    EXPECT_EQ(upper(two(1)).verdict, Verdict::breach);
    EXPECT_EQ(upper(two(2)).verdict, Verdict::meets);
    EXPECT_EQ(upper(two(3)).verdict, Verdict::meets);
    EXPECT_EQ(upper(two(1)).measured->value, 2.0);
    EXPECT_EQ(upper(two(1)).limit->value, 1.0);
    EXPECT_EQ(upper(two(1)).margin->value, -1.0);
    EXPECT_EQ(upper(two(1)).citation.section, "110.14(A)");
}

TEST(NumberInAPort, IsOneWhereNotStated) {
    // NFPA 70 110.14(A): one conductor a terminal unless it is identified for more.
    EXPECT_EQ(upper(two(std::nullopt)).verdict, Verdict::breach);
    EXPECT_EQ(upper(two(std::nullopt)).limit->value, 1.0);
    auto builder = two(std::nullopt);
    builder.layout().conductors.pop_back();
    EXPECT_EQ(upper(builder).verdict, Verdict::meets);
}

TEST(NumberInAPort, MixedConductorsNeedOneRowForAll) {
    auto builder = two(2);
    builder.conductorNamed("S-B").metal = Metal::aluminium;
    parts::PortRange aluminium = builder.part("row").ports[0].accepts[0];
    aluminium.metals = {Metal::aluminium};
    builder.part("row").ports[0].accepts.push_back(aluminium);
    EXPECT_EQ(upper(builder).verdict, Verdict::breach) << "each has a row, but not the same one";
    builder.part("row").ports[0].accepts[0].metals.push_back(Metal::aluminium);
    EXPECT_EQ(upper(builder).verdict, Verdict::meets);
}

TEST(NumberInAPort, CountsBothMouthsAndAPassOnce) {
    GutterBuilder builder;
    builder.add(check_test::throughPart()).block("A", "through", {9.0, 4.0, 2.0});
    builder.entry("above", layout::Wall::top, 10.0, 3.0);
    builder.entry("below", layout::Wall::bottom, 10.0, 3.0);
    builder.conductor("S-A", atEntry("below"), atEntry("above")).passes = {
        {layout::BlockId("A"), parts::PortName("1"), {}, {}}};
    EXPECT_EQ(upper(builder).measured->value, 1.0);
    EXPECT_EQ(upper(builder).verdict, Verdict::meets);
    builder.layout().conductors.clear();
    builder.conductor("S-A", spare({10, 11, 3}), inPort("A", "1"));
    builder.conductor("S-B", spare({10, 1, 3}), inPort("A", "1"));
    EXPECT_EQ(upper(builder).measured->value, 2.0);
    EXPECT_EQ(upper(builder).verdict, Verdict::breach);
}

TEST(PortSuitsConductor, CannotTellWithoutTheMetal) {
    auto builder = check_test::straightSplice();
    builder.conductorNamed("S-A").metal.reset();
    EXPECT_EQ(upper(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(upper(builder).missing, testing::ElementsAre("metal of conductor S-A"));
}

TEST(PortSuitsConductor, CannotTellWithoutTheStranding) {
    auto builder = check_test::straightSplice();
    builder.conductorNamed("S-A").stranding.reset();
    EXPECT_EQ(upper(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(upper(builder).missing, testing::ElementsAre("stranding of conductor S-A"));
}

TEST(PortSuitsConductor, BreachesWhereNoRowCouldFitWhateverIsMissing) {
    auto builder = check_test::straightSplice();
    builder.conductorNamed("S-A").metal.reset();
    builder.conductorNamed("S-A").size = units::WireSize::of("750");
    EXPECT_EQ(upper(builder).verdict, Verdict::breach);
    EXPECT_TRUE(upper(builder).missing.empty());
}

TEST(PortSuitsConductor, CannotTellWithoutAWireTable) {
    auto builder = check_test::straightSplice();
    builder.part("splice").ports[0].accepts.clear();
    EXPECT_EQ(upper(builder).verdict, Verdict::cannotTell);
    EXPECT_THAT(upper(builder).missing, testing::ElementsAre("wire range of port 1 of block A"));
}

TEST(PortSuitsConductor, SaysNothingOfEmptyPorts) {
    auto builder = two(2);
    EXPECT_EQ(checkPortSuitsConductor(builder.build()).size(), 1U);
}

TEST(PortSuitsConductorLaws, AWiderRangeNeverBreachesAndOrderDoesNotMatter) {
    const auto sizes = units::WireSize::all();
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        Random random(seed);
        auto builder = two(1 + static_cast<int>(random.below(2)));
        for (auto& conductor : builder.layout().conductors) {
            conductor.size = sizes[random.below(sizes.size())];
            conductor.outsideDiameter = units::Inches::of(0.5);
        }
        auto& range = builder.part("row").ports[0].accepts[0];
        const std::size_t low = random.below(sizes.size());
        range.smallest = sizes[low];
        range.largest = sizes[low + random.below(sizes.size() - low)];
        const auto narrow = checkPortSuitsConductor(builder.build());
        std::reverse(builder.layout().conductors.begin(), builder.layout().conductors.end());
        EXPECT_EQ(check_test::sortedTexts(checkPortSuitsConductor(builder.build())),
                  check_test::sortedTexts(narrow))
            << "seed " << seed;
        range.smallest = sizes.front();
        range.largest = sizes.back();
        const auto wide = checkPortSuitsConductor(builder.build());
        EXPECT_FALSE(narrow.at(0).verdict == Verdict::meets && wide.at(0).verdict != Verdict::meets)
            << "seed " << seed;
    }
}

}  // namespace
}  // namespace gw::checks
