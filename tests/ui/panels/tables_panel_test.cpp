#include "panels/tables_panel.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QComboBox>
#include <QGuiApplication>
#include <QHeaderView>
#include <QPushButton>
#include <QTest>

#include "panels/panel_text.h"
#include "ui/panels/panel_bench.h"
#include "ui/support/documents.h"

namespace gw::ui {
namespace {

using Kind = TablesPanel::Kind;

class TablesPanelOf : public ::testing::Test {
protected:
    void open(const char* sample) {
        bench_ = std::make_unique<test::PanelBench>(sample);
        panel_ = std::make_unique<TablesPanel>(bench_->bench());
        panel_->resize(1100, 320);
        panel_->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(panel_.get()));
        panel_->activateWindow();
        test::handleEvents();
    }
    FieldTable& table(Kind kind = Kind::conductors) { return panel_->table(kind); }
    QTableView& view(Kind kind = Kind::conductors) { return *table(kind).view(); }
    QAbstractItemModel& shown(Kind kind = Kind::conductors) { return *view(kind).model(); }
    int column(const QString& title, Kind kind = Kind::conductors) {
        for (int i = 0; i < shown(kind).columnCount(); ++i) {
            if (shown(kind).headerData(i, Qt::Horizontal).toString() == title) {
                return i;
            }
        }
        return -1;
    }
    QModelIndex cell(int row, const QString& title, Kind kind = Kind::conductors) {
        return shown(kind).index(row, column(title, kind));
    }
    QString text(int row, const QString& title, Kind kind = Kind::conductors) {
        return cell(row, title, kind).data().toString();
    }
    QStringList column(Kind kind, const QString& title) {
        QStringList all;
        for (int row = 0; row < shown(kind).rowCount(); ++row) {
            all << text(row, title, kind);
        }
        return all;
    }
    void selectRows(int from, int to) {
        view().setCurrentIndex(shown().index(from, 0));
        for (int row = from; row <= to; ++row) {
            view().selectionModel()->select(
                shown().index(row, 0), QItemSelectionModel::Select | QItemSelectionModel::Rows);
        }
    }
    void paste(const QString& block) {
        QGuiApplication::clipboard()->setText(block);
        QTest::keySequence(&view(), QKeySequence::Paste);
        test::handleEvents();
    }
    const layout::Layout& layout() const { return bench_->layout(); }
    QByteArray bytes() const { return test::bytesOf(layout()); }

    std::unique_ptr<test::PanelBench> bench_;
    std::unique_ptr<TablesPanel> panel_;
};

TEST_F(TablesPanelOf, EveryThingHasARow) {
    open("five-tenants");
    EXPECT_EQ(shown(Kind::conductors).rowCount(), int(layout().conductors.size()));
    EXPECT_EQ(shown(Kind::blocks).rowCount(), int(layout().blocks.size()));
    EXPECT_EQ(shown(Kind::entries).rowCount(), int(layout().entries.size()));
    EXPECT_EQ(shown(Kind::circuits).rowCount(), int(layout().circuits.size()));
    EXPECT_EQ(shown(Kind::systems).rowCount(), int(layout().systems.size()));
    test::keepPicture(*panel_, QStringLiteral("tables-conductors"), {1100, 320});
}

TEST_F(TablesPanelOf, NoColumnIsEmptyForWantOfAField) {
    open("five-tenants");
    for (const auto kind :
         {Kind::conductors, Kind::blocks, Kind::entries, Kind::circuits, Kind::systems}) {
        auto& model = table(kind).model();
        for (int i = 0; i < model.columnCount(); ++i) {
            EXPECT_TRUE(model.column(i).worked || model.fieldAt(0, i) != nullptr ||
                        model.column(i).field == "from strip")  // the first comes from an entry
                << model.column(i).field;
        }
    }
}

TEST_F(TablesPanelOf, SizesSortByAreaNotByLetters) {
    open("five-tenants");
    view().sortByColumn(column(QStringLiteral("Size")), Qt::AscendingOrder);
    const auto sizes = column(Kind::conductors, QStringLiteral("Size"));
    EXPECT_EQ(sizes.front(), QStringLiteral("3 AWG"));
    EXPECT_EQ(sizes.back(), QStringLiteral("350 kcmil"));
    EXPECT_EQ(sizes.indexOf(QStringLiteral("3/0 AWG")), sizes.count(QStringLiteral("3 AWG")));
}

TEST_F(TablesPanelOf, WordsFilterTheRows) {
    open("five-tenants");
    table().words()->setText(QStringLiteral("bakery a"));
    for (int row = 0; row < shown().rowCount(); ++row) {
        EXPECT_EQ(text(row, QStringLiteral("Circuit")), QStringLiteral("circuit Bakery"));
    }
    EXPECT_GT(shown().rowCount(), 0);
    EXPECT_LT(shown().rowCount(), int(layout().conductors.size()));
}

TEST_F(TablesPanelOf, ARowSelectedHereIsSelectedEverywhereAndTheOtherWayRound) {
    open("five-tenants");
    selectRows(0, 1);
    EXPECT_EQ(bench_->selection.items(),
              (std::vector<Item>{layout().conductors[0].id, layout().conductors[1].id}));
    bench_->selection.set({layout().conductors[5].id, layout().blocks[0].id});
    EXPECT_EQ(table().selectedOwners(), editing::Owners{layout().conductors[5].id});
    EXPECT_EQ(table(Kind::blocks).selectedOwners(), editing::Owners{layout().blocks[0].id});
}

TEST_F(TablesPanelOf, TypingInOneOfSeveralRowsIsOneStepForAllAndUndoGivesTheSameBytes) {
    open("five-tenants");
    const auto before = bytes();
    selectRows(0, 2);
    table().commit(cell(1, QStringLiteral("Colour")), QStringLiteral("violet"));
    ASSERT_EQ(bench_->steps(), 1);
    EXPECT_EQ(bench_->document->history().undoText(),
              QStringLiteral("Set colour of 3 conductors to violet"));
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_EQ(layout().conductors[i].colour == "violet", i < 3) << i;
    }
    bench_->document->undo();
    EXPECT_EQ(bytes(), before);
}

TEST_F(TablesPanelOf, KeysEditACellInPlace) {
    open("five-tenants");
    view().setFocus();
    view().setCurrentIndex(cell(0, QStringLiteral("Tag")));
    QTest::keyClick(&view(), Qt::Key_F2);
    auto* line = view().findChild<QLineEdit*>();
    ASSERT_NE(line, nullptr);
    line->selectAll();
    QTest::keyClicks(line, QStringLiteral("Z9"));
    QTest::keyClick(line, Qt::Key_Return);
    test::handleEvents();
    EXPECT_EQ(layout().conductors[0].tag, "Z9");
    EXPECT_EQ(bench_->steps(), 1);
}

TEST_F(TablesPanelOf, WhatCannotBeIsSaidAndChangesNothing) {
    open("five-tenants");
    const auto before = bytes();
    selectRows(0, 0);
    table().commit(cell(0, QStringLiteral("Set")), QStringLiteral("7"));
    EXPECT_EQ(bytes(), before);
    EXPECT_EQ(bench_->steps(), 0);
    EXPECT_FALSE(table().complaint().isEmpty());
    table().commit(cell(0, QStringLiteral("Colour")), QStringLiteral("violet"));
    EXPECT_TRUE(table().complaint().isEmpty());
}

TEST_F(TablesPanelOf, ABlockOfCellsIsPastedAsOneStep) {
    open("five-tenants");
    const auto before = bytes();
    view().setCurrentIndex(cell(0, QStringLiteral("Size")));
    paste(QStringLiteral("400\tcopper\r\n400\tAl\r\n"));
    ASSERT_EQ(bench_->steps(), 1) << table().complaint().toStdString();
    EXPECT_EQ(layout().conductors[0].size.label(), "400");
    EXPECT_EQ(layout().conductors[1].size.label(), "400");
    EXPECT_EQ(layout().conductors[1].metal, standards::Metal::aluminium);
    bench_->document->undo();
    EXPECT_EQ(bytes(), before);
}

TEST_F(TablesPanelOf, ABlockWithOneBadCellPastesNothing) {
    open("five-tenants");
    const auto before = bytes();
    view().setCurrentIndex(cell(0, QStringLiteral("Size")));
    paste(QStringLiteral("400\n401"));
    EXPECT_EQ(bytes(), before);
    EXPECT_FALSE(table().complaint().isEmpty());
}

TEST_F(TablesPanelOf, ABlockThatDoesNotFitPastesNothing) {
    open("five-tenants");
    const auto before = bytes();
    view().setCurrentIndex(cell(shown().rowCount() - 1, QStringLiteral("Size")));
    paste(QStringLiteral("400\n400"));
    EXPECT_EQ(bytes(), before);
    EXPECT_TRUE(table().complaint().contains(QStringLiteral("do not fit")));
}

TEST_F(TablesPanelOf, ACopiedRowCanBePastedOnItself) {
    open("five-tenants");
    const auto before = bytes();
    selectRows(0, 0);
    QTest::keySequence(&view(), QKeySequence::Copy);
    const auto copied = QGuiApplication::clipboard()->text().split(QLatin1Char('\t'));
    EXPECT_EQ(copied.size(), shown().columnCount());
    EXPECT_EQ(copied.front(), QStringLiteral("S1-A"));
    QTest::keySequence(&view(), QKeySequence::Paste);
    EXPECT_EQ(bytes(), before);
    EXPECT_TRUE(table().complaint().isEmpty()) << table().complaint().toStdString();
}

TEST_F(TablesPanelOf, TheVerdictIsTheGravestOfItsFindings) {
    open("broken-ampacity");
    int breaches = 0;
    for (const auto& said : column(Kind::conductors, QStringLiteral("Verdict"))) {
        breaches += said.contains(QStringLiteral("breach")) ? 1 : 0;
    }
    int told = 0;
    for (const auto& conductor : layout().conductors) {
        told += std::any_of(bench_->document->findings().begin(),
                            bench_->document->findings().end(),
                            [&](const checks::Finding& finding) {
                                return finding.verdict == checks::Verdict::breach &&
                                       editing::holds(finding.subjects, conductor.id);
                            })
                    ? 1
                    : 0;
    }
    EXPECT_EQ(breaches, told);
    EXPECT_GT(told + int(column(Kind::circuits, QStringLiteral("Verdict"))
                             .filter(QStringLiteral("breach"))
                             .size()),
              0);
}

TEST_F(TablesPanelOf, AddingASystemIsOneStep) {
    open("five-tenants");
    const auto systems = layout().systems.size();
    for (auto* button : panel_->findChildren<QPushButton*>()) {
        if (button->text() == QStringLiteral("Add system")) {
            QTest::mouseClick(button, Qt::LeftButton);
        }
    }
    test::handleEvents();
    EXPECT_EQ(layout().systems.size(), systems + 1);
    EXPECT_EQ(shown(Kind::systems).rowCount(), int(systems) + 1);
    EXPECT_EQ(bench_->steps(), 1);
}

}  // namespace
}  // namespace gw::ui
