#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "layout/layout.h"

/// The layout file: {"format": "gutterwright-layout", "version": 1, "unit": "in", …} with the
/// members of layout::Layout by their names. Published schema: resources/schema/layout.schema.json.
namespace gw::files {

inline constexpr int kLayoutVersion = 1;

/// What the bytes say, as a layout that layout::validate accepts with this shelf. `unit` may be
/// "mm"; then every length in the file is. The first problem otherwise: file, JSON pointer (or line
/// and column), what was expected and found. Members we do not know are errors, never dropped.
Result<layout::Layout> readLayout(std::string_view bytes,
                                  const std::string& fileName,
                                  const parts::Shelf& shelf);

/// The same layout, always the same bytes: readLayout(writeLayout(x)) is x, and writing that again
/// gives these bytes. Lengths in inches.
std::string writeLayout(const layout::Layout& layout);

}  // namespace gw::files
