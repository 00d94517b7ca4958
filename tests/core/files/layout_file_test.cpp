#include "files/layout_file.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "base/read_file.h"
#include "support/shipped_shelf.h"

namespace gw::files {
namespace {

using Json = nlohmann::ordered_json;

std::string bytesOf(const std::string& name) {
    const auto path =
        std::filesystem::path(GW_SOURCE_DIR) / "tests" / "data" / "layouts" / (name + ".json");
    const auto bytes = readFile(path.string());
    EXPECT_TRUE(bytes) << toLine(bytes.error());
    return bytes.value_or("");
}

layout::Layout layoutOf(const std::string& bytes) {
    auto layout = readLayout(bytes, "test.json", {});
    EXPECT_TRUE(layout) << toLine(layout.error());
    return layout.value_or(layout::Layout{});
}

// ---- round trips ----------------------------------------------------------------------------

class CanonicalFile : public testing::TestWithParam<const char*> {};

TEST_P(CanonicalFile, IsWrittenAsItWasRead) {
    const auto bytes = bytesOf(GetParam());
    EXPECT_EQ(writeLayout(layoutOf(bytes)), bytes);
}

INSTANTIATE_TEST_SUITE_P(Data, CanonicalFile, testing::Values("everything", "least"));

/// Read, written and read again: the same bytes, for every sample.
TEST(LayoutFile, SamplesAreWrittenTheSameEveryTime) {
    namespace fs = std::filesystem;
    const auto shelf = test::shippedShelf();
    int samples = 0;
    for (const auto& folder : fs::directory_iterator(fs::path(GW_SOURCE_DIR) / "samples")) {
        const auto path = (folder.path() / "layout.json").string();
        if (!fs::exists(path)) {
            continue;
        }
        ++samples;
        const auto layout = readLayout(readFile(path).value(), path, shelf);
        ASSERT_TRUE(layout) << toLine(layout.error());
        const auto once = writeLayout(*layout);
        const auto again = readLayout(once, path, shelf);
        ASSERT_TRUE(again) << toLine(again.error());
        EXPECT_EQ(writeLayout(*again), once) << path;
    }
    EXPECT_GE(samples, 4);
}

TEST(LayoutFile, FreelySpacedFileIsWrittenTheSameEveryTime) {
    const auto once = writeLayout(layoutOf(bytesOf("small")));
    EXPECT_EQ(writeLayout(layoutOf(once)), once);
    EXPECT_NE(once, bytesOf("small"));
}

TEST(LayoutFile, OrderOfMembersAndAByteOrderMarkDoNotMatter) {
    const auto ordered = layoutOf(bytesOf("small"));
    const auto sorted = nlohmann::json::parse(bytesOf("small")).dump();
    EXPECT_EQ(writeLayout(layoutOf("\xEF\xBB\xBF" + sorted)), writeLayout(ordered));
}

TEST(LayoutFile, NumbersKeepEveryBit) {
    auto layout = layoutOf(bytesOf("least"));
    // 0.1 + 0.2 is not 0.3; the others are the neighbours of 24 and a number with 17 digits.
    for (const double value : {0.1 + 0.2 + 1.0, std::nextafter(24.0, 0.0), 1.0 / 3.0 + 5.0}) {
        layout.gutter.inside.x = value;
        EXPECT_EQ(layoutOf(writeLayout(layout)).gutter.inside.x, value);
    }
}

TEST(LayoutFile, MinusZeroIsZero) {
    auto bytes = bytesOf("small");
    bytes.replace(bytes.find("\"z\": 0}"), 7, "\"z\": -0.0}");
    EXPECT_EQ(writeLayout(layoutOf(bytes)), writeLayout(layoutOf(bytesOf("small"))));
}

TEST(LayoutFile, BlocksMayBeOfPartsOnTheShelf) {
    const auto shelf = test::shippedShelf();
    ASSERT_FALSE(shelf.empty());
    auto layout = layoutOf(bytesOf("least"));
    layout::Block block;
    block.id = layout::BlockId("B1");
    block.part = shelf.begin()->first;
    layout.blocks.push_back(block);
    const auto bytes = writeLayout(layout);
    EXPECT_TRUE(readLayout(bytes, "test.json", shelf));
    const auto without = readLayout(bytes, "test.json", {});
    ASSERT_FALSE(without);
    EXPECT_EQ(without.error().code, ErrorCode::dangling);
    EXPECT_EQ(without.error().place, "/blocks/0/part");
}

// ---- millimetres ----------------------------------------------------------------------------

const std::set<std::string>& lengthMembers() {
    static const std::set<std::string> kNames = {"x",
                                                 "y",
                                                 "z",
                                                 "u",
                                                 "v",
                                                 "length",
                                                 "height",
                                                 "depth",
                                                 "sheet",
                                                 "supportSpacing",
                                                 "beyondEquipment",
                                                 "racewayLength",
                                                 "outsideDiameter",
                                                 "strip",
                                                 "inserted",
                                                 "radius",
                                                 "windowStart",
                                                 "windowLength",
                                                 "boreDepth",
                                                 "boreDiameter",
                                                 "stripLength",
                                                 "stripTolerance",
                                                 "diameter"};
    return kNames;
}

void scaleLengths(Json& node, double factor) {
    for (auto& member : node.items()) {
        auto& value = member.value();
        if (value.is_structured()) {
            scaleLengths(value, factor);
        } else if (value.is_number() && lengthMembers().count(member.key()) > 0) {
            value = value.get<double>() * factor;
        }
    }
}

void expectNear(const Json& a, const Json& b, const std::string& at) {
    ASSERT_EQ(a.size(), b.size()) << at;
    if (a.is_structured()) {
        for (const auto& member : a.items()) {
            const auto& other = a.is_object() ? b.at(member.key()) : b.at(std::stoul(member.key()));
            expectNear(member.value(), other, at + "/" + member.key());
        }
    } else if (a.is_number()) {
        EXPECT_NEAR(a.get<double>(), b.get<double>(), 1e-12) << at;
    } else {
        EXPECT_EQ(a, b) << at;
    }
}

/// 1 in = 25.4 mm exactly (the definition of the inch).
TEST(LayoutFile, MillimetresAreReadForEveryLengthAndNothingElse) {
    const auto inches = Json::parse(bytesOf("everything"));
    auto millimetres = inches;
    millimetres["unit"] = "mm";
    scaleLengths(millimetres, 25.4);
    expectNear(Json::parse(writeLayout(layoutOf(millimetres.dump()))), inches, "");
}

// ---- what is refused ------------------------------------------------------------------------

/// Pointers of all objects in a document.
void collectObjects(const Json& node, const Json::json_pointer& at, std::vector<std::string>& out) {
    if (node.is_object()) {
        out.push_back(at.to_string());
    }
    if (node.is_structured()) {
        for (const auto& member : node.items()) {
            const auto below =
                node.is_array() ? at / std::stoul(member.key()) : at / std::string(member.key());
            collectObjects(member.value(), below, out);
        }
    }
}

TEST(LayoutFile, UnknownMemberIsRefusedInEveryObject) {
    const auto whole = Json::parse(bytesOf("everything"));
    std::vector<std::string> objects;
    collectObjects(whole, Json::json_pointer(), objects);
    ASSERT_GT(objects.size(), 40U);
    for (const auto& object : objects) {
        auto changed = whole;
        changed[Json::json_pointer(object)]["surplus"] = 1;
        const auto layout = readLayout(changed.dump(), "test.json", {});
        ASSERT_FALSE(layout) << object;
        EXPECT_EQ(layout.error().code, ErrorCode::unknown) << toLine(layout.error());
        EXPECT_EQ(layout.error().place, object + "/surplus");
        EXPECT_EQ(layout.error().found, "\"surplus\"");
    }
}

TEST(LayoutFile, NewerVersionIsRefusedNamingTheOneThatIsRead) {
    auto bytes = bytesOf("least");
    bytes.replace(bytes.find("\"version\": 1"), 12, "\"version\": 2");
    const auto layout = readLayout(bytes, "test.json", {});
    ASSERT_FALSE(layout);
    EXPECT_EQ(layout.error().code, ErrorCode::unknown);
    EXPECT_EQ(layout.error().expected, "version 1");
    EXPECT_EQ(layout.error().found, "version 2");
}

/// Were the version looked at last, the first member of a later format would be blamed instead.
TEST(LayoutFile, NewerVersionIsBlamedBeforeWhatItMayHold) {
    const std::string bytes =
        R"({"format": "gutterwright-layout", "hologram": {}, "version": 3, "unit": "ell"})";
    const auto layout = readLayout(bytes, "test.json", {});
    ASSERT_FALSE(layout);
    EXPECT_EQ(layout.error().place, "/version");
}

TEST(LayoutFile, EveryCutIsRefused) {
    const auto bytes = bytesOf("small");
    const auto last = bytes.rfind('}');
    for (std::size_t length = 0; length <= last; ++length) {
        const auto layout = readLayout(bytes.substr(0, length), "test.json", {});
        ASSERT_FALSE(layout) << length;
        EXPECT_EQ(layout.error().code, ErrorCode::syntax) << length;
    }
}

}  // namespace
}  // namespace gw::files
