#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

#include "base/read_file.h"
#include "checks/report.h"
#include "core/support/json_schema.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"

/// The published schema against the reports that are printed.
namespace gw::checks {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

const test::JsonSchema& schema() {
    static const test::JsonSchema kSchema("report");
    return kSchema;
}

json reportOf(const fs::path& layoutFile) {
    static const parts::Shelf kShelf = test::shippedShelf();
    const auto layout =
        files::readLayout(readFile(layoutFile.string()).value(), layoutFile.string(), kShelf);
    const auto built = geometry::build(layout.value(), kShelf);
    return json::parse(jsonReport(built, checkAll(built), {"layout.json"}));
}

std::vector<fs::path> layoutFiles() {
    const fs::path root = GW_SOURCE_DIR;
    std::vector<fs::path> files;
    for (const auto& folder : fs::directory_iterator(root / "samples")) {
        if (fs::exists(folder.path() / "layout.json")) {
            files.push_back(folder.path() / "layout.json");
        }
    }
    for (const auto& file : fs::directory_iterator(root / "tests/data/layouts")) {
        files.push_back(file.path());
    }
    return files;
}

TEST(ReportSchema, AllowsEveryReport) {
    const auto files = layoutFiles();
    ASSERT_GE(files.size(), 7U);
    for (const auto& file : files) {
        EXPECT_EQ(schema().complaint(reportOf(file)), "") << file;
    }
}

template <class T, class Text>
std::vector<std::string> texts(const std::vector<T>& all, Text text) {
    std::vector<std::string> words;
    for (const T& value : all) {
        words.emplace_back(text(value));
    }
    return words;
}

TEST(ReportSchema, KnowsTheWordsOfEveryKindInOrder) {
    using standards::Basis;
    const auto listed = [](const char* place) {
        return schema().text().at(json::json_pointer(place)).get<std::vector<std::string>>();
    };
    EXPECT_EQ(listed("/definitions/check/enum"), texts(allChecks(), checkName));
    EXPECT_EQ(
        listed("/definitions/verdict/enum"),
        texts(std::vector{Verdict::meets, Verdict::breach, Verdict::caution, Verdict::cannotTell},
              verdictText));
    EXPECT_EQ(listed("/definitions/citation/properties/basis/enum"),
              texts(std::vector{Basis::seenTwice,
                                Basis::seen,
                                Basis::memory,
                                Basis::commonPractice,
                                Basis::partData,
                                Basis::layoutData,
                                Basis::geometry},
                    standards::basisText));
}

/// One report with everything a report can have, so that each row below finds its place.
json fullReport() {
    const json quantity = {{"value", 1.5}, {"unit", "in"}};
    json report = reportOf(fs::path(GW_SOURCE_DIR) / "samples/five-tenants/layout.json");
    json& finding = report.at("findings").at(0);
    finding["subjects"] = {"conductor C1"};
    finding["place"] = {{"x", 1}, {"y", 2}, {"z", 3}};
    finding["interval"] = {{"from", 1}, {"to", 2}};
    finding["measured"] = finding["limit"] = finding["margin"] = quantity;
    finding["missing"] = {"the part's listing"};
    finding["readings"] = {{{"name", "as printed"},
                            {"verdict", "meets"},
                            {"measured", quantity},
                            {"limit", quantity},
                            {"sentence", "1.5 in of 1.5 in."},
                            {"chosen", true}}};
    return report;
}

struct BadReport {
    const char* name;
    const char* place;  ///< JSON pointer of what is replaced in a good report …
    const char* value;  ///< … by this JSON; empty: it is taken out
};

void PrintTo(const BadReport& row, std::ostream* out) {
    *out << row.place << " = " << row.value;
}

std::string badReportName(const testing::TestParamInfo<BadReport>& row) {
    return row.param.name;
}

class ReportOfBadShape : public testing::TestWithParam<BadReport> {};

TEST_P(ReportOfBadShape, IsRefused) {
    json report = fullReport();
    ASSERT_EQ(schema().complaint(report), "");
    const json::json_pointer place(GetParam().place);
    if (*GetParam().value == '\0') {
        ASSERT_EQ(report.at(place.parent_pointer()).erase(place.back()), 1U);
    } else {
        report[place] = json::parse(GetParam().value);
    }
    EXPECT_FALSE(schema().accepts(report));
}

// clang-format off
const BadReport kBadReports[] = {
    {"RootIsAList",        "",                                  "[]"},
    {"OtherFormat",        "/format",                           R"("gutterwright-layout")"},
    {"LaterVersion",       "/version",                          "2"},
    {"NoFile",             "/file",                             ""},
    {"NoTitle",            "/title",                            ""},
    {"UnknownEdition",     "/edition",                          R"("2014")"},
    {"UnknownMember",      "/passed",                           "true"},
    {"NoTally",            "/tally",                            ""},
    {"TallyNegative",      "/tally/breach",                     "-1"},
    {"TallyHalf",          "/tally/meets",                      "1.5"},
    {"TallyOfOtherWords",  "/tally/unknown",                    "1"},
    {"NoFindings",         "/findings",                         ""},
    {"FindingsNotAList",   "/findings",                         "{}"},
    {"NoCautions",         "/cautions",                         "[]"},
    {"CautionEmpty",       "/cautions/0",                       R"("")"},
    {"UnknownCheck",       "/findings/0/check",                 R"("fill")"},
    {"NoVerdict",          "/findings/0/verdict",               ""},
    {"UnknownVerdict",     "/findings/0/verdict",               R"("pass")"},
    {"SubjectWithoutKind", "/findings/0/subjects/0",            R"("C1")"},
    {"SubjectIsAnObject",  "/findings/0/subjects/0",            R"({"conductor": "C1"})"},
    {"PlaceWithoutZ",      "/findings/0/place/z",               ""},
    {"PlaceNotANumber",    "/findings/0/place/x",               "null"},
    {"IntervalAsList",     "/findings/0/interval",              "[1, 2]"},
    {"MeasuredBare",       "/findings/0/measured",              "1.5"},
    {"LimitNotANumber",    "/findings/0/limit/value",           "null"},
    {"MarginOfOtherUnit",  "/findings/0/margin/unit",           R"("mm")"},
    {"MarginWithoutUnit",  "/findings/0/margin/unit",           ""},
    {"NoCitation",         "/findings/0/citation",              ""},
    {"NoSection",          "/findings/0/citation/section",      ""},
    {"UnknownBasis",       "/findings/0/citation/basis",        R"("hearsay")"},
    {"NoWorking",          "/findings/0/working",               R"("")"},
    {"MissingAsText",      "/findings/0/missing",               R"("listing")"},
    {"ReadingUnnamed",     "/findings/0/readings/0/name",       ""},
    {"ReadingNotJudged",   "/findings/0/readings/0/verdict",    "null"},
    {"ChosenAsText",       "/findings/0/readings/0/chosen",     R"("yes")"},
    {"FindingWithMore",    "/findings/0/colour",                R"("red")"},
};
// clang-format on
INSTANTIATE_TEST_SUITE_P(Rows, ReportOfBadShape, testing::ValuesIn(kBadReports), badReportName);

}  // namespace
}  // namespace gw::checks
