#include "base/json_writer.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <bit>
#include <clocale>
#include <cmath>
#include <limits>
#include <random>

#include "base/json_reader.h"

namespace gw {
namespace {

std::string written(double value) {
    JsonTree tree = JsonTree::object();
    tree.set("v", value);
    return tree.text();
}

double readBack(const std::string& text) {
    const auto document = JsonDocument::parse(text, "yard.json");
    constexpr double kMost = std::numeric_limits<double>::max();
    return document.value().root().object().required("v").number(-kMost, kMost);
}

TEST(JsonWriter, MembersKeepTheirOrderAtTwoBlanksALevel) {
    JsonTree phases = JsonTree::array();
    phases.push("B").push("A");
    JsonTree at = JsonTree::object();
    at.set("y", 2.5).set("x", 1.0);
    JsonTree tree = JsonTree::object();
    tree.set("title", "Yard").set("phases", std::move(phases)).set("at", std::move(at));
    tree.set("mounted", true).set("sets", 3).set("none", JsonTree::array());
    EXPECT_EQ(tree.text(), R"({
  "title": "Yard",
  "phases": [
    "B",
    "A"
  ],
  "at": {
    "y": 2.5,
    "x": 1
  },
  "mounted": true,
  "sets": 3,
  "none": []
}
)");
}

TEST(JsonWriter, ACopyIsItsOwn) {
    JsonTree first = JsonTree::object();
    first.set("a", 1);
    JsonTree second = first;
    second.set("b", 2);
    EXPECT_EQ(first.text(), "{\n  \"a\": 1\n}\n");
    EXPECT_EQ(second.text(), "{\n  \"a\": 1,\n  \"b\": 2\n}\n");
    first = second;
    EXPECT_EQ(first.text(), second.text());
}

TEST(JsonWriter, EmptyRootIsWhole) {
    EXPECT_EQ(JsonTree::object().text(), "{}\n");
    EXPECT_EQ(JsonTree::array().text(), "[]\n");
}

TEST(JsonWriter, WholeNumbersHaveNoPointAndZeroNoSign) {
    EXPECT_EQ(written(3.0), "{\n  \"v\": 3\n}\n");
    EXPECT_EQ(written(-0.0), "{\n  \"v\": 0\n}\n");
    EXPECT_EQ(written(0.1), "{\n  \"v\": 0.1\n}\n");
    EXPECT_EQ(written(2.0 / 3.0), "{\n  \"v\": 0.6666666666666666\n}\n");  // 16 digits suffice
}

TEST(JsonWriter, NumbersReadBackToTheSameBits) {
    constexpr unsigned kSeed = 20240611;
    std::mt19937_64 bits(kSeed);
    for (int i = 0; i < 20'000; ++i) {
        const auto value = std::bit_cast<double>(bits());
        if (std::isfinite(value)) {
            EXPECT_EQ(readBack(written(value)), value) << "seed " << kSeed << " step " << i;
        }
    }
    for (const double value : {9007199254740992.0,
                               9007199254740994.0,
                               -9007199254740992.0,
                               1e300,
                               5e-324,
                               1.0 / 64,
                               100.0 / 25.4}) {
        EXPECT_EQ(readBack(written(value)), value);
    }
}

TEST(JsonWriter, DoesNotDependOnTheLocale) {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    const char* const comma = std::setlocale(LC_ALL, "de_DE.UTF-8");
    const std::string text = written(1234.5);
    std::setlocale(LC_ALL, before.c_str());
    if (comma == nullptr) {
        GTEST_SKIP() << "no locale with a decimal comma here";
    }
    EXPECT_EQ(text, "{\n  \"v\": 1234.5\n}\n");
}

TEST(JsonWriter, TextIsEscapedAndReadsBack) {
    const std::string text = "a \"quoted\" \\ and ½ — é";
    JsonTree tree = JsonTree::object();
    tree.set("a \"b\"", text);
    const auto document = JsonDocument::parse(tree.text(), "yard.json");
    ASSERT_TRUE(document.has_value()) << toLine(document.error());
    EXPECT_EQ(document->root().object().required("a \"b\"").text(), text);
}

TEST(JsonWriter, OnlyAContainerOfNothingIsEmpty) {
    EXPECT_TRUE(JsonTree::object().empty());
    EXPECT_TRUE(JsonTree::array().empty());
    EXPECT_FALSE(JsonTree::array().push(0).empty());
}

TEST(JsonWriterDeathTest, NotANumberIsABug) {
    for (const double bad : {std::nan(""), HUGE_VAL, -HUGE_VAL}) {
        EXPECT_EXIT(written(bad), testing::ExitedWithCode(3), "a fault of the program");
    }
}

TEST(JsonWriterDeathTest, AMemberSetTwiceIsABug) {
    JsonTree tree = JsonTree::object();
    tree.set("a", 1);
    EXPECT_EXIT(tree.set("a", 2), testing::ExitedWithCode(3), "a fault of the program");
}

TEST(JsonWriterDeathTest, MembersBelongInObjectsAndItemsInArrays) {
    EXPECT_EXIT(
        JsonTree::array().set("a", 1), testing::ExitedWithCode(3), "a fault of the program");
    EXPECT_EXIT(JsonTree::object().push(1), testing::ExitedWithCode(3), "a fault of the program");
}

}  // namespace
}  // namespace gw
