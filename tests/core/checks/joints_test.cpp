#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

namespace gw::checks {
namespace {

using check_test::about;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;
using check_test::withVerdict;
using layout::Phase;
using layout::Role;
using test_support::Random;

layout::End away(int i) {
    return spare({1.0 + i, 11.0, 11.0});
}

/// Service S of `sets` parallel conductors of phase A and a tap T joining it, all in block "A" of a
/// row of ports, in this order.
GutterBuilder tapOff(int sets) {
    GutterBuilder builder({60.0, 12.0, 12.0});
    builder.add(check_test::rowPart(6)).block("A", "row", {9.0, 4.0, 2.0});
    builder.circuitNamed("S").phases = {Phase::a};
    builder.circuitNamed("S").sets = sets;
    builder.circuit("T", {Phase::a}, 1, "S");
    for (int set = 1; set <= sets; ++set) {
        builder.conductor("S" + std::to_string(set), away(set), inPort("A", std::to_string(set)))
            .set = set;
    }
    builder.conductor("T1", inPort("A", std::to_string(sets + 1)), away(9)).circuit =
        layout::CircuitId("T");
    return builder;
}

layout::Conductor& belongs(layout::Conductor& conductor, const std::string& circuit, Phase phase) {
    conductor.circuit = layout::CircuitId(circuit);
    conductor.phase = phase;
    return conductor;
}

Finding ofCircuit(const GutterBuilder& builder, const std::string& id) {
    const auto findings = about(checkJoints(builder.build()), layout::CircuitId(id));
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

Finding ofBlock(const GutterBuilder& builder, const std::string& id) {
    const auto findings = about(checkJoints(builder.build()), layout::BlockId(id));
    EXPECT_EQ(findings.size(), 1U);
    return findings.at(0);
}

TEST(Joints, MeetWhereATapJoinsTheWholeSet) {
    const auto builder = tapOff(3);
    EXPECT_EQ(ofBlock(builder, "A").verdict, Verdict::meets);
    EXPECT_EQ(ofCircuit(builder, "S").verdict, Verdict::meets);
    const auto tap = ofCircuit(builder, "T");
    EXPECT_EQ(tap.verdict, Verdict::meets);
    EXPECT_EQ(tap.measured->value, 3.0);
    EXPECT_EQ(tap.limit->value, 3.0);
    EXPECT_EQ(tap.citation.section, "300.3(B)(1)");
}

// ---- blocks ---------------------------------------------------------------------------------

TEST(BlockJoins, OnePhaseOnly) {
    auto builder = tapOff(1);
    builder.circuitNamed("S").phases = {Phase::a, Phase::b};
    belongs(builder.conductor("SB", away(3), inPort("A", "4")), "S", Phase::b);
    const auto finding = ofBlock(builder, "A");
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_EQ(finding.measured->value, 2.0);
    EXPECT_EQ(finding.limit->value, 1.0);
    EXPECT_THAT(finding.working, testing::HasSubstr("A and B"));
}

TEST(BlockJoins, ThePhaseItIsMeantFor) {
    auto builder = tapOff(1);
    builder.blockNamed("A").phase = Phase::a;
    EXPECT_EQ(ofBlock(builder, "A").verdict, Verdict::meets);
    builder.blockNamed("A").phase = Phase::c;
    EXPECT_EQ(ofBlock(builder, "A").verdict, Verdict::breach);
}

TEST(BlockJoins, OneSystemOnly) {
    auto builder = tapOff(1);
    layout::System other = builder.layout().systems.front();
    other.id = layout::SystemId("generator");
    builder.layout().systems.push_back(other);
    builder.circuitNamed("T").system = other.id;
    const auto finding = ofBlock(builder, "A");
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_THAT(finding.working, testing::HasSubstr("generator and utility"));
}

TEST(BlockJoins, GroundsOfTwoSystems) {
    // NFPA 70 250.148: equipment grounding conductors in one enclosure are joined.
    auto builder = tapOff(1);
    layout::System other = builder.layout().systems.front();
    other.id = layout::SystemId("generator");
    builder.layout().systems.push_back(other);
    builder.circuitNamed("T").system = other.id;
    for (const std::string id : {"S", "T"}) {
        builder.circuitNamed(id).phases = {Phase::g};
    }
    for (auto& conductor : builder.layout().conductors) {
        conductor.phase = Phase::g;
    }
    EXPECT_EQ(ofBlock(builder, "A").verdict, Verdict::meets);
}

TEST(BlockJoins, CautionWhereItJoinsNothing) {
    auto builder = tapOff(1);
    builder.block("B", "row", {30.0, 4.0, 2.0});
    EXPECT_EQ(ofBlock(builder, "B").verdict, Verdict::caution);
    belongs(builder.conductor("alone", away(4), inPort("B", "1")), "S", Phase::a).set = 1;
    EXPECT_EQ(ofBlock(builder, "B").verdict, Verdict::caution);
}

/// A neutral block and a ground block, with a conductor of circuit "bond" between them.
GutterBuilder bonded(std::optional<bool> bondsNeutral) {
    GutterBuilder builder({60.0, 12.0, 12.0});
    builder.add(check_test::rowPart(3));
    builder.block("N", "row", {5.0, 4.0, 2.0}).block("G", "row", {30.0, 4.0, 2.0});
    builder.circuitNamed("S").phases = {Phase::n, Phase::g};
    builder.circuit("bond", {Phase::g});
    builder.circuitNamed("bond").role = Role::bonding;
    builder.circuitNamed("bond").bondsNeutral = bondsNeutral;
    belongs(builder.conductor("SN", away(1), inPort("N", "1")), "S", Phase::n);
    belongs(builder.conductor("SG", away(2), inPort("G", "1")), "S", Phase::g);
    belongs(builder.conductor("jumper", inPort("N", "2"), inPort("G", "2")), "bond", Phase::g);
    return builder;
}

TEST(NeutralAndGround, AreJoinedByABondingCircuitThatSaysSo) {
    const auto builder = bonded(true);
    EXPECT_EQ(ofBlock(builder, "N").verdict, Verdict::meets);
    EXPECT_EQ(ofBlock(builder, "G").verdict, Verdict::meets);
}

TEST(NeutralAndGround, AreABreachWhereTheBondingCircuitDoesNotMeanTo) {
    EXPECT_EQ(ofBlock(bonded(false), "N").verdict, Verdict::breach);
}

TEST(NeutralAndGround, CannotTellWhereItIsNotStated) {
    const auto finding = ofBlock(bonded(std::nullopt), "N");
    EXPECT_EQ(finding.verdict, Verdict::cannotTell);
    EXPECT_THAT(finding.missing,
                testing::ElementsAre("whether circuit bond joins N and G on purpose"));
}

TEST(NeutralAndGround, AreABreachInOneBlockWithoutABondingCircuit) {
    auto builder = bonded(true);
    belongs(builder.conductor("SG2", away(5), inPort("N", "3")), "S", Phase::g);
    EXPECT_EQ(ofBlock(builder, "N").verdict, Verdict::breach);
}

TEST(NeutralAndGround, ABondOnAPhaseIsABreach) {
    auto builder = bonded(true);
    builder.circuitNamed("S").phases = {Phase::a, Phase::g};
    builder.conductorNamed("SN").phase = Phase::a;
    EXPECT_EQ(ofBlock(builder, "N").verdict, Verdict::breach);
}

// ---- circuits -------------------------------------------------------------------------------

TEST(SetsOfACircuit, HaveEachConductorOnce) {
    auto builder = tapOff(3);
    builder.layout().conductors.erase(builder.layout().conductors.begin() + 1);
    const auto tooFew = ofCircuit(builder, "S");
    EXPECT_EQ(tooFew.verdict, Verdict::breach);
    EXPECT_EQ(tooFew.measured->value, 2.0);
    EXPECT_EQ(tooFew.limit->value, 3.0);
    EXPECT_EQ(tooFew.margin->value, -1.0);
    EXPECT_THAT(tooFew.working, testing::HasSubstr("set 2"));
}

TEST(SetsOfACircuit, HaveNoConductorTwice) {
    auto builder = tapOff(2);
    builder.conductor("again", away(5), inPort("A", "5")).set = 2;
    const auto tooMany = ofCircuit(builder, "S");
    EXPECT_EQ(tooMany.verdict, Verdict::breach);
    EXPECT_EQ(tooMany.margin->value, -1.0);
    EXPECT_THAT(tooMany.working, testing::HasSubstr("2 conductors in set 2"));
}

/// Two sets in two blocks, the tap only in the first.
GutterBuilder halfTapped(standards::Edition edition) {
    auto builder = tapOff(2);
    builder.layout().edition = edition;
    builder.block("B", "row", {30.0, 4.0, 2.0});
    builder.conductorNamed("S2").to = inPort("B", "1");
    return builder;
}

TEST(ATapFromParallelConductors, JoinsAllOfThem) {
    const auto tap = ofCircuit(halfTapped(standards::Edition::nec2020), "T");
    EXPECT_EQ(tap.verdict, Verdict::breach);
    EXPECT_EQ(tap.measured->value, 1.0);
    EXPECT_EQ(tap.limit->value, 2.0);
    EXPECT_EQ(tap.citation.section, "300.3(B)(1)");
    EXPECT_THAT(tap.working, testing::HasSubstr("S2"));
    EXPECT_EQ(ofCircuit(halfTapped(standards::Edition::nec2023), "T").verdict, Verdict::breach);
    EXPECT_EQ(ofCircuit(halfTapped(standards::Edition::nec2026), "T").citation.section,
              "300.5(B)(1)");
}

TEST(ATapFromParallelConductors, IsGoodPracticeBeforeItWasWritten) {
    // NFPA 70-2020 added it to 300.3(B)(1).
    EXPECT_EQ(ofCircuit(halfTapped(standards::Edition::nec2017), "T").verdict, Verdict::caution);
}

TEST(ATapFromParallelConductors, MayBeJoinedThroughALink) {
    auto builder = halfTapped(standards::Edition::nec2023);
    // S1 runs on from block A into block B.
    builder.conductorNamed("S1").from = inPort("B", "2");
    EXPECT_EQ(ofCircuit(builder, "T").verdict, Verdict::meets);
}

TEST(ATappedConductor, EndsInABlock) {
    auto builder = tapOff(1);
    builder.conductorNamed("T1").from = spare({30, 5, 5});
    const auto tap = ofCircuit(builder, "T");
    EXPECT_EQ(tap.verdict, Verdict::breach);
    EXPECT_THAT(tap.working, testing::HasSubstr("ends in no block"));
}

TEST(CircuitsThatDoNotJoin, AreNotOnOnePiece) {
    auto builder = tapOff(1);
    builder.circuit("U", {Phase::a});
    builder.circuitNamed("U").role = Role::feeder;
    belongs(builder.conductor("U1", inPort("A", "5"), away(6)), "U", Phase::a);
    for (const std::string id : {"S", "T", "U"}) {
        EXPECT_EQ(ofCircuit(builder, id).verdict, Verdict::breach) << id;
    }
    builder.circuitNamed("U").joins = layout::CircuitId("S");
    for (const std::string id : {"S", "T", "U"}) {
        EXPECT_EQ(ofCircuit(builder, id).verdict, Verdict::meets) << id;
    }
}

TEST(CircuitsThatJoinThroughAThird, AreRelated) {
    auto builder = tapOff(1);
    builder.circuit("U", {Phase::a}, 1, "T");
    belongs(builder.conductor("U1", inPort("A", "5"), away(6)), "U", Phase::a);
    EXPECT_EQ(ofCircuit(builder, "S").verdict, Verdict::meets);
    EXPECT_EQ(ofCircuit(builder, "U").verdict, Verdict::meets);
}

TEST(SpareEnds, AreACautionEach) {
    const auto cautions = withVerdict(checkJoints(tapOff(2).build()), Verdict::caution);
    EXPECT_EQ(cautions.size(), 3U) << "S1, S2 and T1 end away from any block";
    EXPECT_EQ(cautions.front().citation.section, "110.14(B)");
    EXPECT_TRUE(
        withVerdict(checkJoints(check_test::straightSplice().build()), Verdict::caution).empty());
}

TEST(JointsLaws, OrderDoesNotMatter) {
    const std::vector<Phase> phases = {Phase::a, Phase::b, Phase::n};
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        Random random(seed);
        GutterBuilder builder({60.0, 12.0, 12.0});
        builder.add(check_test::rowPart(4));
        builder.circuitNamed("S").phases = phases;
        builder.circuit("T", phases, 1, "S").circuit("U", phases);
        const std::vector<std::string> circuits = {"S", "T", "U"};
        for (int i = 0; i < 3; ++i) {
            builder.block("B" + std::to_string(i), "row", {1.0 + 15.0 * i, 4, 2});
        }
        for (int i = 0; i < 9; ++i) {
            const auto port = [&] {
                return inPort("B" + std::to_string(random.below(3)),
                              std::to_string(1 + random.below(4)));
            };
            const auto from = port();
            const auto to = random.chance(0.5) ? port() : away(i);
            belongs(builder.conductor("C" + std::to_string(i), from, to),
                    circuits[random.below(3)],
                    phases[random.below(3)]);
        }
        const auto before = check_test::sortedTexts(checkJoints(builder.build()));
        auto& layout = builder.layout();
        std::reverse(layout.conductors.begin(), layout.conductors.end());
        std::reverse(layout.blocks.begin(), layout.blocks.end());
        std::reverse(layout.circuits.begin(), layout.circuits.end());
        EXPECT_EQ(check_test::sortedTexts(checkJoints(builder.build())), before) << "seed " << seed;
    }
}

}  // namespace
}  // namespace gw::checks
