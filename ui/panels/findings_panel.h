#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTextBrowser>
#include <QToolButton>
#include <QTreeView>
#include <array>
#include <map>

#include "panels/findings_model.h"
#include "panels/panel.h"

namespace gw::ui {

/// Every verdict with its working, the breaches first.
class FindingsPanel : public Panel {
    Q_OBJECT
public:
    explicit FindingsPanel(const Bench& bench, QWidget* parent = nullptr);

    /// "2 breaches, 1 caution, 3 cannot tell, 41 meet".
    QString summary() const { return summary_->text(); }
    /// What is written of the finding that is current, in HTML.
    QString working() const { return working_->toHtml(); }
    QTreeView* list() const { return list_; }
    const FindingsModel& model() const { return *model_; }

Q_SIGNALS:
    void jumpTo(const gw::Vec3& place);
    void helpWanted(gw::checks::Check check);

protected:
    void refresh() override;

private:
    QWidget* makeFilters();
    QWidget* makeList();
    QWidget* makeWorking();
    FindingFilter filter() const;
    void showSummary();
    void showRows();
    void restore(const QString& current, int scrolled);
    void showWorking();
    void activate(const QModelIndex& index);

    QLabel* summary_;
    QLineEdit* text_;
    QCheckBox* onlySelected_;
    std::array<QToolButton*, 4> verdicts_{};  ///< in kVerdictOrder
    FindingsModel* model_;
    QTreeView* list_;
    QTextBrowser* working_;
    QPushButton* go_;
    QPushButton* help_;
    std::map<QString, bool> open_;  ///< groups by key; what meets is closed at first
};

/// A finding in full: verdict, working, numbers, section, readings, what is missing.
QString findingHtml(const layout::Layout& layout, const checks::Finding& finding);

}  // namespace gw::ui
