#pragma once

#include <QTabWidget>
#include <array>
#include <map>

#include "checks/finding.h"
#include "panels/field_table.h"
#include "panels/panel.h"

namespace gw::ui {

/// All that is in the gutter, kind by kind, as tables to be sorted, filtered, edited, copied and
/// pasted: the board in words, for those who like lists and for those who cannot see it.
class TablesPanel : public Panel {
    Q_OBJECT
public:
    enum Kind { conductors, blocks, entries, circuits, systems, kKinds };

    explicit TablesPanel(const Bench& bench, QWidget* parent = nullptr);

    FieldTable& table(Kind kind) const { return *tables_.at(kind); }
    void turnTo(Kind kind) { tabs_->setCurrentIndex(kind); }

Q_SIGNALS:
    void showOnBoard();  ///< what is selected
    void circuitWanted();

protected:
    void refresh() override;

private:
    FieldTable* add(Kind kind, const QString& title, std::vector<TableColumn> columns);
    std::vector<TableColumn> conductorColumns() const;
    std::vector<TableColumn> blockColumns() const;
    std::vector<TableColumn> entryColumns() const;
    QWidget* makeAdders();
    void addSystem();
    TableColumn verdictColumn() const;
    void judge();
    void followSelection();
    void tellSelection(const FieldTable& table);

    QTabWidget* tabs_;
    std::array<FieldTable*, kKinds> tables_{};
    std::map<std::string, std::array<int, 4>> verdicts_;  ///< of an id: how many, by verdict
    bool telling_ = false;
};

}  // namespace gw::ui
