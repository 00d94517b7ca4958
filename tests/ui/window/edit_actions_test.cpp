#include "window/edit_actions.h"

#include <gtest/gtest.h>

#include <QAbstractSpinBox>
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QDialogButtonBox>
#include <QLineEdit>
#include <QMenuBar>
#include <QPushButton>
#include <QTest>
#include <QTimer>

#include "editing/remove.h"
#include "files/layout_file.h"
#include "support/shipped_shelf.h"
#include "ui/support/process.h"
#include "window/find_dialog.h"
#include "window/main_window.h"

namespace gw::ui {
namespace {

using layout::BlockId;

std::string bytes(const Document& document) {
    return files::writeLayout(document.layout());
}

/// A window on a sample.
class Edits : public testing::Test {
protected:
    Edits() : window(test::shippedShelf(), [](checks::Check) { return QString(); }) {
        window.resize(1280, 820);
        const auto opened = window.open(QStringLiteral(GW_SOURCE_DIR) +
                                        QStringLiteral("/samples/five-tenants/layout.json"));
        EXPECT_TRUE(opened) << toLine(opened.error());
        before = bytes(window.document());
    }

    void show() {
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
        window.activateWindow();
        window.board().setFocus();
        QApplication::processEvents();
    }

    void keepPicture(QWidget& widget, const QString& name) {
        const QString to = qEnvironmentVariable("GW_WINDOW_TO");
        if (!to.isEmpty()) {
            QApplication::processEvents();
            widget.grab().save(to + QLatin1Char('/') + name + QStringLiteral(".png"));
        }
    }

    const layout::Layout& layout() { return window.document().layout(); }
    BlockId block(std::size_t i) { return layout().blocks[i].id; }

    /// It was one step with this name, and undo gives back the same bytes, redo the others.
    void expectOneStep(const QString& name) {
        auto& document = window.document();
        ASSERT_EQ(document.history().count(), 1);
        EXPECT_EQ(document.history().undoText(), name);
        const std::string after = bytes(document);
        EXPECT_NE(after, before);
        document.undo();
        EXPECT_EQ(bytes(document), before);
        document.redo();
        EXPECT_EQ(bytes(document), after);
        document.undo();
    }

    QStringList textsOf(const QMenu& menu) {
        QStringList texts;
        for (const auto* one : menu.actions()) {
            texts += one->text().remove(QLatin1Char('&'));
        }
        return texts;
    }

    BoardPoint pointAt(const Vec3& place) {
        const double scale = window.boardState().pixelsPerInch();
        return {geometry::View::front, {place.x, place.y}, 1.0 / scale, Qt::NoModifier, 0.0};
    }

    MainWindow window;
    std::string before;
};

TEST_F(Edits, DuplicateIsOneStepAndSelectsTheCopy) {
    const std::size_t count = layout().blocks.size();
    const auto name = editing::itemName(layout(), block(0));
    window.selection().set({block(0)});
    window.edits().duplicate();
    ASSERT_EQ(layout().blocks.size(), count + 1);
    ASSERT_EQ(window.selection().items().size(), 1U);
    EXPECT_EQ(window.selection().items().front(), Item(layout().blocks.back().id));
    expectOneStep(QStringLiteral("Duplicate ") + QString::fromStdString(name));
}

TEST_F(Edits, CopyAndPasteBringTheSameThingsOnceMore) {
    window.selection().set({block(0), block(1)});
    window.edits().copy();
    EXPECT_EQ(bytes(window.document()), before) << "copying changes nothing";
    window.selection().clear();
    window.edits().paste();
    EXPECT_EQ(window.selection().items().size(), 2U);
    expectOneStep(QStringLiteral("Paste 2 blocks"));
}

TEST_F(Edits, CutAndPasteInTheSamePlaceKeepTheBlock) {
    const layout::Block cut = layout().blocks.front();
    window.selection().set({cut.id});
    window.edits().cut();
    EXPECT_FALSE(editing::isThere(layout(), cut.id));
    EXPECT_TRUE(window.selection().empty());
    window.edits().paste();
    ASSERT_TRUE(editing::isThere(layout(), cut.id));
    EXPECT_EQ(layout().blocks.back(), cut);
    window.document().undo();
    window.document().undo();
    EXPECT_EQ(bytes(window.document()), before);
}

TEST_F(Edits, WhatIsNoPieceOfAGutterIsNotPasted) {
    for (const auto* text : {"", "hello", "{\"format\": \"something\"}", "{"}) {
        QGuiApplication::clipboard()->setText(QString::fromLatin1(text));
        window.boardState().setHint({});
        window.edits().paste();
        EXPECT_EQ(bytes(window.document()), before) << text;
        EXPECT_FALSE(window.boardState().hint().isEmpty()) << text;
    }
    EXPECT_EQ(window.document().history().count(), 0);
}

TEST_F(Edits, MirrorMoveAndDeleteAreOneStepEach) {
    const QString name = QString::fromStdString(editing::itemName(layout(), block(0)));
    window.selection().set({block(0)});
    window.edits().mirror();
    expectOneStep(QStringLiteral("Mirror ") + name);
    window.selection().set({block(0)});
    window.edits().moveBy({0.0625, 0, 0});
    expectOneStep(QStringLiteral("Move ") + name);
    window.selection().set({block(0)});
    window.edits().remove();
    expectOneStep(QStringLiteral("Delete ") + name);
}

TEST_F(Edits, CopiesInARowThatHaveNoRoomLeaveNoStepAndSaySo) {
    window.selection().set({block(0)});
    window.edits().makeCopies(50, {4, 0, 0});
    EXPECT_EQ(window.document().history().count(), 0);
    EXPECT_TRUE(window.boardState().hint().contains(QStringLiteral("there is room for")))
        << window.boardState().hint().toStdString();
}

TEST_F(Edits, InMidDragNothingElseHappens) {
    window.selection().set({block(0)});
    window.document().beginGesture();
    for (auto* menu : window.menuBar()->findChildren<QMenu*>()) {
        if (menu->title() == QStringLiteral("&Edit")) {
            for (auto* one : menu->actions()) {
                const bool asks = one->text().contains(QStringLiteral("…"));
                if (!asks && one->menu() == nullptr) {
                    one->trigger();
                }
            }
        }
    }
    EXPECT_EQ(bytes(window.document()), before);
    window.document().cancelGesture();
    EXPECT_EQ(window.document().history().count(), 0);
}

TEST_F(Edits, KeysWorkOnTheBoard) {
    show();
    window.selection().set({block(0)});
    const std::size_t count = layout().blocks.size();
    QTest::keySequence(&window.board(), QKeySequence::Copy);
    QTest::keySequence(&window.board(), QKeySequence::Paste);
    EXPECT_EQ(layout().blocks.size(), count + 1);
    QTest::keySequence(&window.board(), QKeySequence(Qt::CTRL | Qt::Key_D));
    EXPECT_EQ(layout().blocks.size(), count + 2);
    QTest::keySequence(&window.board(), QKeySequence::Delete);
    EXPECT_EQ(layout().blocks.size(), count + 1);
    QTest::keySequence(&window.board(), QKeySequence::SelectAll);
    EXPECT_EQ(window.selection().items().size(),
              layout().entries.size() + layout().blocks.size() + layout().conductors.size());
    while (window.document().canUndo()) {
        window.document().undo();
    }
    EXPECT_EQ(bytes(window.document()), before);
}

TEST_F(Edits, TheMenuOfABlockTurnsItAndShowsTheKeys) {
    show();
    const auto body = window.document().built().blocks.front().body;
    std::unique_ptr<QMenu> menu(window.edits().menuFor(pointAt(body.centre() + Vec3{1.6, 0.1, 0})));
    ASSERT_EQ(window.selection().items(), std::vector<Item>{block(0)});
    const QStringList texts = textsOf(*menu);
    EXPECT_TRUE(texts.contains(QStringLiteral("Duplicate")));
    EXPECT_TRUE(texts.contains(QStringLiteral("Delete")));
    EXPECT_TRUE(texts.contains(QStringLiteral("Turn about the axis upright\tY")));
    EXPECT_FALSE(texts.contains(QStringLiteral("New path")));
    for (auto* one : menu->actions()) {
        if (one->text().contains(QStringLiteral("\tY"))) {
            one->trigger();
            break;
        }
    }
    menu->popup({100, 100});
    keepPicture(*menu, QStringLiteral("menu-of-a-block"));
    menu->hide();
    EXPECT_EQ(window.document().history().count(), 1);
}

TEST_F(Edits, TheMenuOfAConductorAddsABendWhereItWasAsked) {
    show();
    const auto& conductor = window.document().built().conductors.front();
    const std::size_t corners = layout().conductors.front().corners.size();
    const auto& bends = conductor.built.bends;
    ASSERT_GE(bends.size(), 2U);
    window.selection().set({layout().conductors.front().id});
    const double middle = (bends[0].start + bends[1].start) / 2.0;
    std::unique_ptr<QMenu> menu(
        window.edits().menuFor(pointAt(conductor.built.path.pointAt(middle))));
    const QStringList texts = textsOf(*menu);
    ASSERT_TRUE(texts.contains(QStringLiteral("Add a bend here\tdouble click")))
        << texts.join(QLatin1Char('/')).toStdString();
    for (auto* one : menu->actions()) {
        if (one->text().contains(QStringLiteral("Add a &bend here"))) {
            one->trigger();
        }
    }
    EXPECT_EQ(layout().conductors.front().corners.size(), corners + 1);
    expectOneStep(
        QStringLiteral("Add a bend to ") +
        QString::fromStdString(editing::itemName(layout(), layout().conductors.front().id)));
}

TEST_F(Edits, TheMenuOfNothingOffersToPlaceAndSelectsNothing) {
    show();
    window.selection().set({block(0)});
    std::unique_ptr<QMenu> menu(window.edits().menuFor(pointAt({-3, -3, 0})));
    EXPECT_TRUE(window.selection().empty());
    const QStringList texts = textsOf(*menu);
    EXPECT_TRUE(texts.contains(QStringLiteral("Paste")));
    EXPECT_TRUE(texts.contains(QStringLiteral("Entry…")));
    EXPECT_FALSE(texts.contains(QStringLiteral("Delete")));
}

TEST_F(Edits, TheRightButtonOpensItAndEscapePutsItAway) {
    show();
    QContextMenuEvent event(QContextMenuEvent::Mouse,
                            window.board().front().rect().center(),
                            window.board().front().mapToGlobal(QPoint(5, 5)));
    QApplication::sendEvent(&window.board().front(), &event);
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr);
    EXPECT_FALSE(menu->actions().isEmpty());
    QTest::keyClick(menu, Qt::Key_Escape);
    EXPECT_EQ(QApplication::activePopupWidget(), nullptr);
    EXPECT_EQ(bytes(window.document()), before);
}

/// Answers the next dialogue while it lives: types into its fields in their order and presses Ok,
/// or Cancel where it may not.
class Typist {
public:
    explicit Typist(QStringList texts) : texts_(std::move(texts)) {
        QObject::connect(&timer_, &QTimer::timeout, [this] { answer(); });
        timer_.start(5);
    }
    bool couldAccept() const { return accepted_; }
    bool wasAsked() const { return asked_; }

private:
    void answer() {
        auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        auto* buttons = dialog != nullptr ? dialog->findChild<QDialogButtonBox*>() : nullptr;
        if (buttons == nullptr) {
            return;
        }
        timer_.stop();
        asked_ = true;
        qsizetype next = 0;
        for (auto* field : dialog->findChildren<QLineEdit*>()) {
            const bool ofSpinBox = qobject_cast<QAbstractSpinBox*>(field->parent()) != nullptr;
            if (!ofSpinBox && next < texts_.size()) {
                field->setText(texts_[next++]);
            }
        }
        accepted_ = buttons->button(QDialogButtonBox::Ok)->isEnabled();
        buttons->button(accepted_ ? QDialogButtonBox::Ok : QDialogButtonBox::Cancel)->click();
    }

    QStringList texts_;
    QTimer timer_;
    bool asked_ = false;
    bool accepted_ = false;
};

TEST_F(Edits, MoveByAsksForLengths) {
    show();
    window.selection().set({block(1)});
    const Vec3 corner = layout().blocks[1].corner;
    const Typist typist({QStringLiteral("1/2"), QStringLiteral("-25.4 mm"), QStringLiteral("0")});
    QTest::keyClick(&window.board(), Qt::Key_M);
    ASSERT_TRUE(typist.wasAsked());
    EXPECT_EQ(layout().blocks[1].corner, corner + (Vec3{0.5, -1.0, 0.0}));
}

TEST_F(Edits, MoveByWaitsForLengthsAndPutAwayMovesNothing) {
    show();
    window.selection().set({block(1)});
    const Typist typist({QStringLiteral("half an inch")});
    QTest::keyClick(&window.board(), Qt::Key_M);
    ASSERT_TRUE(typist.wasAsked());
    EXPECT_FALSE(typist.couldAccept());
    EXPECT_EQ(bytes(window.document()), before);
    EXPECT_EQ(window.document().history().count(), 0);
}

TEST_F(Edits, ARouteIsLedAgainForTheNextPhaseByAKey) {
    show();
    // Of a set of which the last phase is taken away.
    const auto& conductors = layout().conductors;
    ASSERT_EQ(conductors[0].circuit, conductors[1].circuit);
    const auto gone = conductors[1];
    const auto like = conductors[0].id;
    const auto after = editing::removeItems(window.document().built(), {gone.id});
    ASSERT_TRUE(after);
    ASSERT_TRUE(window.document().edit(QStringLiteral("less"), *after));
    const std::string less = bytes(window.document());
    window.selection().set({like});
    QTest::keyClick(&window.board(), Qt::Key_N);
    ASSERT_EQ(window.selection().items().size(), 1U);
    EXPECT_NE(window.selection().items().front(), Item(like));
    EXPECT_EQ(layout().conductors.back().phase, gone.phase);
    EXPECT_EQ(window.document().history().count(), 2);
    keepPicture(window, QStringLiteral("next-phase"));
    window.document().undo();
    EXPECT_EQ(bytes(window.document()), less);
    window.selection().set({like});
    window.document().undo();
    QTest::keyClick(&window.board(), Qt::Key_N);  // all are there
    EXPECT_EQ(bytes(window.document()), before);
    EXPECT_TRUE(window.boardState().hint().contains(QStringLiteral("have a conductor")))
        << window.boardState().hint().toStdString();
}

TEST_F(Edits, MeasuringIsAToolThatEscapeLeaves) {
    show();
    QTest::keyClick(&window.board(), Qt::Key_T);
    EXPECT_EQ(window.tools().current().name(), QStringLiteral("Measure"));
    const auto& ports = window.document().built().blocks.front().ports;
    auto& tool = window.tools().current();
    tool.press(pointAt(ports.front().mouth));
    tool.move(pointAt(window.document().built().entries.front().centre));
    keepPicture(window, QStringLiteral("measuring"));
    window.tools().cancel();
    EXPECT_EQ(window.tools().current().name(), QStringLiteral("Measure")) << "first the distance";
    window.tools().cancel();
    EXPECT_EQ(window.tools().current().name(), QStringLiteral("Select"));
    EXPECT_EQ(bytes(window.document()), before);
}

TEST_F(Edits, FindSelectsWhatIsPointedAtAndCutsThere) {
    show();
    FindDialog dialog({window.document(), window.selection(), window.boardState()}, &window);
    dialog.show();
    std::vector<Item> told;
    QObject::connect(&dialog, &FindDialog::found, [&](const Item& item) { told.push_back(item); });
    const auto& last = layout().conductors.back();
    QTest::keyClicks(&dialog.text(), QString::fromStdString(last.tag));
    ASSERT_GE(dialog.list().count(), 1);
    keepPicture(dialog, QStringLiteral("find"));
    QTest::keyClick(&dialog.text(), Qt::Key_Return);
    EXPECT_EQ(window.selection().items(), std::vector<Item>{last.id});
    EXPECT_EQ(told, std::vector<Item>{last.id});
    EXPECT_FALSE(dialog.isVisible());
    EXPECT_EQ(bytes(window.document()), before);
}

}  // namespace
}  // namespace gw::ui
