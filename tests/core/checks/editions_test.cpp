#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <set>

#include "base/read_file.h"
#include "checks/finding.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"

/// The same layout by each edition: the section each check cites, and what the edition changes.
namespace gw::checks {
namespace {

using standards::Edition;

constexpr std::array kEditions = {
    Edition::nec2017, Edition::nec2020, Edition::nec2023, Edition::nec2026};

std::vector<Finding> findingsOf(const std::string& sample, Edition edition, Check check) {
    static const auto kShelf = test::shippedShelf();
    const auto file =
        (std::filesystem::path(GW_SOURCE_DIR) / "samples" / sample / "layout.json").string();
    auto layout = files::readLayout(readFile(file).value(), file, kShelf).value();
    layout.edition = edition;
    return runChecks(geometry::build(layout, kShelf), {check});
}

struct SectionRow {
    Check check;
    const char* sample;
    std::array<const char*, 4> sections;  ///< of the editions, oldest first
};

void PrintTo(const SectionRow& row, std::ostream* out) {
    *out << checkName(row.check) << " of " << row.sample;
}

class CitationByEdition : public testing::TestWithParam<SectionRow> {};

TEST_P(CitationByEdition, IsCitedAndNoneOfAnotherEdition) {
    const auto& row = GetParam();
    const std::set<std::string> all(row.sections.begin(), row.sections.end());
    for (std::size_t i = 0; i < kEditions.size(); ++i) {
        std::set<std::string> cited;
        for (const Finding& finding : findingsOf(row.sample, kEditions[i], row.check)) {
            if (all.count(finding.citation.section) > 0) {
                cited.insert(finding.citation.section);
                EXPECT_EQ(finding.citation.standard,
                          "NFPA 70-" + std::string(standards::editionText(kEditions[i])));
            }
        }
        EXPECT_EQ(cited, std::set<std::string>{row.sections[i]})
            << standards::editionText(kEditions[i]);
    }
}

// Sources: "The Reorganization of NEC Article 310" (IAEI) for the ampacity tables; change summaries
// of the 2017, 2020 and 2026 editions (electricallicenserenewal.com) for parallel conductors and
// the renumbering of Article 300; definitions moved to Article 100 in 2023 (IAEI; 240.2 from
// memory); conductor identification from memory.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Numbers, CitationByEdition, testing::Values(
    SectionRow{Check::parallelSets,      "five-tenants",  {"310.10(H)(2)", "310.10(G)(2)", "310.10(G)(2)", "310.10(G)(2)"}},
    SectionRow{Check::circuitTogether,   "five-tenants",  {"300.3(B)", "300.3(B)", "300.3(B)", "300.5(B)"}},
    SectionRow{Check::circuitTogether,   "five-tenants",  {"300.20", "300.20", "300.20", "300.22"}},
    SectionRow{Check::insulatingBushing, "five-tenants",  {"300.4(G)", "300.4(G)", "300.4(G)", "300.6(G)"}},
    SectionRow{Check::colours,           "five-tenants",  {"310.110", "310.6", "310.6", "310.6"}},
    SectionRow{Check::tapRule,           "five-tenants",  {"240.2", "240.2", "Article 100", "Article 100"}},
    SectionRow{Check::ampacity,          "rope-walk",     {"Table 310.15(B)(16)", "Table 310.16", "Table 310.16", "Table 310.16"}},
    SectionRow{Check::conductorFill,     "five-tenants",  {"366.22(A)", "366.22(A)", "366.22(A)", "366.22(A)"}}));
// clang-format on

struct VerdictRow {
    Check check;
    const char* sample;
    std::array<int, 4> breaches;  ///< by the editions, oldest first
};

void PrintTo(const VerdictRow& row, std::ostream* out) {
    *out << checkName(row.check) << " of " << row.sample;
}

class VerdictOfEdition : public testing::TestWithParam<VerdictRow> {};

TEST_P(VerdictOfEdition, IsThatOfTheEdition) {
    const auto& row = GetParam();
    for (std::size_t i = 0; i < kEditions.size(); ++i) {
        const auto counts = tally(findingsOf(row.sample, kEditions[i], row.check));
        EXPECT_EQ(counts.breach, row.breaches[i]) << standards::editionText(kEditions[i]);
    }
}

// Source: "NEC 230.46 Line Side Connectors Update" (IAEI): connectors on service conductors marked
// from 2020 on; before, distribution blocks only. The limits of the rest did not move.
// clang-format off
INSTANTIATE_TEST_SUITE_P(Limits, VerdictOfEdition, testing::Values(
    VerdictRow{Check::connectorListing, "broken-connector-listing", {0, 1, 1, 1}},
    VerdictRow{Check::conductorFill,    "broken-conductor-fill",    {1, 1, 1, 1}},
    VerdictRow{Check::parallelSets,     "broken-parallel-sets",     {1, 1, 1, 1}},
    VerdictRow{Check::tapRule,          "broken-tap-rule",          {1, 1, 1, 1}},
    VerdictRow{Check::groundingSize,    "broken-grounding-size",    {1, 1, 1, 1}}));
// clang-format on

}  // namespace
}  // namespace gw::checks
