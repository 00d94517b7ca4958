#include "takeoff/takeoff.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/command_line.h"

namespace gw::test {
namespace {

TEST_F(CommandLine, TakeoffPrintsEveryTable) {
    const auto outcome = run("takeoff " + sample("five-tenants"));
    EXPECT_EQ(outcome.status, 0);
    EXPECT_EQ(outcome.err, "");
    for (const char* title : {"Cut list", "Bend marks", "Strip and torque", "Bill of materials"}) {
        EXPECT_NE(outcome.out.find(title), std::string::npos) << title;
    }
}

TEST_F(CommandLine, TakeoffOfSomeTablesAsJson) {
    const auto outcome = run("takeoff --json --table weights,reels " + sample("five-tenants"));
    const auto json = nlohmann::json::parse(outcome.out);
    ASSERT_EQ(json.at("tables").size(), 2U);
    EXPECT_EQ(json.at("tables")[0].at("name"), "reels");
}

TEST_F(CommandLine, TakeoffWritesOneCsvForEachTable) {
    const auto outcome = run("takeoff --csv " + folder_.string() + " " + sample("five-tenants"));
    EXPECT_EQ(outcome.status, 0);
    for (const auto name : takeoff::tableNames()) {
        EXPECT_TRUE(std::filesystem::exists(folder_ / (std::string(name) + ".csv"))) << name;
    }
}

TEST_F(CommandLine, TakeoffWritesOnePageForABrowser) {
    const auto page = folder_ / "takeoff.html";
    const auto outcome = run("takeoff --html " + page.string() + " " + sample("five-tenants"));
    EXPECT_EQ(outcome.status, 0);
    EXPECT_EQ(outcome.out, page.string() + "\n");
    const auto html = slurp(page);
    for (const auto name : takeoff::tableNames()) {
        EXPECT_NE(html.find("id=\"" + std::string(name) + "\""), std::string::npos) << name;
    }
    expectOneLine(run("takeoff --json --html " + page.string() + " " + sample("gate-house")));
    expectOneLine(
        run("takeoff --html " + folder_.string() + "/none/t.html " + sample("boat-hall")));
    EXPECT_FALSE(std::filesystem::exists(folder_ / "none"));
}

TEST_F(CommandLine, TakeoffOfALayoutWithABreachIsPrintedAndSaysSo) {
    const auto outcome = run("takeoff --table cut-list " + sample("broken-ampacity"));
    EXPECT_EQ(outcome.status, 1);
    EXPECT_NE(outcome.out.find("Cut list"), std::string::npos);
}

TEST_F(CommandLine, TakeoffTakesAnotherAllowance) {
    const auto with = [&](const std::string& allowance) {
        const auto outcome = run("takeoff --json --table cut-list --allowance '" + allowance +
                                 "' " + sample("gate-house"));
        return nlohmann::json::parse(outcome.out)
            .at("tables")[0]
            .at("rows")[0]
            .at("Cut")
            .get<double>();
    };
    EXPECT_EQ(with("3 1/2") - with("1/2"), 3.0);
    expectOneLine(run("takeoff --allowance some " + sample("gate-house")));
    expectOneLine(run("takeoff --allowance -1 " + sample("gate-house")));
}

TEST_F(CommandLine, TakeoffThatCannotBeWrittenSaysSo) {
    expectOneLine(run("takeoff --csv " + folder_.string() + "/none " + sample("gate-house")));
    expectOneLine(run("takeoff --out " + folder_.string() + "/none/t.txt " + sample("gate-house")));
    expectOneLine(run("takeoff --table nails " + sample("gate-house")));
}

TEST_F(CommandLine, TakeoffIsTheSameEachTime) {
    const auto first = run("takeoff " + sample("boat-hall"));
    EXPECT_EQ(run("takeoff " + sample("boat-hall")).out, first.out);
}

}  // namespace
}  // namespace gw::test
