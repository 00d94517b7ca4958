#include "base/id.h"

#include <gtest/gtest.h>

namespace gw {
namespace {

TEST(IsValidId, TakesLettersDigitsAndThreeMarks) {
    for (const char* text : {"a", "Z", "0", "block-1", "set_2.A", "9.9"}) {
        EXPECT_TRUE(isValidId(text)) << text;
    }
    EXPECT_TRUE(isValidId(std::string(40, 'a')));
}

TEST(IsValidId, RefusesTheRest) {
    for (const char* text : {"", "-a", "_a", ".a", "a b", "a/b", "a\n", "ä", "a\"", "a'"}) {
        EXPECT_FALSE(isValidId(text)) << text;
    }
    EXPECT_FALSE(isValidId(std::string(41, 'a')));
    EXPECT_FALSE(isValidId(std::string("a\0b", 3)));
}

TEST(Id, ComparesByText) {
    struct Tag {};
    using TestId = Id<Tag>;
    EXPECT_EQ(TestId("a"), TestId("a"));
    EXPECT_LT(TestId("a"), TestId("b"));
    EXPECT_LT(TestId("a10"), TestId("a2"));  // by bytes, not by number
    EXPECT_TRUE(TestId().empty());
    EXPECT_EQ(TestId("a").text(), "a");
}

}  // namespace
}  // namespace gw
