#include "standards/trade_size.h"

#include <gtest/gtest.h>

#include <set>

#include "reference/tsv.h"

namespace gw::standards {
namespace {

TEST(TradeSize, ReadsItsThreeSpellings) {
    for (const char* text : {"2-1/2", "2 1/2", "2.5"}) {
        const auto size = TradeSize::parse(text);
        ASSERT_TRUE(size.has_value()) << text;
        EXPECT_EQ(size->text(), "2-1/2");
        EXPECT_EQ(size->nominal(), 2.5);
    }
    EXPECT_EQ(TradeSize::parse("1/2"), TradeSize::parse("0.5"));
}

TEST(TradeSize, RefusesTheRest) {
    for (const char* text :
         {"", "0", "7", "1-1/8", "2-2/4", "2.50", " 2", "2\"", "53", "2 in", "two", "-2"}) {
        EXPECT_EQ(TradeSize::parse(text), std::nullopt) << text;
    }
}

TEST(TradeSize, AreThoseOfTable4InOrder) {
    std::set<std::string> printed;
    for (const auto& row : test::readTsv("raceway_dimensions").rows) {
        printed.insert(row.at("trade_size"));
    }
    const auto all = TradeSize::all();
    EXPECT_EQ(all.size(), printed.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        EXPECT_EQ(printed.count(std::string(all[i].text())), 1U) << all[i].text();
        EXPECT_EQ(TradeSize::of(all[i].text()), all[i]);
        EXPECT_EQ(all[i].rank(), static_cast<int>(i));
        if (i > 0) {
            EXPECT_LT(all[i - 1], all[i]);
            EXPECT_LT(all[i - 1].nominal(), all[i].nominal());
        }
    }
}

}  // namespace
}  // namespace gw::standards
