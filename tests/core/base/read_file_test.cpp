#include "base/read_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

namespace gw {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

class ReadFile : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "read_file_XXXXXX").string();
        ASSERT_NE(mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
    }
    void TearDown() override { fs::remove_all(folder_); }

    std::string at(const std::string& name) const { return (folder_ / name).string(); }
    std::string write(const std::string& name, const std::string& bytes) const {
        std::ofstream(folder_ / name, std::ios::binary) << bytes;
        return at(name);
    }

    fs::path folder_;
};

TEST_F(ReadFile, GivesEveryByte) {
    std::string bytes;
    for (int i = 0; i < 200'000; ++i) {
        bytes += static_cast<char>(i % 251);
    }
    EXPECT_EQ(readFile(write("yard.json", bytes)).value(), bytes);
    EXPECT_EQ(readFile(write("empty.json", "")).value(), "");
}

TEST_F(ReadFile, FollowsALink) {
    fs::create_symlink(write("yard.json", "{}"), folder_ / "link.json");
    EXPECT_EQ(readFile(at("link.json")).value(), "{}");
}

TEST_F(ReadFile, MissingFile) {
    const auto read = readFile(at("none.json"));
    ASSERT_FALSE(read.has_value());
    EXPECT_EQ(read.error().code, ErrorCode::unreadable);
    EXPECT_EQ(read.error().file, at("none.json"));
    EXPECT_EQ(read.error().found, "nothing there");
    EXPECT_EQ(read.error().sentence, "the file cannot be opened");
}

TEST_F(ReadFile, LinkToNothing) {
    fs::create_symlink(folder_ / "none.json", folder_ / "link.json");
    EXPECT_EQ(readFile(at("link.json")).error().sentence, "the file cannot be opened");
}

TEST_F(ReadFile, LinkToItself) {
    fs::create_symlink(folder_ / "link.json", folder_ / "link.json");
    EXPECT_EQ(readFile(at("link.json")).error().sentence, "the file cannot be opened");
}

TEST_F(ReadFile, Folder) {
    const auto read = readFile(folder_.string());
    ASSERT_FALSE(read.has_value());
    EXPECT_EQ(read.error().code, ErrorCode::unreadable);
    EXPECT_EQ(read.error().found, "a folder");
}

TEST_F(ReadFile, PipeDoesNotMakeItWait) {
    ASSERT_EQ(mkfifo((folder_ / "pipe").c_str(), 0600), 0);
    EXPECT_EQ(readFile(at("pipe")).error().sentence, "this is not a file");
}

TEST_F(ReadFile, FileAtTheCapAndOneByteBeyond) {
    const auto path = write("yard.json", "12345");
    EXPECT_EQ(readFile(path, 5).value(), "12345");
    const auto read = readFile(path, 4);
    ASSERT_FALSE(read.has_value());
    EXPECT_EQ(read.error().code, ErrorCode::unreadable);
    EXPECT_EQ(read.error().sentence, "the file is too large");
    EXPECT_EQ(read.error().expected, "at most 4 bytes");
    EXPECT_EQ(read.error().found, "5 bytes");
}

/// Files of /proc tell a size of 0 and have more.
TEST_F(ReadFile, FileThatDoesNotTellItsSize) {
    if (!fs::exists("/proc/self/status")) {
        GTEST_SKIP() << "no /proc here";
    }
    EXPECT_THAT(readFile("/proc/self/status").value(), HasSubstr("Name:"));
    EXPECT_EQ(readFile("/proc/self/status", 10).error().found, "more");
}

TEST_F(ReadFile, FileThatMayNotBeRead) {
    const auto path = write("secret.json", "{}");
    fs::permissions(folder_, fs::perms::all);
    fs::permissions(path, fs::perms::none);
    // Permission bits do not stop root: become somebody else for the one call.
    constexpr uid_t kNobody = 65534;
    const bool root = geteuid() == 0;
    ASSERT_TRUE(!root || seteuid(kNobody) == 0);
    const auto read = readFile(path);
    ASSERT_TRUE(!root || seteuid(0) == 0);
    ASSERT_FALSE(read.has_value());
    EXPECT_EQ(read.error().code, ErrorCode::unreadable);
    EXPECT_EQ(read.error().sentence, "the file cannot be opened");
}

}  // namespace
}  // namespace gw
