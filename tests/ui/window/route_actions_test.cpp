#include "window/route_actions.h"

#include <gtest/gtest.h>

#include <QMainWindow>
#include <QSignalSpy>
#include <QTest>

#include "geometry/built_layout.h"
#include "ui/panels/panel_bench.h"
#include "ui/support/documents.h"

namespace gw::ui {
namespace {

class Routes : public testing::Test {
protected:
    Routes()
        : routes(new RouteActions(bench.bench(), window)), done(routes, &RouteActions::finished) {
        routes->addTo(menu);
    }
    ~Routes() override { delete routes; }

    bool wait() { return !done.isEmpty() || done.wait(60000); }
    std::vector<layout::ConductorId> changed(const layout::Layout& before) const {
        std::vector<layout::ConductorId> ids;
        for (std::size_t i = 0; i < before.conductors.size(); ++i) {
            if (!(before.conductors[i] == bench.layout().conductors[i])) {
                ids.push_back(before.conductors[i].id);
            }
        }
        return ids;
    }

    test::PanelBench bench{"gate-house"};
    QMainWindow window;
    QMenu menu;
    RouteActions* routes;
    QSignalSpy done;
};

TEST_F(Routes, AllConductorsArriveAsOneStepWithoutABreachAndUndoGivesTheSameBytes) {
    const auto before = test::bytesOf(bench.layout());
    routes->start({});
    EXPECT_TRUE(routes->isRunning());
    ASSERT_TRUE(wait());
    EXPECT_FALSE(routes->isRunning());
    ASSERT_EQ(bench.steps(), 1);
    EXPECT_EQ(bench.document->history().undoText(), QStringLiteral("Route 9 conductors"));
    for (const auto& finding : bench.document->findings()) {
        EXPECT_NE(finding.verdict, checks::Verdict::breach) << finding.working;
    }
    EXPECT_NE(test::bytesOf(bench.layout()), before);
    bench.document->undo();
    EXPECT_EQ(test::bytesOf(bench.layout()), before);
}

TEST_F(Routes, OnlyWhatEndsInTheSelectedBlockIsRouted) {
    const auto before = bench.layout();
    const auto block = before.blocks.front().id;
    bench.selection.set({block});
    menu.actions().front()->trigger();
    ASSERT_TRUE(wait());
    const auto ends = [&](const layout::End& end) {
        const auto* port = std::get_if<layout::InPort>(&end);
        return port != nullptr && port->block == block;
    };
    for (const auto& id : changed(before)) {
        const auto& conductor = before.conductors[*editing::indexOf(before, id)];
        EXPECT_TRUE(ends(conductor.from) || ends(conductor.to)) << id.text();
    }
    EXPECT_FALSE(changed(before).empty());
}

TEST_F(Routes, CancelledNothingIsChanged) {
    const auto before = test::bytesOf(bench.layout());
    routes->start({});
    routes->cancel();
    ASSERT_TRUE(wait());
    EXPECT_EQ(test::bytesOf(bench.layout()), before);
    EXPECT_EQ(bench.steps(), 0);
}

TEST_F(Routes, NothingSelectedIsSaidAndNothingRuns) {
    menu.actions().front()->trigger();
    EXPECT_FALSE(routes->isRunning());
    EXPECT_FALSE(bench.board.hint().isEmpty());
}

TEST_F(Routes, InMidDragNothingRuns) {
    bench.document->beginGesture();
    routes->start({});
    EXPECT_FALSE(routes->isRunning());
    bench.document->cancelGesture();
}

TEST_F(Routes, ClosingWhileItRunsIsClean) {
    routes->start({});
    delete routes;
    routes = nullptr;
    EXPECT_EQ(bench.steps(), 0);
}

}  // namespace
}  // namespace gw::ui
