#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "checks/finding.h"
#include "geometry/built_layout.h"

namespace CLI {
class App;
}

/// The verb `takeoff`.
namespace gw::app {

struct TakeoffOptions {
    std::vector<std::string> tables;  ///< empty: all
    std::string allowance;            ///< as typed; empty: our own
    bool json = false;
    std::string csv;   ///< a folder, or empty
    std::string html;  ///< a file, or empty
    std::string out;   ///< a file; empty: standard output
    // Drawings, NAME.pdf or NAME.svg, or empty.
    std::string cards;   ///< bench cards
    std::string steps;   ///< the landing order as pictures
    std::string labels;  ///< labels to be cut out, or on a sheet of labels
    std::string grid;    ///< of that sheet, as typed; empty: plain paper
    int skip = 0;        ///< labels of its first page that are used up
    std::string paper;   ///< empty: Letter
};

void addTakeoffOptions(CLI::App& verb, TakeoffOptions& options);

/// Prints the tables asked for, or writes them or the drawings and prints where to.
Result<void> tellTakeoff(const geometry::BuiltLayout& built,
                         const std::vector<checks::Finding>& findings,
                         const TakeoffOptions& options);

}  // namespace gw::app
