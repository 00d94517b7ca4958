#include "parts/search.h"

#include <gtest/gtest.h>

#include <functional>

#include "base/tolerance.h"
#include "support/shipped_shelf.h"

namespace gw::parts {
namespace {

using units::WireSize;

/// 4 x 2 x 1 in, three ports: two to 250 of copper, one to 4/0 of aluminium and fine copper.
Part block() {
    Part part;
    part.id = PartId("yard-3");
    part.name = "Row block, three ports";
    part.family = "row, one side";
    part.body = {4.0, 2.0, 1.0};
    const PortRange big{{standards::Metal::copper},
                        {standards::Stranding::classB},
                        WireSize::of("6"),
                        WireSize::of("250"),
                        1};
    const PortRange aluminium{{standards::Metal::aluminium},
                              {standards::Stranding::classB},
                              WireSize::of("4"),
                              WireSize::of("4/0"),
                              1};
    const PortRange fine{{standards::Metal::copper},
                         {standards::Stranding::classK},
                         WireSize::of("2"),
                         WireSize::of("4/0"),
                         1};
    Port port;
    port.accepts = {big};
    part.ports = {port, port, port};
    part.ports[2].accepts = {aluminium, fine};
    return part;
}

struct Case {
    const char* name;
    PartWish wish;
    bool suits;
};

PartWish wish(const std::function<void(PartWish&)>& say) {
    PartWish one;
    say(one);
    return one;
}

class PartSearch : public testing::TestWithParam<Case> {};

TEST_P(PartSearch, SuitsWhatIsAsked) {
    EXPECT_EQ(suits(block(), GetParam().wish), GetParam().suits);
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Wishes, PartSearch, testing::Values(
    Case{"nothing",            {},                                                                   true},
    Case{"wordsAnyOrder",      wish([](PartWish& w) { w.words = "THREE row"; }),                       true},
    Case{"wordOfTheId",        wish([](PartWish& w) { w.words = "yard"; }),                            true},
    Case{"wordMissing",        wish([](PartWish& w) { w.words = "row through"; }),                     false},
    Case{"portsAtTheLimit",    wish([](PartWish& w) { w.leastPorts = 3; }),                            true},
    Case{"onePortTooMany",     wish([](PartWish& w) { w.leastPorts = 4; }),                            false},
    Case{"greatestSize",       wish([](PartWish& w) { w.size = WireSize::of("250"); }),                true},
    Case{"aboveGreatest",      wish([](PartWish& w) { w.size = WireSize::of("300"); }),                false},
    Case{"leastSize",          wish([](PartWish& w) { w.size = WireSize::of("6"); }),                  true},
    Case{"belowLeast",         wish([](PartWish& w) { w.size = WireSize::of("8"); }),                  false},
    Case{"twoPortsOfTheSize",  wish([](PartWish& w) { w.size = WireSize::of("250"); w.leastPorts = 2; }), true},
    Case{"threeOfTheSize",     wish([](PartWish& w) { w.size = WireSize::of("250"); w.leastPorts = 3; }), false},
    Case{"aluminium",          wish([](PartWish& w) { w.metal = standards::Metal::aluminium; }),       true},
    Case{"sizeOfOtherMetal",   wish([](PartWish& w) { w.metal = standards::Metal::aluminium; w.size = WireSize::of("250"); }), false},
    Case{"fine",               wish([](PartWish& w) { w.fineStrand = true; }),                         true},
    Case{"fineOfOtherSize",    wish([](PartWish& w) { w.fineStrand = true; w.size = WireSize::of("4"); }), false},
    Case{"fineAluminium",      wish([](PartWish& w) { w.fineStrand = true; w.metal = standards::Metal::aluminium; }), false},
    Case{"locationNotStated",  wish([](PartWish& w) { w.location = standards::Location::dry; }),       false},
    Case{"noMountingHoles",    wish([](PartWish& w) { w.boltsDown = true; }),                          false},
    Case{"fitsTurned",         wish([](PartWish& w) { w.inside = Vec3{1.0, 4.0, 2.0}; }),              true},
    Case{"fitsExactly",        wish([](PartWish& w) { w.inside = Vec3{4.0, 2.0, 1.0}; }),              true},
    Case{"tooShallow",          wish([](PartWish& w) { w.inside = Vec3{60.0, 10.0, 0.99}; }),           false}),
    [](const auto& tested) { return std::string(tested.param.name); });
// clang-format on

TEST(PartSearchOfTheShelf, AStricterWishNeverFindsMore) {
    PartWish strict;
    for (const auto& size : WireSize::all()) {
        strict.size = size;
        for (int ports = 1; ports < 8; ++ports) {
            PartWish looser = strict;
            looser.leastPorts = ports;
            strict.leastPorts = ports + 1;
            for (const auto& [id, part] : test::shippedShelf()) {
                EXPECT_TRUE(!suits(part, strict) || suits(part, looser)) << id.text();
            }
        }
    }
}

TEST(PartSearchOfTheShelf, TheRangeHoldsEveryPort) {
    const auto range = sizeRange(block());
    ASSERT_TRUE(range);
    EXPECT_EQ(range->smallest, WireSize::of("6"));
    EXPECT_EQ(range->largest, WireSize::of("250"));
    EXPECT_FALSE(sizeRange(Part{}));
}

}  // namespace
}  // namespace gw::parts
