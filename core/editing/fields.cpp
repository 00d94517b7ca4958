#include "editing/fields.h"

#include <algorithm>
#include <charconv>

#include "editing/field_forms.h"
#include "editing/settle.h"

namespace gw::editing {

using geometry::BuiltLayout;
using layout::Layout;

// ---- owners ---------------------------------------------------------------------------------

Owner ownerOf(const Item& item) {
    return std::visit([](const auto& id) -> Owner { return id; }, item);
}

Owners ownersOf(const Items& items) {
    Owners owners;
    for (const Item& item : items) {
        owners.push_back(ownerOf(item));
    }
    return owners;
}

namespace {

struct IsThere {
    const Layout& layout;
    bool operator()(const WholeGutter& /*gutter*/) const { return true; }
    template <class Id>
    bool operator()(const Id& id) const {
        return indexOf(layout, id).has_value();
    }
};

struct OwnerName {
    const Layout& layout;
    std::string operator()(const WholeGutter& /*gutter*/) const { return "the gutter"; }
    std::string operator()(const layout::SystemId& id) const {
        const auto index = indexOf(layout, id);
        const std::string name = index ? layout.systems[*index].name : std::string();
        return "system " + (name.empty() ? id.text() : name);
    }
    template <class Id>
    std::string operator()(const Id& id) const {
        return itemName(layout, id);
    }
};

std::optional<Item> itemOf(const Owner& owner) {
    return std::visit(
        [](const auto& id) -> std::optional<Item> {
            if constexpr (std::is_constructible_v<Item, decltype(id)>) {
                return Item(id);
            } else {
                return std::nullopt;
            }
        },
        owner);
}

}  // namespace

bool isThere(const Layout& layout, const Owner& owner) {
    return std::visit(IsThere{layout}, owner);
}

std::string ownerName(const Layout& layout, const Owner& owner) {
    return std::visit(OwnerName{layout}, owner);
}

std::string ownersName(const Layout& layout, const Owners& owners) {
    Items items;
    for (const Owner& owner : owners) {
        if (const auto item = itemOf(owner)) {
            items.push_back(*item);
        }
    }
    if (owners.size() == 1 || items.size() != owners.size()) {
        return owners.empty() ? std::string() : ownerName(layout, owners.front());
    }
    return itemsName(layout, items);
}

// ---- fields ---------------------------------------------------------------------------------

namespace {

struct FieldsOf {
    const BuiltLayout& built;
    const parts::Shelf& shelf;
    std::vector<Field> operator()(const WholeGutter& /*gutter*/) const {
        return gutterFields(built);
    }
    std::vector<Field> operator()(const layout::SystemId& id) const {
        return systemFields(built, id);
    }
    std::vector<Field> operator()(const layout::CircuitId& id) const {
        return circuitFields(built, id);
    }
    std::vector<Field> operator()(const layout::EntryId& id) const {
        return entryFields(built, id);
    }
    std::vector<Field> operator()(const layout::BlockId& id) const {
        return blockFields(built, shelf, id);
    }
    std::vector<Field> operator()(const layout::ConductorId& id) const {
        return conductorFields(built, id);
    }
};

const Field* named(const std::vector<Field>& fields, const std::string& name) {
    const auto found = std::find_if(
        fields.begin(), fields.end(), [&](const Field& one) { return one.name == name; });
    return found == fields.end() ? nullptr : &*found;
}

}  // namespace

std::vector<Field> fieldsOf(const BuiltLayout& built,
                            const parts::Shelf& shelf,
                            const Owner& owner) {
    return isThere(built.layout, owner) ? std::visit(FieldsOf{built, shelf}, owner)
                                        : std::vector<Field>();
}

std::vector<SharedField> sharedFields(const BuiltLayout& built,
                                      const parts::Shelf& shelf,
                                      const Owners& owners) {
    std::vector<SharedField> shared;
    for (std::size_t i = 0; i < owners.size(); ++i) {
        auto fields = fieldsOf(built, shelf, owners[i]);
        if (i == 0) {
            for (Field& field : fields) {
                shared.push_back({std::move(field), true});
            }
            continue;
        }
        std::erase_if(shared, [&](SharedField& one) {
            const Field* other = named(fields, one.field.name);
            const bool alike = other != nullptr && other->label == one.field.label;
            one.same = one.same && alike && other->value == one.field.value;
            return !alike;
        });
    }
    return shared;
}

// ---- setting --------------------------------------------------------------------------------

namespace {

/// The layout on its way through the edits, with its shapes where an edit asks for them.
class Setting {
public:
    Setting(const BuiltLayout& before, const parts::Shelf& shelf)
        : before_(&before), shelf_(&shelf), layout_(before.layout) {}

    Result<void> set(const FieldEdit& edit) {
        const auto fields = fieldsOf(built(), *shelf_, edit.owner);
        const Field* field = named(fields, edit.name);
        if (field == nullptr) {
            return fail({ErrorCode::unknown,
                         ownerName(layout_, edit.owner) + " has no " + edit.name + " here"});
        }
        if (field->write) {
            written_ = true;
            return field->write(layout_, edit.text);
        }
        if (field->value == edit.text) {
            return {};
        }
        if (const auto flushed = settle(); !flushed) {
            return flushed;
        }
        auto after = field->edit(built(), edit.text);
        if (!after) {
            return fail(after.error());
        }
        layout_ = std::move(*after);
        current_ = geometry::build(layout_, *shelf_);
        return {};
    }

    /// What was written so far is checked, and conductors follow it.
    Result<void> settle() {
        if (!written_) {
            return {};
        }
        written_ = false;
        if (auto valid = accepted(layout_, *shelf_); !valid) {
            return fail(inWords(layout_, valid.error()));
        }
        auto whole = accepted(settled(built(), layout_, *shelf_), *shelf_);
        if (!whole) {
            return fail(inWords(layout_, whole.error()));
        }
        layout_ = std::move(*whole);
        current_ = geometry::build(layout_, *shelf_);
        return {};
    }

    const Layout& layout() const { return layout_; }

private:
    const BuiltLayout& built() const { return current_ ? *current_ : *before_; }

    const BuiltLayout* before_;
    const parts::Shelf* shelf_;
    Layout layout_;
    std::optional<BuiltLayout> current_;
    bool written_ = false;
};

}  // namespace

Edit setFields(const BuiltLayout& built,
               const parts::Shelf& shelf,
               const std::vector<FieldEdit>& edits,
               std::size_t* refused) {
    Setting setting(built, shelf);
    for (std::size_t i = 0; i < edits.size(); ++i) {
        const auto set = setting.set(edits[i]);
        const auto settledNow = set && i + 1 == edits.size() ? setting.settle() : set;
        if (!settledNow) {
            if (refused != nullptr) {
                *refused = i;
            }
            return fail(settledNow.error());
        }
    }
    return setting.layout();
}

Edit setField(const BuiltLayout& built,
              const parts::Shelf& shelf,
              const Owners& owners,
              const std::string& name,
              const std::string& text) {
    std::vector<FieldEdit> edits;
    for (const Owner& owner : owners) {
        edits.push_back({owner, name, text});
    }
    return setFields(built, shelf, edits);
}

std::string fieldStepName(const BuiltLayout& before,
                          const parts::Shelf& shelf,
                          const Owners& owners,
                          const std::string& name,
                          const std::string& text) {
    const auto fields = fieldsOf(before, shelf, owners.front());
    const Field* field = named(fields, name);
    const std::string whose = field != nullptr && !field->whose.empty()
                                  ? field->whose
                                  : ownersName(before.layout, owners);
    std::string what = field != nullptr ? field->label : name;
    what = what.substr(0, what.find(" ("));
    if (what.size() > 1 && std::islower(static_cast<unsigned char>(what[1])) != 0) {
        what.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(what.front())));
    }
    if (saysNothing(text)) {
        return "Leave " + what + " of " + whose + " not stated";
    }
    return "Set " + what + " of " + whose + " to " + std::string(trimmed(text));
}

// ---- errors ---------------------------------------------------------------------------------

namespace {

std::vector<std::string> stepsOf(std::string_view pointer) {
    std::vector<std::string> steps;
    while (!pointer.empty() && pointer.front() == '/') {
        pointer.remove_prefix(1);
        const auto end = std::min(pointer.find('/'), pointer.size());
        steps.emplace_back(pointer.substr(0, end));
        pointer.remove_prefix(end);
    }
    return steps;
}

/// "windowStart" -> "window start".
std::string spaced(const std::string& member) {
    std::string words;
    for (const char c : member) {
        if (std::isupper(static_cast<unsigned char>(c)) != 0) {
            words += ' ';
        }
        words += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return words;
}

template <class Things>
std::optional<std::string> nameAt(const Layout& layout,
                                  const Things& things,
                                  const std::string& index) {
    std::size_t at = 0;
    const auto [end, error] = std::from_chars(index.data(), index.data() + index.size(), at);
    return error == std::errc{} && at < things.size()
               ? std::optional(ownerName(layout, things[at].id))
               : std::nullopt;
}

std::optional<std::string> thingAt(const Layout& layout, const std::vector<std::string>& steps) {
    if (steps.size() < 2) {
        return std::nullopt;
    }
    if (steps[0] == "systems") {
        return nameAt(layout, layout.systems, steps[1]);
    }
    if (steps[0] == "circuits") {
        return nameAt(layout, layout.circuits, steps[1]);
    }
    if (steps[0] == "entries") {
        return nameAt(layout, layout.entries, steps[1]);
    }
    if (steps[0] == "blocks") {
        return nameAt(layout, layout.blocks, steps[1]);
    }
    return steps[0] == "conductors" ? nameAt(layout, layout.conductors, steps[1]) : std::nullopt;
}

}  // namespace

Error inWords(const Layout& layout, Error error) {
    const auto steps = stepsOf(error.place);
    const auto thing = thingAt(layout, steps);
    std::string where = thing.value_or("");
    for (std::size_t i = thing ? 2 : 0; i < steps.size(); ++i) {
        where += (i == 0 ? "" : i == 2 && thing ? ", " : " ") + spaced(steps[i]);
    }
    if (!where.empty()) {
        error.sentence = where + ": " + error.sentence;
    }
    error.place.clear();
    return error;
}

}  // namespace gw::editing
