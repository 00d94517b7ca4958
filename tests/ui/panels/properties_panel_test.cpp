#include "panels/properties_panel.h"

#include <gtest/gtest.h>

#include <QTest>

#include "panels/panel_text.h"
#include "ui/panels/panel_bench.h"
#include "ui/support/documents.h"

namespace gw::ui {
namespace {

class PropertiesPanelOf : public ::testing::Test {
protected:
    void open(const char* sample) {
        bench_ = std::make_unique<test::PanelBench>(sample);
        panel_ = std::make_unique<PropertiesPanel>(bench_->bench());
        panel_->resize(330, 600);
        panel_->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(panel_.get()));
        panel_->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(panel_.get()));
    }
    void select(std::vector<Item> items) {
        bench_->selection.set(std::move(items));
        test::handleEvents();
    }
    QLineEdit* line(const char* name) {
        return qobject_cast<QLineEdit*>(panel_->form().editor(QString::fromLatin1(name)));
    }
    QComboBox* box(const char* name) {
        return qobject_cast<QComboBox*>(panel_->form().editor(QString::fromLatin1(name)));
    }
    void type(const char* name, const QString& text) {
        auto* field = line(name);
        ASSERT_NE(field, nullptr) << name;
        field->setFocus();
        field->selectAll();
        QTest::keyClick(field, Qt::Key_Delete);
        QTest::keyClicks(field, text);
        QTest::keyClick(field, Qt::Key_Return);
        test::handleEvents();
    }
    /// By keys, as one chooses who does not see the list.
    void choose(const char* name, const QString& text) {
        auto* field = box(name);
        ASSERT_NE(field, nullptr) << name;
        const int wanted = field->findText(text);
        ASSERT_GE(wanted, 0) << text.toStdString();
        field->setFocus();
        field->setCurrentIndex(wanted > 0 ? wanted - 1 : wanted + 1);
        QTest::keyClick(field, wanted > 0 ? Qt::Key_Down : Qt::Key_Up);
        test::handleEvents();
    }
    const layout::Layout& layout() const { return bench_->layout(); }
    QByteArray bytes() const { return test::bytesOf(layout()); }

    std::unique_ptr<test::PanelBench> bench_;
    std::unique_ptr<PropertiesPanel> panel_;
};

TEST_F(PropertiesPanelOf, NothingSelectedShowsTheGutter) {
    open("five-tenants");
    EXPECT_EQ(panel_->heading(), QStringLiteral("The gutter"));
    EXPECT_NE(box("material"), nullptr);
    select({layout().blocks.front().id});
    EXPECT_TRUE(panel_->heading().startsWith(QStringLiteral("Block ")));
    EXPECT_EQ(box("material"), nullptr);
}

TEST_F(PropertiesPanelOf, ATypedLengthIsOneStepAndUndoGivesTheSameBytes) {
    open("five-tenants");
    const auto& entry = layout().entries.front();
    select({entry.id});
    const QByteArray before = bytes();
    type("raceway length", QStringLiteral("3 1/2"));
    ASSERT_EQ(bench_->steps(), 1);
    EXPECT_DOUBLE_EQ(layout().entries.front().racewayLength->in(), 3.5);
    EXPECT_EQ(bench_->document->history().undoText(),
              QStringLiteral("Set length beyond of %1 to 3 1/2")
                  .arg(itemName(layout(), layout().entries.front().id)));
    EXPECT_EQ(line("raceway length")->text(), QStringLiteral("3 1/2 in"));
    const QByteArray after = bytes();
    bench_->document->undo();
    EXPECT_EQ(bytes(), before);
    bench_->document->redo();
    EXPECT_EQ(bytes(), after);
}

TEST_F(PropertiesPanelOf, AChoiceByKeysIsOneStep) {
    open("five-tenants");
    const auto id = layout().conductors.front().id;
    select({id});
    const QByteArray before = bytes();
    choose("size", QStringLiteral("300 kcmil"));
    ASSERT_EQ(bench_->steps(), 1);
    EXPECT_EQ(layout().conductors.front().size, units::WireSize::of("300"));
    EXPECT_EQ(bench_->document->history().undoText(),
              QStringLiteral("Set size of %1 to 300 kcmil").arg(itemName(layout(), id)));
    bench_->document->undo();
    EXPECT_EQ(bytes(), before);
}

TEST_F(PropertiesPanelOf, WhatCannotBeIsSaidUnderTheFieldAndNothingChanges) {
    open("five-tenants");
    select({layout().entries.front().id});
    const QByteArray before = bytes();
    type("raceway length", QStringLiteral("3 furlongs"));
    EXPECT_EQ(bytes(), before);
    EXPECT_EQ(bench_->steps(), 0);
    EXPECT_TRUE(panel_->form().complaint(QStringLiteral("raceway length")).contains("furlongs"));
    EXPECT_EQ(line("raceway length")->text(), QStringLiteral("3 furlongs"));
    EXPECT_FALSE(line("raceway length")->accessibleDescription().isEmpty());
    test::keepPicture(*panel_, QStringLiteral("properties-refused"), {330, 620});
    QTest::keyClick(line("raceway length"), Qt::Key_Escape);
    EXPECT_TRUE(panel_->form().complaint(QStringLiteral("raceway length")).isEmpty());
    EXPECT_NE(line("raceway length")->text(), QStringLiteral("3 furlongs"));
    EXPECT_EQ(bytes(), before);
}

TEST_F(PropertiesPanelOf, SeveralThatDifferSaySoAndSettingSetsAll) {
    open("five-tenants");
    const auto& conductors = layout().conductors;
    select({conductors[0].id, conductors[1].id, conductors[2].id});
    EXPECT_EQ(panel_->heading(), QStringLiteral("3 conductors"));
    EXPECT_EQ(line("tag")->text(), QString());
    EXPECT_EQ(line("tag")->placeholderText(), QStringLiteral("several"));
    EXPECT_EQ(box("phase")->currentText(), QStringLiteral("several"));
    const QByteArray before = bytes();
    QTest::keyClick(line("tag"), Qt::Key_Return);  // not touched: nothing
    EXPECT_EQ(bench_->steps(), 0);
    choose("metal", QStringLiteral("aluminium"));
    ASSERT_EQ(bench_->steps(), 1);
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_EQ(layout().conductors[i].metal, standards::Metal::aluminium);
    }
    EXPECT_EQ(bench_->document->history().undoText(),
              QStringLiteral("Set metal of 3 conductors to aluminium"));
    bench_->document->undo();
    EXPECT_EQ(bytes(), before);
    test::keepPicture(*panel_, QStringLiteral("properties-several"), {330, 620});
}

TEST_F(PropertiesPanelOf, WhatIsOptionalCanBeLeftNotStated) {
    open("five-tenants");
    select({layout().entries.front().id});
    ASSERT_TRUE(layout().entries.front().insulatingBushing.has_value());
    choose("insulating bushing", QStringLiteral("not stated"));
    EXPECT_FALSE(layout().entries.front().insulatingBushing.has_value());
    type("raceway length", QStringLiteral("14"));
    type("raceway length", QString());
    EXPECT_FALSE(layout().entries.front().racewayLength.has_value());
    EXPECT_EQ(line("raceway length")->placeholderText(), QStringLiteral("not stated"));
}

TEST_F(PropertiesPanelOf, WhatIsTypedForOneThingNeverGoesToAnother) {
    open("five-tenants");
    select({layout().entries[0].id});
    line("name")->setFocus();
    line("name")->selectAll();
    QTest::keyClicks(line("name"), QStringLiteral("Half typed"));
    select({layout().entries[1].id});
    QTest::keyClick(line("name"), Qt::Key_Return);
    test::handleEvents();
    EXPECT_EQ(bench_->steps(), 0);
    EXPECT_EQ(line("name")->text(), toQString(layout().entries[1].name));
}

TEST_F(PropertiesPanelOf, WhatIsBeingTypedOutlivesAnEditElsewhere) {
    open("five-tenants");
    select({layout().entries[0].id});
    line("name")->setFocus();
    line("name")->selectAll();
    QTest::keyClicks(line("name"), QStringLiteral("Half typed"));
    test::retitle(*bench_->document, "Another");
    test::handleEvents();
    EXPECT_EQ(line("name")->text(), QStringLiteral("Half typed"));
    QTest::keyClick(line("name"), Qt::Key_Return);
    EXPECT_EQ(layout().entries[0].name, "Half typed");
}

TEST_F(PropertiesPanelOf, OneFieldAfterTheOtherByTab) {
    open("five-tenants");
    select({layout().entries.front().id});
    line("name")->setFocus();
    QTest::keyClick(line("name"), Qt::Key_Tab);
    EXPECT_TRUE(line("leads to")->hasFocus());
}

TEST_F(PropertiesPanelOf, Picture) {
    open("five-tenants");
    test::keepPicture(*panel_, QStringLiteral("properties-gutter"), {330, 900});
    select({layout().conductors.front().id});
    test::keepPicture(*panel_, QStringLiteral("properties-conductor"), {330, 900});
    select({layout().blocks.front().id});
    test::keepPicture(*panel_, QStringLiteral("properties-block"), {260, 480});
    EXPECT_LE(panel_->minimumSizeHint().width(), 300);
}

TEST(GutterPanelOf, ASmallerGutterIsOneStepAndUndoGivesTheSameBytes) {
    test::PanelBench bench;
    GutterPanel panel(bench.bench());
    panel.show();
    test::handleEvents();
    const QByteArray before = test::bytesOf(bench.layout());
    auto* depth = qobject_cast<QLineEdit*>(panel.form().editor(QStringLiteral("depth")));
    const double was = bench.layout().gutter.inside.z;
    depth->selectAll();
    QTest::keyClicks(depth, QString::number(was + 2.0));
    QTest::keyClick(depth, Qt::Key_Return);
    EXPECT_DOUBLE_EQ(bench.layout().gutter.inside.z, was + 2.0);
    EXPECT_EQ(bench.steps(), 1);
    bench.document->undo();
    EXPECT_EQ(test::bytesOf(bench.layout()), before);
}

}  // namespace
}  // namespace gw::ui
