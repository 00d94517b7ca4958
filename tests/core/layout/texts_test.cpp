#include <gtest/gtest.h>

#include <set>

#include "layout/layout.h"

namespace gw::layout {
namespace {

template <class T>
void expectTextsAreReadBack(std::span<const T> all,
                            std::string_view (*textOf)(T),
                            std::optional<T> (*fromText)(std::string_view),
                            std::size_t count) {
    std::set<std::string> texts;
    for (const T value : all) {
        const std::string text(textOf(value));
        EXPECT_FALSE(text.empty());
        texts.insert(text);
        EXPECT_EQ(fromText(text), value) << text;
        EXPECT_EQ(fromText(text + " "), std::nullopt);
        EXPECT_EQ(fromText(text.substr(1)), std::nullopt);
    }
    EXPECT_EQ(texts.size(), count);
    EXPECT_EQ(fromText(""), std::nullopt);
}

TEST(LayoutTexts, EveryValueHasItsOwnTextAndIsReadBack) {
    expectTextsAreReadBack(allMaterials(), materialText, materialFromText, 4);
    expectTextsAreReadBack(allOrientations(), orientationText, orientationFromText, 2);
    expectTextsAreReadBack(allPhases(), phaseText, phaseFromText, 5);
    expectTextsAreReadBack(allRoles(), roleText, roleFromText, 5);
    expectTextsAreReadBack(allTapRules(), tapRuleText, tapRuleFromText, 6);
    expectTextsAreReadBack(allWalls(), wallText, wallFromText, 5);
    expectTextsAreReadBack(allBondedBy(), bondedByText, bondedByFromText, 6);
    expectTextsAreReadBack(allFillAtSpliceReadings(), fillAtSpliceText, fillAtSpliceFromText, 2);
    expectTextsAreReadBack(allTerminalSpaceReadings(), terminalSpaceText, terminalSpaceFromText, 2);
    expectTextsAreReadBack(
        allInsideWeatherproofReadings(), insideWeatherproofText, insideWeatherproofFromText, 2);
}

TEST(LayoutTexts, LettersOfPhasesAreCapitals) {
    EXPECT_EQ(phaseText(Phase::n), "N");
    EXPECT_EQ(phaseFromText("n"), std::nullopt);
}

}  // namespace
}  // namespace gw::layout
