#pragma once

#include "base/json_reader.h"
#include "layout/layout.h"

namespace gw::files {

/// The layout in a JSON value; types and ranges only. Problems are recorded in its document.
layout::Layout readLayoutObject(const JsonValue& value);

}  // namespace gw::files
