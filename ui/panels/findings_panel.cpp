#include "panels/findings_panel.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QScrollBar>
#include <QSplitter>
#include <QVBoxLayout>

#include "panels/panel_text.h"

namespace gw::ui {
namespace {

using checks::Finding;
using checks::Verdict;

int countOf(const checks::Tally& tally, Verdict verdict) {
    switch (verdict) {
        case Verdict::meets:
            return tally.meets;
        case Verdict::breach:
            return tally.breach;
        case Verdict::caution:
            return tally.caution;
        case Verdict::cannotTell:
            return tally.cannotTell;
    }
    return 0;
}

QString escaped(std::string_view text) {
    return toQString(text).toHtmlEscaped();
}

QString row(const QString& name, const QString& value) {
    return value.isEmpty() ? QString()
                           : QStringLiteral("<tr><td>%1&nbsp;&nbsp;</td><td>%2</td></tr>")
                                 .arg(name, value.toHtmlEscaped());
}

QString numbersHtml(const Finding& finding, units::LengthUnit unit) {
    return QStringLiteral("<table>") +
           row(FindingsPanel::tr("Measured"), quantityText(finding.measured, unit)) +
           row(FindingsPanel::tr("Limit"), quantityText(finding.limit, unit)) +
           row(FindingsPanel::tr("Margin"), quantityText(finding.margin, unit)) +
           row(FindingsPanel::tr("Section"), toQString(standards::toText(finding.citation))) +
           QStringLiteral("</table>");
}

QString missingHtml(const Finding& finding) {
    if (finding.missing.empty()) {
        return {};
    }
    QString html = QStringLiteral("<p><b>%1</b></p><ul>").arg(FindingsPanel::tr("Not stated:"));
    for (const auto& missing : finding.missing) {
        html += QStringLiteral("<li>%1</li>").arg(escaped(missing));
    }
    return html + QStringLiteral("</ul>");
}

QString readingHtml(const checks::Reading& reading) {
    return QStringLiteral("<li>%1<i>%2</i>: <b>%3</b>. %4</li>")
        .arg(reading.chosen ? FindingsPanel::tr("Taken here: ") : QString(),
             escaped(reading.name),
             escaped(checks::verdictText(reading.verdict)),
             escaped(reading.sentence));
}

QString readingsHtml(const Finding& finding) {
    if (finding.readings.empty()) {
        return {};
    }
    QString html = QStringLiteral("<p><b>%1</b></p><ul>")
                       .arg(FindingsPanel::tr("Where the wording is disputed:"));
    for (const auto& reading : finding.readings) {
        html += readingHtml(reading);
    }
    return html + QStringLiteral("</ul>");
}

/// Where to look; empty for what holds of the whole gutter.
std::optional<Vec3> placeOf(const Finding& finding, const layout::Gutter& gutter) {
    if (finding.place) {
        return finding.place;
    }
    if (!finding.interval) {
        return std::nullopt;
    }
    const double middle = (finding.interval->first + finding.interval->second) / 2.0;
    return Vec3{middle, gutter.inside.y / 2.0, gutter.inside.z / 2.0};
}

}  // namespace

QString findingHtml(const layout::Layout& layout, const Finding& finding) {
    return QStringLiteral("<p><b>%1</b>: %2<br>%3</p><p>%4</p>")
               .arg(escaped(checks::verdictText(finding.verdict)),
                    escaped(checks::checkTitle(finding.check)),
                    subjectsName(layout, finding).toHtmlEscaped(),
                    escaped(finding.working)) +
           numbersHtml(finding, layout.displayUnit) + missingHtml(finding) + readingsHtml(finding);
}

FindingsPanel::FindingsPanel(const Bench& bench, QWidget* parent)
    : Panel(bench, parent), summary_(new QLabel), model_(new FindingsModel(this)) {
    setAccessibleName(tr("Findings"));
    QFont bold = summary_->font();
    bold.setBold(true);
    summary_->setFont(bold);
    summary_->setWordWrap(true);
    summary_->setAccessibleName(tr("How the layout stands"));

    auto* halves = new QSplitter(Qt::Vertical);
    halves->setChildrenCollapsible(false);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(4, 4, 4, 4);
    column->addWidget(summary_);
    column->addWidget(makeFilters());
    column->addWidget(halves, 1);
    halves->addWidget(makeList());
    halves->addWidget(makeWorking());
    halves->setStretchFactor(0, 3);
    halves->setStretchFactor(1, 2);
    connect(&selection(), &Selection::changed, this, [this] {
        if (onlySelected_->isChecked()) {
            refreshSoon();
        }
    });
    showWorking();
}

QWidget* FindingsPanel::makeFilters() {
    auto* box = new QWidget;
    auto* rows = new QVBoxLayout(box);
    rows->setContentsMargins(0, 0, 0, 0);
    auto* signs = new QHBoxLayout;
    rows->addLayout(signs);
    for (std::size_t i = 0; i < kVerdictOrder.size(); ++i) {
        auto* button = new QToolButton;
        button->setCheckable(true);
        button->setChecked(true);
        button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        button->setIcon(verdictIcon(kVerdictOrder[i]));
        button->setFocusPolicy(Qt::StrongFocus);
        connect(button, &QToolButton::toggled, this, &FindingsPanel::refreshSoon);
        verdicts_[i] = button;
        signs->addWidget(button);
    }
    signs->addStretch();
    onlySelected_ = new QCheckBox(tr("Se&lected"));
    onlySelected_->setToolTip(tr("Only findings about what is selected"));
    onlySelected_->setAccessibleName(tr("Only findings about what is selected"));
    connect(onlySelected_, &QCheckBox::toggled, this, &FindingsPanel::refreshSoon);
    signs->addWidget(onlySelected_);

    text_ = new QLineEdit;
    text_->setPlaceholderText(tr("Filter: check, tag, section …"));
    text_->setAccessibleName(tr("Filter findings by text"));
    text_->setClearButtonEnabled(true);
    connect(text_, &QLineEdit::textChanged, this, &FindingsPanel::refreshSoon);
    rows->addWidget(text_);
    return box;
}

QWidget* FindingsPanel::makeList() {
    list_ = new QTreeView;
    list_->setModel(model_);
    list_->setAccessibleName(tr("Findings by verdict and group"));
    list_->setToolTip(tr("Enter or double click: select what it is about and go there"));
    list_->setUniformRowHeights(true);
    list_->setRootIsDecorated(true);
    list_->setIndentation(12);
    list_->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    list_->setExpandsOnDoubleClick(true);
    auto* header = list_->header();
    header->setStretchLastSection(true);
    const std::array<int, FindingsModel::kColumns> widths = {190, 130, 74, 74, 74, 150};
    for (int column = 0; column < FindingsModel::kColumns; ++column) {
        header->resizeSection(column, widths.at(static_cast<std::size_t>(column)));
    }
    connect(list_, &QTreeView::activated, this, &FindingsPanel::activate);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
        showWorking();
    });
    return list_;
}

QWidget* FindingsPanel::makeWorking() {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    working_ = new QTextBrowser;
    working_->setAccessibleName(tr("Working of the finding"));
    working_->setOpenLinks(false);
    column->addWidget(working_, 1);
    auto* buttons = new QHBoxLayout;
    go_ = new QPushButton(tr("&Go there"));
    go_->setToolTip(tr("Select what it is about and show the place on the board"));
    help_ = new QPushButton(tr("About this c&heck"));
    help_->setToolTip(tr("What this check asks, why, and how it is measured"));
    buttons->addWidget(go_);
    buttons->addWidget(help_);
    buttons->addStretch();
    column->addLayout(buttons);
    connect(go_, &QPushButton::clicked, this, [this] { activate(list_->currentIndex()); });
    connect(help_, &QPushButton::clicked, this, [this] {
        if (const auto* finding = model_->findingAt(list_->currentIndex())) {
            Q_EMIT helpWanted(finding->check);
        }
    });
    return box;
}

FindingFilter FindingsPanel::filter() const {
    FindingFilter filter;
    filter.verdicts.clear();
    for (std::size_t i = 0; i < kVerdictOrder.size(); ++i) {
        if (verdicts_[i]->isChecked()) {
            filter.verdicts.insert(kVerdictOrder[i]);
        }
    }
    filter.text = text_->text().trimmed();
    if (onlySelected_->isChecked()) {
        filter.about = selection().items();
    }
    return filter;
}

void FindingsPanel::refresh() {
    showSummary();
    showRows();
    showWorking();
}

void FindingsPanel::showSummary() {
    const auto tally = checks::tally(document().findings());
    QStringList words;
    for (const Verdict verdict :
         {Verdict::breach, Verdict::caution, Verdict::cannotTell, Verdict::meets}) {
        const int count = countOf(tally, verdict);
        if (count > 0 || verdict == Verdict::meets) {
            words << countedVerdict(verdict, count);
        }
    }
    if (tally.breach == 0) {
        words.prepend(tr("No breach"));
    }
    summary_->setText(words.join(QStringLiteral(", ")));
    for (std::size_t i = 0; i < kVerdictOrder.size(); ++i) {
        const int count = countOf(tally, kVerdictOrder[i]);
        const QString name = countedVerdict(kVerdictOrder[i], count);
        verdicts_[i]->setText(QString::number(count));
        verdicts_[i]->setToolTip(tr("Show or hide: %1").arg(name));
        verdicts_[i]->setAccessibleName(tr("Show %1").arg(name));
    }
}

void FindingsPanel::showRows() {
    const QString current = model_->keyOf(list_->currentIndex());
    const int scrolled = list_->verticalScrollBar()->value();
    for (int row = 0; row < model_->rowCount(); ++row) {
        const auto group = model_->index(row, 0);
        open_[model_->keyOf(group)] = list_->isExpanded(group);
    }
    if (!model_->show(document().layout(), document().findings(), filter())) {
        return;
    }
    for (int row = 0; row < model_->rowCount(); ++row) {
        const auto group = model_->index(row, 0);
        const auto known = open_.find(model_->keyOf(group));
        const auto* first = model_->findingAt(model_->index(0, 0, group));
        list_->setFirstColumnSpanned(row, {}, true);
        list_->setExpanded(group,
                           known != open_.end() ? known->second : first->verdict != Verdict::meets);
    }
    restore(current, scrolled);
}

void FindingsPanel::restore(const QString& current, int scrolled) {
    const auto index = model_->withKey(current);
    if (index.isValid()) {
        list_->setCurrentIndex(index);
    }
    list_->verticalScrollBar()->setValue(scrolled);
}

void FindingsPanel::showWorking() {
    const auto* finding = model_->findingAt(list_->currentIndex());
    go_->setEnabled(finding != nullptr);
    help_->setEnabled(finding != nullptr);
    const QString html = finding != nullptr ? findingHtml(model_->layout(), *finding)
                                            : tr("Choose a finding to see its working.");
    if (working_->property("shown") != html) {
        working_->setProperty("shown", html);
        working_->setHtml(html);
    }
}

void FindingsPanel::activate(const QModelIndex& index) {
    const auto* finding = model_->findingAt(index);
    if (finding == nullptr) {
        return;
    }
    const auto place = placeOf(*finding, document().layout().gutter);
    if (!finding->subjects.empty()) {
        selection().set(finding->subjects);
    }
    if (place) {
        Q_EMIT jumpTo(*place);
    }
}

}  // namespace gw::ui
