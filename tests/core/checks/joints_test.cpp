#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>

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

/// The findings that cite where a neutral must not be joined.
std::vector<Finding> aboutThePlace(const GutterBuilder& builder) {
    std::vector<Finding> found;
    for (const Finding& finding : checkJoints(builder.build())) {
        if (finding.citation.section == "250.142(B)") {
            found.push_back(finding);
        }
    }
    return found;
}

// Source: NFPA 70 250.142(A) and (B): ahead of the service disconnect or at it, not on its load
// side.
TEST(NeutralAndGround, AreJoinedWhereServiceConductorsAre) {
    EXPECT_TRUE(aboutThePlace(bonded(true)).empty());
    for (const auto role : {Role::feeder, Role::branch, Role::tap}) {
        auto builder = bonded(true);
        builder.circuitNamed("S").role = role;
        const auto findings = aboutThePlace(builder);
        ASSERT_EQ(findings.size(), 1U);
        EXPECT_EQ(findings[0].verdict, Verdict::cannotTell);
        EXPECT_EQ(findings[0].missing.size(), role == Role::tap ? 2U : 1U)
            << "a tap may be tapped from service conductors";
        EXPECT_THAT(findings[0].missing.back(), testing::HasSubstr("begins here"));
    }
}

TEST(NeutralAndGround, AreNotAskedAboutWhereNothingJoinsThem) {
    for (const std::optional<bool> bonds : {std::optional<bool>(), std::optional(false)}) {
        auto builder = bonded(bonds);
        builder.circuitNamed("S").role = Role::feeder;
        EXPECT_TRUE(aboutThePlace(builder).empty());
    }
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
    EXPECT_THAT(tooMany.working, testing::HasSubstr("2 conductors of phase A in set 2"));
}

/// Two sets in two blocks, the tap only in the first.
GutterBuilder halfTapped(standards::Edition edition) {
    auto builder = tapOff(2);
    builder.layout().edition = edition;
    builder.block("B", "row", {30.0, 4.0, 2.0});
    builder.conductorNamed("S2").to = inPort("B", "1");
    return builder;
}

Finding ofConductor(const GutterBuilder& builder, const std::string& id) {
    const auto findings = about(checkJoints(builder.build()), layout::ConductorId(id));
    for (const auto& finding : findings) {
        if (finding.verdict != Verdict::caution || findings.size() == 1U) {
            return finding;
        }
    }
    return findings.empty() ? Finding{} : findings.front();
}

TEST(ATapFromParallelConductors, JoinsAllOfThem) {
    const auto apart = ofConductor(halfTapped(standards::Edition::nec2020), "S2");
    EXPECT_EQ(apart.verdict, Verdict::breach);
    EXPECT_EQ(apart.citation.section, "300.3(B)(1)");
    EXPECT_THAT(apart.working, testing::HasSubstr("T1"));
    EXPECT_EQ(ofConductor(halfTapped(standards::Edition::nec2023), "S2").verdict, Verdict::breach);
    EXPECT_EQ(ofConductor(halfTapped(standards::Edition::nec2026), "S2").citation.section,
              "300.5(B)(1)");
}

TEST(ATapFromParallelConductors, IsGoodPracticeBeforeItWasWritten) {
    // NFPA 70-2020 added it to 300.3(B)(1).
    const auto findings = about(checkJoints(halfTapped(standards::Edition::nec2017).build()),
                                layout::ConductorId("S2"));
    ASSERT_EQ(findings.size(), 2U) << "the tap, and the end that is left spare";
    EXPECT_EQ(findings.front().verdict, Verdict::caution);
    EXPECT_THAT(findings.front().working, testing::HasSubstr("T1"));
}

TEST(ATapFromParallelConductors, IsABreachInAnyEditionWhereItReachesNone) {
    auto builder = tapOff(2);
    builder.layout().edition = standards::Edition::nec2017;
    builder.conductorNamed("T1").from = spare({30, 5, 5});
    EXPECT_EQ(ofConductor(builder, "T1").verdict, Verdict::breach);
}

TEST(ATapFromParallelConductors, MayBeJoinedThroughALink) {
    auto builder = halfTapped(standards::Edition::nec2023);
    // S1 runs on from block A into block B.
    builder.conductorNamed("S1").from = inPort("B", "2");
    EXPECT_TRUE(withVerdict(checkJoints(builder.build()), Verdict::breach).empty());
    EXPECT_EQ(ofCircuit(builder, "T").measured->value, 2.0) << "connections, all made";
}

TEST(ATappedConductor, EndsInABlock) {
    auto builder = tapOff(1);
    builder.conductorNamed("T1").from = spare({30, 5, 5});
    const auto findings = about(checkJoints(builder.build()), layout::ConductorId("T1"));
    ASSERT_EQ(findings.size(), 1U) << "its spare end is not told again";
    EXPECT_EQ(findings.front().verdict, Verdict::breach);
    EXPECT_THAT(findings.front().working, testing::HasSubstr("ends in no block"));
}

TEST(CircuitsThatJoinThroughAThird, AreRelated) {
    auto builder = tapOff(1);
    builder.circuit("U", {Phase::a}, 1, "T");
    belongs(builder.conductor("U1", inPort("A", "5"), away(6)), "U", Phase::a);
    EXPECT_EQ(ofCircuit(builder, "S").verdict, Verdict::meets);
    EXPECT_EQ(ofCircuit(builder, "U").verdict, Verdict::meets);
}

// ---- one mistake, one breach ----------------------------------------------------------------

constexpr std::array kPhases = {Phase::a, Phase::b, Phase::c, Phase::n};

std::string letter(Phase phase) {
    return std::string(layout::phaseText(phase));
}

/// Two sets of service conductors and three taps of one set, all of A, B, C and N, on a block a
/// phase: conductors "S1-A" … "T3-N", blocks "A" … "N".
GutterBuilder yard() {
    GutterBuilder builder({120.0, 12.0, 12.0});
    builder.add(check_test::rowPart(8));
    const std::vector<Phase> phases(kPhases.begin(), kPhases.end());
    builder.circuitNamed("S").phases = phases;
    builder.circuitNamed("S").sets = 2;
    builder.entry("in", layout::Wall::top, 3.0, 3.0).entry("out", layout::Wall::bottom, 3.0, 3.0);
    for (std::size_t i = 0; i < phases.size(); ++i) {
        builder.block(letter(phases[i]), "row", {1.0 + 20.0 * double(i), 4.0, 2.0});
    }
    int slot = 0;
    const auto land = [&](const std::string& head, const std::string& circuit, int set, int port) {
        for (const Phase phase : phases) {
            auto& made = builder.conductor(head + "-" + letter(phase),
                                           check_test::atEntry("in", ++slot),
                                           inPort(letter(phase), std::to_string(port)));
            belongs(made, circuit, phase).set = set;
        }
    };
    land("S1", "S", 1, 1);
    land("S2", "S", 2, 2);
    for (int tap = 1; tap <= 3; ++tap) {
        const std::string id = "T" + std::to_string(tap);
        builder.circuit(id, phases, 1, "S");
        land(id, id, 1, 2 + tap);
    }
    return builder;
}

layout::System& addGenerator(GutterBuilder& builder) {
    layout::System other = builder.layout().systems.front();
    other.id = layout::SystemId("generator");
    builder.layout().systems.push_back(other);
    return builder.layout().systems.back();
}

/// A conductor of a circuit of its own in port 8 of block A.
void addStranger(GutterBuilder& builder, const std::string& joins) {
    builder.circuit("X", {Phase::a}, 1, joins);
    belongs(
        builder.conductor("X-A", check_test::atEntry("in", 90), inPort("A", "8")), "X", Phase::a);
}

void remove(GutterBuilder& builder, const std::string& id) {
    std::erase_if(builder.layout().conductors,
                  [&](const auto& one) { return one.id == layout::ConductorId(id); });
}

struct Mistake {
    std::string name;
    void (*spoil)(GutterBuilder&);
    Subject subject;
    std::string also;  ///< a conductor that is named too; empty: none
    std::string says;
    std::string reason;
};

void PrintTo(const Mistake& mistake, std::ostream* out) {
    *out << mistake.name << ": " << mistake.reason;
}

const layout::BlockId kA("A");
const layout::BlockId kB("B");

const std::vector<Mistake>& mistakes() {
    using layout::CircuitId;
    using layout::ConductorId;
    // clang-format off
    static const std::vector<Mistake> kMistakes = {
        {"TapOnTheWrongBlock", [](GutterBuilder& b) { b.conductorNamed("T2-A").to = inPort("B", "8"); },
         kB, "T2-A", "phases A and B", "seven conductors of B and one of A: the A is astray; that it is not joined to S1-A and S2-A follows"},
        {"ServiceConductorOnTheWrongBlock", [](GutterBuilder& b) { b.conductorNamed("S2-A").to = inPort("N", "8"); },
         layout::BlockId("N"), "S2-A", "phases A and N", "that three taps lack S2-A follows from it"},
        {"UnrelatedCircuit", [](GutterBuilder& b) { addStranger(b, ""); },
         kA, "X-A", "not said to be joined", "one conductor on the wrong block: the five circuits that are joined right are not at fault"},
        {"AnotherSystem", [](GutterBuilder& b) { addStranger(b, ""); b.circuitNamed("X").system = addGenerator(b).id; },
         kA, "X-A", "systems generator and utility", "one conductor on the wrong block"},
        {"AnotherSystemThoughTapped", [](GutterBuilder& b) { addStranger(b, "S"); b.circuitNamed("X").system = addGenerator(b).id; },
         kA, "X-A", "systems generator and utility", "what is joined has one system"},
        {"ParallelConductorReachesNoBlock", [](GutterBuilder& b) { b.conductorNamed("S2-B").to = spare({30, 5, 5}); },
         ConductorId("S2-B"), "", "ends in no block", "300.3(B)(1): three taps miss it, by one conductor's fault"},
        {"ParallelConductorOnABlockOfItsOwn", [](GutterBuilder& b) { b.block("extra", "row", {81, 4, 2}); b.conductorNamed("S2-B").to = inPort("extra", "1"); },
         ConductorId("S2-B"), "", "by itself", "300.3(B)(1)"},
        {"TapReachesNoBlock", [](GutterBuilder& b) { b.conductorNamed("T1-N").to = spare({30, 5, 5}); },
         ConductorId("T1-N"), "", "ends in no block", "a tap joins what its circuit says"},
        {"TapPassesByAllBlocks", [](GutterBuilder& b) { b.conductorNamed("T1-N").to = check_test::atEntry("out"); },
         ConductorId("T1-N"), "", "ends in no block", "from entry to entry, it joins nothing"},
        {"LabelOfTheBlock", [](GutterBuilder& b) { b.blockNamed("A").phase = Phase::c; },
         kA, "", "meant for phase C", "all conductors on it agree: the label is wrong"},
        {"ConductorMarkedWithAnotherPhase", [](GutterBuilder& b) { b.conductorNamed("T2-A").phase = Phase::b; },
         kA, "T2-A", "phases A and B", "that T2 then has two of B and none of A follows"},
        {"ConductorMarkedWithAnotherCircuit", [](GutterBuilder& b) { b.conductorNamed("T2-A").circuit = layout::CircuitId("T3"); },
         CircuitId("T2"), "T2-A", "circuit T3 has 2 conductors", "one too few here and one too many there is one wrong mark"},
        {"ConductorMarkedWithAnotherSet", [](GutterBuilder& b) { b.conductorNamed("S2-A").set = 1; },
         CircuitId("S"), "", "set 2", "one wrong mark in one circuit"},
        {"ConductorMissing", [](GutterBuilder& b) { remove(b, "T3-B"); },
         CircuitId("T3"), "", "0 conductors of phase B in set 1", "a conductor too few is told at its circuit"},
        {"ServiceConductorMissing", [](GutterBuilder& b) { remove(b, "S2-B"); },
         CircuitId("S"), "", "0 conductors of phase B in set 2", "no tap can be joined to what is not there"},
        {"PhaseThatTheCircuitJoinedHasNot", [](GutterBuilder& b) { b.circuitNamed("T1").joins.reset(); b.circuit("Y", {Phase::a}, 1, "T1"); belongs(b.conductor("Y-A", check_test::atEntry("in", 91), inPort("A", "8")), "Y", Phase::a); b.circuitNamed("T1").joins = layout::CircuitId("S"); b.circuitNamed("Y").phases.push_back(Phase::g); b.circuitNamed("T1").phases = {Phase::a, Phase::b, Phase::c}; remove(b, "T1-N"); b.circuitNamed("Y").phases = {Phase::a, Phase::n}; belongs(b.conductor("Y-N", check_test::atEntry("in", 92), inPort("N", "8")), "Y", Phase::n); },
         CircuitId("Y"), "", "phase N, which circuit T1", "a neutral cannot be tapped from a circuit without one"},
        {"LinkIntoTheWrongBlock", [](GutterBuilder& b) { b.block("A2", "row", {81, 4, 2}); b.conductorNamed("T3-A").to = inPort("A2", "1"); b.conductorNamed("S2-A").from = inPort("B", "8"); },
         kB, "S2-A", "phases A and B", "the link from block A should have gone to A2; that T3-A is left alone there follows"},
    };
    // clang-format on
    return kMistakes;
}

class OneMistake : public testing::TestWithParam<Mistake> {};

TEST(Yard, HasNothingToFind) {
    const auto findings = checkJoints(yard().build());
    EXPECT_EQ(findings.size(), 8U) << "four blocks and four circuits";
    EXPECT_EQ(withVerdict(findings, Verdict::meets).size(), findings.size());
}

TEST_P(OneMistake, IsOneBreach) {
    const Mistake& mistake = GetParam();
    auto builder = yard();
    mistake.spoil(builder);
    const auto findings = checkJoints(builder.build());
    const auto breaches = withVerdict(findings, Verdict::breach);
    ASSERT_EQ(breaches.size(), 1U) << testing::PrintToString(breaches);
    EXPECT_EQ(breaches.front().subjects.front(), mistake.subject)
        << subjectText(breaches.front().subjects.front());
    EXPECT_THAT(breaches.front().working, testing::HasSubstr(mistake.says));
    if (!mistake.also.empty()) {
        EXPECT_THAT(breaches.front().subjects,
                    testing::Contains(Subject(layout::ConductorId(mistake.also))));
    }
    EXPECT_TRUE(withVerdict(findings, Verdict::cannotTell).empty());
}

std::string mistakeName(const testing::TestParamInfo<Mistake>& row) {
    return row.param.name;
}

INSTANTIATE_TEST_SUITE_P(Joints, OneMistake, testing::ValuesIn(mistakes()), mistakeName);

std::size_t breachesIn(const GutterBuilder& builder) {
    return withVerdict(checkJoints(builder.build()), Verdict::breach).size();
}

/// Whichever conductor of the yard it is made with.
TEST(OneMistake, IsOneBreachWithAnyConductor) {
    const std::size_t count = yard().layout().conductors.size();
    ASSERT_EQ(count, 20U);
    for (std::size_t i = 0; i < count; ++i) {
        const auto with = [&](const auto& spoil) {
            auto builder = yard();
            spoil(builder.layout().conductors[i]);
            return breachesIn(builder);
        };
        const std::string name = yard().layout().conductors[i].id.text();
        for (const Phase phase : kPhases) {
            const bool own = yard().layout().conductors[i].phase == phase;
            EXPECT_EQ(with([&](auto& one) { one.to = inPort(letter(phase), "8"); }), own ? 0U : 1U)
                << name << " on block " << letter(phase);
            EXPECT_EQ(with([&](auto& one) { one.phase = phase; }), own ? 0U : 1U)
                << name << " marked " << letter(phase);
        }
        EXPECT_EQ(with([](auto& one) { one.to = spare({30, 5, 5}); }), 1U) << name << " spare";
        for (const std::string circuit : {"S", "T1", "T2", "T3"}) {
            const bool own = yard().layout().conductors[i].circuit.text() == circuit;
            EXPECT_EQ(with([&](auto& one) {
                          one.circuit = layout::CircuitId(circuit);
                          one.set = own ? one.set : 1;
                      }),
                      own ? 0U : 1U)
                << name << " marked " << circuit;
        }
        auto fewer = yard();
        remove(fewer, name);
        EXPECT_EQ(breachesIn(fewer), 1U) << "without " << name;
    }
}

TEST(TwoMistakes, AreTwoBreaches) {
    for (std::size_t i = 0; i < 8; ++i) {
        auto builder = yard();
        mistakes()[i].spoil(builder);
        builder.conductorNamed("T3-C").to = spare({30, 5, 5});
        EXPECT_EQ(withVerdict(checkJoints(builder.build()), Verdict::breach).size(), 2U)
            << mistakes()[i].name;
    }
}

TEST(Mistakes, NameBothWhereNoneIsInTheMinority) {
    // Two conductors on a splice, one of A and one of B: which of them is astray cannot be known.
    auto builder = check_test::straightSplice();
    for (const std::string id : {"S", "T"}) {
        builder.circuitNamed(id).phases = {Phase::a, Phase::b};
    }
    builder.conductorNamed("T-A").phase = Phase::b;
    const auto block = ofBlock(builder, "A");
    EXPECT_EQ(block.verdict, Verdict::breach);
    EXPECT_EQ(block.subjects.size(), 3U);
    builder.blockNamed("A").phase = Phase::a;
    EXPECT_EQ(ofBlock(builder, "A").subjects.size(), 2U) << "the block says which it is for";
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
