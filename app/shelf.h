#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "parts/part.h"

namespace gw::app {

/// The parts that come with the program (compiled in), and those of the user's own part files.
/// Error: the first thing wrong with a file, or an id that two files claim.
Result<parts::Shelf> loadShelf(const std::vector<std::string>& userFiles);

}  // namespace gw::app
