#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QDialog>
#include <QDockWidget>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <deque>

#include "files/layout_file.h"
#include "panels/properties_panel.h"
#include "panels/shelf_panel.h"
#include "panels/tables_panel.h"
#include "support/shipped_shelf.h"
#include "ui/support/process.h"
#include "window/main_window.h"

namespace gw::ui {
namespace {

using checks::Verdict;

/// Answers dialogs while they block, one after the other. One that nobody expected is put away and
/// counted, so that no test hangs in it.
class Answers : public QObject {
public:
    Answers() {
        timer_.setInterval(10);
        connect(&timer_, &QTimer::timeout, this, &Answers::answer);
        timer_.start();
    }
    void expect(std::function<void(QDialog&)> answer) { answers_.push_back(std::move(answer)); }
    bool done() const { return answers_.empty() && unexpected_ == 0; }

private:
    void answer() {
        auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        if (dialog == nullptr || !dialog->isVisible() || dialog == last_) {
            return;
        }
        last_ = dialog;
        if (answers_.empty()) {
            ++unexpected_;
            dialog->reject();
        } else {
            const auto next = answers_.front();
            answers_.pop_front();
            next(*dialog);
        }
        last_ = nullptr;
    }

    QTimer timer_;
    std::deque<std::function<void(QDialog&)>> answers_;
    QDialog* last_ = nullptr;
    int unexpected_ = 0;
};

/// The field beside a label.
template <class Field>
Field* fieldOf(QDialog& dialog, const QString& label) {
    for (auto* form : dialog.findChildren<QFormLayout*>()) {
        for (int row = 0; row < form->rowCount(); ++row) {
            const auto* item = form->itemAt(row, QFormLayout::LabelRole);
            const auto* shown = item ? qobject_cast<QLabel*>(item->widget()) : nullptr;
            if (shown != nullptr && shown->text().remove(QLatin1Char('&')) == label) {
                return qobject_cast<Field*>(form->itemAt(row, QFormLayout::FieldRole)->widget());
            }
        }
    }
    return nullptr;
}

/// By keys, as one chooses who looks at the list.
void choose(QDialog& dialog, const QString& label, const QString& value) {
    auto* box = fieldOf<QComboBox>(dialog, label);
    ASSERT_NE(box, nullptr) << label.toStdString();
    box->setFocus();
    QTest::keyClick(box, Qt::Key_Home);
    for (int i = 0; i < box->count() && box->currentText() != value; ++i) {
        QTest::keyClick(box, Qt::Key_Down);
    }
    ASSERT_EQ(box->currentText(), value);
}

void typeIn(QDialog& dialog, const QString& label, const QString& text) {
    auto* line = fieldOf<QLineEdit>(dialog, label);
    ASSERT_NE(line, nullptr) << label.toStdString();
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, text);
}

/// From an empty gutter to a saved layout, as a person does it: shortcuts, dialogs by keys, the
/// board by mouse, facts in the tables.
class MainJob : public testing::Test {
protected:
    MainJob() : window(test::shippedShelf(), [](checks::Check) { return QString(); }) {
        window.resize(1400, 900);
    }

    void show() {
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
        window.activateWindow();
        QApplication::processEvents();
    }
    const layout::Layout& layout() { return window.document().layout(); }
    const geometry::BuiltLayout& built() { return window.document().built(); }
    GutterPane& front() { return window.board().front(); }

    void press(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        window.board().setFocus();
        QTest::keyClick(&window.board(), static_cast<Qt::Key>(key), modifiers);
        QApplication::processEvents();
    }
    void send(QEvent::Type type, const QPointF& pixel, Qt::MouseButton button, bool held) {
        QMouseEvent event(type,
                          pixel,
                          front().mapToGlobal(pixel),
                          button,
                          held ? Qt::LeftButton : Qt::NoButton,
                          Qt::NoModifier);
        QApplication::sendEvent(&front(), &event);
    }
    void click(const Vec3& place) {
        const QPointF pixel = front().transform().toPixels(place);
        send(QEvent::MouseMove, pixel, Qt::NoButton, false);
        send(QEvent::MouseButtonPress, pixel, Qt::LeftButton, true);
        send(QEvent::MouseButtonRelease, pixel, Qt::LeftButton, false);
        QApplication::processEvents();
    }

    void newGutter() {
        answers.expect([](QDialog& dialog) {  // of the usual 10 x 10 in, 60 in long
            choose(dialog, QStringLiteral("Location"), QStringLiteral("dry"));
            dialog.accept();
        });
        press(Qt::Key_N, Qt::ControlModifier);
    }
    void placeEntry(const Vec3& at) {
        answers.expect([](QDialog& dialog) {
            choose(dialog, QStringLiteral("Raceway"), QStringLiteral("EMT"));
            choose(dialog, QStringLiteral("Trade size"), QStringLiteral("1-1/4"));
            dialog.accept();
        });
        press(Qt::Key_E);
        click(at);
    }
    void addCircuit(const QString& name, const QString& role, const QString& joins) {
        answers.expect([=](QDialog& dialog) {
            typeIn(dialog, QStringLiteral("Name"), name);
            choose(dialog, QStringLiteral("Role"), role);
            for (auto* box : dialog.findChildren<QCheckBox*>()) {
                const bool wanted =
                    box->text() == QStringLiteral("A") || box->text() == QStringLiteral("N");
                if (box->isChecked() != wanted) {
                    box->setFocus();
                    QTest::keyClick(box, Qt::Key_Space);
                }
            }
            if (!joins.isEmpty()) {
                choose(dialog, QStringLiteral("Tapped from"), joins);
            }
            dialog.accept();
        });
        press(Qt::Key_C);
    }
    /// Found on the shelf by words, taken in hand with Enter, let go with a click.
    void placeBlock(const Vec3& at) {
        auto& shelf = window.panels().shelf();
        auto* dock = qobject_cast<QDockWidget*>(shelf.parentWidget());
        window.panels().goTo(dock);
        shelf.words()->clear();
        QTest::keyClicks(shelf.words(), QStringLiteral("row 3 ports one side 2/0"));
        ASSERT_GE(shelf.list()->topLevelItemCount(), 1);
        shelf.list()->setFocus();
        shelf.list()->setCurrentItem(shelf.list()->topLevelItem(0));
        QTest::keyClick(shelf.list(), Qt::Key_Return);
        QApplication::processEvents();
        click(at);
    }
    void drawConductors(const QString& circuit) {
        answers.expect([=](QDialog& dialog) {
            choose(dialog, QStringLiteral("Circuit"), circuit);
            choose(dialog, QStringLiteral("Size"), QStringLiteral("2 AWG"));
            choose(dialog, QStringLiteral("Metal"), QStringLiteral("copper"));
            choose(dialog, QStringLiteral("Insulation"), QStringLiteral("THHN"));
            choose(dialog, QStringLiteral("Stranding"), QStringLiteral("B"));
            dialog.accept();
        });
        press(Qt::Key_D);
    }
    Vec3 port(std::size_t block, std::size_t index) {
        return built().blocks[block].ports[index].mouth;
    }

    /// Set in all rows of a table at once, from the clipboard.
    void setAll(TablesPanel::Kind kind, const QString& title, const QString& value) {
        auto& table = window.panels().tables().table(kind);
        auto& view = *table.view();
        for (int column = 0; column < view.model()->columnCount(); ++column) {
            if (view.model()->headerData(column, Qt::Horizontal).toString() == title) {
                view.selectAll();
                view.selectionModel()->setCurrentIndex(view.model()->index(0, column),
                                                       QItemSelectionModel::NoUpdate);
                QGuiApplication::clipboard()->setText(value);
                QTest::keySequence(&view, QKeySequence::Paste);
                QApplication::processEvents();
                EXPECT_EQ(table.complaint(), QString()) << title.toStdString();
                return;
            }
        }
        ADD_FAILURE() << "no column " << title.toStdString();
    }
    /// What the labels, the plans and the meter say.
    void setFacts() {
        auto& tables = window.panels().tables();
        window.panels().goTo(qobject_cast<QDockWidget*>(tables.parentWidget()));
        QApplication::processEvents();
        setAll(TablesPanel::entries, QStringLiteral("Bushing"), QStringLiteral("yes"));
        setAll(TablesPanel::blocks, QStringLiteral("Bolted down"), QStringLiteral("yes"));
        setAll(TablesPanel::circuits, QStringLiteral("Device (A)"), QStringLiteral("90"));
        setAll(TablesPanel::circuits, QStringLiteral("Load (A)"), QStringLiteral("72"));
        setAll(TablesPanel::systems, QStringLiteral("Between phases (V)"), QStringLiteral("208"));
        setAll(TablesPanel::systems, QStringLiteral("To ground (V)"), QStringLiteral("120"));
        tables.table(TablesPanel::conductors).words()->setText(QStringLiteral("-A"));
        setAll(TablesPanel::conductors, QStringLiteral("Colour"), QStringLiteral("black"));
        tables.table(TablesPanel::conductors).words()->setText(QStringLiteral("-N"));
        setAll(TablesPanel::conductors, QStringLiteral("Colour"), QStringLiteral("white"));
        tables.table(TablesPanel::conductors).words()->clear();
        auto& gutter = window.panels().gutter();
        window.panels().goTo(qobject_cast<QDockWidget*>(gutter.parentWidget()));
        QApplication::processEvents();
        typeIntoGutter(QStringLiteral("ambient"), QStringLiteral("30"));
        auto* floods = qobject_cast<QComboBox*>(gutter.form().editor(QStringLiteral("floods")));
        ASSERT_NE(floods, nullptr);
        floods->setFocus();
        QTest::keyClick(floods, Qt::Key_End);
        ASSERT_EQ(floods->currentText(), QStringLiteral("no"));
    }
    void typeIntoGutter(const QString& field, const QString& text) {
        auto* editor = window.panels().gutter().form().editor(field);
        auto* line = qobject_cast<QLineEdit*>(editor);
        ASSERT_NE(line, nullptr) << field.toStdString();
        line->setFocus();
        line->selectAll();
        QTest::keyClicks(line, text);
        QTest::keyClick(line, Qt::Key_Return);
        QApplication::processEvents();
    }
    void saveAs(const QString& path) {
        answers.expect([path](QDialog& dialog) {
            auto* name = dialog.findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
            ASSERT_NE(name, nullptr);
            name->setText(path);
            QTest::keyClick(name, Qt::Key_Return);
        });
        press(Qt::Key_S, Qt::ControlModifier);
        EXPECT_FALSE(window.isWindowModified());
        EXPECT_EQ(test::readWholeFile(path).toStdString(), files::writeLayout(layout()));
    }
    std::string told(Verdict verdict) {
        std::string all;
        for (const auto& finding : window.document().findings()) {
            if (finding.verdict == verdict) {
                all +=
                    std::string(checks::checkName(finding.check)) + ": " + finding.working + '\n';
            }
        }
        return all;
    }
    /// The layout file's bytes at every step of the history, and at the end again on the way there.
    void undoAllAndRedoAll() {
        auto& document = window.document();
        const std::string after = files::writeLayout(layout());
        for (int i = document.history().index(); i > 0; --i) {
            press(Qt::Key_Z, Qt::ControlModifier);
            ASSERT_EQ(document.history().index(), i - 1);
        }
        EXPECT_EQ(files::writeLayout(layout()), empty);
        for (int i = 1; i <= document.history().count(); ++i) {
            QTest::keySequence(&window.board(), QKeySequence::Redo);
            ASSERT_EQ(document.history().index(), i);
        }
        EXPECT_EQ(files::writeLayout(layout()), after);
    }
    void keepPicture(const QString& name) {
        const QString to = qEnvironmentVariable("GW_WINDOW_TO");
        if (!to.isEmpty()) {
            QApplication::processEvents();
            window.grab().save(to + QLatin1Char('/') + name + QStringLiteral(".png"));
        }
    }

    Answers answers;
    QTemporaryDir folder;
    MainWindow window;
    std::string empty;
};

TEST_F(MainJob, ByMouseAndKeysFromAnEmptyGutterToASavedLayoutWithNoBreach) {
    show();
    newGutter();
    empty = files::writeLayout(layout());
    placeEntry({0.0, 4.0, 2.0});
    placeEntry({60.0, 4.0, 2.0});
    ASSERT_EQ(layout().entries.size(), 2U);
    addCircuit(QStringLiteral("Feeder"), QStringLiteral("feeder"), {});
    addCircuit(
        QStringLiteral("Net loft"), QStringLiteral("feeder"), QStringLiteral("circuit Feeder"));
    ASSERT_EQ(layout().circuits.size(), 2U);
    placeBlock({22.0, 9.2, 0.0});
    placeBlock({38.0, 9.2, 0.0});
    ASSERT_EQ(layout().blocks.size(), 2U);
    for (std::size_t circuit = 0; circuit < 2; ++circuit) {
        drawConductors(circuit == 0 ? QStringLiteral("circuit Feeder")
                                    : QStringLiteral("circuit Net loft"));
        for (std::size_t block = 0; block < 2; ++block) {
            click(built().entries[circuit].centre);
            click(port(block, circuit == 0 ? 0 : 2));
        }
    }
    ASSERT_EQ(layout().conductors.size(), 4U);
    setFacts();
    keepPicture(QStringLiteral("main-job"));
    EXPECT_EQ(told(Verdict::breach), "");
    EXPECT_EQ(told(Verdict::cannotTell), "");
    saveAs(folder.filePath(QStringLiteral("net-loft.json")));
    undoAllAndRedoAll();
    EXPECT_TRUE(answers.done());
}

}  // namespace
}  // namespace gw::ui
