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

TEST_F(CommandLine, TakeoffDrawsCardsStepsAndLabels) {
    const auto file = [&](const std::string& name) { return (folder_ / name).string(); };
    const auto outcome =
        run("takeoff --cards " + file("cards.pdf") + " --steps " + file("steps.pdf") +
            " --labels " + file("labels.svg") + " --paper A4 " + sample("gate-house"));
    EXPECT_EQ(outcome.status, 0);
    EXPECT_EQ(outcome.err, "");
    EXPECT_EQ(outcome.out,
              file("cards.pdf") + "\n" + file("steps.pdf") + "\n" + file("labels.svg") + "\n");
    for (const char* name : {"cards.pdf", "steps.pdf"}) {
        EXPECT_EQ(slurp(folder_ / name).rfind("%PDF", 0), 0U) << name;
    }
    EXPECT_NE(slurp(folder_ / "labels.svg").find("width=\"210mm\""), std::string::npos)
        << "A4 held upright";
}

TEST_F(CommandLine, TakeoffDrawsLabelsOnTheGridThatIsDescribed) {
    const auto labels = folder_ / "labels.svg";
    const std::string start = "takeoff --labels " + labels.string() + " --label-grid ";
    EXPECT_EQ(run(start + "'1 x 20, 2 x 1/2, 1 x 1/2' " + sample("gate-house")).out,
              labels.string() + "\n" + (folder_ / "labels-2.svg").string() + "\n")
        << "9 conductors with two ends and three blocks are 21";
    expectOneLine(run(start + "'many' " + sample("gate-house")));
    expectOneLine(run(start + "'9 x 20, 2 x 1/2, 1 x 1/2' " + sample("gate-house")));
}

TEST_F(CommandLine, TakeoffThatCannotBeDrawnSaysSo) {
    const auto cards = folder_ / "cards.pdf";
    expectOneLine(
        run("takeoff --cards " + cards.string() + " --labels labels.png " + sample("gate-house")));
    EXPECT_FALSE(std::filesystem::exists(cards)) << "nothing is written before all is known";
    expectOneLine(run("takeoff --cards " + cards.string() + " --paper B7 " + sample("gate-house")));
    expectOneLine(run("takeoff --cards " + cards.string() + " --json " + sample("gate-house")));
    expectOneLine(run("takeoff --label-grid '2 x 2, 2 x 1, 0 x 0' " + sample("gate-house")));
    expectOneLine(
        run("takeoff --steps " + folder_.string() + "/none/steps.pdf " + sample("gate-house")));
}

TEST_F(CommandLine, TakeoffIsTheSameEachTime) {
    const auto first = run("takeoff " + sample("boat-hall"));
    EXPECT_EQ(run("takeoff " + sample("boat-hall")).out, first.out);
}

}  // namespace
}  // namespace gw::test
