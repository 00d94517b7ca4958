#pragma once

#include <string_view>

#include "editing/item.h"

namespace gw::editing {

/// Things whose id, tag or name, or what they lead to, supply or are made of, has the text in it,
/// whatever its capitals: first those whose id, tag or name it is, then those where one begins with
/// it, then the rest; among these entries, blocks, conductors, circuits in the layout's order. None
/// for an empty text.
Items findItems(const layout::Layout& layout, std::string_view text);

}  // namespace gw::editing
