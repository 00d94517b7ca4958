#include "support/help_pages.h"

#include <filesystem>

#include "base/read_file.h"

namespace gw::test {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kBegin = "<!-- checks -->\n";
constexpr std::string_view kEnd = "<!-- /checks -->\n";

std::string pageName(checks::Check check) {
    return std::string(checks::checkName(check)) + ".md";
}

}  // namespace

Result<std::string> helpSource(checks::Check check) {
    return readFile((fs::path(GW_SOURCE_DIR) / "resources/help/checks" / pageName(check)).string());
}

Result<std::map<checks::Check, checks::HelpPage>> shippedHelp() {
    std::map<checks::Check, checks::HelpPage> pages;
    for (const checks::Check check : checks::allChecks()) {
        const auto text = helpSource(check);
        if (!text) {
            return fail(text.error());
        }
        auto page = checks::parseHelpPage(*text, pageName(check));
        if (!page) {
            return fail(page.error());
        }
        pages.emplace(check, std::move(*page));
    }
    return pages;
}

std::string readmePath() {
    return (fs::path(GW_SOURCE_DIR) / "README.md").string();
}

std::string readmeTable(const std::map<checks::Check, checks::HelpPage>& pages) {
    return "\n" + checks::checkTable(pages, standards::Edition::nec2023) + "\n";
}

Result<std::string> withTable(const std::string& readme, const std::string& table) {
    const auto begin = readme.find(kBegin);
    const auto end = readme.find(kEnd, begin == std::string::npos ? 0 : begin);
    if (begin == std::string::npos || end == std::string::npos) {
        return fail({ErrorCode::missing,
                     "the marks of the table of checks are not there",
                     readmePath(),
                     "",
                     std::string(kBegin) + kEnd.data()});
    }
    return readme.substr(0, begin + kBegin.size()) + table + readme.substr(end);
}

}  // namespace gw::test
