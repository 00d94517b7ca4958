#include <gtest/gtest.h>

#include <filesystem>

#include "app/command_line.h"

namespace gw::test {
namespace {

TEST_F(CommandLine, TemplateWritesAPdf) {
    const auto path = (folder_ / "t.pdf").string();
    const auto outcome = run("template " + sample("gate-house") + " --out " + path);
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    const auto first = slurp(path);
    EXPECT_EQ(first.substr(0, 5), "%PDF-");
    run("template " + sample("gate-house") + " --out " + path);
    EXPECT_EQ(slurp(path), first);
}

TEST_F(CommandLine, TemplateSaysWhatItCannot) {
    const auto out = " --out " + (folder_ / "t.pdf").string();
    expectOneLine(run("template " + sample("gate-house") + " --out t.png"));
    expectOneLine(run("template " + sample("gate-house") + " --wall left" + out));
    expectOneLine(run("template " + sample("gate-house") + " --wall cover" + out));
    expectOneLine(run("template " + sample("gate-house") + " --paper A9" + out));
    expectOneLine(
        run("template " + sample("gate-house") + " --out " + folder_.string() + "/no/t.pdf"));
    EXPECT_FALSE(std::filesystem::exists(folder_ / "t.pdf"));
}

}  // namespace
}  // namespace gw::test
