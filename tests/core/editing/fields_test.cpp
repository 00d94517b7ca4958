#include "editing/fields.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "base/read_file.h"
#include "core/editing/samples.h"
#include "editing/move.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"

namespace gw::editing {
namespace {

using layout::ConductorId;
using nlohmann::json;
using test::bytesOf;

/// Read once: reading it takes longer than most edits.
const parts::Shelf& shelf() {
    static const parts::Shelf kShelf = gw::test::shippedShelf();
    return kShelf;
}

layout::Layout dataLayout(const std::string& name) {
    const std::string path = std::string(GW_SOURCE_DIR) + "/tests/data/layouts/" + name + ".json";
    const auto layout = files::readLayout(readFile(path).value(), path, shelf());
    EXPECT_TRUE(layout) << toLine(layout.error());
    return *layout;
}

geometry::BuiltLayout built(const layout::Layout& layout) {
    return geometry::build(layout, shelf());
}

Owners everyOwner(const layout::Layout& layout) {
    Owners owners = {WholeGutter{}};
    const auto add = [&](const auto& things) {
        for (const auto& thing : things) {
            owners.emplace_back(thing.id);
        }
    };
    add(layout.systems);
    add(layout.circuits);
    add(layout.entries);
    add(layout.blocks);
    add(layout.conductors);
    return owners;
}

Edit set(const layout::Layout& layout,
         const Owner& owner,
         const std::string& name,
         const std::string& text) {
    return setField(built(layout), shelf(), {owner}, name, text);
}

std::string valueOf(const layout::Layout& layout, const Owner& owner, const std::string& name) {
    for (const auto& field : fieldsOf(built(layout), shelf(), owner)) {
        if (field.name == name) {
            return field.value;
        }
    }
    return "no such field";
}

/// Texts that may mean something else than the field says now.
std::vector<std::string> others(const Field& field) {
    switch (field.kind) {
        case FieldKind::text:
            return {"A G N", "another"};
        case FieldKind::length:
            return {"3/16 in", "7 in"};
        case FieldKind::number:
            return {"1", "7", "65", "130"};
        case FieldKind::choice: {
            auto some = field.choices();
            constexpr std::size_t kEnough = 6;
            some.resize(field.name == "part" ? some.size() : std::min(some.size(), kEnough));
            return some;
        }
    }
    return {};
}

/// Leaves that differ, without the numbers of list items.
void addChanged(const json& a, const json& b, const std::string& path, std::set<std::string>& out) {
    if (a.is_object() || b.is_object()) {
        std::set<std::string> names;
        for (const auto* one : {&a, &b}) {
            for (auto it = one->begin(); one->is_object() && it != one->end(); ++it) {
                names.insert(it.key());
            }
        }
        for (const auto& name : names) {
            const auto at = [&](const json& one) {
                return one.is_object() && one.contains(name) ? one.at(name) : json();
            };
            addChanged(at(a), at(b), path + "/" + name, out);
        }
    } else if (a.is_array() || b.is_array()) {
        for (std::size_t i = 0; i < std::max(a.size(), b.size()); ++i) {
            const auto at = [&](const json& one) { return i < one.size() ? one.at(i) : json(); };
            addChanged(at(a), at(b), path, out);
        }
    } else if (a != b) {
        out.insert(path);
    }
}

TEST(Fields, EveryMemberOfTheLayoutCanBeSet) {
    auto layout = dataLayout("everything");
    layout.systems.push_back({layout::SystemId("Y2"), "480Y/277 V", 480, 277, 10.0});
    const json before = json::parse(bytesOf(layout));
    std::set<std::string> changed;
    const auto shapes = built(layout);
    for (const Owner& owner : everyOwner(layout)) {
        for (const auto& field : fieldsOf(shapes, shelf(), owner)) {
            for (const auto& text : others(field)) {
                if (const auto after = setField(shapes, shelf(), {owner}, field.name, text)) {
                    addChanged(before, json::parse(bytesOf(*after)), "", changed);
                }
            }
        }
    }
    std::set<std::string> all;
    addChanged(before, json(), "", all);
    for (const auto& path : all) {
        const bool elsewhere =
            path.find("/id") != std::string::npos || path.rfind("/remarks", 0) == 0 ||
            path.rfind("/parts", 0) == 0 || path == "/format" || path == "/version" ||
            path == "/unit" || path == "/conductors/passes/block" ||
            path == "/conductors/passes/port" || path == "/blocks/openMouths/port";
        EXPECT_TRUE(elsewhere || changed.count(path) > 0) << path;
    }
}

TEST(Fields, SettingAValueToWhatItIsChangesNothing) {
    for (const auto& name : {"everything", "small"}) {
        const auto layout = dataLayout(name);
        const auto shapes = built(layout);
        for (const Owner& owner : everyOwner(layout)) {
            std::set<std::string> names;
            for (const auto& field : fieldsOf(shapes, shelf(), owner)) {
                EXPECT_TRUE(names.insert(field.name).second) << field.name;
                const auto after = setField(shapes, shelf(), {owner}, field.name, field.value);
                ASSERT_TRUE(after) << field.name << ": " << toLine(after.error());
                ASSERT_EQ(valueOf(*after, owner, field.name), field.value) << field.name;
            }
        }
    }
}

TEST(Fields, EveryChoiceIsTakenOrRefusedWithASentence) {
    const auto layout = dataLayout("everything");
    const auto shapes = built(layout);
    for (const Owner& owner : everyOwner(layout)) {
        for (const auto& field : fieldsOf(shapes, shelf(), owner)) {
            if (field.kind != FieldKind::choice) {
                continue;
            }
            for (const auto& choice : field.choices()) {
                const auto after = setField(shapes, shelf(), {owner}, field.name, choice);
                if (!after) {
                    EXPECT_FALSE(after.error().sentence.empty());
                    EXPECT_TRUE(after.error().place.empty()) << toLine(after.error());
                } else {
                    EXPECT_EQ(valueOf(*after, owner, field.name), choice) << field.name;
                }
            }
        }
    }
}

struct Typed {
    const char* text;
    double inches;
};

TEST(Fields, LengthsAreReadAsPeopleTypeThem) {
    auto layout = test::sampleLayout("five-tenants", shelf());
    const auto entry = layout.entries.front().id;
    for (const Typed& typed : {Typed{"3 1/2", 3.5},
                               {"3.5 in", 3.5},
                               {"88.9 mm", 3.5},
                               {"3-1/2\"", 3.5},
                               {"2' 6\"", 30.0}}) {
        const auto after = set(layout, entry, "raceway length", typed.text);
        ASSERT_TRUE(after) << typed.text;
        EXPECT_NEAR(after->entries.front().racewayLength->in(), typed.inches, 1e-9) << typed.text;
    }
    layout.displayUnit = units::LengthUnit::millimetre;
    const auto metric = set(layout, entry, "raceway length", "254");
    ASSERT_TRUE(metric);
    EXPECT_NEAR(metric->entries.front().racewayLength->in(), 10.0, 1e-9);
    EXPECT_EQ(valueOf(*metric, entry, "raceway length"), "254 mm");
}

TEST(Fields, SpellingsOfTheTradeAreTaken) {
    const auto layout = test::sampleLayout("five-tenants", shelf());
    const auto id = layout.conductors.front().id;
    EXPECT_EQ(set(layout, id, "size", "250 MCM")->conductors.front().size,
              units::WireSize::of("250"));
    EXPECT_EQ(set(layout, id, "size", "#2")->conductors.front().size, units::WireSize::of("2"));
    EXPECT_EQ(set(layout, id, "metal", "Al")->conductors.front().metal,
              standards::Metal::aluminium);
    EXPECT_EQ(set(layout, id, "insulation", "xhhw-2")->conductors.front().insulation,
              standards::Insulation::xhhw2);
    EXPECT_FALSE(set(layout, id, "metal", "")->conductors.front().metal.has_value());
    EXPECT_FALSE(set(layout, id, "metal", "not stated")->conductors.front().metal.has_value());
}

struct Refused {
    const char* field;
    const char* text;
    ErrorCode code;
    const char* says;
};

TEST(Fields, WhatCannotBeIsRefusedInWords) {
    const auto layout = test::sampleLayout("five-tenants", shelf());
    const auto id = layout.conductors.front().id;
    const std::string name = itemName(layout, id);
    for (const Refused& one : {Refused{"size", "7/0", ErrorCode::unknown, ""},
                               {"metal", "gold", ErrorCode::unknown, "not one of"},
                               {"set", "two", ErrorCode::syntax, "not a whole number"},
                               {"set", "9", ErrorCode::outOfRange, ", set: "},
                               {"phase", "G", ErrorCode::contradicts, ", phase: "},
                               {"from", "nowhere", ErrorCode::unknown, "not one of"},
                               {"outside diameter", "3 furlongs", ErrorCode::syntax, ""}}) {
        const auto after = set(layout, id, one.field, one.text);
        ASSERT_FALSE(after) << one.field;
        EXPECT_EQ(after.error().code, one.code) << one.field;
        EXPECT_NE(after.error().sentence.find(one.says), std::string::npos)
            << after.error().sentence;
    }
    EXPECT_NE(set(layout, id, "set", "9").error().sentence.find(name), std::string::npos);
}

TEST(Fields, SeveralAreSetAtOnceOrNoneOfThem) {
    const auto layout = test::sampleLayout("five-tenants", shelf());
    const Owners owners = {layout.conductors[0].id, layout.conductors[1].id};
    const auto after = setField(built(layout), shelf(), owners, "colour", "black, taped yellow");
    ASSERT_TRUE(after);
    EXPECT_EQ(after->conductors[0].colour, "black, taped yellow");
    EXPECT_EQ(after->conductors[1].colour, "black, taped yellow");
    EXPECT_EQ(after->conductors[2].colour, layout.conductors[2].colour);
    std::size_t refused = 99;
    EXPECT_FALSE(setFields(built(layout),
                           shelf(),
                           {{owners[0], "size", "4/0"}, {owners[1], "size", "none"}},
                           &refused));
    EXPECT_EQ(refused, 1U);
}

TEST(Fields, SharedFieldsSayWhichDiffer) {
    const auto layout = test::sampleLayout("five-tenants", shelf());
    const Owners owners = {layout.conductors[0].id, layout.conductors[1].id};
    const auto shared = sharedFields(built(layout), shelf(), owners);
    const auto sameIn = [&](const std::string& name) {
        return std::find_if(shared.begin(),
                            shared.end(),
                            [&](const SharedField& one) { return one.field.name == name; })
            ->same;
    };
    EXPECT_FALSE(sameIn("tag"));
    EXPECT_TRUE(sameIn("size"));
    const Owners mixed = {layout.conductors[0].id, layout.blocks[0].id};
    for (const auto& one : sharedFields(built(layout), shelf(), mixed)) {
        EXPECT_EQ(one.field.name, "phase");
    }
}

TEST(Fields, AStepSaysWhatWasSetOfWhatToWhat) {
    const auto layout = test::sampleLayout("five-tenants", shelf());
    const auto shapes = built(layout);
    const Owner one = layout.conductors[0].id;
    const auto name = [&](const Owners& owners, const char* field, const char* text) {
        return fieldStepName(shapes, shelf(), owners, field, text);
    };
    EXPECT_EQ(name({one}, "size", "250 kcmil"),
              "Set size of " + ownerName(layout, one) + " to 250 kcmil");
    EXPECT_EQ(name({one, layout.conductors[1].id}, "metal", ""),
              "Leave metal of 2 conductors not stated");
    EXPECT_EQ(name({WholeGutter{}}, "edition", "2020"),
              "Set NFPA 70 edition of the layout to 2020");
}

TEST(Fields, ConductorsFollowABlockThatIsPlacedByNumbers) {
    const auto layout = test::sampleLayout("five-tenants", shelf());
    const auto id = layout.blocks.front().id;
    const double x = layout.blocks.front().corner.x;
    const auto after = set(layout, id, "x", std::to_string(x - 1.0));
    ASSERT_TRUE(after);
    EXPECT_DOUBLE_EQ(after->blocks.front().corner.x, x - 1.0);
    const auto moved = moveItems(built(layout), {id}, {-1.0, 0, 0});
    EXPECT_LT(test::apart(*after, *moved), 1e-6);
    const auto outside = set(layout, id, "x", "-1");
    ASSERT_FALSE(outside);
    EXPECT_EQ(outside.error().code, ErrorCode::outOfRange);
}

TEST(Fields, AnEndIsLandedFreedAndLedThroughByItsText) {
    const auto layout = dataLayout("everything");
    const ConductorId spare("C4");
    const auto landed = set(layout, spare, "from", "Block A, port 2");
    ASSERT_TRUE(landed) << toLine(landed.error());
    const auto& in = std::get<layout::InPort>(landed->conductors[3].from);
    EXPECT_EQ(in.block, layout::BlockId("B1"));
    EXPECT_EQ(in.port, parts::PortName("2"));
    const auto entered = set(layout, spare, "from", "e1 slot 7");
    ASSERT_TRUE(entered) << toLine(entered.error());
    EXPECT_EQ(std::get<layout::AtEntry>(entered->conductors[3].from).slot, 7);
    const auto freed = set(layout, spare, "to", "Capped");
    ASSERT_TRUE(freed);
    EXPECT_TRUE(std::holds_alternative<layout::Spare>(freed->conductors[3].to));
}

}  // namespace
}  // namespace gw::editing
