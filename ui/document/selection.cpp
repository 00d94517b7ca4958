#include "document/selection.h"

#include <algorithm>
#include <utility>

namespace gw::ui {

bool Selection::contains(const Item& item) const {
    return editing::holds(items_, item);
}

void Selection::set(std::vector<Item> items) {
    if (items != items_) {
        items_ = std::move(items);
        Q_EMIT changed();
    }
}

void Selection::toggle(const Item& item) {
    auto items = items_;
    const auto found = std::find(items.begin(), items.end(), item);
    if (found != items.end()) {
        items.erase(found);
    } else {
        items.push_back(item);
    }
    set(std::move(items));
}

void Selection::keepThoseIn(const layout::Layout& layout) {
    auto items = items_;
    std::erase_if(items, [&](const Item& item) { return !editing::isThere(layout, item); });
    set(std::move(items));
}

}  // namespace gw::ui
