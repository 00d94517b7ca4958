#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "base/read_file.h"
#include "checks/finding.h"
#include "files/layout_file.h"
#include "geometry/built_layout.h"
#include "support/shipped_shelf.h"

/// Every folder of samples/ states what the checks say of it; what they say is what it states, both
/// ways. A new sample is a new folder.
namespace gw {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> sampleNames() {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(fs::path(GW_SOURCE_DIR) / "samples")) {
        if (entry.is_directory()) {
            names.push_back(entry.path().filename().string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

std::string pathOf(const std::string& sample, const std::string& file) {
    return (fs::path(GW_SOURCE_DIR) / "samples" / sample / file).string();
}

std::string lineOf(const checks::Finding& finding) {
    std::string line = std::string(checks::verdictText(finding.verdict)) + ": " +
                       std::string(checks::checkName(finding.check));
    for (const auto& subject : finding.subjects) {
        line += " | " + checks::subjectText(subject);
    }
    return line;
}

std::vector<std::string> expectedLines(const nlohmann::json& expected) {
    std::vector<std::string> lines;
    for (const auto& finding : expected.at("findings")) {
        std::string line = finding.at("verdict").get<std::string>() + ": " +
                           finding.at("check").get<std::string>();
        for (const auto& subject : finding.at("subjects")) {
            line += " | " + subject.get<std::string>();
        }
        lines.push_back(line);
    }
    std::sort(lines.begin(), lines.end());
    return lines;
}

class Samples : public ::testing::TestWithParam<std::string> {};

TEST_P(Samples, FindingsAreThoseStated) {
    const auto shelf = test::shippedShelf();
    const auto file = pathOf(GetParam(), "layout.json");
    const auto bytes = readFile(file);
    ASSERT_TRUE(bytes) << toLine(bytes.error());
    const auto layout = files::readLayout(*bytes, file, shelf);
    ASSERT_TRUE(layout) << toLine(layout.error());
    EXPECT_EQ(files::writeLayout(*layout), *bytes) << "reading and writing changes the file";

    const auto findings = checks::checkAll(geometry::build(*layout, shelf));
    std::vector<std::string> emitted;
    std::set<std::string> answered;
    for (const auto& finding : findings) {
        answered.insert(std::string(checks::checkName(finding.check)));
        if (finding.verdict != checks::Verdict::meets) {
            emitted.push_back(lineOf(finding));
        }
    }
    std::sort(emitted.begin(), emitted.end());

    std::ifstream in(pathOf(GetParam(), "expected.json"));
    ASSERT_TRUE(in) << "samples/" << GetParam() << " states no expected findings";
    const auto expected = nlohmann::json::parse(in);
    EXPECT_EQ(emitted, expectedLines(expected));
    for (const auto& check : expected.at("answered")) {
        EXPECT_TRUE(answered.count(check.get<std::string>())) << check << " gives no finding";
    }
}

std::string caseName(const ::testing::TestParamInfo<std::string>& info) {
    std::string name = info.param;
    std::replace_if(
        name.begin(), name.end(), [](char c) { return c == '-' || c == '.'; }, '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Folder, Samples, ::testing::ValuesIn(sampleNames()), caseName);

nlohmann::json expectedOf(const std::string& sample) {
    std::ifstream in(pathOf(sample, "expected.json"));
    return nlohmann::json::parse(in);
}

bool isBroken(const std::string& sample) {
    return sample.rfind("broken-", 0) == 0;
}

/// Between them: no sample has everything a check can be about.
TEST(SampleFolders, GoodOnesAnswerEveryCheckWithoutBreachOrDoubt) {
    std::set<std::string> answered;
    for (const auto& name : sampleNames()) {
        if (isBroken(name)) {
            continue;
        }
        SCOPED_TRACE(name);
        const auto expected = expectedOf(name);
        for (const auto& check : expected.at("answered")) {
            answered.insert(check.get<std::string>());
        }
        for (const auto& finding : expected.at("findings")) {
            EXPECT_NE(finding.at("verdict"), "breach");
            EXPECT_NE(finding.at("verdict"), "cannot tell");
        }
    }
    EXPECT_EQ(answered.size(), checks::allChecks().size());
}

/// What they miss is a caution or cannot be told, or they are for information.
const std::set<checks::Check> kNeverBreached = {checks::Check::torqueKnown,
                                                checks::Check::tapLabels,
                                                checks::Check::landingOrder,
                                                checks::Check::coverPush,
                                                checks::Check::faultForces};

TEST(SampleFolders, EveryCheckHasABrokenOneThatShowsItsBreachAndNoOther) {
    std::set<std::string> shown;
    for (const auto& name : sampleNames()) {
        if (!isBroken(name)) {
            continue;
        }
        int breaches = 0;
        const auto expected = expectedOf(name);
        for (const auto& finding : expected.at("findings")) {
            EXPECT_NE(finding.at("verdict"), "cannot tell") << name;
            if (finding.at("verdict") == "breach") {
                ++breaches;
                EXPECT_EQ("broken-" + finding.at("check").get<std::string>(), name);
            }
        }
        EXPECT_EQ(breaches, 1) << name;
        shown.insert(name.substr(std::string("broken-").size()));
    }
    for (const auto check : checks::allChecks()) {
        EXPECT_NE(shown.count(std::string(checks::checkName(check))) > 0,
                  kNeverBreached.count(check) > 0)
            << checks::checkName(check);
    }
}

layout::Layout sampleLayout(const std::string& name, const parts::Shelf& shelf) {
    const auto file = pathOf(name, "layout.json");
    return *files::readLayout(*readFile(file), file, shelf);
}

/// Every screw faces the cover, every port along the gutter.
bool standsAcross(const parts::Part& part, const parts::Attitude& attitude) {
    const bool reached = std::all_of(part.screws.begin(), part.screws.end(), [&](const auto& one) {
        return attitude.turn(one.outward).z > 0.5;
    });
    return reached && std::all_of(part.ports.begin(), part.ports.end(), [&](const auto& port) {
               return std::abs(attitude.turn(port.direction).x) > 0.5;
           });
}

TEST(SampleFolders, InTheShallowOneOnlyTwoTiersOfSixPortsStandAcross) {
    const auto shelf = test::shippedShelf();
    const auto layout = sampleLayout("shallow-loft", shelf);
    const auto& inside = layout.gutter.inside;
    std::set<std::string> families;
    for (const auto& [id, part] : shelf) {
        for (const auto& attitude : parts::Attitude::all()) {
            const auto extents = attitude.turnedExtents(part.body);
            if (part.ports.size() >= 6 && standsAcross(part, attitude) && extents.y <= inside.y &&
                extents.z <= inside.z) {
                families.insert(part.family);
            }
        }
    }
    EXPECT_EQ(families, std::set<std::string>{"two tier"});
}

TEST(SampleFolders, InTheBoatHallTheFeederIsNowhereCut) {
    const auto shelf = test::shippedShelf();
    const auto layout = sampleLayout("boat-hall", shelf);
    for (const auto& conductor : layout.conductors) {
        if (conductor.circuit == layout::CircuitId("feeder")) {
            EXPECT_TRUE(std::holds_alternative<layout::AtEntry>(conductor.from));
            EXPECT_TRUE(std::holds_alternative<layout::AtEntry>(conductor.to));
            EXPECT_EQ(conductor.passes.size(), 1U);
        }
    }
}

TEST(SampleFolders, OnTheWetWallEveryBlockIsSealed) {
    const auto shelf = test::shippedShelf();
    const auto layout = sampleLayout("slipway-pumps", shelf);
    EXPECT_EQ(layout.gutter.orientation, layout::Orientation::vertical);
    EXPECT_EQ(layout.surroundings.location, standards::Location::wet);
    for (const auto& block : layout.blocks) {
        const auto& listed = shelf.at(block.part).listing.locations;
        EXPECT_NE(std::find(listed.begin(), listed.end(), standards::Location::wet), listed.end());
    }
}

}  // namespace
}  // namespace gw
