#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "base/read_file.h"
#include "core/support/json_schema.h"
#include "files/layout_file.h"
#include "support/bad_layouts.h"
#include "support/shipped_shelf.h"

/// The published schema and the reader say the same: which members there are, which must be there,
/// and which words a kind has. data/layouts/everything.json has every member at least once.
namespace gw::files {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;
using Pointer = Json::json_pointer;

Json parsed(const fs::path& path) {
    const auto bytes = readFile((fs::path(GW_SOURCE_DIR) / path).string());
    EXPECT_TRUE(bytes) << toLine(bytes.error());
    return Json::parse(bytes.value_or("null"));
}

Json dataFile(const std::string& name) {
    return parsed(fs::path("tests") / "data" / "layouts" / (name + ".json"));
}

const test::JsonSchema& schema() {
    static const test::JsonSchema kSchema("layout");
    return kSchema;
}

const Json& schemaText() {
    return schema().text();
}

bool schemaAccepts(const Json& document) {
    return schema().accepts(document);
}

Result<layout::Layout> read(const Json& document) {
    return readLayout(document.dump(), "test.json", {});
}

// ---- the schema by itself -------------------------------------------------------------------

/// The schema a node of the schema stands for.
const Json& resolved(const Json& node) {
    const auto reference = node.find("$ref");
    return reference == node.end()
               ? node
               : schemaText().at(Pointer(reference->get<std::string>().substr(1)));
}

/// Members of an object by name; those of all alternatives where there are alternatives.
std::map<std::string, Json> propertiesOf(const Json& node) {
    const Json& schema = resolved(node);
    std::map<std::string, Json> properties;
    for (const auto& alternative : schema.value("oneOf", Json::array())) {
        properties.merge(propertiesOf(alternative));
    }
    const Json own = schema.value("properties", Json::object());
    for (const auto& property : own.items()) {
        properties.emplace(property.key(), property.value());
    }
    return properties;
}

TEST(LayoutSchema, ClosesEveryObjectAndRequiresOnlyWhatItNames) {
    int objects = 0;
    const auto check = [&](const Json& schema, const std::string& name) {
        if (schema.value("type", "") != "object") {
            return;
        }
        ++objects;
        EXPECT_EQ(schema.value("additionalProperties", Json()), false) << name;
        for (const auto& required : schema.value("required", Json::array())) {
            EXPECT_TRUE(schema.at("properties").contains(required.get<std::string>()))
                << name << " " << required;
        }
    };
    check(schemaText(), "whole");
    for (const auto& definition : schemaText().at("definitions").items()) {
        check(definition.value(), definition.key());
    }
    EXPECT_GT(objects, 20);
}

TEST(LayoutSchema, DescribesTheMembersOfALayout) {
    for (const auto& property : propertiesOf(schemaText())) {
        EXPECT_TRUE(property.second.contains("description") ||
                    resolved(property.second).contains("description"))
            << property.first;
    }
}

// ---- members --------------------------------------------------------------------------------

/// Compares the members of all objects that one node of the schema describes with its own.
void expectSameMembers(const Json& node, const std::vector<Json>& values, const std::string& at) {
    const Json& schema = resolved(node);
    if (schema.contains("items")) {
        std::vector<Json> items;
        for (const auto& value : values) {
            items.insert(items.end(), value.begin(), value.end());
        }
        expectSameMembers(schema.at("items"), items, at + "/*");
        return;
    }
    const auto properties = propertiesOf(node);
    std::map<std::string, std::vector<Json>> members;
    for (const auto& value : values) {
        if (value.is_object()) {
            for (const auto& member : value.items()) {
                members[member.key()].push_back(member.value());
            }
        }
    }
    for (const auto& [name, below] : properties) {
        EXPECT_TRUE(members.count(name)) << "never written: " << at << "/" << name;
        expectSameMembers(below, members[name], at + "/" + name);
    }
    for (const auto& member : members) {
        EXPECT_TRUE(properties.count(member.first))
            << "not in the schema: " << at << "/" << member.first;
    }
}

/// What the writer writes of a layout with everything in it; that the reader knows no more is
/// LayoutFile.UnknownMemberIsRefusedInEveryObject and the round trip of that file.
TEST(LayoutSchema, NamesExactlyTheMembersThatAreWritten) {
    const auto layout = read(dataFile("everything"));
    ASSERT_TRUE(layout) << toLine(layout.error());
    expectSameMembers(schemaText(), {Json::parse(writeLayout(*layout))}, "");
}

/// Every way to change one place of a document.
void forEachPlace(const Json& node, const Pointer& at, const std::function<void(Pointer)>& visit) {
    if (!at.empty()) {
        visit(at);
    }
    if (!node.is_structured()) {
        return;
    }
    for (const auto& member : node.items()) {
        forEachPlace(member.value(),
                     node.is_array() ? at / std::stoul(member.key()) : at / member.key(),
                     visit);
    }
}

void removeAt(Json& document, const Pointer& place) {
    auto& parent = document[place.parent_pointer()];
    if (parent.is_array()) {
        parent.erase(std::stoul(place.back()));
    } else {
        parent.erase(place.back());
    }
}

/// Errors that are about the shape of a file and so are the schema's business too.
bool isStructural(const Error& error) {
    return error.code == ErrorCode::missing || error.code == ErrorCode::syntax ||
           error.code == ErrorCode::unknown;
}

TEST(LayoutSchema, RequiresWhatTheReaderRequires) {
    const auto whole = dataFile("everything");
    int refused = 0;
    forEachPlace(whole, Pointer(), [&](const Pointer& place) {
        auto changed = whole;
        removeAt(changed, place);
        const auto layout = read(changed);
        const bool shapeIsWrong = !layout && isStructural(layout.error());
        // A list that may not be shorter is out of range to the reader.
        const bool listIsShort = !layout && layout.error().code == ErrorCode::outOfRange;
        const bool accepted = schemaAccepts(changed);
        EXPECT_TRUE(accepted == !shapeIsWrong || listIsShort)
            << place << ": " << (layout ? "read" : toLine(layout.error()));
        refused += accepted ? 0 : 1;
    });
    EXPECT_GT(refused, 60);
}

TEST(LayoutSchema, RefusesNoFileThatIsRead) {
    const auto whole = dataFile("everything");
    const std::vector<Json> others = {nullptr,
                                      true,
                                      0,
                                      -1,
                                      1.5,
                                      1e300,
                                      "",
                                      "A",
                                      "in",
                                      "copper",
                                      Json::array(),
                                      Json::object(),
                                      {{"entry", "E1"}, {"slot", 9}}};
    int read_ = 0;
    int refused = 0;
    forEachPlace(whole, Pointer(), [&](const Pointer& place) {
        for (const auto& other : others) {
            auto changed = whole;
            changed[place] = other;
            const auto layout = read(changed);
            const bool accepted = schemaAccepts(changed);
            EXPECT_TRUE(accepted || !layout) << place << " = " << other << " is read";
            const bool wrongType = !layout && layout.error().sentence == "the wrong kind of value";
            EXPECT_FALSE(accepted && wrongType) << place << " = " << other << " is in the schema";
            read_ += layout ? 1 : 0;
            refused += accepted ? 0 : 1;
        }
    });
    EXPECT_GT(read_, 100);
    EXPECT_GT(refused, 1000);
}

TEST(LayoutSchema, AcceptsTheGoodOnes) {
    for (const auto* name : {"everything", "least", "small"}) {
        EXPECT_EQ(schema().complaint(dataFile(name)), "") << name;
    }
}

TEST(LayoutSchema, AcceptsEverySampleAndWhatIsWrittenOfIt) {
    int samples = 0;
    for (const auto& folder : fs::directory_iterator(fs::path(GW_SOURCE_DIR) / "samples")) {
        const auto path = folder.path() / "layout.json";
        if (!fs::exists(path)) {
            continue;
        }
        ++samples;
        EXPECT_EQ(schema().complaint(parsed(path)), "") << path;
        const auto layout = readLayout(readFile(path.string()).value(), "l", test::shippedShelf());
        ASSERT_TRUE(layout) << toLine(layout.error());
        EXPECT_EQ(schema().complaint(Json::parse(writeLayout(*layout))), "") << path;
    }
    EXPECT_GE(samples, 4);
}

/// What refers to something else in the layout, or is limited by it, only the reader can see. So it
/// is with limits on lengths: the schema has those of a file in mm, these files are in inches.
bool onlyTheReaderSees(const test::BadLayout& row) {
    static const std::set<std::string> kLimitedByOthers = {
        "EntryBeyondItsWall", "ConductorSetBeyondSets", "EndInsertedBeyondTheStop"};
    static const std::set<std::string> kFineInMillimetres = {"BlockCornerFarAway", "SpareFarAway"};
    return row.code == ErrorCode::dangling || row.code == ErrorCode::contradicts ||
           row.code == ErrorCode::duplicate || kLimitedByOthers.contains(row.name) ||
           kFineInMillimetres.contains(row.name);
}

TEST(LayoutSchema, RefusesEveryBadOneButThoseOnlyTheReaderCanSee) {
    int refused = 0;
    for (const auto& row : test::badLayouts()) {
        const auto bytes = test::bytesOf(row);
        const auto document = Json::parse(bytes, nullptr, false);
        const bool cut = bytes.find('\0') != std::string::npos;  // to this parser the end
        if (!document.is_discarded() && !cut && !onlyTheReaderSees(row)) {
            EXPECT_FALSE(schemaAccepts(document)) << row.name;
            ++refused;
        }
    }
    EXPECT_GT(refused, 80);
}

// ---- words ----------------------------------------------------------------------------------

template <class T, class Text>
std::vector<std::string> texts(std::span<const T> all, Text text) {
    std::vector<std::string> words;
    for (const T& value : all) {
        words.emplace_back(text(value));
    }
    return words;
}

struct Words {
    const char* place;  ///< of the enum in the schema
    std::vector<std::string> words;
};

std::vector<Words> wordsOfTheProgram() {
    using namespace layout;
    using namespace standards;
    return {
        {"/definitions/gutter/properties/article", texts(allArticles(), articleText)},
        {"/definitions/gutter/properties/material", texts(allMaterials(), materialText)},
        {"/definitions/gutter/properties/orientation", texts(allOrientations(), orientationText)},
        {"/definitions/location", texts(allLocations(), locationText)},
        {"/definitions/metal", texts(allMetals(), metalText)},
        {"/definitions/stranding", texts(allStrandings(), strandingText)},
        {"/definitions/conductor/properties/insulation", texts(allInsulations(), insulationText)},
        {"/definitions/phase", texts(allPhases(), phaseText)},
        {"/definitions/circuit/properties/role", texts(allRoles(), roleText)},
        {"/definitions/circuit/properties/tapRule", texts(allTapRules(), tapRuleText)},
        {"/definitions/entry/properties/wall", texts(allWalls(), wallText)},
        {"/definitions/entry/properties/raceway", texts(allRaceways(), racewayText)},
        {"/definitions/entry/properties/tradeSize",
         texts(TradeSize::all(), [](TradeSize size) { return size.text(); })},
        {"/definitions/size",
         texts(units::WireSize::all(), [](units::WireSize size) { return size.label(); })},
        {"/definitions/readings/properties/fillAtSplice",
         texts(allFillAtSpliceReadings(), fillAtSpliceText)},
        {"/definitions/readings/properties/terminalSpace",
         texts(allTerminalSpaceReadings(), terminalSpaceText)},
        {"/definitions/readings/properties/insideWeatherproof",
         texts(allInsideWeatherproofReadings(), insideWeatherproofText)},
    };
}

TEST(LayoutSchema, KnowsTheWordsOfEveryKindInOrder) {
    for (const auto& [place, words] : wordsOfTheProgram()) {
        EXPECT_EQ(schemaText().at(Pointer(place)).at("enum").get<std::vector<std::string>>(), words)
            << place;
    }
}

TEST(LayoutSchema, KnowsTheAttitudesAndNoOthers) {
    auto document = dataFile("small");
    for (const char* first : {"+x", "-x", "+y", "-y", "+z", "-z", "x", ""}) {
        for (const char* second : {"+x", "-x", "+y", "-y", "+z", "-z", "y", ""}) {
            const auto text = std::string(first) + second;
            document["blocks"][0]["attitude"] = text;
            EXPECT_EQ(schemaAccepts(document), parts::Attitude::fromText(text).has_value()) << text;
        }
    }
}

}  // namespace
}  // namespace gw::files
