#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reference/tsv.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using test::number;
using test::readTsv;
using test::TsvRow;
using testing::HasSubstr;
using units::WireSize;

constexpr Edition kEdition = Edition::nec2023;

struct HeadText {
    ScrewHead head;
    const char* printed;
};

constexpr HeadText kHeads[] = {
    {ScrewHead::smallSlot,
     "slotted No. 10 and larger, slot width <= 0.047 in and length <= 0.25 in"},
    {ScrewHead::largeSlot, "slotted No. 10 and larger, slot width > 0.047 in or length > 0.25 in"},
    {ScrewHead::splitBoltHex, "hex head external wrench, split-bolt connector"},
    {ScrewHead::otherHex, "hex head external wrench, other connector"},
};

bool inRange(const std::string& range, WireSize size) {
    const auto dash = range.find('-');
    const std::string first = range.substr(0, dash);
    const WireSize last = WireSize::of(dash == std::string::npos ? first : range.substr(dash + 1));
    // The first range begins at 30 AWG, smaller than any size of ours.
    return (first == "30" || WireSize::of(first) <= size) && size <= last;
}

TEST(AnnexTorque, ByConductorIsColumnBOfItsRowOrNone) {
    const auto rows = readTsv("torque_annex_I").rows;
    for (const HeadText& head : kHeads) {
        for (const WireSize size : WireSize::all()) {
            SCOPED_TRACE(size.text() + ", " + head.printed);
            const TsvRow* printed = nullptr;
            for (const TsvRow& row : rows) {
                if (row.at("table") == "I.1" && row.at("screw") == head.printed &&
                    inRange(row.at("key_value"), size)) {
                    printed = &row;
                }
            }
            const auto found = annexTorqueByConductor(size, head.head, kEdition);
            ASSERT_EQ(found.has_value(), printed != nullptr);
            if (found) {
                EXPECT_EQ(found->value, number(*printed, "torque_B_lbin"));
                EXPECT_THAT(found->source.note, HasSubstr("connector's own torque comes first"));
            }
        }
    }
}

TEST(AnnexTorque, BySlotAndByRecessIsItsRow) {
    for (const TsvRow& row : readTsv("torque_annex_I").rows) {
        const std::string& key = row.at("key_value");
        if (row.at("table") == "I.2") {
            const bool wide = row.at("screw").find(">= 0.047") != std::string::npos;
            EXPECT_EQ(annexTorqueBySlot(key, wide, kEdition)->value, number(row, "torque_B_lbin"))
                << key;
        } else if (row.at("table") == "I.3") {
            EXPECT_EQ(annexTorqueByRecess(key, kEdition)->value, number(row, "torque_B_lbin"))
                << key;
        }
    }
    EXPECT_FALSE(annexTorqueByRecess("3/4", kEdition).has_value());
    EXPECT_FALSE(annexTorqueBySlot("9/32", false, kEdition).has_value());
}

TEST(ColourCustoms, TellCodeFromCustom) {
    const auto customs = colourCustoms(kEdition);
    const auto printed = readTsv("phase_colours").rows;
    ASSERT_EQ(customs.size(), printed.size());
    for (std::size_t i = 0; i < customs.size(); ++i) {
        EXPECT_EQ(customs[i].value.colour, printed[i].at("colour"));
        EXPECT_EQ(customs[i].value.requiredByCode, printed[i].at("status") == "code");
        const bool citesCode = customs[i].source.standard == "NFPA 70-2023";
        EXPECT_EQ(citesCode, customs[i].value.requiredByCode);
    }
}

}  // namespace
}  // namespace gw::standards
