#include "checks/colour_text.h"

#include <gtest/gtest.h>

#include <ostream>

namespace gw::checks {

void PrintTo(const ColourText& colour, std::ostream* out) {
    *out << hueText(colour.base);
    if (colour.stripes) {
        *out << ", stripes " << hueText(colour.stripes->hue) << " x "
             << colour.stripes->count.value_or(0);
    }
    if (colour.marking) {
        *out << ", marking " << hueText(*colour.marking);
    }
}

namespace {

struct TextRow {
    const char* text;
    std::optional<ColourText> says;
};

void PrintTo(const TextRow& row, std::ostream* out) {
    *out << '"' << row.text << '"';
}

class ColourWords : public testing::TestWithParam<TextRow> {};

TEST_P(ColourWords, AreReadAsTheHeaderSays) {
    EXPECT_EQ(readColour(GetParam().text), GetParam().says);
}

ColourText striped(Hue base, Hue stripes, std::optional<int> count) {
    return {base, Stripes{stripes, count}, {}};
}
ColourText marked(Hue base, Hue marking) {
    return {base, {}, marking};
}

// Source: the vocabulary in colour_text.h.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Known, ColourWords, testing::Values(
    TextRow{"black",                              ColourText{Hue::black, {}, {}}},
    TextRow{"Light GREY",                         ColourText{Hue::gray, {}, {}}},
    TextRow{" violet ",                           ColourText{Hue::purple, {}, {}}},
    TextRow{"bare",                               ColourText{Hue::bare, {}, {}}},
    TextRow{"green/yellow",                       striped(Hue::green, Hue::yellow, {})},
    TextRow{"green-yellow",                       striped(Hue::green, Hue::yellow, {})},
    TextRow{"green with yellow stripe",           striped(Hue::green, Hue::yellow, 1)},
    TextRow{"green, yellow stripes",              striped(Hue::green, Hue::yellow, {})},
    TextRow{"black with three white stripes",     striped(Hue::black, Hue::white, 3)},
    TextRow{"black with 3 white stripes",         striped(Hue::black, Hue::white, 3)},
    TextRow{"black with one white stripe",        striped(Hue::black, Hue::white, 1)},
    TextRow{"black striped white",                striped(Hue::black, Hue::white, {})},
    TextRow{"black with white tape",              marked(Hue::black, Hue::white)},
    TextRow{"black taped white at both ends",     marked(Hue::black, Hue::white)},
    TextRow{"black, re-marked green",             marked(Hue::black, Hue::green)},
    TextRow{"white with red stripe and gray tape",
            ColourText{Hue::white, Stripes{Hue::red, 1}, Hue::gray}}));

INSTANTIATE_TEST_SUITE_P(NotUnderstood, ColourWords, testing::Values(
    TextRow{"",                                {}},
    TextRow{"with",                            {}},
    TextRow{"natural",                         {}},
    TextRow{"black or red",                    {}},
    TextRow{"white tape",                      {}},
    TextRow{"taped white",                     {}},
    TextRow{"three white stripes on black",    {}},
    TextRow{"black with tape",                 {}},
    TextRow{"black/red/blue",                  {}},
    TextRow{"black with white tape, red tape", {}},
    TextRow{"black with white and red tape",   {}}));
// clang-format on

TEST(Hues, HaveTheirWord) {
    EXPECT_EQ(hueText(Hue::gray), "gray");
    EXPECT_EQ(hueText(Hue::purple), "purple");
    EXPECT_EQ(hueText(Hue::bare), "bare");
}

}  // namespace
}  // namespace gw::checks
