#include "checks/check_rules.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <set>

#include "base/read_file.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"

/// What a check says it judges by is what its findings cite.
namespace gw::checks {
namespace {

namespace fs = std::filesystem;

using standards::Citation;
using standards::Edition;
using standards::Rule;

constexpr std::array kEditions = {
    Edition::nec2017, Edition::nec2020, Edition::nec2023, Edition::nec2026};

/// What no standard asks: it follows from the shapes, or is told for information.
const std::set<Check> kByShapesAlone = {
    Check::clearance, Check::coverPush, Check::faultForces, Check::landingOrder};

layout::Layout sampleIn(const fs::path& folder, const parts::Shelf& shelf) {
    const auto path = (folder / "layout.json").string();
    return files::readLayout(readFile(path).value(), path, shelf).value();
}

/// Every sample, as it is.
std::vector<layout::Layout> samples(const parts::Shelf& shelf) {
    std::set<fs::path> folders;
    for (const auto& entry : fs::directory_iterator(fs::path(GW_SOURCE_DIR) / "samples")) {
        folders.insert(entry.path());
    }
    std::vector<layout::Layout> all;
    for (const auto& folder : folders) {
        all.push_back(sampleIn(folder, shelf));
    }
    return all;
}

bool stands(const std::vector<Rule>& rules,
            const geometry::BuiltLayout& built,
            const Citation& one) {
    return std::any_of(rules.begin(), rules.end(), [&](Rule rule) {
        const auto section = standards::section(rule, built.layout.edition, built.gutter().article);
        return section.standard == one.standard && section.section == one.section;
    });
}

bool isOfARule(const geometry::BuiltLayout& built, const Citation& one) {
    const auto all = standards::allRules();
    return !one.section.empty() && stands({all.begin(), all.end()}, built, one);
}

/// The checks of which a finding cites a rule; each such rule has to be in the check's list.
std::set<Check> checksThatCite(const geometry::BuiltLayout& built) {
    std::set<Check> cited;
    for (const Finding& finding : checkAll(built)) {
        if (!isOfARule(built, finding.citation)) {
            continue;
        }
        cited.insert(finding.check);
        EXPECT_TRUE(stands(rulesOf(finding.check), built, finding.citation))
            << checkName(finding.check) << " cites " << toText(finding.citation);
    }
    return cited;
}

TEST(CheckRules, HaveEveryRuleTheFindingsOnTheSamplesCite) {
    const auto shelf = test::shippedShelf();
    std::set<Check> cited;
    for (auto layout : samples(shelf)) {
        SCOPED_TRACE(layout.title);
        for (const Edition edition : kEditions) {
            layout.edition = edition;
            cited.merge(checksThatCite(geometry::build(layout, shelf)));
        }
    }
    // So that the test has something to say of each: a check that has rules cites one of them.
    for (const Check check : allChecks()) {
        EXPECT_EQ(cited.count(check) > 0, !rulesOf(check).empty()) << checkName(check);
    }
}

class RulesOfChecks : public ::testing::TestWithParam<Edition> {};

TEST_P(RulesOfChecks, StandSomewhereButForTheShapes) {
    for (const Check check : allChecks()) {
        EXPECT_EQ(sourcesOf(check, GetParam()).empty(), kByShapesAlone.count(check) > 0)
            << checkName(check);
    }
}

TEST_P(RulesOfChecks, AreNamedOnceAndSoAreTheirSections) {
    for (const Check check : allChecks()) {
        const auto rules = rulesOf(check);
        EXPECT_EQ(std::set<Rule>(rules.begin(), rules.end()).size(), rules.size())
            << checkName(check);
        std::set<std::string> sections;
        for (const Citation& one : sourcesOf(check, GetParam())) {
            EXPECT_FALSE(one.section.empty());
            EXPECT_TRUE(sections.insert(one.section).second) << one.section;
        }
    }
}

std::string editionName(const ::testing::TestParamInfo<Edition>& info) {
    return std::string(standards::editionText(info.param));
}

INSTANTIATE_TEST_SUITE_P(Edition, RulesOfChecks, ::testing::ValuesIn(kEditions), editionName);

std::vector<std::string> sectionsOf(Check check, Edition edition) {
    std::vector<std::string> sections;
    for (const Citation& one : sourcesOf(check, edition)) {
        sections.push_back(one.section);
    }
    return sections;
}

struct Place {
    Check check;
    Edition edition;
    std::vector<std::string> sections;
};

/// Source: NFPA 70, the sections named, in the editions named; ICEA S-95-658/NEMA WC 70.
// clang-format off
const std::vector<Place> kPlaces = {
    {Check::spliceFill,        Edition::nec2023, {"366.56(A)", "376.56(A)", "378.56"}},
    {Check::entryBendingSpace, Edition::nec2017, {"366.58(A)", "376.23(A)", "378.23(A)"}},
    {Check::insulatingBushing, Edition::nec2023, {"300.4(G)"}},
    {Check::insulatingBushing, Edition::nec2026, {"300.6(G)"}},
    {Check::parallelSets,      Edition::nec2017, {"310.10(H)(1)", "310.10(H)(2)", "366.20", "376.20", "378.20"}},
    {Check::parallelSets,      Edition::nec2020, {"310.10(G)(1)", "310.10(G)(2)", "366.20", "376.20", "378.20"}},
    {Check::largestConductor,  Edition::nec2023, {"376.21", "378.21"}},
    {Check::mixedVoltages,     Edition::nec2020, {"300.3(C)(1)"}},
    {Check::mixedVoltages,     Edition::nec2026, {"300.5(C)(1)"}},
    {Check::joints,            Edition::nec2017, {"110.14(B)", "250.142(B)"}},
    {Check::joints,            Edition::nec2020, {"300.3(B)(1)", "110.14(B)", "250.142(B)"}},
    {Check::tapLabels,         Edition::nec2023, {"366.56(C)"}},
    {Check::bendRadius,        Edition::nec2023, {"training radius"}},
    {Check::clearance,         Edition::nec2023, {}},
};
// clang-format on

TEST(CheckSources, StandWhereTheEditionHasThem) {
    for (const Place& place : kPlaces) {
        EXPECT_EQ(sectionsOf(place.check, place.edition), place.sections)
            << checkName(place.check) << " in " << standards::editionText(place.edition);
    }
}

}  // namespace
}  // namespace gw::checks
