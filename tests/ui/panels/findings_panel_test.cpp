#include "panels/findings_panel.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "panels/panel_text.h"
#include "ui/panels/panel_bench.h"

namespace gw::ui {
namespace {

using checks::Verdict;

class FindingsPanelOf : public ::testing::Test {
protected:
    void open(const char* sample) {
        bench_ = std::make_unique<test::PanelBench>(sample);
        panel_ = std::make_unique<FindingsPanel>(bench_->bench());
        panel_->show();
        test::handleEvents();
    }
    int rows() const {
        int rows = 0;
        for (int group = 0; group < panel_->model().rowCount(); ++group) {
            rows += panel_->model().rowCount(panel_->model().index(group, 0));
        }
        return rows;
    }
    QModelIndex first(Verdict verdict) const {
        const auto& model = panel_->model();
        for (int group = 0; group < model.rowCount(); ++group) {
            const auto index = model.index(0, 0, model.index(group, 0));
            if (model.findingAt(index)->verdict == verdict) {
                return index;
            }
        }
        return {};
    }
    std::vector<Verdict> verdictsInOrder() const {
        const auto& model = panel_->model();
        std::vector<Verdict> verdicts;
        for (int group = 0; group < model.rowCount(); ++group) {
            verdicts.push_back(model.findingAt(model.index(0, 0, model.index(group, 0)))->verdict);
        }
        return verdicts;
    }
    void type(const QString& text) {
        auto* field = panel_->findChild<QLineEdit*>();
        field->clear();
        QTest::keyClicks(field, text);
        test::handleEvents();
    }

    std::unique_ptr<test::PanelBench> bench_;
    std::unique_ptr<FindingsPanel> panel_;
};

int place(Verdict verdict) {
    return static_cast<int>(std::find(kVerdictOrder.begin(), kVerdictOrder.end(), verdict) -
                            kVerdictOrder.begin());
}

TEST_F(FindingsPanelOf, ShowsEveryFindingOnceBreachesFirst) {
    open("broken-clearance");
    EXPECT_EQ(rows(), static_cast<int>(bench_->document->findings().size()));
    const auto verdicts = verdictsInOrder();
    ASSERT_FALSE(verdicts.empty());
    EXPECT_EQ(verdicts.front(), Verdict::breach);
    EXPECT_TRUE(std::is_sorted(verdicts.begin(), verdicts.end(), [](Verdict a, Verdict b) {
        return place(a) < place(b);
    }));
}

TEST_F(FindingsPanelOf, SaysInOneLineHowManyOfEach) {
    open("five-tenants");
    const auto tally = checks::tally(bench_->document->findings());
    ASSERT_EQ(tally.breach, 0);
    const QString meets = QString::number(tally.meets) + QStringLiteral(" meet");
    EXPECT_TRUE(panel_->summary().startsWith(QStringLiteral("No breach")));
    EXPECT_TRUE(panel_->summary().endsWith(meets));
}

TEST_F(FindingsPanelOf, FilterKeepsWhatSaysTheText) {
    open("five-tenants");
    type(QStringLiteral("bend radius"));
    ASSERT_GT(rows(), 0);
    EXPECT_LT(rows(), static_cast<int>(bench_->document->findings().size()));
    type(QStringLiteral("no such thing anywhere"));
    EXPECT_EQ(rows(), 0);
    type(QString());
    EXPECT_EQ(rows(), static_cast<int>(bench_->document->findings().size()));
}

TEST_F(FindingsPanelOf, AVerdictCanBeLeftOut) {
    open("broken-clearance");
    const auto tally = checks::tally(bench_->document->findings());
    auto* button = panel_->findChildren<QToolButton*>().at(place(Verdict::meets));
    QTest::mouseClick(button, Qt::LeftButton);
    test::handleEvents();
    EXPECT_EQ(rows(), tally.breach + tally.caution + tally.cannotTell);
    EXPECT_FALSE(first(Verdict::meets).isValid());
}

TEST_F(FindingsPanelOf, EnterSelectsTheSubjectsAndGoesThere) {
    open("broken-clearance");
    QSignalSpy jumps(panel_.get(), &FindingsPanel::jumpTo);
    panel_->list()->setCurrentIndex(first(Verdict::breach));
    const auto* finding = panel_->model().findingAt(panel_->list()->currentIndex());
    ASSERT_TRUE(finding->place.has_value());
    QTest::keyClick(panel_->list(), Qt::Key_Return);
    EXPECT_EQ(bench_->selection.items(), finding->subjects);
    ASSERT_EQ(jumps.count(), 1);
    EXPECT_EQ(jumps.at(0).at(0).value<Vec3>(), *finding->place);
}

TEST_F(FindingsPanelOf, HelpAsksForThePageOfTheCheck) {
    open("broken-clearance");
    QSignalSpy help(panel_.get(), &FindingsPanel::helpWanted);
    panel_->list()->setCurrentIndex(first(Verdict::breach));
    for (auto* button : panel_->findChildren<QPushButton*>()) {
        if (button->text().contains(QStringLiteral("About"))) {
            button->click();
        }
    }
    ASSERT_EQ(help.count(), 1);
    EXPECT_EQ(help.at(0).at(0).value<checks::Check>(), checks::Check::clearance);
}

TEST_F(FindingsPanelOf, WorkingNamesVerdictNumbersAndSection) {
    open("broken-clearance");
    panel_->list()->setCurrentIndex(first(Verdict::breach));
    const auto* finding = panel_->model().findingAt(panel_->list()->currentIndex());
    const QString html = findingHtml(bench_->layout(), *finding);
    EXPECT_TRUE(html.contains(QStringLiteral("breach")));
    EXPECT_TRUE(html.contains(toQString(finding->working).toHtmlEscaped()));
    EXPECT_TRUE(
        html.contains(quantityText(finding->measured, units::LengthUnit::inch).toHtmlEscaped()));
    EXPECT_TRUE(html.contains(toQString(standards::toText(finding->citation)).toHtmlEscaped()));
}

TEST_F(FindingsPanelOf, WhatIsMissingAndEachReadingIsToldOfAFinding) {
    open("five-tenants");
    checks::Finding finding = bench_->document->findings().front();
    finding.missing = {"insulation of conductor T<1>"};
    finding.readings = {{"one way", Verdict::meets, {}, {}, "It holds.", true},
                        {"other way", Verdict::breach, {}, {}, "It does not.", false}};
    const QString html = findingHtml(bench_->layout(), finding);
    EXPECT_TRUE(html.contains(QStringLiteral("insulation of conductor T&lt;1&gt;")));
    EXPECT_TRUE(
        html.contains(QStringLiteral("Taken here: <i>one way</i>: <b>meets</b>. It holds.")));
    EXPECT_TRUE(html.contains(QStringLiteral("<i>other way</i>: <b>breach</b>. It does not.")));
}

TEST_F(FindingsPanelOf, WhatIsCurrentStaysSoThroughAnEdit) {
    open("five-tenants");
    auto after = bench_->layout();
    const auto current = first(Verdict::meets).siblingAtRow(1);
    panel_->list()->setCurrentIndex(current);
    const QString key = panel_->model().keyOf(current);
    after.entries.front().insulatingBushing.reset();  // one finding goes to another group
    ASSERT_TRUE(bench_->document->edit(QStringLiteral("Forget a bushing"), after));
    test::handleEvents();
    EXPECT_EQ(rows(), static_cast<int>(bench_->document->findings().size()));
    EXPECT_EQ(panel_->model().keyOf(panel_->list()->currentIndex()), key);
}

TEST_F(FindingsPanelOf, HiddenItDoesNotFollowAndShownItDoes) {
    open("five-tenants");
    const QString before = panel_->summary();
    panel_->hide();
    auto after = bench_->layout();
    after.entries.front().insulatingBushing.reset();
    ASSERT_TRUE(bench_->document->edit(QStringLiteral("Forget a bushing"), after));
    test::handleEvents();
    EXPECT_EQ(panel_->summary(), before);
    panel_->show();
    EXPECT_NE(panel_->summary(), before);
}

TEST_F(FindingsPanelOf, CanShowOnlyWhatTheSelectionIsConcernedBy) {
    open("five-tenants");
    const Item item = bench_->layout().blocks.front().id;
    panel_->findChild<QCheckBox*>()->setChecked(true);
    bench_->selection.set({item});
    test::handleEvents();
    ASSERT_GT(rows(), 0);
    EXPECT_LT(rows(), static_cast<int>(bench_->document->findings().size()));
    const auto& model = panel_->model();
    for (int group = 0; group < model.rowCount(); ++group) {
        const auto parent = model.index(group, 0);
        for (int row = 0; row < model.rowCount(parent); ++row) {
            const auto& subjects = model.findingAt(model.index(row, 0, parent))->subjects;
            EXPECT_NE(std::find(subjects.begin(), subjects.end(), item), subjects.end());
        }
    }
}

TEST_F(FindingsPanelOf, Picture) {
    open("broken-clearance");
    panel_->list()->setCurrentIndex(first(Verdict::breach));
    test::keepPicture(*panel_, QStringLiteral("findings"), {340, 620});
    test::keepPicture(*panel_, QStringLiteral("findings-wide"), {800, 420});
    EXPECT_LE(panel_->minimumSizeHint().width(), 300);
}

}  // namespace
}  // namespace gw::ui
