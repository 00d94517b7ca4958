#include "panels/findings_model.h"

#include <QApplication>
#include <QFont>
#include <algorithm>

#include "panels/panel_text.h"

namespace gw::ui {
namespace {

using checks::Finding;
using checks::Verdict;

/// internalId of a group's row; that of a finding's is its group's row.
constexpr quintptr kGroupRow = ~quintptr{0};

QString verdictHeading(Verdict verdict) {
    switch (verdict) {
        case Verdict::breach:
            return FindingsModel::tr("Breach");
        case Verdict::caution:
            return FindingsModel::tr("Caution");
        case Verdict::cannotTell:
            return FindingsModel::tr("Cannot tell");
        case Verdict::meets:
            return FindingsModel::tr("Meets");
    }
    return {};
}

const QIcon& iconOf(Verdict verdict) {
    static const std::array<QIcon, 4> kIcons = {verdictIcon(Verdict::meets),
                                                verdictIcon(Verdict::breach),
                                                verdictIcon(Verdict::caution),
                                                verdictIcon(Verdict::cannotTell)};
    return kIcons.at(static_cast<std::size_t>(verdict));
}

bool concerns(const Finding& finding, const std::vector<Item>& items) {
    return std::any_of(items.begin(), items.end(), [&](const Item& item) {
        const auto& subjects = finding.subjects;
        return std::find(subjects.begin(), subjects.end(), item) != subjects.end();
    });
}

/// What names are made from, without corners, parts and remarks.
layout::Layout namesOf(const layout::Layout& layout) {
    layout::Layout names;
    names.displayUnit = layout.displayUnit;
    names.circuits = layout.circuits;
    names.entries = layout.entries;
    names.blocks = layout.blocks;
    for (const auto& conductor : layout.conductors) {
        auto& named = names.conductors.emplace_back();
        named.id = conductor.id;
        named.tag = conductor.tag;
    }
    return names;
}

}  // namespace

bool FindingsModel::show(const layout::Layout& layout,
                         const std::vector<Finding>& findings,
                         const FindingFilter& filter) {
    layout_ = namesOf(layout);
    auto nodes = nodesFor(findings, filter);
    if (sameRows(nodes, nodes_)) {
        nodes_ = std::move(nodes);
        for (int row = 0; row < rowCount(); ++row) {
            const auto group = index(row, 0);
            Q_EMIT dataChanged(index(0, 0, group), index(rowCount(group) - 1, kColumns - 1, group));
        }
        return false;
    }
    beginResetModel();
    nodes_ = std::move(nodes);
    endResetModel();
    return true;
}

std::vector<FindingsModel::Node> FindingsModel::nodesFor(const std::vector<Finding>& findings,
                                                         const FindingFilter& filter) const {
    std::vector<Node> nodes;
    for (const Verdict verdict : kVerdictOrder) {
        for (const auto& finding : findings) {
            if (finding.verdict != verdict || !wanted(finding, filter)) {
                continue;
            }
            const auto group = checks::groupOf(finding.check);
            if (nodes.empty() || nodes.back().verdict != verdict || nodes.back().group != group) {
                nodes.push_back({verdict, group, {}});
            }
            nodes.back().findings.push_back(finding);
        }
    }
    return nodes;
}

bool FindingsModel::wanted(const Finding& finding, const FindingFilter& filter) const {
    if (filter.verdicts.count(finding.verdict) == 0 ||
        (!filter.about.empty() && !concerns(finding, filter.about))) {
        return false;
    }
    if (filter.text.isEmpty() ||
        toQString(finding.working).contains(filter.text, Qt::CaseInsensitive)) {
        return true;
    }
    for (int column = 0; column < kColumns; ++column) {
        if (cell(finding, column).contains(filter.text, Qt::CaseInsensitive)) {
            return true;
        }
    }
    return false;
}

bool FindingsModel::sameRows(const std::vector<Node>& a, const std::vector<Node>& b) {
    const auto sameFinding = [](const Finding& one, const Finding& other) {
        return one.check == other.check && one.subjects == other.subjects;
    };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [&](const Node& x, const Node& y) {
        return x.verdict == y.verdict && x.group == y.group &&
               std::equal(x.findings.begin(),
                          x.findings.end(),
                          y.findings.begin(),
                          y.findings.end(),
                          sameFinding);
    });
}

const Finding* FindingsModel::findingAt(const QModelIndex& index) const {
    if (!index.isValid() || index.internalId() == kGroupRow) {
        return nullptr;
    }
    return &nodes_[index.internalId()].findings[static_cast<std::size_t>(index.row())];
}

QString FindingsModel::keyOf(const Finding& finding) {
    QString key = toQString(checks::checkName(finding.check));
    for (const auto& subject : finding.subjects) {
        key += QLatin1Char('|') + toQString(checks::subjectText(subject));
    }
    return key;
}

QString FindingsModel::keyOf(const QModelIndex& index) const {
    if (!index.isValid()) {
        return {};
    }
    if (const Finding* finding = findingAt(index)) {
        const QString key = keyOf(*finding);
        int before = 0;
        const auto& findings = nodes_[index.internalId()].findings;
        for (int row = 0; row < index.row(); ++row) {
            before += keyOf(findings[static_cast<std::size_t>(row)]) == key ? 1 : 0;
        }
        return key + QLatin1Char('#') + QString::number(before);
    }
    const auto& node = nodes_[static_cast<std::size_t>(index.row())];
    return QStringLiteral("group|%1|%2")
        .arg(static_cast<int>(node.verdict))
        .arg(static_cast<int>(node.group));
}

QModelIndex FindingsModel::withKey(const QString& key) const {
    const QString bare = key.section(QLatin1Char('#'), 0, 0);
    int before = key.section(QLatin1Char('#'), 1).toInt();
    QModelIndex found;
    for (int group = 0; group < rowCount() && !key.isEmpty(); ++group) {
        const auto parent = index(group, 0);
        if (keyOf(parent) == key) {
            return parent;
        }
        const auto& findings = nodes_[static_cast<std::size_t>(group)].findings;
        for (std::size_t row = 0; row < findings.size(); ++row) {
            if (keyOf(findings[row]) == bare) {
                found =
                    found.isValid() && before < 0 ? found : index(static_cast<int>(row), 0, parent);
                --before;
            }
        }
    }
    return found;
}

QModelIndex FindingsModel::index(int row, int column, const QModelIndex& parent) const {
    if (row < 0 || row >= rowCount(parent) || column < 0 || column >= kColumns) {
        return {};
    }
    return createIndex(
        row, column, parent.isValid() ? static_cast<quintptr>(parent.row()) : kGroupRow);
}

QModelIndex FindingsModel::parent(const QModelIndex& child) const {
    if (!child.isValid() || child.internalId() == kGroupRow) {
        return {};
    }
    return createIndex(static_cast<int>(child.internalId()), 0, kGroupRow);
}

int FindingsModel::rowCount(const QModelIndex& parent) const {
    if (!parent.isValid()) {
        return static_cast<int>(nodes_.size());
    }
    if (parent.internalId() != kGroupRow || parent.column() != 0) {
        return 0;
    }
    return static_cast<int>(nodes_[static_cast<std::size_t>(parent.row())].findings.size());
}

int FindingsModel::columnCount(const QModelIndex&) const {
    return kColumns;
}

QString FindingsModel::cell(const Finding& finding, int column) const {
    const auto unit = layout_.displayUnit;
    switch (static_cast<Column>(column)) {
        case check:
            return toQString(checks::checkTitle(finding.check));
        case subject:
            return subjectsName(layout_, finding);
        case measured:
            return quantityText(finding.measured, unit);
        case limit:
            return quantityText(finding.limit, unit);
        case margin:
            return quantityText(finding.margin, unit);
        case section:
            return toQString(finding.citation.section.empty() ? finding.citation.standard
                                                              : finding.citation.section);
        case kColumns:
            break;
    }
    return {};
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) {
        return {};
    }
    if (const Finding* finding = findingAt(index)) {
        return findingData(*finding, index.column(), role);
    }
    return groupData(nodes_[static_cast<std::size_t>(index.row())], index.column(), role);
}

QVariant FindingsModel::groupData(const Node& node, int column, int role) const {
    if (role == Qt::FontRole) {
        QFont bold = QApplication::font("QTreeView");
        bold.setBold(true);
        return bold;
    }
    if (column != check) {
        return {};
    }
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole) {
        return tr("%1: %2 (%3)")
            .arg(verdictHeading(node.verdict), toQString(checks::groupTitle(node.group)))
            .arg(node.findings.size());
    }
    return {};
}

QVariant FindingsModel::findingData(const Finding& finding, int column, int role) const {
    switch (role) {
        case Qt::DisplayRole:
            return cell(finding, column);
        case Qt::DecorationRole:
            return column == check ? QVariant(iconOf(finding.verdict)) : QVariant();
        case Qt::ToolTipRole:
            return column == section ? toQString(standards::toText(finding.citation))
                                     : toQString(finding.working);
        case Qt::AccessibleTextRole:
            return column == check ? toQString(checks::verdictText(finding.verdict)) + ": " +
                                         cell(finding, check)
                                   : cell(finding, column);
        case Qt::TextAlignmentRole:
            return column >= measured && column <= margin
                       ? QVariant(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter))
                       : QVariant();
        default:
            return {};
    }
}

QVariant FindingsModel::headerData(int column, Qt::Orientation orientation, int role) const {
    static const std::array<const char*, kColumns> kTitles = {
        "Check", "About", "Measured", "Limit", "Margin", "Section"};
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    return tr(kTitles.at(static_cast<std::size_t>(column)));
}

}  // namespace gw::ui
