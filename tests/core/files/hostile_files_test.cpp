#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <string>

#include "base/read_file.h"
#include "files/layout_file.h"

/// What no corpus can hold: files too large or too deep to keep, and things that are not files.
namespace gw::files {
namespace {

namespace fs = std::filesystem;

class HostileFile : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "gutterwright-XXXXXX").string();
        ASSERT_NE(mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
    }
    void TearDown() override { fs::remove_all(folder_); }

    std::string path(const std::string& name) const { return (folder_ / name).string(); }

    static void expectUnreadable(const std::string& path) {
        const auto start = std::chrono::steady_clock::now();
        const auto bytes = readFile(path);
        EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(2));
        ASSERT_FALSE(bytes);
        EXPECT_EQ(bytes.error().code, ErrorCode::unreadable);
        EXPECT_EQ(bytes.error().file, path);
        EXPECT_FALSE(bytes.error().found.empty());
    }

    fs::path folder_;
};

TEST_F(HostileFile, MissingFile) {
    expectUnreadable(path("nothing.json"));
}

TEST_F(HostileFile, Folder) {
    expectUnreadable(folder_.string());
}

TEST_F(HostileFile, FileInsteadOfAFolderOnTheWay) {
    std::ofstream(path("file")) << "{}";
    expectUnreadable(path("file/layout.json"));
}

TEST_F(HostileFile, LinkThatLeadsToItself) {
    fs::create_symlink(path("ring"), path("ring"));
    expectUnreadable(path("ring"));
}

/// Opening it for reading would wait for a writer for ever.
TEST_F(HostileFile, Pipe) {
    ASSERT_EQ(mkfifo(path("pipe").c_str(), 0600), 0);
    expectUnreadable(path("pipe"));
}

TEST_F(HostileFile, DeviceWithoutEnd) {
    expectUnreadable("/dev/zero");
}

TEST_F(HostileFile, FileNobodyMayRead) {
    std::ofstream(path("locked.json")) << "{}";
    fs::permissions(folder_, fs::perms::all);
    fs::permissions(path("locked.json"), fs::perms::none);
    // Permission bits do not stop root: become somebody else for the one call.
    constexpr uid_t kNobody = 65534;
    const bool root = geteuid() == 0;
    ASSERT_TRUE(!root || seteuid(kNobody) == 0);
    expectUnreadable(path("locked.json"));
    ASSERT_TRUE(!root || seteuid(0) == 0);
}

TEST_F(HostileFile, HundredMegabytesAreRefusedBeforeTheyAreRead) {
    std::ofstream out(path("blanks.json"), std::ios::binary);
    const std::string blanks(1'000'000, ' ');
    for (int i = 0; i < 100; ++i) {
        out << blanks;
    }
    out.close();
    expectUnreadable(path("blanks.json"));
}

Error errorOf(const std::string& bytes) {
    const auto start = std::chrono::steady_clock::now();
    const auto layout = readLayout(bytes, "test.json", {});
    EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(5));
    return layout ? Error{.code = ErrorCode::unwritable, .sentence = "read"} : layout.error();
}

TEST(HostileBytes, HundredMegabytes) {
    EXPECT_EQ(errorOf(std::string(100'000'000, ' ')).code, ErrorCode::outOfRange);
}

std::string repeated(const std::string& text, int times) {
    std::string all;
    for (int i = 0; i < times; ++i) {
        all += text;
    }
    return all;
}

TEST(HostileBytes, NestedTenThousandDeep) {
    for (const int levels : {65, 10'000, 1'000'000}) {
        const auto lists = repeated("[", levels) + repeated("]", levels);
        const auto objects = repeated("{\"a\":", levels) + "1" + repeated("}", levels);
        EXPECT_EQ(errorOf(lists).code, ErrorCode::outOfRange) << levels;
        EXPECT_EQ(errorOf("{\"title\": " + lists + "}").code, ErrorCode::outOfRange) << levels;
        EXPECT_EQ(errorOf(objects).code, ErrorCode::outOfRange) << levels;
    }
}

TEST(HostileBytes, NestedAsDeepAsAllowedIsBlamedForWhatItIs) {
    EXPECT_EQ(errorOf(repeated("[", 64) + repeated("]", 64)).code, ErrorCode::syntax);
}

TEST(HostileBytes, NumberOfAMillionDigits) {
    const auto digits = std::string(1'000'000, '9');
    EXPECT_EQ(errorOf("{\"version\": " + digits + "}").code, ErrorCode::outOfRange);
    EXPECT_EQ(errorOf("{\"version\": 0." + digits + "}").code, ErrorCode::missing);
}

TEST(HostileBytes, TextOfAMillionCharactersIsNotRepeatedInTheError) {
    const auto error = errorOf("{\"format\": \"" + repeated("½", 1'000'000) + "\"}");
    EXPECT_LT(toLine(error).size(), 300U);
}

}  // namespace
}  // namespace gw::files
