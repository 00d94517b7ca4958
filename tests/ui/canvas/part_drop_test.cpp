#include <gtest/gtest.h>

#include <QApplication>
#include <QDropEvent>
#include <QMimeData>

#include "canvas/gutter_pane.h"
#include "tools/place_tool.h"
#include "ui/panels/panel_bench.h"
#include "ui/support/documents.h"

namespace gw::ui {
namespace {

class PartDrop : public testing::Test {
protected:
    PartDrop() : tools(bench.bench()), pane(geometry::View::front, bench.bench(), tools, nullptr) {
        pane.resize(900, 300);
        bench.board.fit(0.0, bench.layout().gutter.inside.x, 900);
        data.setData(QString::fromLatin1(kPartMime),
                     QByteArray::fromStdString(bench.document->shelf().begin()->first.text()));
    }
    QPoint middle() const {
        const Vec3 inside = bench.layout().gutter.inside;
        return pane.transform().toPixels(Vec3{inside.x / 2.0, inside.y / 2.0, 0.0}).toPoint();
    }
    bool enter() {
        QDragEnterEvent event(middle(), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&pane, &event);
        return event.isAccepted();
    }
    void moveTo(const QPoint& at) {
        QDragMoveEvent event(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&pane, &event);
    }
    void drop() {
        QDropEvent event(middle(), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&pane, &event);
    }

    test::PanelBench bench{"gate-house"};
    ToolHolder tools;
    GutterPane pane;
    QMimeData data;
};

TEST_F(PartDrop, ADroppedPartIsOneStepAndLiesWhereItWasLetGo) {
    const auto blocks = bench.layout().blocks.size();
    ASSERT_TRUE(enter());
    moveTo(middle());
    EXPECT_TRUE(bench.document->inGesture());
    drop();
    EXPECT_FALSE(bench.document->inGesture());
    ASSERT_EQ(bench.layout().blocks.size(), blocks + 1);
    EXPECT_EQ(bench.steps(), 1);
    const auto& body = bench.document->built().blocks.back().body;
    EXPECT_NEAR(body.centre().x, bench.layout().gutter.inside.x / 2.0, 1.0);
}

TEST_F(PartDrop, APartDraggedOutLeavesNoTrace) {
    const auto before = test::bytesOf(bench.layout());
    ASSERT_TRUE(enter());
    moveTo(middle());
    QDragLeaveEvent leave;
    QApplication::sendEvent(&pane, &leave);
    EXPECT_EQ(test::bytesOf(bench.layout()), before);
    EXPECT_EQ(bench.steps(), 0);
    EXPECT_FALSE(bench.document->inGesture());
}

TEST_F(PartDrop, AnythingElseIsNotTaken) {
    data.clear();
    data.setText(QStringLiteral("a note"));
    EXPECT_FALSE(enter());
}

}  // namespace
}  // namespace gw::ui
