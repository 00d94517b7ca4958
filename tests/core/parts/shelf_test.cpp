#include "parts/shelf.h"

#include <gtest/gtest.h>

#include <set>

#include "parts/part_file.h"
#include "support/shipped_shelf.h"

namespace gw::parts {
namespace {

TEST(ShippedShelf, HoldsAtLeastThirtyPartsThatSayTheyAreInvented) {
    const auto shelf = test::shippedShelf();
    EXPECT_GE(shelf.size(), 30U);
    for (const auto& [id, part] : shelf) {
        EXPECT_TRUE(part.shipped) << id.text();
        EXPECT_NE(part.note.find("Demonstration data: replace"), std::string::npos) << id.text();
    }
}

TEST(ShippedShelf, LeavesNoFactOut) {
    for (const auto& [id, part] : test::shippedShelf()) {
        EXPECT_TRUE(part.listing.kind && part.listing.lineSideOfService && part.listing.celsius &&
                    part.listing.volts && part.listing.temporarySubmersion)
            << id.text();
        EXPECT_FALSE(part.listing.locations.empty()) << id.text();
        EXPECT_TRUE(part.weightPounds && part.priceDollars && part.inhibitorIncluded) << id.text();
        for (const auto& port : part.ports) {
            EXPECT_FALSE(port.accepts.empty()) << id.text();
            EXPECT_TRUE(port.stripLength && port.stripTolerance) << id.text();
            const auto clamps = [&](const Screw& screw) { return screw.port == port.name; };
            EXPECT_TRUE(std::any_of(part.screws.begin(), part.screws.end(), clamps)) << id.text();
        }
        for (const auto& screw : part.screws) {
            EXPECT_FALSE(screw.drive.empty() || screw.torque.empty()) << id.text();
        }
    }
}

/// Every size a port accepts has a torque at each of its screws.
TEST(ShippedShelf, StatesATorqueForEverySizeAPortTakes) {
    for (const auto& [id, part] : test::shippedShelf()) {
        for (const auto& screw : part.screws) {
            for (const auto& port : part.ports) {
                if (port.name != screw.port) {
                    continue;
                }
                for (const auto& range : port.accepts) {
                    for (const auto size : units::WireSize::all()) {
                        if (size < range.smallest || range.largest < size) {
                            continue;
                        }
                        const auto holds = [&](const TorqueRow& row) {
                            return row.smallest <= size && size <= row.largest;
                        };
                        EXPECT_TRUE(std::any_of(screw.torque.begin(), screw.torque.end(), holds))
                            << id.text() << " screw " << screw.name.text() << " " << size.text();
                    }
                }
            }
        }
    }
}

TEST(ShippedShelf, HasEveryFamilyAndReachesFrom14AwgTo750Kcmil) {
    std::set<std::string> families;
    std::size_t most = 0;
    bool through = false;
    bool either = false;
    bool fine = false;
    bool sealed = false;
    bool window = false;
    bool holes = false;
    auto smallest = units::WireSize::of("2000");
    auto largest = units::WireSize::of("14");
    for (const auto& [id, part] : test::shippedShelf()) {
        families.insert(part.family);
        most = std::max(most, part.ports.size());
        holes = holes || !part.mountingHoles.empty();
        sealed = sealed || *part.listing.temporarySubmersion;
        for (const auto& port : part.ports) {
            through = through || port.opening == PortOpening::both;
            either = either || port.opening == PortOpening::either;
            window = window || port.window;
            for (const auto& range : port.accepts) {
                smallest = std::min(smallest, range.smallest);
                largest = std::max(largest, range.largest);
                const bool takesFine = std::any_of(
                    range.strandings.begin(), range.strandings.end(), standards::isFine);
                if (takesFine) {
                    fine = true;
                    EXPECT_EQ(range.metals, std::vector{standards::Metal::copper}) << id.text();
                }
            }
        }
    }
    EXPECT_GE(families.size(), 9U);
    EXPECT_EQ(most, 12U);
    EXPECT_TRUE(through && either && fine && sealed && window && holes);
    EXPECT_EQ(smallest.label(), "14");
    EXPECT_EQ(largest.label(), "750");
}

/// "Half the length": a two-tier body against the one-sided row of as many ports of the same range.
TEST(ShippedShelf, TwoTiersAreAboutHalfAsLong) {
    const auto shelf = test::shippedShelf();
    const double row = shelf.at(PartId("row-one-side-8-to-350")).body.x;
    const double tiers = shelf.at(PartId("two-tier-8-to-350")).body.x;
    EXPECT_LT(tiers, 0.6 * row);
}

TEST(ShippedShelf, PortsAreFarEnoughApartForTheirLargestConductors) {
    for (const auto& [id, part] : test::shippedShelf()) {
        for (const auto& a : part.ports) {
            for (const auto& b : part.ports) {
                if (a.name < b.name && a.direction == b.direction) {
                    EXPECT_GT(distance(a.mouth, b.mouth), a.boreDiameter.in()) << id.text();
                }
            }
        }
    }
}

TEST(PartFile, RoundTripKeepsEveryByte) {
    std::vector<Part> parts;
    for (const auto& [id, part] : test::shippedShelf()) {
        parts.push_back(part);
    }
    const auto once = writeParts(parts);
    const auto again = readParts(once, "again.json");
    ASSERT_TRUE(again) << toLine(again.error());
    EXPECT_EQ(writeParts(*again), once);
}

TEST(PartFile, MillimetresAreConverted) {
    const auto shelf = test::shippedShelf();
    const auto text = writeParts({shelf.at(PartId("splice-end-to-end-350"))});
    auto metric = text;
    metric.replace(metric.find("\"unit\": \"in\""), 12, "\"unit\": \"mm\"");
    const auto read = readParts(metric, "mm.json");
    ASSERT_TRUE(read) << toLine(read.error());
    EXPECT_NEAR(
        read->front().body.x * 25.4, shelf.at(PartId("splice-end-to-end-350")).body.x, 1e-12);
}

TEST(Shelf, TwoFilesWithOneIdAreRefusedNamingBoth) {
    const auto bytes = writeParts({test::shippedShelf().begin()->second});
    const auto shelf = loadShelf({{"mine.json", bytes}, {"yours.json", bytes}});
    ASSERT_FALSE(shelf);
    EXPECT_EQ(shelf.error().code, ErrorCode::duplicate);
    EXPECT_EQ(shelf.error().file, "yours.json");
    EXPECT_EQ(shelf.error().place, "/parts/0/id");
    EXPECT_NE(shelf.error().expected.find("mine.json"), std::string::npos);
}

// ---- what a part file must not say -------------------------------------------------------------

struct BadPart {
    std::string name;
    std::string find;     ///< first place of this in a good file …
    std::string replace;  ///< … becomes this
    ErrorCode code;
    std::string place;
};

void PrintTo(const BadPart& bad, std::ostream* out) {
    *out << bad.name;
}

class BadParts : public ::testing::TestWithParam<BadPart> {};

std::string goodFile() {
    return writeParts({test::shippedShelf().at(PartId("row-one-side-3-to-2-0"))});
}

TEST_P(BadParts, AreRefusedAtTheirPlace) {
    auto bytes = goodFile();
    const auto at = bytes.find(GetParam().find);
    ASSERT_NE(at, std::string::npos);
    bytes.replace(at, GetParam().find.size(), GetParam().replace);
    const auto parts = readParts(bytes, "bad.json");
    ASSERT_FALSE(parts);
    EXPECT_EQ(parts.error().code, GetParam().code) << toLine(parts.error());
    EXPECT_EQ(parts.error().place, GetParam().place) << toLine(parts.error());
    EXPECT_EQ(parts.error().file, "bad.json");
    EXPECT_FALSE(parts.error().expected.empty()) << toLine(parts.error());
    EXPECT_FALSE(parts.error().found.empty()) << toLine(parts.error());
    EXPECT_EQ(toLine(parts.error()).find('\n'), std::string::npos);
}

std::string caseName(const ::testing::TestParamInfo<BadPart>& info) {
    return info.param.name;
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Rows, BadParts, ::testing::Values(
    BadPart{"OtherFormat",      "gutterwright-parts",     "somebody-parts",           ErrorCode::unknown,     "/format"},
    BadPart{"LaterVersion",     "\"version\": 1",         "\"version\": 2",           ErrorCode::unknown,     "/version"},
    BadPart{"UnknownUnit",      "\"unit\": \"in\"",       "\"unit\": \"ft\"",         ErrorCode::unknown,     "/unit"},
    BadPart{"PartsNotAList",    "\"parts\": [",           "\"parts\": 7, \"x\": [",   ErrorCode::syntax,      "/parts"},
    BadPart{"IdWithBlank",      "row-one-side-3-to-2-0",  "row one",                  ErrorCode::syntax,      "/parts/0/id"},
    BadPart{"NoName",           "\"name\": \"Row",        "\"title\": \"Row",         ErrorCode::missing,     "/parts/0"},
    BadPart{"NegativeLength",   "\"length\": 3.4",        "\"length\": -3.4",         ErrorCode::outOfRange,  "/parts/0/body/length"},
    BadPart{"LengthAsText",     "\"length\": 3.4",        "\"length\": \"3.4\"",      ErrorCode::syntax,      "/parts/0/body/length"},
    BadPart{"HugeLength",       "\"length\": 3.4",        "\"length\": 1e308",        ErrorCode::outOfRange,  "/parts/0/body/length"},
    BadPart{"NoDepth",          ",\n        \"depth\"",   ",\n        \"deep\"",      ErrorCode::missing,     "/parts/0/body"},
    BadPart{"PortNameTwice",    "\"name\": \"2\"",        "\"name\": \"1\"",          ErrorCode::duplicate,   "/parts/0/ports/1"},
    BadPart{"MouthOffTheFace",  "\"y\": 0,",              "\"y\": 0.4,",              ErrorCode::contradicts, "/parts/0/ports/0"},
    BadPart{"SlantingBore",     "\"direction\": \"+y\"",  "\"direction\": \"xy\"",    ErrorCode::unknown,     "/parts/0/ports/0/direction"},
    BadPart{"BoreOutOfTheBack", "\"direction\": \"+y\"",  "\"direction\": \"-y\"",    ErrorCode::contradicts, "/parts/0/ports/0"},
    BadPart{"BoreTooDeep",      "\"boreDepth\": 1",       "\"boreDepth\": 9",         ErrorCode::contradicts, "/parts/0/ports/0"},
    BadPart{"UnknownOpening",   "\"opening\": \"near\"",  "\"opening\": \"far\"",     ErrorCode::unknown,     "/parts/0/ports/0/opening"},
    BadPart{"UnknownMetal",     "\"copper\"",             "\"silver\"",               ErrorCode::unknown,     "/parts/0/ports/0/accepts/0/metals/0"},
    BadPart{"UnknownSize",      "\"smallest\": \"14\"",   "\"smallest\": \"15\"",     ErrorCode::unknown,     "/parts/0/ports/0/accepts/0/smallest"},
    BadPart{"SizesReversed",    "\"largest\": \"2/0\"",   "\"largest\": \"18\"",      ErrorCode::unknown,     "/parts/0/ports/0/accepts/0/largest"},
    BadPart{"RangeBackwards",   "\"smallest\": \"14\"",   "\"smallest\": \"4/0\"",    ErrorCode::contradicts, "/parts/0/ports/0/accepts/0/largest"},
    BadPart{"NoConductors",     "\"conductors\": 1",      "\"conductors\": 0",        ErrorCode::outOfRange,  "/parts/0/ports/0/accepts/0/conductors"},
    BadPart{"HalfAConductor",   "\"conductors\": 1",      "\"conductors\": 1.5",      ErrorCode::syntax,      "/parts/0/ports/0/accepts/0/conductors"},
    BadPart{"NegativeStrip",    "\"stripLength\": 0.9",   "\"stripLength\": -0.9",    ErrorCode::outOfRange,  "/parts/0/ports/0/stripLength"},
    BadPart{"MisspeltMember",   "\"stripLength\"",        "\"striplength\"",          ErrorCode::unknown,     "/parts/0/ports/0/striplength"},
    BadPart{"ScrewOfNoPort",    "\"port\": \"1\"",        "\"port\": \"9\"",          ErrorCode::dangling,    "/parts/0/screws/0/port"},
    BadPart{"TorqueZero",       "\"poundInches\": 75",    "\"poundInches\": 0",       ErrorCode::outOfRange,  "/parts/0/screws/0/torque/0/poundInches"},
    BadPart{"UnknownPlace",     "\"dry\"",                "\"muddy\"",                ErrorCode::unknown,     "/parts/0/listing/locations/0"},
    BadPart{"FlagAsNumber",     "\"shipped\": true",      "\"shipped\": 1",           ErrorCode::syntax,      "/parts/0/shipped"},
    BadPart{"MemberTwice",      "\"shipped\": true",      "\"id\": \"again\"",        ErrorCode::duplicate,   "/parts/0/id"},
    BadPart{"BoreTooWide",      "\"boreDiameter\": 0.5",   "\"boreDiameter\": 2.5",    ErrorCode::contradicts, "/parts/0/ports/0"},
    BadPart{"BoreOfNoWidth",    "\"boreDiameter\": 0.5",   "\"boreDiameter\": 0",      ErrorCode::outOfRange,  "/parts/0/ports/0/boreDiameter"},
    BadPart{"ScrewInsideTheBody","\"z\": 1.3",             "\"z\": 1.2",               ErrorCode::contradicts, "/parts/0/screws/0/head"},
    BadPart{"ScrewLooksIn",     "\"outward\": \"+z\"",    "\"outward\": \"-z\"",     ErrorCode::contradicts, "/parts/0/screws/0/head"},
    BadPart{"ScrewLooksSideways","\"outward\": \"+z\"",   "\"outward\": \"+x\"",     ErrorCode::contradicts, "/parts/0/screws/0/head"},
    BadPart{"ScrewNameTwice",   "\"name\": \"2\",\n          \"port\"", "\"name\": \"1\",\n          \"port\"", ErrorCode::duplicate,   "/parts/0/screws/1"},
    BadPart{"NoMetals",         "[\n                \"copper\"\n              ]", "[]", ErrorCode::missing,     "/parts/0/ports/0/accepts/0/metals"},
    BadPart{"TorqueBackwards",  "\"smallest\": \"6\"",    "\"smallest\": \"4/0\"",   ErrorCode::contradicts, "/parts/0/screws/0/torque/1/largest"},
    BadPart{"TorqueOutOfSense", "\"poundInches\": 75",    "\"poundInches\": 75000",   ErrorCode::outOfRange,  "/parts/0/screws/0/torque/0/poundInches"},
    BadPart{"NullForALength",   "\"stripLength\": 0.9375","\"stripLength\": null",    ErrorCode::syntax,      "/parts/0/ports/0/stripLength"}
), caseName);
// clang-format on

TEST(PartFile, AMountingHoleIsOnTheMountingFace) {
    auto part = test::shippedShelf().at(PartId("distribution-1-350-4-2-0"));
    ASSERT_FALSE(part.mountingHoles.empty());
    for (const Vec3& off : {Vec3{1, 1, 0.1}, Vec3{-1, 1, 0}, Vec3{1, part.body.y + 1, 0}}) {
        part.mountingHoles.front().centre = off;
        const auto parts = readParts(writeParts({part}), "bad.json");
        ASSERT_FALSE(parts);
        EXPECT_EQ(parts.error().code, ErrorCode::contradicts);
        EXPECT_EQ(parts.error().place, "/parts/0/mountingHoles/0/centre");
    }
}

/// What the file leaves out stays missing, and is left out again.
TEST(PartFile, MissingFactsStayMissing) {
    auto part = test::shippedShelf().at(PartId("row-one-side-3-to-2-0"));
    part.note.clear();
    part.mountingHoles.clear();
    part.listing = {};
    part.leastEnclosure.reset();
    part.inhibitorIncluded.reset();
    part.weightPounds.reset();
    part.priceDollars.reset();
    for (auto& port : part.ports) {
        port.accepts.clear();
        port.stripLength.reset();
        port.stripTolerance.reset();
    }
    for (auto& screw : part.screws) {
        screw.drive.clear();
        screw.torque.clear();
    }
    const auto bytes = writeParts({part});
    for (const char* member : {"note",
                               "listing",
                               "leastEnclosure",
                               "inhibitorIncluded",
                               "accepts",
                               "weightPounds",
                               "priceDollars",
                               "stripLength",
                               "stripTolerance",
                               "drive",
                               "torque",
                               "mountingHoles",
                               "null"}) {
        EXPECT_EQ(bytes.find(member), std::string::npos) << member;
    }
    const auto read = readParts(bytes, "bare.json");
    ASSERT_TRUE(read) << toLine(read.error());
    EXPECT_FALSE(read->front().ports.front().stripLength.has_value());
    EXPECT_FALSE(read->front().listing.kind.has_value());
    EXPECT_TRUE(read->front().screws.front().torque.empty());
    EXPECT_EQ(writeParts(*read), bytes);
}

}  // namespace
}  // namespace gw::parts
