#pragma once

#include <string>

#include "base/result.h"

namespace gw {

/// The whole of a regular file. Error `unreadable`, naming the path, for a missing file, a folder,
/// anything else that is not a regular file, one we may not read, or one over `mostBytes` (its size
/// is looked at before a byte is read, and again while reading).
Result<std::string> readFile(const std::string& path, std::size_t mostBytes = 16'000'000);

}  // namespace gw
