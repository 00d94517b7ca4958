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

TEST(SampleFolders, MainOneAnswersEveryCheckWithoutBreachOrDoubt) {
    std::ifstream in(pathOf("five-tenants", "expected.json"));
    ASSERT_TRUE(in);
    const auto expected = nlohmann::json::parse(in);
    EXPECT_EQ(expected.at("answered").size(), checks::allChecks().size());
    for (const auto& finding : expected.at("findings")) {
        EXPECT_NE(finding.at("verdict"), "breach");
        EXPECT_NE(finding.at("verdict"), "cannot tell");
    }
}

TEST(SampleFolders, ABrokenOneShowsTheBreachOfItsNameAndNoOther) {
    int broken = 0;
    for (const auto& name : sampleNames()) {
        if (name.rfind("broken-", 0) != 0) {
            continue;
        }
        ++broken;
        std::ifstream in(pathOf(name, "expected.json"));
        ASSERT_TRUE(in) << name;
        int breaches = 0;
        const auto expected = nlohmann::json::parse(in);
        for (const auto& finding : expected.at("findings")) {
            if (finding.at("verdict") == "breach") {
                ++breaches;
                EXPECT_EQ("broken-" + finding.at("check").get<std::string>(), name);
            }
        }
        EXPECT_EQ(breaches, 1) << name;
    }
    EXPECT_GE(broken, 1);
}

}  // namespace
}  // namespace gw
