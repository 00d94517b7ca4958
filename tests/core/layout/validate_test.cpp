#include <gtest/gtest.h>

#include <limits>

#include "core/support/sample_layouts.h"
#include "layout/layout.h"

namespace gw::layout {
namespace {

using test::Sample;
using units::Inches;

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

// oneTap() with a second conductor passing the block "T" and landing in "E", and a remark.
Sample richSample() {
    Sample sample = test::oneTap();
    sample.addBlock("T", "through", {20, 5, 5});
    sample.addBlock("E", "either", {40, 1, 1}).openMouths = {{parts::PortName("e"), true}};
    Conductor& second = sample.addConductor(
        "c2", test::atEntry("in", 2), test::inPort("E", "e"), {{12, 6, 6}, {41, 6, 6}});
    second.passes = {{BlockId("T"), parts::PortName("run"), Inches::of(-0.1), Inches::of(4.2)}};
    sample.addConductor("c3", test::spare({5, 1, 1}), test::spare({9, 1, 1}));
    Remark remark;
    remark.id = RemarkId("r1");
    remark.at = Vec3{1, 2, 3};
    remark.item = "c2";
    sample.layout.remarks.push_back(remark);
    sample.layout.parts.push_back(test::rowPart());
    return sample;
}

InPort& toPort(Sample& sample, const char* conductor) {
    return std::get<InPort>(sample.conductor(conductor).to);
}
AtEntry& fromEntry(Sample& sample, const char* conductor) {
    return std::get<AtEntry>(sample.conductor(conductor).from);
}

struct WrongRow {
    const char* name;
    void (*spoil)(Sample& sample);
    ErrorCode code;
    const char* place;
};

void PrintTo(const WrongRow& row, std::ostream* out) {
    *out << row.place;
}

std::string wrongName(const testing::TestParamInfo<WrongRow>& row) {
    return row.param.name;
}

class WrongLayout : public testing::TestWithParam<WrongRow> {};

TEST_P(WrongLayout, IsRefusedAtItsPlace) {
    const WrongRow& row = GetParam();
    Sample sample = richSample();
    row.spoil(sample);
    const auto result = validate(sample.layout, sample.shelf);
    ASSERT_FALSE(result.has_value());
    EXPECT_EQ(result.error().place, row.place);
    EXPECT_EQ(result.error().code, row.code) << toLine(result.error());
    EXPECT_FALSE(result.error().sentence.empty());
    EXPECT_FALSE(result.error().expected.empty());
}

constexpr auto kRange = ErrorCode::outOfRange;
constexpr auto kDangling = ErrorCode::dangling;
constexpr auto kDuplicate = ErrorCode::duplicate;
constexpr auto kContradicts = ErrorCode::contradicts;
constexpr auto kSyntax = ErrorCode::syntax;

// clang-format off
const WrongRow kWrong[] = {
    {"TitleTooLong", [](Sample& s) { s.layout.title = std::string(401, 'x'); }, kRange, "/title"},
    {"TitleWithNewline", [](Sample& s) { s.layout.title = "a\nb"; }, kSyntax, "/title"},
    {"GutterTooShort", [](Sample& s) { s.layout.gutter.inside.x = 0.0; }, kRange, "/gutter/inside/length"},
    {"GutterHeightNegative", [](Sample& s) { s.layout.gutter.inside.y = -8.0; }, kRange, "/gutter/inside/height"},
    {"GutterDepthNotANumber", [](Sample& s) { s.layout.gutter.inside.z = kNan; }, kRange, "/gutter/inside/depth"},
    {"GutterTooLong", [](Sample& s) { s.layout.gutter.inside.x = 1200.1; }, kRange, "/gutter/inside/length"},
    {"SupportsTooFarApart", [](Sample& s) { s.layout.gutter.supportSpacing = Inches::of(1201); }, kRange, "/gutter/supportSpacing"},
    {"BeyondEquipmentNegative", [](Sample& s) { s.layout.gutter.beyondEquipment = Inches::of(-1); }, kRange, "/gutter/beyondEquipment"},
    {"AmendedFillOfNothing", [](Sample& s) { s.layout.amendments.conductorFillPercent = 0.0; }, kRange, "/amendments/conductorFillPercent"},
    {"AmendedSpliceFillOverAll", [](Sample& s) { s.layout.amendments.spliceFillPercent = 100.1; }, kRange, "/amendments/spliceFillPercent"},
    {"AmendedBendOfLessThanOneDiameter", [](Sample& s) { s.layout.amendments.bendRadiusMultiple = 0.9; }, kRange, "/amendments/bendRadiusMultiple"},
    {"SheetOfNoThickness", [](Sample& s) { s.layout.gutter.sheet = Inches::of(0.0); }, kRange, "/gutter/sheet"},
    {"AmbientTooHot", [](Sample& s) { s.layout.surroundings.ambientCelsius = 101.0; }, kRange, "/surroundings/ambientCelsius"},
    {"SystemIdEmpty", [](Sample& s) { s.layout.systems[0].id = SystemId(""); }, kSyntax, "/systems/0/id"},
    {"SystemNoVolts", [](Sample& s) { s.layout.systems[0].voltsBetweenPhases = 0; }, kRange, "/systems/0/voltsBetweenPhases"},
    {"SystemMoreToGround", [](Sample& s) { s.layout.systems[0].voltsToGround = 209; }, kContradicts, "/systems/0/voltsToGround"},
    {"SystemFaultNegative", [](Sample& s) { s.layout.systems[0].faultKiloamperes = -1.0; }, kRange, "/systems/0/faultKiloamperes"},
    {"CircuitIdOfASystem", [](Sample& s) { s.layout.circuits[0].id = CircuitId("sys"); }, kDuplicate, "/circuits/0/id"},
    {"CircuitOfNoSystem", [](Sample& s) { s.layout.circuits[0].system = SystemId("x"); }, kDangling, "/circuits/0/system"},
    {"CircuitNoSets", [](Sample& s) { s.layout.circuits[0].sets = 0; }, kRange, "/circuits/0/sets"},
    {"CircuitTooManySets", [](Sample& s) { s.layout.circuits[0].sets = 21; }, kRange, "/circuits/0/sets"},
    {"CircuitNoPhases", [](Sample& s) { s.layout.circuits[0].phases.clear(); }, ErrorCode::missing, "/circuits/0/phases"},
    {"CircuitPhaseTwice", [](Sample& s) { s.layout.circuits[0].phases = {Phase::a, Phase::b, Phase::a}; }, kDuplicate, "/circuits/0/phases/2"},
    {"CircuitJoinsNothing", [](Sample& s) { s.layout.circuits[0].joins = CircuitId("x"); }, kDangling, "/circuits/0/joins"},
    {"CircuitJoinsItself", [](Sample& s) { s.layout.circuits[0].joins = CircuitId("feed"); }, kContradicts, "/circuits/0/joins"},
    {"CircuitsJoinInARing", [](Sample& s) {
         s.addCircuit("tap1").joins = CircuitId("tap2");
         s.addCircuit("tap2").joins = CircuitId("tap1"); }, kContradicts, "/circuits/1/joins"},
    {"CircuitLoadNotANumber", [](Sample& s) { s.layout.circuits[0].loadAmperes = kNan; }, kRange, "/circuits/0/loadAmperes"},
    {"CircuitDeviceNegative", [](Sample& s) { s.layout.circuits[0].deviceAmperes = -1.0; }, kRange, "/circuits/0/deviceAmperes"},
    {"EntryIdTaken", [](Sample& s) { s.addEntry("in", Wall::left, 1, 1); }, kDuplicate, "/entries/1/id"},
    {"EntryIdWithBlank", [](Sample& s) { s.addEntry("in 2", Wall::left, 1, 1); }, kSyntax, "/entries/1/id"},
    {"EntryBesideItsWall", [](Sample& s) { s.entry("in").u = 48.5; }, kRange, "/entries/0/u"},
    {"EntryAboveItsWall", [](Sample& s) { s.entry("in").v = -0.5; }, kRange, "/entries/0/v"},
    {"EntryOnEndBeyondHeight", [](Sample& s) { s.addEntry("e2", Wall::left, 8.5, 1); }, kRange, "/entries/1/u"},
    {"EntryOnBackBeyondHeight", [](Sample& s) { s.addEntry("e2", Wall::back, 8.5, 8.5); }, kRange, "/entries/1/v"},
    {"EntryRacewayNegative", [](Sample& s) { s.entry("in").racewayLength = Inches::of(-1); }, kRange, "/entries/0/racewayLength"},
    {"BlockOfNoPart", [](Sample& s) { s.block("A").part = parts::PartId("x"); }, kDangling, "/blocks/0/part"},
    {"BlockNowhere", [](Sample& s) { s.block("A").corner.y = kInfinity; }, kRange, "/blocks/0/corner/y"},
    {"BlockMouthOfNoPort", [](Sample& s) { s.block("E").openMouths[0].port = parts::PortName("x"); }, kDangling, "/blocks/2/openMouths/0/port"},
    {"BlockMouthOfBlindPort", [](Sample& s) { s.block("E").openMouths[0].port = parts::PortName("f"); }, kContradicts, "/blocks/2/openMouths/0/port"},
    {"BlockMouthTwice", [](Sample& s) { s.block("E").openMouths.push_back({parts::PortName("e"), false}); }, kDuplicate, "/blocks/2/openMouths/1/port"},
    {"ConductorIdOfABlock", [](Sample& s) { s.conductor("c1").id = ConductorId("A"); }, kDuplicate, "/conductors/0/id"},
    {"ConductorOfNoCircuit", [](Sample& s) { s.conductor("c1").circuit = CircuitId("x"); }, kDangling, "/conductors/0/circuit"},
    {"ConductorOfNoSet", [](Sample& s) { s.conductor("c1").set = 2; }, kRange, "/conductors/0/set"},
    {"ConductorOfNoPhase", [](Sample& s) { s.conductor("c1").phase = Phase::g; }, kContradicts, "/conductors/0/phase"},
    {"ConductorOfNoDiameter", [](Sample& s) { s.conductor("c1").outsideDiameter = Inches::of(0); }, kRange, "/conductors/0/outsideDiameter"},
    {"ConductorFromNoEntry", [](Sample& s) { fromEntry(s, "c1").entry = EntryId("x"); }, kDangling, "/conductors/0/from/entry"},
    {"ConductorSlotZero", [](Sample& s) { fromEntry(s, "c1").slot = 0; }, kRange, "/conductors/0/from/slot"},
    {"ConductorSlotTaken", [](Sample& s) { fromEntry(s, "c2").slot = 1; }, kDuplicate, "/conductors/1/from/slot"},
    {"ConductorToNoBlock", [](Sample& s) { toPort(s, "c1").block = BlockId("x"); }, kDangling, "/conductors/0/to/block"},
    {"ConductorToNoPort", [](Sample& s) { toPort(s, "c1").port = parts::PortName("4"); }, kDangling, "/conductors/0/to/port"},
    {"ConductorStripNegative", [](Sample& s) { toPort(s, "c1").strip = Inches::of(-0.1); }, kRange, "/conductors/0/to/strip"},
    {"ConductorThroughTheStop", [](Sample& s) { toPort(s, "c1").inserted = Inches::of(1.51); }, kRange, "/conductors/0/to/inserted"},
    {"ConductorNotInserted", [](Sample& s) { toPort(s, "c1").inserted = Inches::of(kNan); }, kRange, "/conductors/0/to/inserted"},
    {"ConductorSpareNowhere", [](Sample& s) { s.conductor("c3").to = Spare{{0, 0, kNan}}; }, kRange, "/conductors/2/to/spare/z"},
    {"ConductorCornerNowhere", [](Sample& s) { s.conductor("c1").corners[1].at.x = 1300; }, kRange, "/conductors/0/corners/1/at/x"},
    {"ConductorBendNegative", [](Sample& s) { s.conductor("c1").corners[0].radius = Inches::of(-1); }, kRange, "/conductors/0/corners/0/radius"},
    {"PassOfNoBlock", [](Sample& s) { s.conductor("c2").passes[0].block = BlockId("x"); }, kDangling, "/conductors/1/passes/0/block"},
    {"PassOfBlindPort", [](Sample& s) { s.conductor("c2").passes[0].port = parts::PortName("tap"); }, kContradicts, "/conductors/1/passes/0/port"},
    {"PassWindowNegative", [](Sample& s) { s.conductor("c2").passes[0].windowLength = Inches::of(-1); }, kRange, "/conductors/1/passes/0/windowLength"},
    {"PassWindowNowhere", [](Sample& s) { s.conductor("c2").passes[0].windowStart = Inches::of(kNan); }, kRange, "/conductors/1/passes/0/windowStart"},
    {"PassTwice", [](Sample& s) { s.conductor("c2").passes.push_back(s.conductor("c2").passes[0]); }, kDuplicate, "/conductors/1/passes/1/port"},
    {"RemarkPinnedToNothing", [](Sample& s) { s.layout.remarks[0].item = "x"; }, kDangling, "/remarks/0/item"},
    {"RemarkNowhere", [](Sample& s) { s.layout.remarks[0].at->y = kNan; }, kRange, "/remarks/0/at/y"},
    {"PartIdTwice", [](Sample& s) { s.layout.parts.push_back(test::rowPart()); }, kDuplicate, "/parts/1/id"},
    {"PartIdNotAnId", [](Sample& s) { s.layout.parts[0].id = parts::PartId("-row"); }, kSyntax, "/parts/0/id"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(EachWay, WrongLayout, testing::ValuesIn(kWrong), wrongName);

struct GoodRow {
    const char* name;
    void (*change)(Sample& sample);
};

void PrintTo(const GoodRow& row, std::ostream* out) {
    *out << row.name;
}

std::string goodName(const testing::TestParamInfo<GoodRow>& row) {
    return row.param.name;
}

class GoodLayout : public testing::TestWithParam<GoodRow> {};

TEST_P(GoodLayout, IsAccepted) {
    Sample sample = richSample();
    GetParam().change(sample);
    const auto result = validate(sample.layout, sample.shelf);
    EXPECT_TRUE(result.has_value()) << toLine(result.error());
}

// clang-format off
const GoodRow kGood[] = {
    {"AsItIs", [](Sample&) {}},
    {"Nothing", [](Sample& s) { s = test::emptyGutter(); }},
    {"EntryOnTheEdge", [](Sample& s) { s.entry("in").u = 48.0; s.entry("in").v = 0.0; }},
    {"SlotsWithAGap", [](Sample& s) { fromEntry(s, "c2").slot = 7; }},
    {"InsertedToTheStop", [](Sample& s) { toPort(s, "c1").inserted = Inches::of(1.5); }},
    {"InsertedWithinTheSlack", [](Sample& s) { toPort(s, "c1").inserted = Inches::of(1.5 + 5e-7); }},
    {"NotInsertedAtAll", [](Sample& s) { toPort(s, "c1").inserted = Inches::of(0); }},
    {"BlockOutsideTheGutter", [](Sample& s) { s.block("A").corner = {60, -3, 0}; }},
    {"SharpKink", [](Sample& s) { s.conductor("c1").corners[0].radius = Inches::of(0); }},
    {"CornerGroundedDelta", [](Sample& s) { s.layout.systems[0].voltsToGround = 208; }},
    {"TapsOnOneFeeder", [](Sample& s) {
         s.addCircuit("tap1").joins = CircuitId("feed");
         s.addCircuit("tap2").joins = CircuitId("tap1"); }},
    {"RemarkOnTheWhole", [](Sample& s) { s.layout.remarks[0].item.reset(); }},
    {"EitherMouthNotStated", [](Sample& s) { s.block("E").openMouths.clear(); }},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(EachWay, GoodLayout, testing::ValuesIn(kGood), goodName);

TEST(Validate, TheFirstProblemInTheOrderOfTheDocumentIsTold) {
    Sample sample = richSample();
    sample.conductor("c1").circuit = CircuitId("x");
    sample.block("A").part = parts::PartId("x");
    const auto result = validate(sample.layout, sample.shelf);
    ASSERT_FALSE(result.has_value());
    EXPECT_EQ(result.error().place, "/blocks/0/part");
}

TEST(Validate, SaysWhatWasExpectedAndFound) {
    Sample sample = richSample();
    toPort(sample, "c1").inserted = Inches::of(2.0);
    const auto result = validate(sample.layout, sample.shelf);
    ASSERT_FALSE(result.has_value());
    EXPECT_EQ(result.error().expected, "0 to 1.5 in");
    EXPECT_EQ(result.error().found, "2 in");
}

TEST(Validate, ALongChainOfTapsIsFollowedOnce) {
    Sample sample = test::emptyGutter();
    constexpr int kTaps = 20000;
    for (int i = 0; i < kTaps; ++i) {
        sample.addCircuit("t" + std::to_string(i)).joins =
            CircuitId(i == 0 ? "feed" : "t" + std::to_string(i - 1));
    }
    EXPECT_TRUE(validate(sample.layout, sample.shelf).has_value());
}

}  // namespace
}  // namespace gw::layout
