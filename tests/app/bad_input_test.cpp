#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <fstream>

#include "app/command_line.h"
#include "support/bad_layouts.h"

/// What cannot be used ends with status 2 and one clear line, whatever it is, and soon.
namespace gw::test {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

class BadInput : public CommandLine {
protected:
    void expectRefused(const std::string& path, const std::string& place, const std::string& says) {
        const auto outcome = run("check '" + path + "'");
        expectOneLine(outcome);
        EXPECT_THAT(outcome.err, HasSubstr(path + (place.empty() ? "" : ": " + place) + ": "));
        EXPECT_THAT(outcome.err, HasSubstr(says));
    }

    void expectPartsRefused(const std::string& path, const std::string& says) {
        const auto outcome = run("check " + sample("five-tenants") + " --parts '" + path + "'");
        expectOneLine(outcome);
        EXPECT_THAT(outcome.err, HasSubstr(path));
        EXPECT_THAT(outcome.err, HasSubstr(says));
    }
};

TEST_F(BadInput, EveryBadLayoutOfTheTable) {
    for (const auto& row : badLayouts()) {
        SCOPED_TRACE(row.name);
        expectRefused(write("layout.json", bytesOf(row)), row.place, row.says);
    }
}

TEST_F(BadInput, IsRefusedByEveryVerbThatReadsALayout) {
    const auto path = write("layout.json", bytesOf(badLayouts().front()));
    for (const std::string verb : {"check ", "check --json ", "sheet --out sheet.pdf "}) {
        expectOneLine(run(verb + path));
    }
    EXPECT_FALSE(fs::exists("sheet.pdf"));
}

TEST_F(BadInput, MissingFile) {
    expectRefused((folder_ / "none.json").string(), "", "expected a file, found nothing there");
}

TEST_F(BadInput, Folder) {
    expectRefused(folder_.string(), "", "expected a file, found a folder");
}

TEST_F(BadInput, NameWithALineBreakIsStillOneLine) {
    expectOneLine(run("check '" + write("two\nlines.json", "{}") + "'"));
}

TEST_F(BadInput, FileNobodyMayRead) {
    const auto path = write("locked.json", goodLayout());
    fs::permissions(path, fs::perms::none);
    std::string before;
    if (geteuid() == 0) {
        // Permission bits do not stop root: become somebody else.
        before = "setpriv --reuid=65534 --regid=65534 --clear-groups";
        fs::permissions(folder_, fs::perms(0755));
        if (run("--version", before).status != 0) {
            GTEST_SKIP() << "nobody else may run this program here, so nothing is shown";
        }
    }
    const auto outcome = run("check " + path, before);
    expectOneLine(outcome);
    EXPECT_THAT(outcome.err, HasSubstr(path + ": the file cannot be opened"));
}

// ---- huge -------------------------------------------------------------------------------------

std::string repeated(const std::string& text, std::size_t times) {
    std::string all;
    for (std::size_t i = 0; i < times; ++i) {
        all += text;
    }
    return all;
}

class HugeInput : public BadInput {
protected:
    /// Half a gigabyte for the largest process so far, three times that where the sanitizer keeps
    /// freed memory and a shadow of its own; the time is generous for a slow machine, and far below
    /// what an endless or quadratic reader takes.
    void expectRefusedSoon(const std::string& path, const std::string& says) {
        const auto start = std::chrono::steady_clock::now();
        const auto outcome = run("check " + path);
        EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(20));
        expectOneLine(outcome);
        EXPECT_LT(outcome.err.size(), 500U);
        EXPECT_THAT(outcome.err, HasSubstr(says));
        rusage used{};
        ASSERT_EQ(getrusage(RUSAGE_CHILDREN, &used), 0);
#ifdef __SANITIZE_ADDRESS__
        constexpr long kMostKilobytes = 1'500'000;
#else
        constexpr long kMostKilobytes = 500'000;
#endif
        EXPECT_LT(used.ru_maxrss, kMostKilobytes);
    }
};

TEST_F(HugeInput, HundredMegabytesOfBlanks) {
    std::ofstream out(folder_ / "blanks.json", std::ios::binary);
    const std::string blanks(1'000'000, ' ');
    for (int i = 0; i < 100; ++i) {
        out << blanks;
    }
    out.close();
    expectRefusedSoon((folder_ / "blanks.json").string(), "at most 16000000 bytes");
}

TEST_F(HugeInput, AsManyBlanksAsAreRead) {
    expectRefusedSoon(write("blanks.json", std::string(16'000'000, ' ')), "the file is empty");
}

TEST_F(HugeInput, TenMillionLevels) {
    expectRefusedSoon(write("deep.json", std::string(10'000'000, '[')), "nested too deep");
}

TEST_F(HugeInput, FiveMillionConductorsOfNothing) {
    std::string bytes = goodLayout();
    const std::string list = "\"conductors\": [";
    bytes.insert(bytes.find(list) + list.size(), repeated("{},", 5'000'000));
    expectRefusedSoon(write("many.json", bytes), "at most 20000 items");
}

TEST_F(HugeInput, TextOfFifteenMegabytes) {
    expectRefusedSoon(write("text.json", "{\"format\": \"" + std::string(15'000'000, 'g') + "\"}"),
                      "at most 400 bytes");
}

TEST_F(HugeInput, MillionMembers) {
    std::string bytes = "{";
    for (int i = 0; i < 1'000'000; ++i) {
        bytes += "\"m" + std::to_string(i) + "\":0,";
    }
    expectRefusedSoon(write("members.json", bytes + "\"last\":0}"), "\"format\"");
}

// ---- part files -------------------------------------------------------------------------------

struct BadParts {
    const char* name;
    std::string bytes;
    const char* says;
};

std::string partsFile(const std::string& members) {
    return R"({"format": "gutterwright-parts", "version": 1, "unit": "in", )" + members + "}";
}

TEST_F(BadInput, PartFiles) {
    const std::string shipped =
        slurp(fs::path(GW_SOURCE_DIR) / "resources" / "parts" / "splice.json");
    // clang-format off
    const BadParts rows[] = {
        {"Empty",        "",                                          "the file is empty"},
        {"Cut",          shipped.substr(0, shipped.size() / 2),       "found the end of the text"},
        {"Utf16",        "\xFF\xFE{",                                 "found UTF-16"},
        {"NotJson",      "<parts/>",                                  "line 1, column 1"},
        {"List",         "[]",                                        "expected an object"},
        {"Layout",       goodLayout(),                                R"(/format: not a part file)"},
        {"NoParts",      partsFile(R"("pieces": [])"),                R"(expected "parts")"},
        {"PartsAreText", partsFile(R"("parts": "row")"),              "/parts: "},
        {"PartIsNull",   partsFile(R"("parts": [null])"),             "/parts/0: "},
        {"PartIsEmpty",  partsFile(R"("parts": [{}])"),               R"(expected "id")"},
        {"MemberTwice",  partsFile(R"("parts": [], "parts": [])"),    "/parts: the member stands twice"},
        {"MoreMembers",  partsFile(R"("parts": [], "maker": "")"),    "/maker: "},
        {"OfTheShelf",   shipped,                                     "/parts/0/id: two files describe a part of one id"},
    };
    // clang-format on
    for (const auto& row : rows) {
        SCOPED_TRACE(row.name);
        expectPartsRefused(write("parts.json", row.bytes), row.says);
    }
    expectPartsRefused((folder_ / "none.json").string(), "nothing there");
    expectPartsRefused(folder_.string(), "a folder");
}

}  // namespace
}  // namespace gw::test
