#include "app/command_line.h"

#include <sys/wait.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <fstream>

namespace gw::test {

namespace fs = std::filesystem;

std::string slurp(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

void CommandLine::SetUp() {
    std::string pattern = (fs::temp_directory_path() / "gutterwright-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
}

void CommandLine::TearDown() {
    fs::remove_all(folder_);
}

Outcome CommandLine::run(const std::string& arguments, const std::string& before) const {
    const auto err = folder_ / "stderr";
    const auto command =
        before + " " + std::string(GW_PROGRAM) + " " + arguments + " 2>'" + err.string() + "'";
    Outcome outcome;
    FILE* pipe = popen(command.c_str(), "r");
    std::array<char, 4096> buffer{};
    while (const auto read = std::fread(buffer.data(), 1, buffer.size(), pipe)) {
        outcome.out.append(buffer.data(), read);
    }
    const int raw = pclose(pipe);
    outcome.status = WIFEXITED(raw) ? WEXITSTATUS(raw) : -1;
    outcome.err = slurp(err);
    return outcome;
}

std::string CommandLine::write(const std::string& name, const std::string& bytes) const {
    std::ofstream(folder_ / name, std::ios::binary) << bytes;
    return (folder_ / name).string();
}

std::string CommandLine::sample(const std::string& name) {
    return std::string(GW_SOURCE_DIR) + "/samples/" + name + "/layout.json";
}

void expectOneLine(const Outcome& outcome) {
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1) << outcome.err;
    EXPECT_EQ(outcome.err.rfind("gutterwright: ", 0), 0U) << outcome.err;
}

}  // namespace gw::test
