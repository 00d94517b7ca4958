#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "parts/part.h"

namespace gw::parts {

struct PartFile {
    std::string name;  ///< for messages
    std::string bytes;
};

/// The parts of several files on one shelf. Error `duplicate`, naming both files, when two of them
/// claim an id.
Result<Shelf> loadShelf(const std::vector<PartFile>& files);

}  // namespace gw::parts
