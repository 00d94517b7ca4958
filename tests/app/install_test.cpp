#include <gtest/gtest.h>

#include <cstdlib>

#include "app/command_line.h"

namespace gw::test {
namespace {

namespace fs = std::filesystem;

/// As a package is made: `cmake --install` into a folder of its own.
class Install : public CommandLine {
protected:
    void SetUp() override {
        CommandLine::SetUp();
        ASSERT_EQ(system("'" GW_CMAKE "' --install '" GW_BINARY_DIR "' --prefix '" +
                         place().string() + "'"),
                  0);
    }
    fs::path place() const { return folder_ / "usr"; }
    int system(const std::string& command) const {
        return std::system((command + " >'" + (folder_ / "said").string() + "' 2>&1").c_str());
    }
    /// What stands after the key of a desktop file.
    std::string valueOf(const std::string& key) const {
        const std::string text = slurp(place() / "share/applications/gutterwright.desktop");
        const auto at = text.find("\n" + key + "=");
        if (at == std::string::npos) {
            return {};
        }
        const auto from = at + key.size() + 2;
        return text.substr(from, text.find('\n', from) - from);
    }
};

TEST_F(Install, TheProgramRunsFromWhereItIsPut) {
    const auto program = (place() / "bin/gutterwright").string();
    ASSERT_TRUE(fs::exists(program));
    EXPECT_EQ(system("'" + program + "' check '" + sample("five-tenants") + "'"), 0);
}

TEST_F(Install, TheDesktopFileNamesProgramIconAndTypeThatAreInstalledToo) {
    EXPECT_EQ(valueOf("Exec"), "gutterwright %f");
    EXPECT_TRUE(
        fs::exists(place() / "share/icons/hicolor/scalable/apps" / (valueOf("Icon") + ".svg")));
    std::string type = valueOf("MimeType");
    ASSERT_FALSE(type.empty());
    ASSERT_EQ(type.back(), ';');
    type.pop_back();
    const std::string types = slurp(place() / "share/mime/packages/gutterwright.xml");
    EXPECT_NE(types.find("mime-type type=\"" + type + "\""), std::string::npos);
}

/// The magic of the type is looked for in the first 64 bytes and what it is.
TEST_F(Install, EverySampleIsInstalledAndBeginsAsTheTypeSays) {
    int samples = 0;
    for (const auto& entry : fs::directory_iterator(fs::path(GW_SOURCE_DIR) / "samples")) {
        if (entry.is_directory()) {
            const auto name = entry.path().filename();
            const auto installed = place() / "share/gutterwright/samples" / name / "layout.json";
            const std::string bytes = slurp(installed);
            EXPECT_EQ(bytes, slurp(entry.path() / "layout.json")) << installed;
            EXPECT_LE(bytes.find("\"gutterwright-layout\""), 64U) << installed;
            ++samples;
        }
    }
    EXPECT_GT(samples, 0);
}

TEST_F(Install, TheTypesDatabaseTakesIt) {
    const auto mime = (place() / "share/mime").string();
    if (std::system("command -v update-mime-database >/dev/null") != 0) {
        GTEST_SKIP() << "update-mime-database is not installed";
    }
    ASSERT_EQ(system("update-mime-database '" + mime + "'"), 0) << slurp(folder_ / "said");
    EXPECT_NE(slurp(place() / "share/mime/globs").find("gutterwright-layout"), std::string::npos);
}

}  // namespace
}  // namespace gw::test
