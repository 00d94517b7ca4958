#include "window/main_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <QTest>

#include "editing/edits.h"
#include "files/layout_file.h"
#include "support/random.h"
#include "support/shipped_shelf.h"
#include "tools/conductor_tool.h"
#include "tools/place_tool.h"
#include "ui/support/process.h"

namespace gw::ui {
namespace {

using editing::Item;
using layout::BlockId;
using layout::EntryId;

std::string bytes(const Document& document) {
    return files::writeLayout(document.layout());
}

/// A window on a copy of a sample, so that saving harms nothing.
class Window : public testing::Test {
protected:
    Window() : window(test::shippedShelf(), [](checks::Check) { return QString(); }) {
        window.resize(1280, 820);
    }

    void open(const QString& sample) {
        const QString from = QStringLiteral(GW_SOURCE_DIR) + QStringLiteral("/samples/") + sample +
                             QStringLiteral("/layout.json");
        path = folder.filePath(QStringLiteral("layout.json"));
        ASSERT_TRUE(QFile::copy(from, path));
        const auto opened = window.open(path);
        ASSERT_TRUE(opened) << toLine(opened.error());
        show();
    }

    void show() {
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
        QApplication::processEvents();
    }

    /// Keeps a picture in the folder that GW_WINDOW_TO names, if it does, for looking at.
    void keepPicture(const QString& name) {
        const QString to = qEnvironmentVariable("GW_WINDOW_TO");
        if (!to.isEmpty()) {
            QApplication::processEvents();
            window.grab().save(to + QLatin1Char('/') + name + QStringLiteral(".png"));
        }
    }

    GutterPane& front() { return window.board().front(); }

    QPointF at(const Vec3& point) { return front().transform().toPixels(point); }

    void send(QEvent::Type type, const QPointF& pixel, Qt::MouseButton button, bool held) {
        QMouseEvent event(type,
                          pixel,
                          front().mapToGlobal(pixel),
                          button,
                          held ? Qt::LeftButton : Qt::NoButton,
                          Qt::NoModifier);
        QApplication::sendEvent(&front(), &event);
    }
    void press(const QPointF& pixel) {
        send(QEvent::MouseMove, pixel, Qt::NoButton, false);
        send(QEvent::MouseButtonPress, pixel, Qt::LeftButton, true);
    }
    void dragTo(const QPointF& from, const QPointF& to) {
        constexpr int kSteps = 4;
        for (int i = 1; i <= kSteps; ++i) {
            send(QEvent::MouseMove, from + (to - from) * i / kSteps, Qt::NoButton, true);
        }
    }
    void release(const QPointF& pixel) {
        send(QEvent::MouseButtonRelease, pixel, Qt::LeftButton, false);
    }
    void drag(const QPointF& from, const QPointF& to) {
        press(from);
        dragTo(from, to);
        release(to);
    }
    void click(const QPointF& pixel) {
        press(pixel);
        release(pixel);
    }

    const geometry::BuiltLayout& built() { return window.document().built(); }

    QTemporaryDir folder;
    QString path;
    MainWindow window;
};

TEST_F(Window, ShowsASampleUnmodified) {
    open(QStringLiteral("five-tenants"));
    EXPECT_FALSE(window.isWindowModified());
    EXPECT_TRUE(window.windowTitle().contains(QStringLiteral("layout.json")));
    keepPicture(QStringLiteral("five-tenants"));
}

TEST_F(Window, AMissingFileIsAnErrorAndLeavesTheWindowAsItWas) {
    const std::string before = bytes(window.document());
    EXPECT_FALSE(window.open(folder.filePath(QStringLiteral("none.json"))));
    EXPECT_EQ(bytes(window.document()), before);
}

TEST_F(Window, AClickChoosesTheBlockUnderIt) {
    open(QStringLiteral("five-tenants"));
    click(at(built().blocks.front().body.centre() + Vec3{1.6, 0.1, 0}));
    ASSERT_EQ(window.selection().items().size(), 1U);
    EXPECT_EQ(window.selection().items().front(), Item(built().layout.blocks.front().id));
    keepPicture(QStringLiteral("block-chosen"));
}

TEST_F(Window, DraggingABlockIsOneStepAndUndoGivesTheSameBytes) {
    open(QStringLiteral("five-tenants"));
    const std::string before = bytes(window.document());
    const Vec3 corner = built().layout.blocks.front().corner;
    const QPointF from = at(built().blocks.front().body.centre() + Vec3{1.6, 0.1, 0});
    drag(from, from + QPointF(-40, 0));
    EXPECT_LT(built().layout.blocks.front().corner.x, corner.x);
    EXPECT_EQ(window.document().history().count(), 1);
    EXPECT_TRUE(window.isWindowModified());
    const std::string after = bytes(window.document());
    window.document().undo();
    EXPECT_EQ(bytes(window.document()), before);
    window.document().redo();
    EXPECT_EQ(bytes(window.document()), after);
}

TEST_F(Window, EscapeInMidDragLeavesNoStepAndUndoThereDoesNothing) {
    open(QStringLiteral("five-tenants"));
    const std::string before = bytes(window.document());
    const QPointF from = at(built().blocks.front().body.centre() + Vec3{1.6, 0.1, 0});
    press(from);
    dragTo(from, from + QPointF(-40, 0));
    ASSERT_TRUE(window.document().inGesture());
    keepPicture(QStringLiteral("mid-drag"));
    const std::string during = bytes(window.document());
    EXPECT_NE(during, before);
    QTest::keySequence(&window, QKeySequence::Undo);
    EXPECT_EQ(bytes(window.document()), during);
    QTest::keyClick(&window, Qt::Key_Escape);
    EXPECT_FALSE(window.document().inGesture());
    EXPECT_EQ(bytes(window.document()), before);
    EXPECT_EQ(window.document().history().count(), 0);
    release(from + QPointF(-40, 0));
    EXPECT_EQ(bytes(window.document()), before);
}

TEST_F(Window, ArrowKeysNudgeAndNudgesOfOneThingAreOneStep) {
    open(QStringLiteral("five-tenants"));
    const auto& blocks = window.document().layout().blocks;
    const double before = blocks[1].corner.x;
    window.selection().set({blocks[1].id});
    window.board().setFocus();
    QTest::keyClick(&window.board(), Qt::Key_Left);
    QTest::keyClick(&window.board(), Qt::Key_Left);
    EXPECT_DOUBLE_EQ(built().layout.blocks[1].corner.x, before - 0.5);
    EXPECT_EQ(window.document().history().count(), 1);
    window.selection().set({blocks[2].id});
    QTest::keyClick(&window.board(), Qt::Key_Left);
    EXPECT_EQ(window.document().history().count(), 2);
}

TEST_F(Window, SavedAndOpenedAgainIsTheSame) {
    open(QStringLiteral("five-tenants"));
    window.selection().set({window.document().layout().blocks[1].id});
    QTest::keyClick(&window.board(), Qt::Key_Left);
    ASSERT_TRUE(window.session().save());
    EXPECT_FALSE(window.isWindowModified());
    EXPECT_EQ(test::readWholeFile(path).toStdString(), bytes(window.document()));
}

/// From an empty gutter: an entry, a circuit fanned in, a block, an end led into its port.
TEST_F(Window, FromAnEmptyGutterToALandedConductor) {
    show();
    auto& document = window.document();
    const std::string before = bytes(document);
    window.makeNew(QStringLiteral("Add entry"),
                   editing::addEntry(built(),
                                     {layout::Wall::top,
                                      10.0,
                                      4.0,
                                      standards::RacewayType::emt,
                                      standards::TradeSize::of("2")}));
    layout::Circuit circuit;
    circuit.name = "Feeder";
    circuit.phases = {layout::Phase::a};
    window.makeNew(QStringLiteral("Add circuit"), editing::addCircuit(built(), circuit));
    window.makeNew(QStringLiteral("Fan in"),
                   editing::fanIn(built(),
                                  built().layout.entries.front().id,
                                  built().layout.circuits.front().id,
                                  {units::WireSize::of("2"),
                                   standards::Metal::copper,
                                   standards::Insulation::thhn,
                                   standards::Stranding::classB}));
    window.tools().take(
        std::make_unique<PlaceTool>(Bench{document, window.selection(), window.boardState()},
                                    parts::PartId("row-one-side-3-to-2-0")));
    keepPicture(QStringLiteral("fanned-in"));
    const QPointF place = at({40, 6, 1});
    send(QEvent::MouseMove, place, Qt::NoButton, false);
    keepPicture(QStringLiteral("placing"));
    click(place);
    ASSERT_EQ(built().layout.blocks.size(), 1U);
    const Vec3 tip = built().conductors.front().built.path.end();
    click(at(tip));
    ASSERT_EQ(window.selection().items().size(), 1U);
    drag(at(tip), at(built().blocks.front().ports.front().mouth));
    EXPECT_TRUE(std::holds_alternative<layout::InPort>(built().layout.conductors.front().to));
    EXPECT_TRUE(built().conductors.front().built.faults.empty());
    keepPicture(QStringLiteral("landed"));
    const int steps = document.history().count();
    EXPECT_EQ(steps, 5);
    for (int i = 0; i < steps; ++i) {
        document.undo();
    }
    EXPECT_EQ(bytes(document), before);
}

/// Whatever is done, what is shown is what a fresh look would show.
TEST_F(Window, RandomEditsKeepGeometryAndFindingsCurrent) {
    open(QStringLiteral("five-tenants"));
    auto& document = window.document();
    const std::string before = bytes(document);
    test_support::Random random(7);
    SCOPED_TRACE("seed 7");
    const auto shift = [&] { return (static_cast<double>(random.below(33)) - 16.0) / 8.0; };
    for (int i = 0; i < 25; ++i) {
        const auto& layout = document.layout();
        const bool block = random.below(2) == 0 && !layout.blocks.empty();
        if (!block && layout.conductors.empty()) {
            break;
        }
        const Item item = block
                              ? Item(layout.blocks[random.below(layout.blocks.size())].id)
                              : Item(layout.conductors[random.below(layout.conductors.size())].id);
        const auto after = random.below(8) == 0
                               ? editing::removeItems(built(), {item})
                               : editing::moveItems(built(), {item}, {shift(), shift(), shift()});
        ASSERT_TRUE(after) << toLine(after.error());
        ASSERT_TRUE(document.edit(QStringLiteral("step %1").arg(i), *after));
        const auto fresh = geometry::build(document.layout(), document.shelf());
        const auto findings = checks::checkAll(fresh);
        ASSERT_EQ(document.findings().size(), findings.size());
        for (std::size_t f = 0; f < findings.size(); ++f) {
            ASSERT_EQ(document.findings()[f].working, findings[f].working);
            ASSERT_EQ(document.findings()[f].verdict, findings[f].verdict);
        }
    }
    while (document.canUndo()) {
        document.undo();
    }
    EXPECT_EQ(bytes(document), before);
}

}  // namespace
}  // namespace gw::ui
