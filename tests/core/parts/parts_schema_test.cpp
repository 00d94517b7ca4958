#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "base/read_file.h"
#include "core/support/json_schema.h"
#include "parts/part_file.h"
#include "standards/kinds.h"
#include "support/shipped_shelf.h"

/// The published schema against what the reader takes: a file the program reads or writes passes
/// it, and what is wrong in shape fails it as it fails the reader. What only the reader sees
/// (references, places inside the body, order of sizes) is in shelf_test.cpp.
namespace gw::parts {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

const fs::path kResources = fs::path(GW_SOURCE_DIR) / "resources";

json load(const fs::path& path) {
    return json::parse(readFile(path.string()).value());
}

const test::JsonSchema& schema() {
    static const test::JsonSchema kSchema("parts");
    return kSchema;
}

const json& schemaText() {
    return schema().text();
}

bool schemaTakes(const json& file) {
    return schema().accepts(file);
}

bool readerTakes(const json& file) {
    return readParts(file.dump(), "part.json").has_value();
}

/// A shipped part with every member the format knows, so that each row below finds its place.
const json& fullFile() {
    static const json kFile = [] {
        Part part = test::shippedShelf().at(PartId("distribution-1-350-4-2-0"));
        part.insulated = false;
        part.leastEnclosure = Vec3{12, 8, 6};
        part.ports.front().window = true;
        return json::parse(writeParts({part}));
    }();
    return kFile;
}

TEST(PartsSchema, AllowsEveryShippedFile) {
    int files = 0;
    for (const auto& entry : fs::directory_iterator(kResources / "parts")) {
        EXPECT_TRUE(schemaTakes(load(entry.path()))) << entry.path();
        ++files;
    }
    EXPECT_GE(files, 9);
}

TEST(PartsSchema, AllowsWhatTheProgramWrites) {
    std::vector<Part> parts;
    for (const auto& [id, part] : test::shippedShelf()) {
        parts.push_back(part);
    }
    EXPECT_TRUE(schemaTakes(json::parse(writeParts(parts))));
    EXPECT_TRUE(schemaTakes(fullFile()));
    EXPECT_TRUE(readerTakes(fullFile()));
}

/// Names of the members a definition of the schema knows, against those the writer sets.
TEST(PartsSchema, KnowsExactlyTheMembersThatAreWritten) {
    const json part = fullFile().at("/parts/0"_json_pointer);
    const auto names = [](const json& object) {
        std::set<std::string> found;
        for (const auto& member : object.items()) {
            found.insert(member.key());
        }
        return found;
    };
    const std::vector<std::pair<std::string, std::string>> places = {
        {"part", ""},
        {"port", "/ports/0"},
        {"portRange", "/ports/0/accepts/0"},
        {"screw", "/screws/0"},
        {"torqueRow", "/screws/0/torque/0"},
        {"mountingHole", "/mountingHoles/0"},
        {"listing", "/listing"},
        {"point", "/ports/0/mouth"},
        {"extents", "/body"},
    };
    for (const auto& [definition, place] : places) {
        const json& known = schemaText().at("definitions").at(definition).at("properties");
        EXPECT_EQ(names(known), names(part.at(json::json_pointer(place)))) << definition;
    }
}

TEST(PartsSchema, ListsEverySizeAndKind) {
    const auto listed = [](const char* definition) {
        return schemaText()
            .at("definitions")
            .at(definition)
            .at("enum")
            .get<std::vector<std::string>>();
    };
    const auto texts = [](const auto& values, auto toText) {
        std::vector<std::string> all;
        for (const auto& value : values) {
            all.emplace_back(toText(value));
        }
        return all;
    };
    EXPECT_EQ(listed("size"),
              texts(units::WireSize::all(), [](units::WireSize size) { return size.label(); }));
    EXPECT_EQ(listed("metal"), texts(standards::allMetals(), standards::metalText));
    EXPECT_EQ(listed("stranding"), texts(standards::allStrandings(), standards::strandingText));
    EXPECT_EQ(listed("location"), texts(standards::allLocations(), standards::locationText));
}

/// A layout's own parts are described in its schema in the same words.
TEST(PartsSchema, SaysTheSameOfAPartAsTheLayoutSchema) {
    const json layout = load(kResources / "schema/layout.schema.json").at("definitions");
    for (const auto& definition : schemaText().at("definitions").items()) {
        if (definition.key() != "id") {  // unique over a layout there, over a shelf here
            EXPECT_EQ(layout.at(definition.key()), definition.value()) << definition.key();
        }
    }
}

// ---- what has the wrong shape -------------------------------------------------------------------

struct BadShape {
    const char* name;
    const char* place;  ///< JSON pointer of what is replaced in a good file …
    const char* value;  ///< … by this JSON; empty: it is taken out
};

void PrintTo(const BadShape& row, std::ostream* out) {
    *out << row.place << " = " << row.value;
}

std::string badShapeName(const testing::TestParamInfo<BadShape>& row) {
    return row.param.name;
}

class PartsOfBadShape : public testing::TestWithParam<BadShape> {};

TEST_P(PartsOfBadShape, FailTheSchemaAndTheReader) {
    json file = fullFile();
    const json::json_pointer place(GetParam().place);
    if (*GetParam().value == '\0') {
        ASSERT_EQ(file.at(place.parent_pointer()).erase(place.back()), 1U);
    } else {
        file[place] = json::parse(GetParam().value);
    }
    EXPECT_FALSE(schemaTakes(file));
    EXPECT_FALSE(readerTakes(file));
}

// clang-format off
const BadShape kBadShapes[] = {
    {"RootIsAList",         "",                                    "[]"},
    {"OtherFormat",         "/format",                             "\"gutterwright-layout\""},
    {"NoFormat",            "/format",                             ""},
    {"LaterVersion",        "/version",                            "2"},
    {"NoVersion",           "/version",                            ""},
    {"UnknownUnit",         "/unit",                               "\"cm\""},
    {"NoUnit",              "/unit",                               ""},
    {"NoParts",             "/parts",                              ""},
    {"PartsNotAList",       "/parts",                              "{}"},
    {"UnknownMember",       "/maker",                              "\"x\""},
    {"PartIsAText",         "/parts/0",                            "\"row\""},
    {"UnknownPartMember",   "/parts/0/weight",                     "3"},
    {"IdWithBlank",         "/parts/0/id",                         "\"row one\""},
    {"IdEmpty",             "/parts/0/id",                         "\"\""},
    {"IdOf41",              "/parts/0/id",                         "\"a2345678901234567890123456789012345678901\""},
    {"IdIsANumber",         "/parts/0/id",                         "7"},
    {"NoId",                "/parts/0/id",                         ""},
    {"NoName",              "/parts/0/name",                       ""},
    {"NoFamily",            "/parts/0/family",                     ""},
    {"NoteIsNull",          "/parts/0/note",                       "null"},
    {"NoBody",              "/parts/0/body",                       ""},
    {"BodyAsList",          "/parts/0/body",                       "[3, 2, 1]"},
    {"NoDepth",             "/parts/0/body/depth",                 ""},
    {"ZeroHeight",          "/parts/0/body/height",                "0"},
    {"NegativeLength",      "/parts/0/body/length",                "-3"},
    {"LengthAsText",        "/parts/0/body/length",                "\"3\""},
    {"InsulatedAsNumber",   "/parts/0/insulated",                  "1"},
    {"NoPorts",             "/parts/0/ports",                      "[]"},
    {"PortsLeftOut",        "/parts/0/ports",                      ""},
    {"NoMouth",             "/parts/0/ports/0/mouth",              ""},
    {"MouthWithoutZ",       "/parts/0/ports/0/mouth/z",            ""},
    {"MouthWithMore",       "/parts/0/ports/0/mouth/w",            "1"},
    {"SlantingBore",        "/parts/0/ports/0/direction",          "\"+x+y\""},
    {"DirectionAsPoint",    "/parts/0/ports/0/direction",          "{\"x\": 0, \"y\": 1, \"z\": 0}"},
    {"UnknownOpening",      "/parts/0/ports/0/opening",            "\"far\""},
    {"NoBoreDepth",         "/parts/0/ports/0/boreDepth",          ""},
    {"BoreOfNoWidth",       "/parts/0/ports/0/boreDiameter",       "0"},
    {"AcceptsOneRow",       "/parts/0/ports/0/accepts",            "{}"},
    {"NoMetals",            "/parts/0/ports/0/accepts/0/metals",   "[]"},
    {"MetalNotInAList",     "/parts/0/ports/0/accepts/0/metals",   "\"copper\""},
    {"UnknownMetal",        "/parts/0/ports/0/accepts/0/metals/0", "\"silver\""},
    {"NoStrandings",        "/parts/0/ports/0/accepts/0/strandings",   "[]"},
    {"UnknownStranding",    "/parts/0/ports/0/accepts/0/strandings/0", "\"Z\""},
    {"SizeNoTableHas",      "/parts/0/ports/0/accepts/0/smallest", "\"5\""},
    {"SizeAsNumber",        "/parts/0/ports/0/accepts/0/largest",  "500"},
    {"NoSmallest",          "/parts/0/ports/0/accepts/0/smallest", ""},
    {"NoConductors",        "/parts/0/ports/0/accepts/0/conductors", "0"},
    {"HalfAConductor",      "/parts/0/ports/0/accepts/0/conductors", "1.5"},
    {"NegativeStrip",       "/parts/0/ports/0/stripLength",        "-1"},
    {"StripIsNull",         "/parts/0/ports/0/stripLength",        "null"},
    {"WindowAsText",        "/parts/0/ports/0/window",             "\"yes\""},
    {"ScrewsLeftOut",       "/parts/0/screws",                     ""},
    {"ScrewWithoutPort",    "/parts/0/screws/0/port",              ""},
    {"ScrewWithoutHead",    "/parts/0/screws/0/head",              ""},
    {"ScrewLooksNowhere",   "/parts/0/screws/0/outward",           "\"out\""},
    {"DriveAsNumber",       "/parts/0/screws/0/drive",             "0.25"},
    {"TorqueAsNumber",      "/parts/0/screws/0/torque",            "250"},
    {"TorqueZero",          "/parts/0/screws/0/torque/0/poundInches", "0"},
    {"TorqueOutOfSense",    "/parts/0/screws/0/torque/0/poundInches", "2001"},
    {"TorqueInOtherUnit",   "/parts/0/screws/0/torque/0/newtonMetres", "28"},
    {"HoleWithoutCentre",   "/parts/0/mountingHoles/0/centre",     ""},
    {"HoleOfNoWidth",       "/parts/0/mountingHoles/0/diameter",   "0"},
    {"UnknownKind",         "/parts/0/listing/kind",               "\"terminal\""},
    {"UnknownLocation",     "/parts/0/listing/locations/0",        "\"muddy\""},
    {"CelsiusTooLow",       "/parts/0/listing/celsius",            "20"},
    {"NegativeVolts",       "/parts/0/listing/volts",              "-600"},
    {"LineSideAsText",      "/parts/0/listing/lineSideOfService",  "\"yes\""},
    {"EnclosureIncomplete", "/parts/0/leastEnclosure/height",      ""},
    {"NegativePrice",       "/parts/0/priceDollars",               "-1"},
    {"WeightOutOfSense",    "/parts/0/weightPounds",               "1001"},
    {"ShippedAsNumber",     "/parts/0/shipped",                    "1"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Rows, PartsOfBadShape, testing::ValuesIn(kBadShapes), badShapeName);

}  // namespace
}  // namespace gw::parts
