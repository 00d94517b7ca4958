#include "support/bad_layouts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <set>

#include "files/layout_file.h"

namespace gw::test {

void PrintTo(const BadLayout& row, std::ostream* out) {
    *out << row.name;
}

namespace {

using testing::HasSubstr;

std::string caseName(const testing::TestParamInfo<BadLayout>& row) {
    return row.param.name;
}

bool isPrintable(const std::string& line) {
    return std::none_of(line.begin(), line.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return byte < 0x20 || byte == 0x7F;
    });
}

class BadLayoutFile : public testing::TestWithParam<BadLayout> {};

TEST_P(BadLayoutFile, IsRefusedWithOneLineThatSaysWhereAndWhat) {
    const BadLayout& row = GetParam();
    const auto layout = files::readLayout(bytesOf(row), "yard.json", {});
    ASSERT_FALSE(layout);
    const Error& error = layout.error();
    const auto line = toLine(error);
    EXPECT_EQ(error.code, row.code) << line;
    EXPECT_EQ(error.place, row.place) << line;
    EXPECT_EQ(error.file, "yard.json");
    EXPECT_FALSE(error.sentence.empty());
    EXPECT_FALSE(error.expected.empty()) << line;
    EXPECT_FALSE(error.found.empty()) << line;
    EXPECT_THAT(line, HasSubstr(row.says));
    EXPECT_TRUE(isPrintable(line)) << line;
    EXPECT_LT(line.size(), 500U) << line;
}

INSTANTIATE_TEST_SUITE_P(Table, BadLayoutFile, testing::ValuesIn(badLayouts()), caseName);

TEST(BadLayouts, AreMadeFromOneThatIsRight) {
    const auto layout = files::readLayout(goodLayout(), "small.json", {});
    EXPECT_TRUE(layout) << toLine(layout.error());
}

TEST(BadLayouts, HaveNamesOfTheirOwn) {
    std::set<std::string> names;
    for (const auto& row : badLayouts()) {
        EXPECT_TRUE(names.insert(row.name).second) << row.name;
    }
    EXPECT_GE(names.size(), 60U);
}

}  // namespace
}  // namespace gw::test
