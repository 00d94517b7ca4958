#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "checks/report.h"
#include "core/checks/gutter_builder.h"
#include "core/support/json_schema.h"

/// What the local authority puts in place of the published limits.
namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::spare;

/// Ten of 500 kcmil THWN-2, 10 x 0.7073 sq in (NFPA 70 Chapter 9 Table 5), in 6 x 6: 19.65 %.
GutterBuilder ten() {
    GutterBuilder builder({60.0, 6.0, 6.0});
    for (int i = 0; i < 10; ++i) {
        const double y = 1.0 + 0.1 * i;
        builder.conductor("c" + std::to_string(i), spare({10.0, y, 1.0}), spare({40.0, y, 1.0}));
    }
    return builder;
}

TEST(AmendedFill, TakesThePlaceOfTwentyPercent) {
    auto builder = ten();
    EXPECT_EQ(checkConductorFill(builder.build()).at(0).verdict, Verdict::meets);
    builder.layout().amendments.conductorFillPercent = 15.0;
    builder.layout().amendments.source = "Yard ordinance 12";
    const auto finding = checkConductorFill(builder.build()).at(0);
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_EQ(finding.limit->value, 15.0);
    EXPECT_EQ(finding.citation.standard, "local amendment");
    EXPECT_EQ(finding.citation.section, "Yard ordinance 12");
    EXPECT_THAT(finding.citation.note, testing::HasSubstr("366.22"));
}

TEST(AmendedFill, OfSplicesTakesThePlaceOfSeventyFivePercent) {
    auto builder = check_test::straightSplice();
    const double taken = checkSpliceFill(builder.build()).at(0).measured->value;
    builder.layout().amendments.spliceFillPercent = taken - 0.5;
    EXPECT_EQ(checkSpliceFill(builder.build()).at(0).verdict, Verdict::breach);
    builder.layout().amendments.spliceFillPercent = taken + 0.5;
    EXPECT_EQ(checkSpliceFill(builder.build()).at(0).verdict, Verdict::meets);
}

/// 500 kcmil THWN-2 is 0.949 in thick (Chapter 9 Table 5): 4 x 0.949 = 3.796, 6 x 0.949 = 5.694 in
/// at the inner surface.
TEST(AmendedBend, TakesThePlaceOfTheTrainingMultiple) {
    GutterBuilder builder({60.0, 40.0, 40.0});
    builder.conductor("bent",
                      spare({10.0, 5.0, 5.0}),
                      spare({40.0, 35.0, 5.0}),
                      {corner({40.0, 5.0, 5.0}, 0.949 * 5.0)});
    EXPECT_EQ(checkBendRadius(builder.build()).at(0).verdict, Verdict::meets);
    builder.layout().amendments.bendRadiusMultiple = 6.0;
    const auto finding = checkBendRadius(builder.build()).at(0);
    EXPECT_EQ(finding.verdict, Verdict::breach);
    EXPECT_NEAR(finding.limit->value, 5.694, 1e-3);
    EXPECT_EQ(finding.citation.standard, "local amendment");
}

TEST(Amendments, AreShownOnTheReport) {
    auto builder = ten();
    const auto reportOf = [&] {
        const auto built = builder.build();
        return textReport(built, checkAll(built), {});
    };
    EXPECT_EQ(reportOf().find("Local amendments"), std::string::npos);
    builder.layout().amendments.conductorFillPercent = 15.0;
    builder.layout().amendments.source = "Yard ordinance 12";
    EXPECT_NE(reportOf().find("Local amendments (Yard ordinance 12): conductor fill at most 15 %."),
              std::string::npos);
    const auto built = builder.build();
    const auto report = nlohmann::json::parse(jsonReport(built, checkAll(built), {}));
    EXPECT_EQ(report.at("amendments").at("conductorFill").at("value"), 15.0);
    EXPECT_EQ(test::JsonSchema("report").complaint(report), "");
}

}  // namespace
}  // namespace gw::checks
