#pragma once

#include <array>
#include <cctype>
#include <span>

#include "editing/fields.h"

/// How the fields of each kind of thing are made: forms of typed values, and the lists of fields.
namespace gw::editing {

// ---- texts ----------------------------------------------------------------------------------

/// Without the spaces around it.
std::string_view trimmed(std::string_view text);
/// ASCII letters alike, large or small.
bool sameWord(std::string_view a, std::string_view b);
/// "", "-", "not stated": nothing is stated.
bool saysNothing(std::string_view text);

/// The exact length: fractions of 1/64 in, else decimals; millimetres to a thousandth.
std::string lengthText(units::Inches length, units::LengthUnit unit);
std::string numberText(double value);

/// A number in plain digits, with or without its unit after it. Error syntax.
Result<double> readNumber(std::string_view text, std::string_view unit);
/// The same, whole.
Result<int> readCount(std::string_view text, std::string_view unit);
/// "Cu", "Al", "aluminum", "CCA".
std::optional<standards::Metal> metalAbbreviated(std::string_view text);
Error notOneOf(std::string_view found, const std::vector<std::string>& choices);

// ---- making fields --------------------------------------------------------------------------

/// Makes the fields of one owner one after the other. `at`: the thing in any layout that has it.
template <class Thing>
class FieldMaker {
public:
    using At = std::function<Thing&(layout::Layout&)>;

    FieldMaker(const layout::Layout& layout, const Thing& now, At at)
        : layout_(&layout), now_(&now), at_(std::move(at)) {}

    void group(std::string title) { group_ = std::move(title); }
    void whose(std::string owner) { whose_ = std::move(owner); }

    Field& add(std::string name, std::string label, FieldKind kind, std::string value) {
        Field field{std::move(name), std::move(label), group_, kind, false, std::move(value)};
        field.whose = whose_;
        fields_.push_back(std::move(field));
        return fields_.back();
    }

    void text(std::string name, std::string label, std::string Thing::*member) {
        add(std::move(name), std::move(label), FieldKind::text, now_->*member).write =
            [at = at_, member](layout::Layout& layout, std::string_view typed) -> Result<void> {
            at(layout).*member = std::string(trimmed(typed));
            return {};
        };
    }

    void text(std::string name, std::string label, std::optional<std::string> Thing::*member) {
        Field& field =
            add(std::move(name), std::move(label), FieldKind::text, (now_->*member).value_or(""));
        field.mayBeOpen = true;
        field.write = [at = at_, member](layout::Layout& layout,
                                         std::string_view typed) -> Result<void> {
            auto& value = at(layout).*member;
            value = saysNothing(typed) ? std::nullopt : std::optional(std::string(trimmed(typed)));
            return {};
        };
    }

    /// get: std::optional<units::Inches>& of a Thing.
    template <class Get>
    void openLength(std::string name, std::string label, Get get) {
        const auto unit = layout_->displayUnit;
        Thing copy = *now_;
        const std::optional<units::Inches> value = get(copy);
        Field& field = add(std::move(name),
                           std::move(label),
                           FieldKind::length,
                           value ? lengthText(*value, unit) : std::string());
        field.mayBeOpen = true;
        field.write = [at = at_, get, unit](layout::Layout& layout,
                                            std::string_view typed) -> Result<void> {
            std::optional<units::Inches> read;
            if (!saysNothing(typed)) {
                const auto length = units::parseLength(typed, unit);
                if (!length) {
                    return fail(length.error());
                }
                read = *length;
            }
            get(at(layout)) = read;
            return {};
        };
    }
    void length(std::string name, std::string label, std::optional<units::Inches> Thing::*member) {
        openLength(
            std::move(name), std::move(label), [member](Thing & thing) -> auto& {
                return thing.*member;
            });
    }

    /// get: double& (inches) of a Thing.
    template <class Get>
    void place(std::string name, std::string label, Get get) {
        const auto unit = layout_->displayUnit;
        Thing copy = *now_;
        add(std::move(name),
            std::move(label),
            FieldKind::length,
            lengthText(units::Inches::of(get(copy)), unit))
            .write = [at = at_, get, unit](layout::Layout& layout,
                                           std::string_view typed) -> Result<void> {
            const auto length = units::parseLength(typed, unit);
            if (!length) {
                return fail(length.error());
            }
            get(at(layout)) = length->in();
            return {};
        };
    }

    void number(std::string name,
                std::string label,
                std::string unit,
                std::optional<double> Thing::*member) {
        const auto& value = now_->*member;
        Field& field = add(std::move(name),
                           std::move(label),
                           FieldKind::number,
                           value ? numberText(*value) : std::string());
        field.mayBeOpen = true;
        field.write = [at = at_, member, unit = std::move(unit)](
                          layout::Layout& layout, std::string_view typed) -> Result<void> {
            if (saysNothing(typed)) {
                (at(layout).*member).reset();
                return {};
            }
            const auto read = readNumber(typed, unit);
            if (!read) {
                return fail(read.error());
            }
            at(layout).*member = *read;
            return {};
        };
    }
    void count(std::string name,
               std::string label,
               std::string unit,
               std::optional<int> Thing::*member) {
        const auto& value = now_->*member;
        Field& field = add(std::move(name),
                           std::move(label),
                           FieldKind::number,
                           value ? std::to_string(*value) : std::string());
        field.mayBeOpen = true;
        field.write = [at = at_, member, unit = std::move(unit)](
                          layout::Layout& layout, std::string_view typed) -> Result<void> {
            if (saysNothing(typed)) {
                (at(layout).*member).reset();
                return {};
            }
            const auto read = readCount(typed, unit);
            if (!read) {
                return fail(read.error());
            }
            at(layout).*member = *read;
            return {};
        };
    }
    void count(std::string name, std::string label, int Thing::*member) {
        add(std::move(name), std::move(label), FieldKind::number, std::to_string(now_->*member))
            .write = [at = at_, member](layout::Layout& layout,
                                        std::string_view typed) -> Result<void> {
            const auto read = readCount(typed, {});
            if (!read) {
                return fail(read.error());
            }
            at(layout).*member = *read;
            return {};
        };
    }

    /// A choice of fixed values. values(): something to go through; say(value): its text.
    template <class Values, class Text, class Value>
    void choice(
        std::string name, std::string label, Values values, Text say, Value Thing::*member) {
        Field& field = add(
            std::move(name), std::move(label), FieldKind::choice, std::string(say(now_->*member)));
        field.choices = [values, say] { return textsOf(values, say); };
        field.write = [at = at_, values, say, member](layout::Layout& layout,
                                                      std::string_view typed) -> Result<void> {
            const auto read = readChoice<Value>(values, say, trimmed(typed));
            if (!read) {
                return fail(read.error());
            }
            at(layout).*member = *read;
            return {};
        };
    }
    template <class Values, class Text, class Value>
    void choice(std::string name,
                std::string label,
                Values values,
                Text say,
                std::optional<Value> Thing::*member) {
        const auto& now = now_->*member;
        Field& field = add(std::move(name),
                           std::move(label),
                           FieldKind::choice,
                           now ? std::string(say(*now)) : std::string());
        field.mayBeOpen = true;
        field.choices = [values, say] { return textsOf(values, say); };
        field.write = [at = at_, values, say, member](layout::Layout& layout,
                                                      std::string_view typed) -> Result<void> {
            if (saysNothing(typed)) {
                (at(layout).*member).reset();
                return {};
            }
            const auto read = readChoice<Value>(values, say, trimmed(typed));
            if (!read) {
                return fail(read.error());
            }
            at(layout).*member = *read;
            return {};
        };
    }
    /// Yes or no.
    void truth(std::string name, std::string label, std::optional<bool> Thing::*member) {
        choice(
            std::move(name),
            std::move(label),
            [] {
                return std::array{true, false};
            },
            [](bool is) { return std::string_view(is ? "yes" : "no"); },
            member);
    }

    std::vector<Field> finish() && { return std::move(fields_); }

private:
    /// By its text, or as people write it: "500 MCM", "2.5", "Cu".
    template <class Value, class Values, class Text>
    static Result<Value> readChoice(const Values& values, const Text& say, std::string_view typed) {
        for (const auto& value : values()) {
            if (sameWord(say(value), typed)) {
                return value;
            }
        }
        if constexpr (std::is_same_v<Value, units::WireSize>) {
            return units::WireSize::parse(typed);
        } else if (const auto meant = otherSpelling<Value>(typed)) {
            return *meant;
        }
        return fail(notOneOf(typed, textsOf(values, say)));
    }
    template <class Value>
    static std::optional<Value> otherSpelling(std::string_view typed) {
        if constexpr (std::is_same_v<Value, standards::TradeSize>) {
            return standards::TradeSize::parse(typed);
        } else if constexpr (std::is_same_v<Value, standards::Metal>) {
            return metalAbbreviated(typed);
        }
        return std::nullopt;
    }

    template <class Values, class Text>
    static std::vector<std::string> textsOf(const Values& values, const Text& say) {
        std::vector<std::string> texts;
        for (const auto& value : values()) {
            texts.emplace_back(say(value));
        }
        return texts;
    }

    const layout::Layout* layout_;
    const Thing* now_;
    At at_;
    std::string group_;
    std::string whose_;
    std::vector<Field> fields_;
};

// ---- the lists ------------------------------------------------------------------------------

std::vector<Field> gutterFields(const geometry::BuiltLayout& built);
std::vector<Field> systemFields(const geometry::BuiltLayout& built, const layout::SystemId& id);
std::vector<Field> circuitFields(const geometry::BuiltLayout& built, const layout::CircuitId& id);
std::vector<Field> entryFields(const geometry::BuiltLayout& built, const layout::EntryId& id);
std::vector<Field> blockFields(const geometry::BuiltLayout& built,
                               const parts::Shelf& shelf,
                               const layout::BlockId& id);
std::vector<Field> conductorFields(const geometry::BuiltLayout& built,
                                   const layout::ConductorId& id);

/// Names that tell things of one kind apart: as ownerName, by id where two have the same.
template <class Things>
std::vector<std::string> distinctNames(const layout::Layout& layout, const Things& things) {
    std::vector<std::string> names;
    for (const auto& thing : things) {
        names.push_back(ownerName(layout, thing.id));
    }
    const std::vector<std::string> all = names;
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = 0; j < all.size(); ++j) {
            if (i != j && sameWord(all[i], all[j])) {
                names[i] = all[i].substr(0, all[i].find(' ')) + " " + things[i].id.text();
            }
        }
    }
    return names;
}

/// The thing a text means: by distinct name, id, or name alone. Empty: none.
template <class Things>
std::optional<std::size_t> namedIn(const layout::Layout& layout,
                                   const Things& things,
                                   std::string_view text) {
    const auto names = distinctNames(layout, things);
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (sameWord(names[i], text)) {
            return i;
        }
    }
    for (std::size_t i = 0; i < things.size(); ++i) {
        if (sameWord(things[i].id.text(), text)) {
            return i;
        }
    }
    for (std::size_t i = 0; i < names.size(); ++i) {
        const auto space = names[i].find(' ');
        if (space != std::string::npos &&
            sameWord(std::string_view(names[i]).substr(space + 1), text)) {
            return i;
        }
    }
    return std::nullopt;
}

}  // namespace gw::editing
