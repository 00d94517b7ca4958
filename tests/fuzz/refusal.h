#pragma once

#include "base/result.h"

namespace gw::fuzz {

/// Requires that an error is one printable line in UTF-8 with a sentence and the file's name.
void requireOneClearLine(const Error& error, const std::string& file);

}  // namespace gw::fuzz
