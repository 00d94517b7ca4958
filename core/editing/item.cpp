#include "editing/item.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace gw::editing {
namespace {

template <class Things, class Id>
std::optional<std::size_t> find(const Things& things, const Id& id) {
    const auto found = std::find_if(
        things.begin(), things.end(), [&](const auto& thing) { return thing.id == id; });
    return found == things.end() ? std::nullopt
                                 : std::optional(static_cast<std::size_t>(found - things.begin()));
}

char lower(char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

std::string called(const std::string& kind, const std::string& name, const std::string& id) {
    const std::string& shown = name.empty() ? id : name;
    const bool saysIt = shown.size() >= kind.size() &&
                        std::equal(kind.begin(), kind.end(), shown.begin(), [](char a, char b) {
                            return a == lower(b);
                        });
    return saysIt ? kind + shown.substr(kind.size()) : kind + " " + shown;
}

/// The kind of an item, its name as given and its id.
struct NameOf {
    const layout::Layout& layout;

    template <class Things, class Id>
    static const typename Things::value_type* at(const Things& things, const Id& id) {
        const auto index = find(things, id);
        return index ? &things[*index] : nullptr;
    }

    std::string operator()(const layout::ConductorId& id) const {
        const auto* there = at(layout.conductors, id);
        return called("conductor", there == nullptr ? std::string() : there->tag, id.text());
    }
    std::string operator()(const layout::BlockId& id) const {
        const auto* there = at(layout.blocks, id);
        return called("block", there == nullptr ? std::string() : there->name, id.text());
    }
    std::string operator()(const layout::EntryId& id) const {
        const auto* there = at(layout.entries, id);
        return called("entry", there == nullptr ? std::string() : there->name, id.text());
    }
    std::string operator()(const layout::CircuitId& id) const {
        const auto* there = at(layout.circuits, id);
        return called("circuit", there == nullptr ? std::string() : there->name, id.text());
    }
};

struct Kind {
    std::string one;
    std::string many;
};

/// In the order of Item's alternatives.
const std::array<Kind, std::variant_size_v<Item>>& kinds() {
    static const std::array<Kind, std::variant_size_v<Item>> kKinds{{{"conductor", "conductors"},
                                                                     {"block", "blocks"},
                                                                     {"entry", "entries"},
                                                                     {"circuit", "circuits"}}};
    return kKinds;
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        text += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
    }
    return text;
}

}  // namespace

std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::SystemId& id) {
    return find(layout.systems, id);
}
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::CircuitId& id) {
    return find(layout.circuits, id);
}
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::EntryId& id) {
    return find(layout.entries, id);
}
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::BlockId& id) {
    return find(layout.blocks, id);
}
std::optional<std::size_t> indexOf(const layout::Layout& layout, const layout::ConductorId& id) {
    return find(layout.conductors, id);
}

bool isThere(const layout::Layout& layout, const Item& item) {
    return std::visit([&](const auto& id) { return indexOf(layout, id).has_value(); }, item);
}

const std::string& idText(const Item& item) {
    return std::visit([](const auto& id) -> const std::string& { return id.text(); }, item);
}

std::string itemName(const layout::Layout& layout, const Item& item) {
    return std::visit(NameOf{layout}, item);
}

std::string itemsName(const layout::Layout& layout, const Items& items) {
    if (items.size() == 1) {
        return itemName(layout, items.front());
    }
    std::vector<std::string> words;
    for (std::size_t kind = 0; kind < kinds().size(); ++kind) {
        const auto count = std::count_if(
            items.begin(), items.end(), [&](const Item& item) { return item.index() == kind; });
        if (count > 0) {
            words.push_back(std::to_string(count) + " " +
                            (count == 1 ? kinds()[kind].one : kinds()[kind].many));
        }
    }
    return listed(words);
}

bool holds(const Items& items, const Item& item) {
    return std::find(items.begin(), items.end(), item) != items.end();
}

}  // namespace gw::editing
