#include <gtest/gtest.h>

#include <utility>

#include "core/checks/gutter_builder.h"
#include "support/random.h"

/// What all checks share: the order of conductors and blocks in the layout changes no finding.
namespace gw::checks {
namespace {

using check_test::atEntry;
using check_test::corner;
using check_test::GutterBuilder;
using check_test::inPort;
using check_test::spare;

/// Three alike and two odd conductors through one entry, bent along the gutter and into two blocks
/// or left spare, with a wrong size, wrong colours, a missing insulation, a tight bend and an
/// overlap among them.
GutterBuilder crowded() {
    GutterBuilder builder({60.0, 12.0, 12.0});
    builder.add(check_test::rowPart(3)).block("A", "row", {30.0, 4.0, 2.0});
    builder.block("B", "row", {34.0, 4.5, 2.5});
    builder.entry("in", layout::Wall::left, 9.0, 3.0);
    for (int i = 1; i <= 3; ++i) {
        const double x = 29.5 + 1.5 * i;
        builder.conductor("alike" + std::to_string(i),
                          atEntry("in", i),
                          inPort("A", std::to_string(i)),
                          {corner({x, 9.0, 3.0}, 4.0)});
    }
    builder.conductorNamed("alike2").colour = "white";
    builder.conductorNamed("alike1").colour = "green";
    builder.conductor("odd1", atEntry("in", 4), inPort("B", "1"), {corner({35, 9, 3.5}, 1.0)})
        .size = units::WireSize::of("6");
    builder.conductor("odd2", atEntry("in", 5), spare({50, 3, 3}), {corner({50, 9, 3}, 4.5)})
        .insulation.reset();
    return builder;
}

template <class Items>
void shuffle(Items& items, test_support::Random& random) {
    for (std::size_t i = items.size(); i > 1; --i) {
        std::swap(items[i - 1], items[random.below(i)]);
    }
}

class OrderOfTheLayout : public testing::TestWithParam<std::uint64_t> {};

TEST_P(OrderOfTheLayout, ChangesNoFindingOfAnyCheck) {
    test_support::Random random(GetParam());
    auto builder = crowded();
    const auto before = checkAll(builder.build());
    shuffle(builder.layout().conductors, random);
    shuffle(builder.layout().blocks, random);
    const auto after = checkAll(builder.build());
    EXPECT_GT(check_test::withVerdict(before, Verdict::breach).size(), 2U);
    EXPECT_EQ(check_test::sortedTexts(after), check_test::sortedTexts(before))
        << "seed " << GetParam();
}

INSTANTIATE_TEST_SUITE_P(Seeds, OrderOfTheLayout, testing::Range<std::uint64_t>(1, 13));

}  // namespace
}  // namespace gw::checks
