#pragma once

#include "base/result.h"
#include "editing/item.h"
#include "layout/layout.h"

/// What edits give back. An edit is a pure function of the layout as built; what it gives passes
/// layout::validate when the layout it came from did. An item that is not there, or a request that
/// cannot be met, is an Error whose sentence can be shown as it stands.
namespace gw::editing {

using Edit = Result<layout::Layout>;

/// With the items that are new, in the order in which they were made.
struct Made {
    layout::Layout layout;
    Items items;
};

}  // namespace gw::editing
