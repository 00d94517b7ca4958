#include "drawing/table.h"

#include <gtest/gtest.h>

#include <map>

#include "core/drawing/fixed_metrics.h"

namespace gw::drawing {
namespace {

constexpr TextSizes kSizes{2.0, 3.0, 4.0, 5.0};  // a character of body text is 1 mm wide

std::vector<Text> textsOf(const Drawing& drawing) {
    std::vector<Text> texts;
    for (const auto& layer : drawing.layers) {
        for (const auto& element : layer.elements) {
            if (const auto* text = std::get_if<Text>(&element)) {
                texts.push_back(*text);
            }
        }
    }
    return texts;
}

class TableSetting : public ::testing::Test {
protected:
    /// Sets a table into one region 1000 mm high; the first page.
    std::vector<Text> set(const Table& table, double width) {
        return setIn(table, {{10, 10, width, 1000}}).front();
    }
    std::vector<std::vector<Text>> setIn(const Table& table, const std::vector<Rect>& regions) {
        std::vector<Sketch> pages;
        pages.emplace_back(metrics_);
        Flow flow(pages, regions, {{10, 10, 100, 1000}});
        setTable(flow, table, kSizes);
        std::vector<std::vector<Text>> texts;
        for (auto& page : pages) {
            texts.push_back(textsOf(std::move(page).finish({0, 0, 2000, 2000}, "")));
        }
        return texts;
    }
    test::FixedMetrics metrics_;
};

Table twoColumns() {
    return {"",
            "",
            {{"Tag"}, {"Words", AnchorX::left, 1.0}},
            {{{"S1-A", "one two three four five six"}}, {{"S1-B", "seven"}}},
            true,
            "None."};
}

std::map<std::string, Text> byWords(const std::vector<Text>& texts) {
    std::map<std::string, Text> map;
    for (const auto& text : texts) {
        map.emplace(text.text, text);
    }
    return map;
}

/// 100 mm: "S1-A" needs 4 + 1.8 mm, the words 27 + 1.8: all on one line.
TEST_F(TableSetting, CellsAreNotBrokenWhereThereIsRoom) {
    const auto texts = byWords(set(twoColumns(), 100));
    ASSERT_TRUE(texts.count("one two three four five six"));
    EXPECT_EQ(texts.at("S1-A").at.y, texts.at("one two three four five six").at.y);
    EXPECT_GT(texts.at("S1-B").at.y, texts.at("S1-A").at.y);
}

/// 20 mm leave 20 - 5.8 - 1.8 = 12.4 mm: 12 characters a line.
TEST_F(TableSetting, OnlyTheColumnWithAShareIsBroken) {
    const auto texts = byWords(set(twoColumns(), 20));
    EXPECT_TRUE(texts.count("S1-A"));
    EXPECT_TRUE(texts.count("one two"));
    EXPECT_TRUE(texts.count("three four"));
    EXPECT_TRUE(texts.count("five six"));
}

TEST_F(TableSetting, WithoutRowsASentenceStandsAtTheLeft) {
    auto table = twoColumns();
    table.rows.clear();
    const auto texts = set(table, 100);
    ASSERT_EQ(texts.size(), 1U) << "no header over nothing";
    EXPECT_EQ(texts[0].text, "None.");
    EXPECT_EQ(texts[0].anchorX, AnchorX::left);
}

TEST_F(TableSetting, TheHeaderIsRepeatedWhereTheTableRunsOn) {
    auto table = twoColumns();
    table.title = "Things";
    for (int i = 0; i < 60; ++i) {
        table.rows.push_back({{"T" + std::to_string(i), "x"}});
    }
    const auto pages = setIn(table, {{10, 10, 100, 80}});
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_TRUE(byWords(pages[0]).count("Things"));
    EXPECT_TRUE(byWords(pages[1]).count("Things (continued)"));
    EXPECT_TRUE(byWords(pages[1]).count("Tag"));
    EXPECT_TRUE(byWords(pages[1]).count("T59"));
}

/// A subtitle is never cut: what does not fit beside the title stands below it.
TEST_F(TableSetting, ALongSubtitleGoesBelowTheTitleInFull) {
    auto table = twoColumns();
    table.title = "Things";
    table.subtitle = "alpha beta gamma delta epsilon zeta eta";
    std::string all;
    for (const auto& text : set(table, 30)) {
        all += text.text + " ";
    }
    for (const char* word : {"alpha", "epsilon", "zeta", "eta"}) {
        EXPECT_NE(all.find(word), std::string::npos) << word;
    }
    EXPECT_GT(tableHeight(table, 30, kSizes, metrics_), tableHeight(table, 200, kSizes, metrics_));
}

TEST(Table, ColumnsWithNothingInThemAreLeftOut) {
    const Table table{"", "", {{"A"}, {"B"}, {"C"}}, {{{"1", "", "3"}}, {{"", "", "6"}}}, true, ""};
    const auto kept = withoutEmptyColumns(table);
    ASSERT_EQ(kept.columns.size(), 2U);
    EXPECT_EQ(kept.columns[1].title, "C");
    EXPECT_EQ(kept.rows[1].cells, (std::vector<std::string>{"", "6"}));
}

}  // namespace
}  // namespace gw::drawing
