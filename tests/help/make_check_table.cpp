#include <fstream>
#include <iostream>

#include "base/read_file.h"
#include "support/help_pages.h"

/// Writes the table of checks into README, from the help pages and the rules of the checks.
/// Usage: make_check_table      Exit status: 0 written, 3 a page or a mark of README is wrong.
int main() {
    using namespace gw;
    const auto pages = test::shippedHelp();
    const auto readme = readFile(test::readmePath());
    if (!pages || !readme) {
        std::cerr << toLine(pages ? readme.error() : pages.error()) << "\n";
        return 3;
    }
    const auto written = test::withTable(*readme, test::readmeTable(*pages));
    if (!written) {
        std::cerr << toLine(written.error()) << "\n";
        return 3;
    }
    std::ofstream out(test::readmePath(), std::ios::binary);
    out << *written;
    return out.flush() ? 0 : 3;
}
