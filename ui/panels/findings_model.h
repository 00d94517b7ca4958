#pragma once

#include <QAbstractItemModel>
#include <QIcon>
#include <array>
#include <set>
#include <vector>

#include "checks/finding.h"
#include "document/selection.h"

namespace gw::ui {

/// Which findings are wanted.
struct FindingFilter {
    std::set<checks::Verdict> verdicts = {checks::Verdict::breach,
                                          checks::Verdict::cannotTell,
                                          checks::Verdict::caution,
                                          checks::Verdict::meets};
    QString text;             ///< found in what a row says; empty: any
    std::vector<Item> about;  ///< with one of these as subject; empty: any
};

/// Breaches first, as in the report.
inline constexpr std::array<checks::Verdict, 4> kVerdictOrder = {checks::Verdict::breach,
                                                                 checks::Verdict::cannotTell,
                                                                 checks::Verdict::caution,
                                                                 checks::Verdict::meets};

/// Findings as a tree: by verdict and group, breaches first; below each its findings.
class FindingsModel : public QAbstractItemModel {
    Q_OBJECT
public:
    enum Column { check, subject, measured, limit, margin, section, kColumns };

    using QAbstractItemModel::QAbstractItemModel;

    /// Only the numbers change where the rows are the same: what is selected and open stays.
    /// Whether the rows are others.
    bool show(const layout::Layout& layout,
              const std::vector<checks::Finding>& findings,
              const FindingFilter& filter);

    /// nullptr for the rows of groups.
    const checks::Finding* findingAt(const QModelIndex& index) const;
    /// What a row is, whatever its numbers: to find it again after a change.
    QString keyOf(const QModelIndex& index) const;
    /// Not valid where it is gone.
    QModelIndex withKey(const QString& key) const;
    const layout::Layout& layout() const { return layout_; }

    QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
    QModelIndex parent(const QModelIndex& child) const override;
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int column, Qt::Orientation orientation, int role) const override;

private:
    struct Node {
        checks::Verdict verdict = checks::Verdict::meets;
        checks::Group group = checks::Group::space;
        std::vector<checks::Finding> findings;
    };
    std::vector<Node> nodesFor(const std::vector<checks::Finding>& findings,
                               const FindingFilter& filter) const;
    bool wanted(const checks::Finding& finding, const FindingFilter& filter) const;
    QString cell(const checks::Finding& finding, int column) const;
    QVariant groupData(const Node& node, int column, int role) const;
    QVariant findingData(const checks::Finding& finding, int column, int role) const;
    static bool sameRows(const std::vector<Node>& a, const std::vector<Node>& b);
    static QString keyOf(const checks::Finding& finding);

    layout::Layout layout_;  ///< for names: without what only shapes need
    std::vector<Node> nodes_;
};

}  // namespace gw::ui
