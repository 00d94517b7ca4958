#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <filesystem>

#include "base/read_file.h"
#include "core/checks/gutter_builder.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"

/// Every verdict shows its working: one sentence, short enough for a row of the sheet's table, also
/// where all is well. The standard is told in the citation, not in the sentence.
namespace gw::checks {
namespace {

/// Characters, not bytes: continuation bytes of UTF-8 take no column.
std::size_t letters(const std::string& text) {
    std::size_t count = 0;
    for (const char c : text) {
        count += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1U : 0U;
    }
    return count;
}

/// Five lines of the sheet's column, about 45 letters each.
constexpr std::size_t kMost = 225;

void expectWorking(const std::vector<Finding>& findings) {
    for (const Finding& finding : findings) {
        ASSERT_FALSE(finding.working.empty()) << checkName(finding.check);
        EXPECT_EQ(finding.working.back(), '.') << finding.working;
        EXPECT_FALSE(std::islower(static_cast<unsigned char>(finding.working.front())))
            << finding.working;
        EXPECT_LE(letters(finding.working), kMost) << finding.working;
        EXPECT_THAT(finding.working, testing::Not(testing::HasSubstr("NFPA")));
        EXPECT_THAT(finding.working, testing::Not(testing::HasSubstr("ICEA")));
        EXPECT_EQ(finding.verdict == Verdict::cannotTell && finding.missing.empty(), false)
            << "says not what is missing: " << finding.working;
        EXPECT_EQ(finding.measured.has_value() && finding.limit.has_value(),
                  finding.margin.has_value())
            << finding.working;
    }
}

class WorkingInASample : public testing::TestWithParam<std::string> {};

TEST_P(WorkingInASample, IsOneShortSentence) {
    const auto shelf = test::shippedShelf();
    const auto file =
        (std::filesystem::path(GW_SOURCE_DIR) / "samples" / GetParam() / "layout.json").string();
    const auto bytes = readFile(file);
    ASSERT_TRUE(bytes) << toLine(bytes.error());
    const auto layout = files::readLayout(*bytes, file, shelf);
    ASSERT_TRUE(layout) << toLine(layout.error());
    expectWorking(checkAll(geometry::build(*layout, shelf)));
}

std::vector<std::string> sampleNames() {
    std::vector<std::string> names;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(GW_SOURCE_DIR) / "samples")) {
        if (entry.is_directory()) {
            names.push_back(entry.path().filename().string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

INSTANTIATE_TEST_SUITE_P(Samples,
                         WorkingInASample,
                         testing::ValuesIn(sampleNames()),
                         [](const auto& row) { return "Sample" + std::to_string(row.index); });

TEST(Working, IsOneShortSentenceWhereNothingIsStated) {
    auto builder = check_test::straightSplice();
    builder.layout().surroundings = {};
    builder.layout().gutter.enclosureType.reset();
    for (auto& conductor : builder.layout().conductors) {
        conductor.insulation.reset();
        conductor.metal.reset();
        conductor.stranding.reset();
    }
    auto& part = builder.part("splice");
    part.listing = {};
    for (auto& port : part.ports) {
        port.accepts.clear();
        port.stripLength.reset();
        port.stripTolerance.reset();
    }
    expectWorking(checkAll(builder.build()));
}

TEST(Working, GivesTheNumbersWhereAllIsWell) {
    int numbers = 0;
    for (const Finding& finding : checkAll(check_test::straightSplice().build())) {
        if (finding.verdict == Verdict::meets && finding.measured) {
            const bool number = finding.working.find_first_of("0123456789") != std::string::npos;
            EXPECT_TRUE(number) << finding.working;
            ++numbers;
        }
    }
    EXPECT_GE(numbers, 8) << "two fills, two seats, two ports, four clearances and the joints";
}

}  // namespace
}  // namespace gw::checks
