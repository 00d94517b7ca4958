#include "tools/measure_tool.h"

#include <gtest/gtest.h>

#include "ui/support/documents.h"

namespace gw::ui {
namespace {

/// An empty gutter of 48 x 8 x 8 in with a block whose ports are measured.
class MeasureToolTest : public testing::Test {
protected:
    MeasureToolTest() : document_(gw::test::documentOf(layoutWithBlock())) {}

    static layout::Layout layoutWithBlock() {
        layout::Layout layout;
        layout.gutter.inside = {48.0, 8.0, 8.0};
        layout::Block block;
        block.id = layout::BlockId("A");
        block.part = parts::PartId("row-one-side-3-to-2-0");
        block.corner = {30.0, 4.0, 1.0};
        layout.blocks.push_back(block);
        return layout;
    }

    const geometry::BuiltPort& port(std::size_t i) {
        return document_->built().blocks.front().ports.at(i);
    }
    BoardPoint atPort(std::size_t i) { return at(port(i).mouth.x, port(i).mouth.y); }
    /// From the first port to the third, as the part file has them.
    QString apart() {
        const auto inches = units::Inches::of(std::abs(port(2).mouth.x - port(0).mouth.x));
        return QString::fromStdString(units::formatInches(inches, units::Rounding::nearest, 64));
    }

    static BoardPoint at(double x, double y) {
        return {geometry::View::front, {x, y}, 0.02, Qt::AltModifier, 0.0};
    }

    std::unique_ptr<Document> document_;
    Selection selection_;
    BoardState board_;
    MeasureTool tool_{Bench{*document_, selection_, board_}};
};

TEST_F(MeasureToolTest, FromPortToPortIsTheirDistanceAndChangesNothing) {
    tool_.press(atPort(0));
    EXPECT_EQ(tool_.reading(), QString());
    tool_.move(atPort(2));
    EXPECT_EQ(tool_.reading(), apart() + QStringLiteral(": ") + apart() + QStringLiteral(" right"));
    tool_.press(atPort(2));
    EXPECT_EQ(board_.hint(), apart() + QStringLiteral(": ") + apart() + QStringLiteral(" right"));
    tool_.move(at(10, 4));
    EXPECT_EQ(tool_.reading(), apart() + QStringLiteral(": ") + apart() + QStringLiteral(" right"))
        << "it has ended";
    EXPECT_EQ(document_->history().count(), 0);
}

TEST_F(MeasureToolTest, AClickAfterTheSecondBeginsAnew) {
    tool_.press(atPort(0));
    tool_.press(atPort(2));
    tool_.press(atPort(2));
    EXPECT_EQ(tool_.reading(), QString());
    tool_.press(atPort(0));
    EXPECT_EQ(tool_.reading(), apart() + QStringLiteral(": ") + apart() + QStringLiteral(" left"));
}

TEST_F(MeasureToolTest, EscapeForgetsFirstAndThenThereIsNothingUnderWay) {
    tool_.press(atPort(0));
    tool_.move(atPort(2));
    EXPECT_TRUE(tool_.cancel());
    EXPECT_EQ(tool_.reading(), QString());
    EXPECT_FALSE(tool_.cancel());
}

TEST_F(MeasureToolTest, EmptySpaceHasNoDepth) {
    tool_.press(at(2, 6));
    tool_.press(at(5, 2));
    EXPECT_EQ(tool_.reading(), QStringLiteral("5 in: 3 in right, 4 in down, depth not known"));
}

}  // namespace
}  // namespace gw::ui
