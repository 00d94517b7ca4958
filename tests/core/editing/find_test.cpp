#include "editing/find.h"

#include <gtest/gtest.h>

#include "core/support/sample_layouts.h"

namespace gw::editing {
namespace {

using gw::test::oneTap;
using gw::test::Sample;
using layout::BlockId;
using layout::CircuitId;
using layout::ConductorId;
using layout::EntryId;

Sample riverside() {
    Sample sample = oneTap();
    sample.entry("in").name = "Service";
    sample.entry("in").leadsTo = "Meter bank";
    sample.block("A").name = "Block A";
    sample.conductor("c1").tag = "S1-A";
    sample.circuit("feed").supplies = "boat repair";
    return sample;
}

struct Row {
    const char* text;
    Items expected;
};

TEST(Finding, ByIdTagNameAndWhatItIsAboutWhateverTheCapitals) {
    const Sample sample = riverside();
    // clang-format off
    const std::vector<Row> rows{
        {"s1-a",        {ConductorId("c1")}},
        {"SERVICE",     {EntryId("in")}},
        {"meter",       {EntryId("in")}},
        {"row",         {BlockId("A")}},
        {"boat",        {CircuitId("feed")}},
        {"nothing such", {}},
        {"",            {}},
        // The whole id comes first, then what has the letter in it.
        {"a",           {BlockId("A"), EntryId("in"), ConductorId("c1"), CircuitId("feed")}},
    };
    // clang-format on
    for (const Row& row : rows) {
        EXPECT_EQ(findItems(sample.layout, row.text), row.expected) << row.text;
    }
}

TEST(Finding, WhatBeginsWithTheTextComesBeforeWhatHasItInIt) {
    Sample sample = riverside();
    sample.addEntry("E9", layout::Wall::left, 2, 2).name = "Old service";
    sample.addEntry("E8", layout::Wall::left, 5, 5).name = "Service yard";
    const Items expected{EntryId("in"), EntryId("E8"), EntryId("E9")};
    EXPECT_EQ(findItems(sample.layout, "service"), expected);
}

}  // namespace
}  // namespace gw::editing
