#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>

/// Reads the includes of the source tree: a folder of core may include only itself and those above
/// it in the list of the house; core never sees Qt; core never sees ui or app, ui never app.
namespace {

namespace fs = std::filesystem;

const fs::path kRoot = GW_SOURCE_DIR;

const std::vector<std::string>& coreFolders() {
    static const std::vector<std::string> kFolders = {"base",
                                                      "units",
                                                      "standards",
                                                      "parts",
                                                      "layout",
                                                      "geometry",
                                                      "checks",
                                                      "live",
                                                      "routing",
                                                      "proposing",
                                                      "editing",
                                                      "takeoff",
                                                      "drawing",
                                                      "review",
                                                      "files"};
    return kFolders;
}

struct Include {
    std::string path;
    bool quoted;
};

std::vector<Include> includesOf(const fs::path& file) {
    static const std::regex kInclude(R"re(^\s*#\s*include\s*(["<])([^">]+)[">])re");
    std::vector<Include> found;
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);) {
        std::smatch match;
        if (std::regex_search(line, match, kInclude)) {
            found.push_back({match[2], match[1] == "\""});
        }
    }
    return found;
}

std::vector<fs::path> sourcesUnder(const fs::path& root) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::recursive_directory_iterator(root)) {
        const auto extension = entry.path().extension();
        if (entry.is_regular_file() && (extension == ".h" || extension == ".cpp")) {
            files.push_back(entry.path());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

std::string firstFolder(const std::string& path) {
    return path.substr(0, path.find('/'));
}

/// Place in the list of the house; the list's length for a folder that is not in it.
std::ptrdiff_t placeOf(const std::string& folder) {
    const auto& folders = coreFolders();
    return std::find(folders.begin(), folders.end(), folder) - folders.begin();
}

bool usesHeader(const fs::path& file, const std::string& prefix) {
    const auto includes = includesOf(file);
    return std::any_of(includes.begin(), includes.end(), [&](const Include& include) {
        return include.path.rfind(prefix, 0) == 0;
    });
}

TEST(Layers, CoreFoldersIncludeOnlyThoseAboveThem) {
    const auto files = sourcesUnder(kRoot / "core");
    ASSERT_GT(files.size(), 10U);
    const auto unknown = std::ptrdiff_t(coreFolders().size());
    for (const auto& file : files) {
        const auto own = placeOf(firstFolder(fs::relative(file, kRoot / "core").generic_string()));
        EXPECT_LT(own, unknown) << file << " is in no folder of the house";
        for (const auto& include : includesOf(file)) {
            if (include.quoted) {
                EXPECT_LE(placeOf(firstFolder(include.path)), own)
                    << file << " includes " << include.path << ", which is not above it";
            }
        }
    }
}

TEST(Layers, CoreDoesNotSeeQt) {
    static const std::regex kQt("^Q[A-Z].*|^Qt.*");
    for (const auto& file : sourcesUnder(kRoot / "core")) {
        for (const auto& include : includesOf(file)) {
            EXPECT_FALSE(std::regex_match(include.path, kQt)) << file << ": " << include.path;
        }
    }
}

TEST(Layers, OnlyTheJsonReaderAndWriterMeetTheJsonLibrary) {
    for (const auto& file : sourcesUnder(kRoot / "core")) {
        const auto name = fs::relative(file, kRoot / "core").generic_string();
        if (name.rfind("base/json_", 0) != 0) {
            EXPECT_FALSE(usesHeader(file, "nlohmann/")) << name;
        }
    }
}

TEST(Layers, BoostGeometryIsMetInOneSourceFile) {
    int users = 0;
    for (const auto& file : sourcesUnder(kRoot / "core")) {
        if (usesHeader(file, "boost/geometry")) {
            ++users;
            EXPECT_EQ(file.extension(), ".cpp") << file;
        }
    }
    EXPECT_LE(users, 1);
}

TEST(Layers, UiDoesNotSeeApp) {
    for (const auto& file : sourcesUnder(kRoot / "ui")) {
        EXPECT_FALSE(usesHeader(file, "app/")) << file;
    }
}

/// A failing one of these passes silently inside GoogleTest (measured with Qt 6.4).
TEST(Layers, ToolkitTestMacrosAreNotUsed) {
    static const std::regex kMacro(
        R"re(\bQ(COMPARE\w*|VERIFY\w*|TRY_\w+|FAIL|SKIP|WARN|EXPECT_FAIL|BENCHMARK\w*|TEST_\w*MAIN)\s*\()re");
    for (const char* used :
         {"    QCOMPARE(1, 2);", "if (x) QVERIFY2 (y, z);", "{QTRY_COMPARE_GE(1, 2)"}) {
        ASSERT_TRUE(std::regex_search(used, kMacro)) << used;
    }
    ASSERT_FALSE(std::regex_search("QTest::qWait(1); EXPECT_EQ(1, 2); QSignalSpy spy(x);", kMacro));
    const fs::path self = fs::weakly_canonical(kRoot / "tests/architecture/layers_test.cpp");
    int files = 0;
    for (const auto& file : sourcesUnder(kRoot / "tests")) {
        if (fs::weakly_canonical(file) == self) {
            continue;
        }
        ++files;
        std::ifstream in(file);
        int number = 0;
        for (std::string line; std::getline(in, line);) {
            ++number;
            EXPECT_FALSE(std::regex_search(line, kMacro)) << file << ":" << number;
        }
    }
    EXPECT_GT(files, 50);
}

}  // namespace
