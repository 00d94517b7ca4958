#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

/// Calls the program as a person or a script does.
namespace gw::test {

struct Outcome {
    int status = -1;
    std::string out;
    std::string err;
};

/// Each test has an empty folder of its own.
class CommandLine : public ::testing::Test {
protected:
    void SetUp() override;
    void TearDown() override;

    /// `arguments` go through the shell; `before` is put in front of the program.
    Outcome run(const std::string& arguments, const std::string& before = {}) const;
    /// Writes a file into the folder and gives its path.
    std::string write(const std::string& name, const std::string& bytes) const;

    static std::string sample(const std::string& name);

    std::filesystem::path folder_;
};

std::string slurp(const std::filesystem::path& path);

/// Status 2, nothing on standard output, one line on standard error.
void expectOneLine(const Outcome& outcome);

}  // namespace gw::test
