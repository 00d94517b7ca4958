#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reference/tsv.h"
#include "standards/sections.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using test::isBlank;
using test::number;
using test::readTsv;
using test::TsvRow;

constexpr Edition kEdition = Edition::nec2023;

TEST(RacewayDimensions, AreTheRowOfTable4OrNone) {
    std::map<std::string, TsvRow> printed;
    for (const TsvRow& row : readTsv("raceway_dimensions").rows) {
        printed[row.at("type") + " " + row.at("trade_size")] = row;
    }
    std::size_t found = 0;
    for (const RacewayType type : allRaceways()) {
        for (const TradeSize size : TradeSize::all()) {
            const std::string name =
                std::string(racewayText(type)) + " " + std::string(size.text());
            SCOPED_TRACE(name);
            const auto dimensions = racewayDimensions(type, size, kEdition);
            const auto row = printed.find(name);
            ASSERT_EQ(dimensions.has_value(), row != printed.end());
            if (!dimensions) {
                continue;
            }
            ++found;
            EXPECT_EQ(dimensions->value.insideDiameter.in(), number(row->second, "id_in"));
            EXPECT_EQ(dimensions->value.area.in2(), number(row->second, "area_in2"));
            EXPECT_EQ(dimensions->value.metricDesignator, number(row->second, "metric_designator"));
            // Was -1 in where no outside diameter is published.
            ASSERT_EQ(dimensions->value.outsideDiameter.has_value(),
                      !isBlank(row->second, "od_in"));
            if (dimensions->value.outsideDiameter) {
                EXPECT_EQ(dimensions->value.outsideDiameter->in(), number(row->second, "od_in"));
            }
            EXPECT_EQ(dimensions->source.section, "Chapter 9 Table 4");
        }
    }
    EXPECT_EQ(found, printed.size());
}

TEST(RacewayFillPercent, IsThatOfTable1) {
    // NFPA 70 Chapter 9 Table 1: one, two, more; note 4 for nipples.
    EXPECT_EQ(racewayFillPercent(1, false, kEdition)->value, 53.0);
    EXPECT_EQ(racewayFillPercent(2, false, kEdition)->value, 31.0);
    EXPECT_EQ(racewayFillPercent(3, false, kEdition)->value, 40.0);
    EXPECT_EQ(racewayFillPercent(40, false, kEdition)->value, 40.0);
    for (const int conductors : {1, 2, 3, 40}) {
        const auto nipple = racewayFillPercent(conductors, true, kEdition);
        EXPECT_EQ(nipple->value, 60.0);
        EXPECT_EQ(nipple->source.section, "Chapter 9 Table 1 note 4");
    }
    EXPECT_FALSE(racewayFillPercent(0, false, kEdition).has_value());
    EXPECT_FALSE(racewayFillPercent(-1, true, kEdition).has_value());
}

TEST(GutterFillPercent, IsTwentyAndSeventyFiveByTheArticlesSection) {
    for (const GutterArticle article : allArticles()) {
        for (const Edition edition : {Edition::nec2017, Edition::nec2023}) {
            const auto fill = gutterFillPercent(article, edition);
            const auto splices = gutterSpliceFillPercent(article, edition);
            EXPECT_EQ(fill->value, 20.0);
            EXPECT_EQ(splices->value, 75.0);
            EXPECT_EQ(fill->source, section(Rule::conductorFill, edition, article));
            EXPECT_EQ(splices->source, section(Rule::spliceFill, edition, article));
        }
    }
    EXPECT_EQ(gutterFillPercent(GutterArticle::metalWireway, kEdition)->source.section,
              "376.22(A)");
    EXPECT_EQ(gutterSpliceFillPercent(GutterArticle::auxiliaryGutter, kEdition)->source.section,
              "366.56(A)");
}

TEST(Knockout, IsTheRowOrNone) {
    std::map<std::string, TsvRow> printed;
    for (const TsvRow& row : readTsv("knockouts").rows) {
        printed[row.at("trade_size")] = row;
    }
    for (const TradeSize size : TradeSize::all()) {
        SCOPED_TRACE(std::string(size.text()));
        const auto found = knockout(size);
        const auto row = printed.find(std::string(size.text()));
        ASSERT_EQ(found.has_value(), row != printed.end());
        if (found) {
            EXPECT_EQ(found->value.nominal.in(), number(row->second, "ko_nominal_in"));
            EXPECT_EQ(found->value.least.in(), number(row->second, "ko_min_in"));
            EXPECT_EQ(found->value.greatest.in(), number(row->second, "ko_max_in"));
            EXPECT_EQ(found->value.locknut.in(), number(row->second, "locknut_od_in"));
        }
    }
}

TEST(Stock, IsThatOfTheTableInItsOrder) {
    std::vector<std::string> sections;
    std::vector<std::string> lengths;
    for (const TsvRow& row : readTsv("gutter_stock_sizes").rows) {
        if (row.at("item") == "cross section") {
            sections.push_back(row.at("value"));
        } else if (row.at("item") == "stock length") {
            lengths.push_back(row.at("value"));
        }
    }
    const auto heldSections = stockSections();
    ASSERT_EQ(heldSections.size(), sections.size());
    for (std::size_t i = 0; i < sections.size(); ++i) {
        EXPECT_EQ(units::formatDecimal(heldSections[i].value.width.in(), 2) + " x " +
                      units::formatDecimal(heldSections[i].value.depth.in(), 2),
                  sections[i]);
    }
    const auto heldLengths = stockLengths();
    ASSERT_EQ(heldLengths.size(), lengths.size());
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        EXPECT_EQ(units::formatDecimal(heldLengths[i].value.in(), 0), lengths[i]);
    }
}

}  // namespace
}  // namespace gw::standards
