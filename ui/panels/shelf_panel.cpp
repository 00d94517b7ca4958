#include "panels/shelf_panel.h"

#include <QGridLayout>
#include <QHeaderView>
#include <QMimeData>
#include <QVBoxLayout>

#include "panels/panel_text.h"
#include "parts/search.h"
#include "tools/place_tool.h"

namespace gw::ui {
namespace {

constexpr int kIdRole = Qt::UserRole;

QString idOf(const QTreeWidgetItem& row) {
    return row.data(0, kIdRole).toString();
}

/// Sorted by what a column means: numbers where it has them, else letters.
class PartRow : public QTreeWidgetItem {
public:
    static constexpr int kOrderRole = kIdRole + 1;
    using QTreeWidgetItem::QTreeWidgetItem;

    bool operator<(const QTreeWidgetItem& other) const override {
        const int column = treeWidget()->sortColumn();
        const auto mine = data(column, kOrderRole);
        return mine.isValid() ? mine.toDouble() < other.data(column, kOrderRole).toDouble()
                              : text(column) < other.text(column);
    }
};

/// Drags a part by its id.
class PartList : public QTreeWidget {
protected:
    QStringList mimeTypes() const override { return {QString::fromLatin1(kPartMime)}; }
    QMimeData* mimeData(const QList<QTreeWidgetItem*>& rows) const override {
        auto* carried = new QMimeData;
        if (!rows.isEmpty()) {
            carried->setData(QString::fromLatin1(kPartMime), idOf(*rows.front()).toUtf8());
        }
        return carried;
    }
};

template <class Values, class Text>
QComboBox* choiceOf(const QString& any, const QString& name, const Values& values, Text text) {
    auto* box = new QComboBox;
    box->addItem(any);
    for (const auto& value : values) {
        box->addItem(toQString(text(value)));
    }
    box->setAccessibleName(name);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(8);
    return box;
}

template <class Values>
auto chosenOf(const QComboBox& box, const Values& values) {
    using Value = std::remove_cvref_t<decltype(values[0])>;
    const int index = box.currentIndex();
    return index > 0 ? std::optional<Value>(values[static_cast<std::size_t>(index - 1)])
                     : std::nullopt;
}

QString sizesText(const parts::Part& part) {
    const auto range = parts::sizeRange(part);
    return range ? ShelfPanel::tr("%1 to %2")
                       .arg(toQString(range->smallest.label()), toQString(range->largest.text()))
                 : ShelfPanel::tr("not stated");
}

QString bodyText(const Vec3& body, units::LengthUnit unit) {
    const auto inches = [&](double value) {
        return quantityText(checks::Quantity{value, checks::Quantity::Unit::inches}, unit)
            .section(QLatin1Char(' '), 0, 0);
    };
    return QStringLiteral("%1 × %2 × %3").arg(inches(body.x), inches(body.y), inches(body.z));
}

QString priceText(const parts::Part& part) {
    return part.priceDollars ? QStringLiteral("$%1").arg(*part.priceDollars, 0, 'f', 2) : QString();
}

QTreeWidgetItem* rowOf(const parts::Part& part, units::LengthUnit unit) {
    const auto range = parts::sizeRange(part);
    auto* row = new PartRow(QStringList{toQString(part.name),
                                        QString::number(part.ports.size()),
                                        sizesText(part),
                                        bodyText(part.body, unit),
                                        priceText(part)});
    row->setData(0, kIdRole, toQString(part.id.text()));
    row->setToolTip(0, toQString(part.name));
    row->setData(1, PartRow::kOrderRole, static_cast<double>(part.ports.size()));
    row->setData(2, PartRow::kOrderRole, range ? range->largest.rank() : -1);
    row->setData(3, PartRow::kOrderRole, part.body.x * part.body.y * part.body.z);
    row->setData(4, PartRow::kOrderRole, part.priceDollars.value_or(-1.0));
    return row;
}

}  // namespace

ShelfPanel::ShelfPanel(const Bench& bench, QWidget* parent)
    : Panel(bench, parent),
      words_(new QLineEdit),
      ports_(new QComboBox),
      size_(choiceOf(tr("any size"),
                     tr("Conductor size"),
                     units::WireSize::all(),
                     [](const units::WireSize& size) { return size.text(); })),
      metal_(choiceOf(
          tr("any metal"), tr("Conductor metal"), standards::allMetals(), standards::metalText)),
      location_(choiceOf(
          tr("any location"), tr("Location"), standards::allLocations(), standards::locationText)),
      fine_(new QCheckBox(tr("Fine strand"))),
      bolted_(new QCheckBox(tr("Bolts down"))),
      fits_(new QCheckBox(tr("Fits this gutter"))),
      list_(new PartList),
      count_(new QLabel),
      note_(new QLabel) {
    setAccessibleName(tr("Parts shelf"));
    list_->setHeaderLabels({tr("Part"), tr("Ports"), tr("Takes"), tr("Body"), tr("Price")});
    list_->setRootIsDecorated(false);
    list_->setDragEnabled(true);
    list_->setDragDropMode(QAbstractItemView::DragOnly);
    list_->setAccessibleName(tr("Parts"));
    list_->setSortingEnabled(true);
    list_->sortByColumn(0, Qt::AscendingOrder);
    list_->setColumnWidth(0, 150);
    list_->setColumnWidth(1, 46);
    note_->setWordWrap(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(4, 4, 4, 4);
    column->addWidget(makeFilters());
    column->addWidget(count_);
    column->addWidget(list_, 1);
    column->addWidget(note_);
    connect(list_, &QTreeWidget::itemActivated, this, [this](QTreeWidgetItem* row) {
        Q_EMIT partWanted(parts::PartId(idOf(*row).toStdString()));
    });
    connect(list_, &QTreeWidget::currentItemChanged, this, &ShelfPanel::showNote);
}

QWidget* ShelfPanel::makeFilters() {
    words_->setPlaceholderText(tr("Search by words"));
    words_->setAccessibleName(tr("Search by words"));
    words_->setClearButtonEnabled(true);
    ports_->addItem(tr("any ports"));
    for (int ports = 2; ports <= 8; ++ports) {
        ports_->addItem(tr("%1 ports or more").arg(ports), ports);
    }
    ports_->setAccessibleName(tr("Least number of ports"));
    fits_->setChecked(true);
    auto* filters = new QWidget;
    auto* grid = new QGridLayout(filters);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addWidget(words_, 0, 0, 1, 3);
    const std::array<QWidget*, 7> all = {ports_, size_, metal_, location_, fine_, bolted_, fits_};
    grid->addWidget(all[0], 1, 0);
    grid->addWidget(all[1], 1, 1);
    grid->addWidget(all[2], 1, 2);
    grid->addWidget(all[3], 2, 0);
    grid->addWidget(all[4], 2, 1);
    grid->addWidget(all[5], 2, 2);
    grid->addWidget(all[6], 3, 0, 1, 3);
    connect(words_, &QLineEdit::textChanged, this, &ShelfPanel::refreshNow);
    for (auto* box : {ports_, size_, metal_, location_}) {
        connect(box, &QComboBox::currentIndexChanged, this, &ShelfPanel::refreshNow);
    }
    for (auto* box : {fine_, bolted_, fits_}) {
        connect(box, &QCheckBox::toggled, this, &ShelfPanel::refreshNow);
    }
    return filters;
}

bool ShelfPanel::wanted(const parts::Part& part) const {
    parts::PartWish wish;
    wish.words = words_->text().toStdString();
    wish.leastPorts = ports_->currentData().toInt();
    wish.size = chosenOf(*size_, units::WireSize::all());
    wish.metal = chosenOf(*metal_, standards::allMetals());
    wish.location = chosenOf(*location_, standards::allLocations());
    wish.fineStrand = fine_->isChecked();
    wish.boltsDown = bolted_->isChecked();
    if (fits_->isChecked()) {
        wish.inside = document().layout().gutter.inside;
    }
    return parts::suits(part, wish);
}

void ShelfPanel::refresh() {
    const auto& shelf = document().shelf();
    const QString current = list_->currentItem() ? idOf(*list_->currentItem()) : QString();
    list_->setSortingEnabled(false);
    list_->clear();
    for (const auto& [id, part] : shelf) {
        if (wanted(part)) {
            auto* row = rowOf(part, document().layout().displayUnit);
            list_->addTopLevelItem(row);
            if (idOf(*row) == current) {
                list_->setCurrentItem(row);
            }
        }
    }
    list_->setSortingEnabled(true);
    count_->setText(tr("%1 of %2 parts").arg(list_->topLevelItemCount()).arg(shelf.size()));
    showNote();
}

void ShelfPanel::showNote() {
    const auto* row = list_->currentItem();
    const auto& shelf = document().shelf();
    const auto found =
        row == nullptr ? shelf.end() : shelf.find(parts::PartId(idOf(*row).toStdString()));
    note_->setText(found == shelf.end()
                       ? tr("Double-click or press Enter to take a part in hand, or drag it onto "
                            "the board.")
                       : toQString(found->second.name + ". " + found->second.note));
}

}  // namespace gw::ui
