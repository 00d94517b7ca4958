#include "panels/shelf_panel.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "ui/panels/panel_bench.h"

namespace gw::ui {
namespace {

class ShelfPanelOf : public ::testing::Test {
protected:
    void open(const char* sample) {
        bench_ = std::make_unique<test::PanelBench>(sample);
        panel_ = std::make_unique<ShelfPanel>(bench_->bench());
        panel_->resize(340, 500);
        panel_->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(panel_.get()));
        test::handleEvents();
    }
    int rows() const { return panel_->list()->topLevelItemCount(); }

    std::unique_ptr<test::PanelBench> bench_;
    std::unique_ptr<ShelfPanel> panel_;
};

TEST_F(ShelfPanelOf, ShowsWhatFitsAndAllWhenAsked) {
    open("five-tenants");
    panel_->fits()->setChecked(false);
    EXPECT_EQ(rows(), int(bench_->document->shelf().size()));
    test::keepPicture(*panel_, QStringLiteral("shelf"), {340, 500});
}

TEST_F(ShelfPanelOf, EachFilterLeavesLess) {
    open("five-tenants");
    const int all = rows();
    panel_->size()->setCurrentText(QStringLiteral("500 kcmil"));
    const int bySize = rows();
    EXPECT_LT(bySize, all);
    EXPECT_GT(bySize, 0);
    panel_->ports()->setCurrentText(QStringLiteral("6 ports or more"));
    EXPECT_LE(rows(), bySize);
    panel_->words()->setText(QStringLiteral("no such thing"));
    EXPECT_EQ(rows(), 0);
    EXPECT_TRUE(panel_->count().startsWith(QStringLiteral("0 of ")));
}

TEST_F(ShelfPanelOf, PortsSortByNumber) {
    open("five-tenants");
    panel_->fits()->setChecked(false);
    panel_->list()->sortByColumn(1, Qt::AscendingOrder);
    for (int row = 1; row < rows(); ++row) {
        EXPECT_LE(panel_->list()->topLevelItem(row - 1)->text(1).toInt(),
                  panel_->list()->topLevelItem(row)->text(1).toInt());
    }
}

TEST_F(ShelfPanelOf, EnterAsksForThePart) {
    open("five-tenants");
    QSignalSpy wanted(panel_.get(), &ShelfPanel::partWanted);
    panel_->list()->setFocus();
    panel_->list()->setCurrentItem(panel_->list()->topLevelItem(0));
    QTest::keyClick(panel_->list(), Qt::Key_Return);
    ASSERT_EQ(wanted.size(), 1);
    const auto part = wanted.front().front().value<parts::PartId>();
    EXPECT_TRUE(bench_->document->shelf().contains(part));
}

}  // namespace
}  // namespace gw::ui
