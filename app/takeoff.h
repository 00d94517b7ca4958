#pragma once

#include <string>
#include <vector>

#include "base/result.h"
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
};

void addTakeoffOptions(CLI::App& verb, TakeoffOptions& options);

/// Prints the tables asked for, or writes them and prints where to.
Result<void> tellTakeoff(const geometry::BuiltLayout& built, const TakeoffOptions& options);

}  // namespace gw::app
