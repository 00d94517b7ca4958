#include "layout/layout.h"

#include <gtest/gtest.h>

#include "core/support/sample_layouts.h"

namespace gw::layout {
namespace {

Gutter gutterOf(const Vec3& inside) {
    Gutter gutter;
    gutter.inside = inside;
    return gutter;
}

struct WallRow {
    Wall wall;
    Vec3 centre;  // of u = 3, v = 2 in a gutter of 48 x 8 x 6 in
    Vec3 inward;
};

void PrintTo(const WallRow& row, std::ostream* out) {
    *out << wallText(row.wall);
}

class Walls : public testing::TestWithParam<WallRow> {};

TEST_P(Walls, HaveTheirEntriesAndNormals) {
    const WallRow& row = GetParam();
    Entry entry;
    entry.wall = row.wall;
    entry.u = 3.0;
    entry.v = 2.0;
    EXPECT_EQ(entryCentre(gutterOf({48, 8, 6}), entry), row.centre);
    EXPECT_EQ(inwardNormal(row.wall), row.inward);
}

// top, bottom: u = x, v = z. left, right: u = y, v = z. back: u = x, v = y.
const WallRow kWalls[] = {
    {Wall::left, {0, 3, 2}, {1, 0, 0}},
    {Wall::right, {48, 3, 2}, {-1, 0, 0}},
    {Wall::top, {3, 8, 2}, {0, -1, 0}},
    {Wall::bottom, {3, 0, 2}, {0, 1, 0}},
    {Wall::back, {3, 2, 0}, {0, 0, 1}},
};
INSTANTIATE_TEST_SUITE_P(ByHand, Walls, testing::ValuesIn(kWalls));

TEST(FindPart, TheLayoutsOwnPartComesBeforeTheShelfs) {
    test::Sample sample = test::emptyGutter();
    const parts::PartId id("row");
    EXPECT_EQ(findPart(sample.layout, sample.shelf, id), &sample.shelf.at(id));
    sample.layout.parts.push_back(test::rowPart());
    EXPECT_EQ(findPart(sample.layout, sample.shelf, id), &sample.layout.parts.front());
    EXPECT_EQ(findPart(sample.layout, sample.shelf, parts::PartId("none")), nullptr);
}

}  // namespace
}  // namespace gw::layout
