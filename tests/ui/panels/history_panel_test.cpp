#include "panels/history_panel.h"

#include <gtest/gtest.h>

#include <QTest>

#include "ui/panels/panel_bench.h"
#include "ui/support/documents.h"

namespace gw::ui {
namespace {

class HistoryPanelOf : public ::testing::Test {
protected:
    HistoryPanelOf() : panel(bench.bench()) {
        panel.show();
        test::retitle(*bench.document, "First");
        test::retitle(*bench.document, "Second");
        test::handleEvents();
    }
    void goTo(int row) {
        panel.list()->setFocus();
        panel.list()->setCurrentRow(row);
        QTest::keyClick(panel.list(), Qt::Key_Return);
        test::handleEvents();
    }

    test::PanelBench bench{"gate-house"};
    HistoryPanel panel;
};

TEST_F(HistoryPanelOf, ListsEveryStepAndStandsAtTheLast) {
    EXPECT_EQ(panel.list()->count(), 1 + bench.document->history().count());
    EXPECT_EQ(panel.list()->currentRow(), bench.steps());
}

TEST_F(HistoryPanelOf, EnterGoesBackAndForward) {
    goTo(0);
    EXPECT_EQ(bench.steps(), 0);
    EXPECT_NE(bench.layout().title, "Second");
    EXPECT_TRUE(panel.list()->item(2)->font().italic());
    goTo(2);
    EXPECT_EQ(bench.layout().title, "Second");
    EXPECT_FALSE(panel.list()->item(2)->font().italic());
}

TEST_F(HistoryPanelOf, InMidDragNothingHappens) {
    bench.document->beginGesture();
    goTo(0);
    EXPECT_EQ(bench.steps(), 2);
    bench.document->cancelGesture();
}

}  // namespace
}  // namespace gw::ui
