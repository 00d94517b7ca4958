#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "app/command_line.h"

/// The program as a person or a script calls it.
namespace gw::test {
namespace {

TEST_F(CommandLine, GoodLayoutIsStatusZeroWithAReport) {
    const auto outcome = run("check " + sample("five-tenants"));
    EXPECT_EQ(outcome.status, 0);
    EXPECT_NE(outcome.out.find("No breach"), std::string::npos);
    EXPECT_EQ(outcome.err, "");
}

TEST_F(CommandLine, BreachIsStatusOne) {
    const auto outcome = run("check " + sample("broken-bend-radius"));
    EXPECT_EQ(outcome.status, 1);
    EXPECT_NE(outcome.out.find("BREACH"), std::string::npos);
}

TEST_F(CommandLine, JsonReportIsJson) {
    const auto outcome = run("check --json " + sample("five-tenants"));
    const auto report = nlohmann::json::parse(outcome.out);
    EXPECT_EQ(report.at("format"), "gutterwright-report");
    EXPECT_GT(report.at("findings").size(), 10U);
}

TEST_F(CommandLine, EditionChangesTheCitations) {
    const auto of2017 = run("check --edition 2017 " + sample("five-tenants"));
    const auto of2023 = run("check --edition 2023 " + sample("five-tenants"));
    EXPECT_NE(of2017.out.find("NFPA 70-2017"), std::string::npos);
    EXPECT_EQ(of2017.out.find("NFPA 70-2023"), std::string::npos);
    EXPECT_NE(of2023.out.find("NFPA 70-2023"), std::string::npos);
}

TEST_F(CommandLine, BadInputIsStatusTwoAndOneLine) {
    expectOneLine(run("check " + (folder_ / "nothing.json").string()));
    expectOneLine(run("check " + folder_.string()));
    std::ofstream(folder_ / "cut.json") << "{\"format\": ";
    expectOneLine(run("check " + (folder_ / "cut.json").string()));
    expectOneLine(run("sheet " + sample("five-tenants") + " --out /proc/nowhere/sheet.pdf"));
    expectOneLine(run("sheet " + sample("five-tenants") + " --out sheet.png"));
    expectOneLine(run("sheet " + sample("five-tenants") + " --out s.pdf --paper Napkin"));
    expectOneLine(run("check"));
    expectOneLine(run("dance"));
}

TEST_F(CommandLine, SheetIsWrittenTheSameTwice) {
    for (const std::string kind : {"pdf", "svg"}) {
        const auto one = folder_ / ("one." + kind);
        const auto two = folder_ / ("two." + kind);
        EXPECT_EQ(run("sheet " + sample("five-tenants") + " --out " + one.string()).status, 0);
        EXPECT_EQ(run("sheet " + sample("five-tenants") + " --out " + two.string()).status, 0);
        EXPECT_GT(slurp(one).size(), 1000U);
        EXPECT_EQ(slurp(one), slurp(two));
    }
}

TEST_F(CommandLine, HelpAndVersionAreStatusZero) {
    EXPECT_EQ(run("--help").status, 0);
    EXPECT_EQ(run("check --help").status, 0);
    EXPECT_NE(run("--version").out.find("gutterwright"), std::string::npos);
}

}  // namespace
}  // namespace gw::test
