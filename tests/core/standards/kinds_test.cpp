#include "standards/kinds.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace gw::standards {
namespace {

template <class Kind>
void expectReadsBack(std::span<const Kind> all,
                     std::string_view (*textOf)(Kind),
                     std::optional<Kind> (*fromText)(std::string_view)) {
    std::set<std::string_view> texts;
    for (const Kind kind : all) {
        const std::string_view text = textOf(kind);
        EXPECT_FALSE(text.empty());
        EXPECT_EQ(fromText(text), kind) << text;
        EXPECT_EQ(fromText(std::string(text) + " "), std::nullopt) << text;
        texts.insert(text);
    }
    EXPECT_EQ(texts.size(), all.size());
    EXPECT_EQ(fromText(""), std::nullopt);
}

TEST(Kinds, TextsReadBackExactlyAndAreAllDifferent) {
    expectReadsBack(allMetals(), metalText, metalFromText);
    expectReadsBack(allInsulations(), insulationText, insulationFromText);
    expectReadsBack(allStrandings(), strandingText, strandingFromText);
    expectReadsBack(allRaceways(), racewayText, racewayFromText);
    expectReadsBack(allArticles(), articleText, articleFromText);
    expectReadsBack(allLocations(), locationText, locationFromText);
}

TEST(Kinds, AllAreListed) {
    // As many as the enums have; the last of each is listed, so none was left out.
    EXPECT_EQ(allMetals().size(), static_cast<std::size_t>(Metal::copperCladAluminium) + 1);
    EXPECT_EQ(allInsulations().size(), static_cast<std::size_t>(Insulation::bare) + 1);
    EXPECT_EQ(allStrandings().size(), static_cast<std::size_t>(Stranding::classM) + 1);
    EXPECT_EQ(allRaceways().size(), static_cast<std::size_t>(RacewayType::fmc) + 1);
    EXPECT_EQ(allArticles().size(),
              static_cast<std::size_t>(GutterArticle::nonmetallicWireway) + 1);
    EXPECT_EQ(allLocations().size(), static_cast<std::size_t>(Location::buried) + 1);
}

// NFPA 70 110.14(A): conductors more finely stranded than class B and class C.
TEST(IsFine, IsEveryClassBeyondBAndC) {
    for (const Stranding coarse :
         {Stranding::solid, Stranding::classB, Stranding::classC, Stranding::compact}) {
        EXPECT_FALSE(isFine(coarse)) << strandingText(coarse);
    }
    for (const Stranding fine : {Stranding::classG,
                                 Stranding::classH,
                                 Stranding::classI,
                                 Stranding::classK,
                                 Stranding::classM}) {
        EXPECT_TRUE(isFine(fine)) << strandingText(fine);
    }
}

}  // namespace
}  // namespace gw::standards
