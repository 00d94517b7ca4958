#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>

#include "base/json_writer.h"
#include "checks/finding.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"
#include "tools/samples.h"

/// Writes the sample layouts and what the checks say of them today. Read the differences before
/// committing them: expected.json is a statement of ours, not of the program.
/// Usage: make_samples FOLDER
namespace {

namespace fs = std::filesystem;
using namespace gw;

/// The findings that are not `meets`, and the checks that answered.
std::string expectedOf(const std::vector<checks::Finding>& findings) {
    auto answered = JsonTree::array();
    for (const auto check : checks::allChecks()) {
        const auto gave = [&](const checks::Finding& finding) { return finding.check == check; };
        if (std::any_of(findings.begin(), findings.end(), gave)) {
            answered.push(checks::checkName(check));
        }
    }
    auto rows = JsonTree::array();
    for (const auto& finding : findings) {
        if (finding.verdict == checks::Verdict::meets) {
            continue;
        }
        auto subjects = JsonTree::array();
        for (const auto& subject : finding.subjects) {
            subjects.push(checks::subjectText(subject));
        }
        auto row = JsonTree::object();
        row.set("verdict", checks::verdictText(finding.verdict));
        row.set("check", checks::checkName(finding.check));
        row.set("subjects", std::move(subjects));
        rows.push(std::move(row));
    }
    auto tree = JsonTree::object();
    tree.set("answered", std::move(answered)).set("findings", std::move(rows));
    return tree.text();
}

void writeSample(const fs::path& folder, const layout::Layout& layout, const parts::Shelf& shelf) {
    if (const auto valid = layout::validate(layout, shelf); !valid) {
        std::cerr << folder << ": " << toLine(valid.error()) << "\n";
        std::exit(3);
    }
    fs::create_directories(folder);
    std::ofstream(folder / "layout.json", std::ios::binary) << files::writeLayout(layout);
    const auto findings = checks::checkAll(geometry::build(layout, shelf));
    std::ofstream(folder / "expected.json", std::ios::binary) << expectedOf(findings);
    const auto counts = checks::tally(findings);
    std::cout << folder.filename().string() << ": " << counts.meets << " meet, " << counts.breach
              << " breach, " << counts.caution << " caution, " << counts.cannotTell
              << " cannot tell\n";
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 2) {
        std::cerr << "usage: make_samples FOLDER\n";
        return 2;
    }
    const auto shelf = test::shippedShelf();
    for (const auto& sample : tools::allSamples(shelf)) {
        writeSample(fs::path(argv[1]) / sample.name, sample.layout, shelf);
    }
    return 0;
}
