#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>

#include "app/command_line.h"
#include "checks/finding.h"
#include "support/help_pages.h"

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

TEST_F(CommandLine, OnlyJudgesByTheChecksNamedAndSaysWhichItLeftOut) {
    const auto outcome =
        run("check --only conductor-fill,joints --json " + sample("broken-bend-radius"));
    EXPECT_EQ(outcome.status, 0);
    const auto report = nlohmann::json::parse(outcome.out);
    std::set<std::string> judged;
    for (const auto& finding : report.at("findings")) {
        judged.insert(finding.at("check"));
    }
    EXPECT_EQ(judged, (std::set<std::string>{"conductor-fill", "joints"}));
    EXPECT_EQ(report.at("leftOut").size() + 2, checks::allChecks().size());
    EXPECT_EQ(run("check --only bend-radius " + sample("broken-bend-radius")).status, 1);
}

TEST_F(CommandLine, SkipJudgesByTheOthersAndSaysSo) {
    const auto outcome = run("check --skip bend-radius " + sample("broken-bend-radius"));
    EXPECT_EQ(outcome.status, 0);
    EXPECT_NE(outcome.out.find("Left out, not judged: bend-radius."), std::string::npos);
    EXPECT_EQ(run("check " + sample("broken-bend-radius")).out.find("Left out"), std::string::npos);
}

TEST_F(CommandLine, ChecksThatDoNotConcernTheLayoutSayWhy) {
    const std::string command = "check " + sample("boat-hall");
    EXPECT_NE(run(command).out.find("NOT CONCERNED"), std::string::npos);
    EXPECT_NE(run(command).out.find("Parallel sets: no circuit runs in parallel conductors."),
              std::string::npos);
    const auto report = nlohmann::json::parse(run(command + " --json").out);
    EXPECT_FALSE(report.at("notConcerned").empty());
    EXPECT_EQ(run(command + " --skip parallel-sets").out.find("Parallel sets"), std::string::npos);
}

TEST_F(CommandLine, UnknownCheckIsOneLineThatNamesTheChecks) {
    const auto outcome = run("check --only fill " + sample("gate-house"));
    expectOneLine(outcome);
    EXPECT_NE(outcome.err.find("conductor-fill"), std::string::npos);
}

TEST_F(CommandLine, HelpPrintsThePageOfEveryCheckWithItsSections) {
    using standards::Edition;
    const auto pages = shippedHelp();
    ASSERT_TRUE(pages) << toLine(pages.error());
    for (const auto& [check, page] : *pages) {
        const auto outcome = run("help " + std::string(checks::checkName(check)));
        EXPECT_EQ(outcome.status, 0);
        EXPECT_EQ(outcome.err, "");
        EXPECT_EQ(outcome.out,
                  checks::helpText(
                      page,
                      check,
                      {Edition::nec2017, Edition::nec2020, Edition::nec2023, Edition::nec2026}));
    }
}

TEST_F(CommandLine, HelpNamesTheSectionsOfTheEditionAskedFor) {
    const auto all = run("help insulating-bushing").out;
    for (const std::string edition : {"2017", "2020", "2023", "2026"}) {
        EXPECT_NE(all.find("\n- " + edition + ": "), std::string::npos) << all;
    }
    // Source: NFPA 70-2026 renumbered 300.4 to 300.6.
    const auto of2026 = run("help insulating-bushing --edition 2026").out;
    EXPECT_NE(of2026.find("\n- 2026: 300.6(G)"), std::string::npos) << of2026;
    EXPECT_EQ(of2026.find("- 2023: "), std::string::npos) << of2026;
}

TEST_F(CommandLine, HelpOfAnUnknownCheckIsOneLineThatNamesTheChecks) {
    expectOneLine(run("help"));
    const auto outcome = run("help fill");
    expectOneLine(outcome);
    EXPECT_NE(outcome.err.find("conductor-fill"), std::string::npos);
    expectOneLine(run("help conductor-fill --edition 1999"));
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

TEST_F(CommandLine, RouteWritesALayoutThatTheChecksPass) {
    const auto out = (folder_ / "routed.json").string();
    const auto outcome = run("route --json --out " + out + " " + sample("gate-house"));
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    const auto report = nlohmann::json::parse(outcome.out);
    EXPECT_EQ(report.at("format"), "gutterwright-routing");
    EXPECT_TRUE(report.at("complete").get<bool>());
    EXPECT_EQ(report.at("routed").size(), 9U);
    EXPECT_EQ(run("check --only clearance,bend-radius,conductor-fill " + out).status, 0);
}

TEST_F(CommandLine, RouteOfSomeLeavesTheOthersAndSaysHowLongTheyAre) {
    const auto outcome = run("route --only T1-A " + sample("gate-house"));
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("1 of 1 conductor routed"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("T1-A"), std::string::npos);
    EXPECT_EQ(outcome.out.find("T1-B"), std::string::npos);
    expectOneLine(run("route --only nobody " + sample("gate-house")));
    expectOneLine(run("route --out /proc/nowhere/a.json " + sample("rope-walk")));
}

TEST_F(CommandLine, WhatCannotBeRoutedIsStatusOneAndNoAnswerIsWritten) {
    auto layout = nlohmann::json::parse(slurp(sample("broken-entry-bending-space")));
    for (auto& conductor : layout.at("conductors")) {
        conductor["outsideDiameter"] = 4.0;  // thicker than the gutter is deep
    }
    const auto file = write("thick.json", layout.dump());
    const auto out = folder_ / "routed.json";
    const auto partial = folder_ / "partial.json";
    const auto outcome =
        run("route " + file + " --out " + out.string() + " --partial " + partial.string());
    EXPECT_EQ(outcome.status, 1) << outcome.err;
    EXPECT_NE(outcome.out.find("proven impossible"), std::string::npos) << outcome.out;
    EXPECT_FALSE(std::filesystem::exists(out));
    EXPECT_TRUE(std::filesystem::exists(partial));
}

TEST_F(CommandLine, WithoutAScreenTheWindowIsRefusedInOneLine) {
    const std::string none = "env -u DISPLAY -u WAYLAND_DISPLAY -u QT_QPA_PLATFORM";
    expectOneLine(run("", none));
    expectOneLine(run(sample("five-tenants"), none));
}

TEST_F(CommandLine, TheWindowOnAFileThatIsNoLayoutIsRefusedInOneLine) {
    expectOneLine(run(write("no.json", "{}"), "env QT_QPA_PLATFORM=offscreen"));
    expectOneLine(run("none.json", "env QT_QPA_PLATFORM=offscreen"));
}

TEST_F(CommandLine, HelpAndVersionAreStatusZero) {
    EXPECT_EQ(run("--help").status, 0);
    EXPECT_EQ(run("check --help").status, 0);
    EXPECT_NE(run("--version").out.find("gutterwright"), std::string::npos);
}

}  // namespace
}  // namespace gw::test
