#include "document/selection.h"

#include <algorithm>
#include <utility>

namespace gw::ui {
namespace {

template <class Things, class ThingId>
bool holds(const Things& things, const ThingId& id) {
    return std::any_of(
        things.begin(), things.end(), [&](const auto& thing) { return thing.id == id; });
}

struct Finder {
    const layout::Layout& layout;
    bool operator()(const layout::ConductorId& id) const { return holds(layout.conductors, id); }
    bool operator()(const layout::BlockId& id) const { return holds(layout.blocks, id); }
    bool operator()(const layout::EntryId& id) const { return holds(layout.entries, id); }
    bool operator()(const layout::CircuitId& id) const { return holds(layout.circuits, id); }
};

}  // namespace

bool isIn(const layout::Layout& layout, const Item& item) {
    return std::visit(Finder{layout}, item);
}

bool Selection::contains(const Item& item) const {
    return std::find(items_.begin(), items_.end(), item) != items_.end();
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
    items.erase(
        std::remove_if(
            items.begin(), items.end(), [&](const Item& item) { return !isIn(layout, item); }),
        items.end());
    set(std::move(items));
}

}  // namespace gw::ui
