#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "checks/support.h"
#include "core/checks/gutter_builder.h"

namespace gw::checks {
namespace {

using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;
using layout::Phase;
using layout::Role;
using parts::ConnectorKind;
using standards::Edition;
using standards::GutterArticle;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// One conductor of feeder F in port 1 of a row: nothing of a service.
GutterBuilder oneBlock() {
    GutterBuilder builder;
    builder.add(check_test::rowPart(3)).block("A", "row", {20.0, 4.0, 0.0});
    builder.circuit("F", {Phase::a, Phase::b, Phase::c, Phase::n, Phase::g});
    builder.conductor("F-A", spare({21.0, 11.0, 1.0}), inPort("A", "1")).circuit =
        layout::CircuitId("F");
    return builder;
}

layout::Conductor& add(GutterBuilder& builder, const std::string& id, const std::string& port) {
    return builder.conductor(id, spare({24.0, 11.0, 1.0}), inPort("A", port));
}

parts::Listing& listing(GutterBuilder& builder) {
    return builder.part("row").listing;
}

std::vector<Finding> of(const GutterBuilder& builder) {
    return checkConnectorListing(builder.build());
}

std::vector<Finding> withText(const std::vector<Finding>& findings, const std::string& text) {
    std::vector<Finding> found;
    for (const Finding& finding : findings) {
        if (finding.working.find(text) != std::string::npos) {
            found.push_back(finding);
        }
    }
    return found;
}

std::vector<Finding> ofLineSide(const GutterBuilder& builder) {
    return withText(of(builder), "line side");
}
std::vector<Finding> ofEnclosure(const GutterBuilder& builder) {
    return withText(of(builder), "enclosure");
}
std::vector<Finding> ofLiveParts(const GutterBuilder& builder) {
    auto found = withText(of(builder), "insulat");
    const auto covered = withText(of(builder), "covers every live part");
    found.insert(found.end(), covered.begin(), covered.end());
    return found;
}

// ---- voltage --------------------------------------------------------------------------------

struct VoltRow {
    const char* name;
    std::optional<int> system;
    std::optional<int> listed;
    Verdict verdict;
    std::size_t missing;
};

void PrintTo(const VoltRow& row, std::ostream* out) {
    *out << row.name;
}

class ListedVolts : public testing::TestWithParam<VoltRow> {};

TEST_P(ListedVolts, AreAtLeastThoseBetweenPhases) {
    auto builder = oneBlock();
    builder.layout().systems.front().voltsToGround.reset();
    builder.layout().systems.front().voltsBetweenPhases = GetParam().system;
    listing(builder).volts = GetParam().listed;
    const auto findings = of(builder);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, GetParam().verdict);
    EXPECT_EQ(findings[0].missing.size(), GetParam().missing);
    EXPECT_THAT(findings[0].subjects, ElementsAre(Subject(layout::BlockId("A"))));
}

// Source: NFPA 70 110.3(B), equipment used as listed: at most the volts of its listing.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, ListedVolts, testing::Values(
    VoltRow{"Below",         208,          600,          Verdict::meets,      0},
    VoltRow{"JustBelow",     599,          600,          Verdict::meets,      0},
    VoltRow{"AtTheLimit",    600,          600,          Verdict::meets,      0},
    VoltRow{"JustAbove",     601,          600,          Verdict::breach,     0},
    VoltRow{"Above",         480,          300,          Verdict::breach,     0},
    VoltRow{"NoSystemVolts", std::nullopt, 600,          Verdict::cannotTell, 1},
    VoltRow{"NoListedVolts", 208,          std::nullopt, Verdict::cannotTell, 1},
    VoltRow{"Neither",       std::nullopt, std::nullopt, Verdict::cannotTell, 2}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(ListedVoltsNotStated, AreNamed) {
    auto builder = oneBlock();
    listing(builder).volts.reset();
    EXPECT_THAT(of(builder).at(0).missing, ElementsAre("listed volts of part row"));
    builder.layout().systems.front().voltsBetweenPhases.reset();
    EXPECT_THAT(of(builder).at(0).missing,
                ElementsAre("volts between phases of system utility", "listed volts of part row"));
}

TEST(ListedVoltsOfTwoSystems, AreThoseOfTheHigher) {
    auto builder = oneBlock();
    builder.layout().systems.push_back({layout::SystemId("high"), "", 480, 277, {}});
    builder.circuit("H", {Phase::a});
    builder.circuitNamed("H").system = layout::SystemId("high");
    add(builder, "H-A", "2").circuit = layout::CircuitId("H");
    listing(builder).volts = 300;
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::breach);
    EXPECT_EQ(of(builder).at(0).measured->value, 480.0);
    builder.layout().systems.front().voltsBetweenPhases.reset();
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::breach) << "480 V alone is too much";
    listing(builder).volts = 600;
    EXPECT_EQ(of(builder).at(0).verdict, Verdict::cannotTell);
}

TEST(ConnectorListing, HasNothingToSayOfGroundsNorOfAnEmptyBlock) {
    auto builder = oneBlock();
    builder.conductorNamed("F-A").phase = Phase::g;
    builder.part("row").insulated = false;
    EXPECT_THAT(of(builder), IsEmpty());
    builder.layout().conductors.clear();
    EXPECT_THAT(of(builder), IsEmpty());
}

// ---- short-circuit rating -------------------------------------------------------------------

std::vector<Finding> ofFault(const GutterBuilder& builder) {
    return withText(of(builder), "fault current");
}

struct FaultRow {
    const char* name;
    std::optional<double> available;
    std::optional<double> rated;
    Verdict verdict;
    std::size_t missing;
};

void PrintTo(const FaultRow& row, std::ostream* out) {
    *out << row.name;
}

class ShortCircuitRating : public testing::TestWithParam<FaultRow> {};

TEST_P(ShortCircuitRating, IsAtLeastTheAvailableFaultCurrent) {
    auto builder = oneBlock();
    builder.layout().systems.front().faultKiloamperes = GetParam().available;
    listing(builder).kind = ConnectorKind::distributionBlock;
    listing(builder).shortCircuitKiloamperes = GetParam().rated;
    const auto findings = ofFault(builder);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].verdict, GetParam().verdict);
    EXPECT_EQ(findings[0].missing.size(), GetParam().missing);
    EXPECT_EQ(findings[0].citation.section, "110.9, 110.10");
}

// Source: NFPA 70 110.10, from memory: short-circuit current ratings fit the fault current
// available.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, ShortCircuitRating, testing::Values(
    FaultRow{"Below",      10.0,         65.0,         Verdict::meets,      0},
    FaultRow{"AtTheLimit", 65.0,         65.0,         Verdict::meets,      0},
    FaultRow{"JustAbove",  65.1,         65.0,         Verdict::breach,     0},
    FaultRow{"NoFault",    std::nullopt, 65.0,         Verdict::cannotTell, 1},
    FaultRow{"NoRating",   22.0,         std::nullopt, Verdict::cannotTell, 1},
    FaultRow{"Neither",    std::nullopt, std::nullopt, Verdict::cannotTell, 2}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(ShortCircuitRatingOfOthers, IsAskedOnlyWhereStated) {
    auto builder = oneBlock();
    builder.layout().systems.front().faultKiloamperes = 22.0;
    EXPECT_THAT(ofFault(builder), IsEmpty()) << "a wire connector is marked with none";
    listing(builder).shortCircuitKiloamperes = 10.0;
    EXPECT_EQ(ofFault(builder).at(0).verdict, Verdict::breach);
    EXPECT_EQ(ofFault(builder).at(0).margin->value, -12.0);
    EXPECT_THAT(ofFault(builder).at(0).working,
                HasSubstr("22 kA of fault current are available, and its part is rated for 10 kA"));
    listing(builder).shortCircuitKiloamperes.reset();
    listing(builder).kind.reset();
    EXPECT_EQ(ofFault(builder).at(0).verdict, Verdict::cannotTell);
    EXPECT_THAT(ofFault(builder).at(0).missing,
                ElementsAre("kind of connector of part row", "short-circuit rating of part row"));
}

TEST(ShortCircuitRatingOfOthers, IsOfNoConcernWhereOnlyGroundsLand) {
    auto builder = oneBlock();
    builder.layout().systems.front().faultKiloamperes = 22.0;
    listing(builder).shortCircuitKiloamperes = 10.0;
    builder.conductorNamed("F-A").phase = Phase::g;
    EXPECT_THAT(ofFault(builder), IsEmpty());
}

TEST(ShortCircuitRatingOfTwoSystems, IsAtLeastTheHigher) {
    auto builder = oneBlock();
    builder.layout().systems.front().faultKiloamperes = 5.0;
    builder.layout().systems.push_back({layout::SystemId("high"), "", 480, 277, 22.0});
    builder.circuit("H", {Phase::a});
    builder.circuitNamed("H").system = layout::SystemId("high");
    add(builder, "H-A", "2").circuit = layout::CircuitId("H");
    listing(builder).shortCircuitKiloamperes = 10.0;
    EXPECT_EQ(ofFault(builder).at(0).measured->value, 22.0);
    builder.layout().systems.front().faultKiloamperes.reset();
    EXPECT_EQ(ofFault(builder).at(0).verdict, Verdict::breach) << "22 kA alone are too much";
    listing(builder).shortCircuitKiloamperes = 65.0;
    EXPECT_EQ(ofFault(builder).at(0).verdict, Verdict::cannotTell);
}

// ---- line side ------------------------------------------------------------------------------

struct MarkRow {
    const char* name;
    Edition edition;
    std::optional<ConnectorKind> kind;
    std::optional<bool> marked;
    std::optional<Verdict> verdict;  ///< empty: the rule does not concern it
    const char* section = "";
};

void PrintTo(const MarkRow& row, std::ostream* out) {
    *out << row.name;
}

class LineSideMark : public testing::TestWithParam<MarkRow> {};

TEST_P(LineSideMark, IsAskedWhereAServiceConductorLands) {
    auto builder = oneBlock();
    builder.layout().edition = GetParam().edition;
    builder.layout().gutter.article = GutterArticle::metalWireway;
    listing(builder).kind = GetParam().kind;
    listing(builder).lineSideOfService = GetParam().marked;
    EXPECT_THAT(ofLineSide(builder), IsEmpty()) << "a feeder alone";
    add(builder, "S-A", "2");
    const auto findings = ofLineSide(builder);
    ASSERT_EQ(findings.size(), GetParam().verdict ? 1U : 0U);
    if (GetParam().verdict) {
        EXPECT_EQ(findings[0].verdict, *GetParam().verdict);
        EXPECT_EQ(findings[0].citation.section, GetParam().section);
    }
}

constexpr auto kWire = ConnectorKind::wireConnector;
constexpr auto kBlock = ConnectorKind::distributionBlock;

// Source: pages on the history of NFPA 70 230.46: to 2017 the mark is asked of power distribution
// blocks only (376.56(B)(1)); from 2020 on of all connectors on service conductors (230.46).
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, LineSideMark, testing::Values(
    MarkRow{"Wire2017No",      Edition::nec2017, kWire,        false,        std::nullopt},
    MarkRow{"Wire2017Unsaid",  Edition::nec2017, kWire,        std::nullopt, std::nullopt},
    MarkRow{"Block2017No",     Edition::nec2017, kBlock,       false,        Verdict::breach,     "376.56(B)(1)"},
    MarkRow{"Block2017Yes",    Edition::nec2017, kBlock,       true,         Verdict::meets,      "376.56(B)(1)"},
    MarkRow{"Block2017Unsaid", Edition::nec2017, kBlock,       std::nullopt, Verdict::cannotTell, "376.56(B)(1)"},
    MarkRow{"Kind2017Unsaid",  Edition::nec2017, std::nullopt, false,        Verdict::cannotTell, "376.56(B)(1)"},
    MarkRow{"Wire2020No",      Edition::nec2020, kWire,        false,        Verdict::breach,     "230.46"},
    MarkRow{"Wire2020Yes",     Edition::nec2020, kWire,        true,         Verdict::meets,      "230.46"},
    MarkRow{"Wire2023No",      Edition::nec2023, kWire,        false,        Verdict::breach,     "230.46"},
    MarkRow{"Wire2023Unsaid",  Edition::nec2023, kWire,        std::nullopt, Verdict::cannotTell, "230.46"},
    MarkRow{"Kind2023Unsaid",  Edition::nec2023, std::nullopt, false,        Verdict::breach,     "230.46"},
    MarkRow{"Block2026No",     Edition::nec2026, kBlock,       false,        Verdict::breach,     "230.46"},
    MarkRow{"Wire2026Yes",     Edition::nec2026, kWire,        true,         Verdict::meets,      "230.46"}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(LineSideMarkIn2020, ConcernsConnectorsByADate) {
    auto builder = oneBlock();
    add(builder, "S-A", "2");
    builder.layout().edition = Edition::nec2020;
    EXPECT_THAT(ofLineSide(builder).at(0).working, HasSubstr("since 1 January 2023"));
    builder.layout().edition = Edition::nec2023;
    EXPECT_THAT(ofLineSide(builder).at(0).working, testing::Not(HasSubstr("since")));
}

TEST(LineSideMarkIn2017, IsGoodPracticeWhereNoSectionIsWritten) {
    auto builder = oneBlock();
    add(builder, "S-A", "2");
    builder.layout().edition = Edition::nec2017;
    builder.layout().gutter.article = GutterArticle::nonmetallicWireway;
    listing(builder).kind = kBlock;
    listing(builder).lineSideOfService = false;
    EXPECT_EQ(ofLineSide(builder).at(0).verdict, Verdict::caution);
}

TEST(LineSideMarkOfATap, FollowsWhatItJoins) {
    auto builder = oneBlock();
    builder.circuit("T", {Phase::a}, 1, "S");
    builder.circuitNamed("T").role = Role::tap;
    add(builder, "T-A", "2").circuit = layout::CircuitId("T");
    listing(builder).lineSideOfService = false;
    EXPECT_EQ(ofLineSide(builder).at(0).verdict, Verdict::breach);
    builder.circuitNamed("T").joins.reset();
    EXPECT_EQ(ofLineSide(builder).at(0).verdict, Verdict::cannotTell);
    EXPECT_THAT(ofLineSide(builder).at(0).missing, ElementsAre("what circuit T joins"));
    builder.circuitNamed("T").tapRule = layout::TapRule::tenFoot;
    EXPECT_THAT(ofLineSide(builder), IsEmpty()) << "a feeder's tap";
}

TEST(LineSideMarkOfGrounds, IsNotAsked) {
    auto builder = oneBlock();
    add(builder, "S-G", "2").phase = Phase::g;
    listing(builder).lineSideOfService = false;
    EXPECT_THAT(ofLineSide(builder), IsEmpty());
}

// ---- least enclosure ------------------------------------------------------------------------

struct EnclosureRow {
    const char* name;
    std::optional<ConnectorKind> kind;
    std::optional<Vec3> asked;
    std::optional<Verdict> verdict;
    const char* section = "";
};

void PrintTo(const EnclosureRow& row, std::ostream* out) {
    *out << row.name;
}

class LeastEnclosure : public testing::TestWithParam<EnclosureRow> {};

TEST_P(LeastEnclosure, IsComparedWithTheInside) {
    auto builder = oneBlock();  // 60 x 12 x 12 in inside
    builder.layout().gutter.article = GutterArticle::metalWireway;
    listing(builder).kind = GetParam().kind;
    builder.part("row").leastEnclosure = GetParam().asked;
    const auto findings = ofEnclosure(builder);
    ASSERT_EQ(findings.size(), GetParam().verdict ? 1U : 0U);
    if (GetParam().verdict) {
        EXPECT_EQ(findings[0].verdict, *GetParam().verdict);
        EXPECT_EQ(findings[0].citation.section, GetParam().section);
    }
}

// Source: NFPA 70-2023 376.56(B)(2), not smaller than the block's instructions say; 110.3(B).
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, LeastEnclosure, testing::Values(
    EnclosureRow{"Block",       kBlock,       Vec3{12, 10, 6},     Verdict::meets,      "376.56(B)(2)"},
    EnclosureRow{"AtTheLimit",  kBlock,       Vec3{60, 12, 12},    Verdict::meets,      "376.56(B)(2)"},
    EnclosureRow{"TooLow",      kBlock,       Vec3{12, 12.01, 6},  Verdict::breach,     "376.56(B)(2)"},
    EnclosureRow{"TooShallow",  kBlock,       Vec3{12, 12, 12.01}, Verdict::breach,     "376.56(B)(2)"},
    EnclosureRow{"TooShort",    kBlock,       Vec3{60.01, 12, 12}, Verdict::breach,     "376.56(B)(2)"},
    EnclosureRow{"BlockUnsaid", kBlock,       std::nullopt,        Verdict::cannotTell, "376.56(B)(2)"},
    EnclosureRow{"Wire",        kWire,        Vec3{12, 12, 6},     Verdict::meets,      "110.3(B)"},
    EnclosureRow{"WireTooLow",  kWire,        Vec3{12, 13, 6},     Verdict::breach,     "110.3(B)"},
    EnclosureRow{"WireUnsaid",  kWire,        std::nullopt,        std::nullopt},
    EnclosureRow{"KindUnsaid",  std::nullopt, std::nullopt,        Verdict::cannotTell, "110.3(B)"}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

TEST(LeastEnclosureOfATurnedBlock, TurnsWithIt) {
    auto builder = oneBlock();
    builder.layout().conductors.front().to = inPort("A", "1");
    builder.part("row").leastEnclosure = Vec3{20, 10, 6};
    EXPECT_EQ(ofEnclosure(builder).at(0).verdict, Verdict::meets);
    builder.blockNamed("A").attitude = *parts::Attitude::fromText("+y-x");
    const auto finding = ofEnclosure(builder).at(0);
    EXPECT_EQ(finding.verdict, Verdict::breach);  // 20 in high, where 12 in are
    EXPECT_EQ(finding.measured->value, 12.0);
    EXPECT_EQ(finding.limit->value, 20.0);
}

TEST(LeastEnclosureLaws, ALargerGutterNeverWorsensIt) {
    Verdict before = Verdict::breach;
    for (double height = 8.0; height <= 14.0; height += 0.5) {
        auto builder = oneBlock();
        builder.layout().gutter.inside.y = height;
        builder.part("row").leastEnclosure = Vec3{12, 10.5, 6};
        const Verdict now = ofEnclosure(builder).at(0).verdict;
        EXPECT_LE(gravity(now), gravity(before)) << height;
        before = now;
    }
    EXPECT_EQ(before, Verdict::meets);
}

// ---- live parts -----------------------------------------------------------------------------

struct BareRow {
    const char* name;
    GutterArticle article;
    std::optional<ConnectorKind> kind;
    bool insulated;
    Phase phase;
    std::optional<Verdict> verdict;
    const char* section = "";
};

void PrintTo(const BareRow& row, std::ostream* out) {
    *out << row.name;
}

class LiveParts : public testing::TestWithParam<BareRow> {};

TEST_P(LiveParts, AreCovered) {
    auto builder = oneBlock();
    builder.layout().gutter.article = GetParam().article;
    builder.conductorNamed("F-A").phase = GetParam().phase;
    listing(builder).kind = GetParam().kind;
    builder.part("row").leastEnclosure = Vec3{1, 1, 1};
    builder.part("row").insulated = GetParam().insulated;
    const auto findings = ofLiveParts(builder);
    ASSERT_EQ(findings.size(), GetParam().verdict ? 1U : 0U);
    if (GetParam().verdict) {
        EXPECT_EQ(findings[0].verdict, *GetParam().verdict);
        EXPECT_EQ(findings[0].citation.section, GetParam().section);
    }
}

constexpr auto kGutter = GutterArticle::auxiliaryGutter;
constexpr auto kMetal = GutterArticle::metalWireway;

// Source: NFPA 70-2023 376.56(B)(4), no uninsulated live part exposed at a distribution block in a
// wireway (for boxes 314.28(E)(4), by analogy in a gutter); 110.14(B), splices covered.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, LiveParts, testing::Values(
    BareRow{"BlockCovered",  kMetal,  kBlock,       true,  Phase::a, Verdict::meets,      "376.56(B)(4)"},
    BareRow{"BlockBare",     kMetal,  kBlock,       false, Phase::a, Verdict::breach,     "376.56(B)(4)"},
    BareRow{"BlockNeutral",  kMetal,  kBlock,       false, Phase::n, Verdict::meets,      "376.56(B)(4)"},
    BareRow{"BlockGround",   kMetal,  kBlock,       false, Phase::g, std::nullopt},
    BareRow{"BlockInGutter", kGutter, kBlock,       false, Phase::a, Verdict::caution,    "314.28(E)(4)"},
    BareRow{"WireCovered",   kGutter, kWire,        true,  Phase::a, std::nullopt},
    BareRow{"WireBare",      kGutter, kWire,        false, Phase::a, Verdict::cannotTell, "110.14(B)"},
    BareRow{"WireNeutral",   kMetal,  kWire,        false, Phase::n, Verdict::cannotTell, "110.14(B)"},
    BareRow{"WireGround",    kGutter, kWire,        false, Phase::g, std::nullopt},
    BareRow{"KindUnsaid",    kMetal,  std::nullopt, false, Phase::a, Verdict::cannotTell, "110.14(B)"}),
    [](const auto& row) { return std::string(row.param.name); });
// clang-format on

}  // namespace
}  // namespace gw::checks
