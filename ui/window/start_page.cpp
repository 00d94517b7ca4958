#include "window/start_page.h"

#include <QDir>
#include <QFileInfo>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QLocale>
#include <QVBoxLayout>

#include "window/file_care.h"

namespace gw::ui {
namespace {

constexpr QSize kPicture(150, 68);
constexpr int kPath = Qt::UserRole;

/// A box as high as what is in it.
QGroupBox* box(const QString& title, const QList<QWidget*>& inside) {
    auto* made = new QGroupBox(title);
    made->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    auto* column = new QVBoxLayout(made);
    for (QWidget* widget : inside) {
        column->addWidget(widget);
    }
    return made;
}

QListWidgetItem* addRow(QListWidget& list, const QString& text, const QString& path) {
    auto* item = new QListWidgetItem(text, &list);
    item->setData(kPath, path);
    item->setToolTip(path);
    return item;
}

/// As high as its rows, so that the page scrolls and not each list in it.
void fitHeight(QListWidget& list) {
    const int rows = std::max(1, list.count());
    list.setFixedHeight(rows * (list.fontMetrics().height() + 6) + 2 * list.frameWidth() + 2);
}

}  // namespace

StartPage::StartPage(const std::vector<Sample>& samples, const parts::Shelf& shelf)
    : shelf_(shelf) {
    setObjectName(QStringLiteral("start"));
    setAccessibleName(tr("Start page"));
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    auto* page = new QWidget;
    auto* columns = new QHBoxLayout(page);
    auto* left = new QVBoxLayout;
    left->addWidget(makeBeginning());
    left->addWidget(makeLeftovers());
    left->addWidget(makeRecent());
    left->addStretch();
    columns->addLayout(left, 2);
    columns->addWidget(makeSamples(samples), 3);
    setWidget(page);
    drawing_.setInterval(0);
    connect(&drawing_, &QTimer::timeout, this, &StartPage::drawNext);
    drawing_.start();
}

QListWidget* StartPage::makeList(const QString& name, void (StartPage::*wanted)(const QString&)) {
    auto* list = new QListWidget;
    list->setAccessibleName(name);
    list->setUniformItemSizes(true);
    list->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->setTextElideMode(Qt::ElideMiddle);
    connect(list, &QListWidget::itemActivated, this, [this, wanted](QListWidgetItem* item) {
        Q_EMIT(this->*wanted)(item->data(kPath).toString());
    });
    connect(list, &QListWidget::itemClicked, list, &QListWidget::itemActivated);
    return list;
}

QWidget* StartPage::makeBeginning() {
    form_ = new NewGutterForm;
    auto* begin = new QPushButton(tr("&Begin this gutter"));
    begin->setDefault(true);
    connect(begin, &QPushButton::clicked, this, [this] { Q_EMIT newWanted(form_->chosen()); });
    setFocusProxy(begin);
    return box(tr("New gutter"), {form_, begin});
}

QWidget* StartPage::makeRecent() {
    recent_ = makeList(tr("Recent files"), &StartPage::recentWanted);
    auto* open = new QPushButton(tr("Open a f&ile…"));
    connect(open, &QPushButton::clicked, this, &StartPage::fileWanted);
    forget_ = new QPushButton(tr("&Clear the list"));
    connect(forget_, &QPushButton::clicked, this, &StartPage::recentForgotten);
    auto* buttons = new QWidget;
    auto* row = new QHBoxLayout(buttons);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(open);
    row->addWidget(forget_);
    return box(tr("Files"), {recent_, buttons});
}

QWidget* StartPage::makeLeftovers() {
    leftovers_ = makeList(tr("Recovered layouts"), &StartPage::recoveryWanted);
    leftoversBox_ = box(tr("Recovered layouts, not saved yet"), {leftovers_});
    leftoversBox_->hide();
    return leftoversBox_;
}

QWidget* StartPage::makeSamples(const std::vector<Sample>& samples) {
    samples_ = makeList(tr("Samples"), &StartPage::sampleWanted);
    samples_->setViewMode(QListView::IconMode);
    samples_->setMovement(QListView::Static);
    samples_->setResizeMode(QListView::Adjust);
    samples_->setIconSize(kPicture);
    samples_->setSpacing(6);
    samples_->setMinimumHeight(2 * (kPicture.height() + 40));
    samples_->setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    spoilt_ = makeList(tr("Samples with one breach each"), &StartPage::sampleWanted);
    spoilt_->setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    QPixmap blank(kPicture);
    blank.fill(Qt::white);
    for (const Sample& sample : samples) {
        auto* item = addRow(sample.isSpoilt ? *spoilt_ : *samples_, sample.name, sample.path);
        if (!sample.isSpoilt) {
            item->setIcon(blank);
        }
    }
    auto* both = box(tr("Samples, opened as copies"), {samples_});
    both->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    auto* column = static_cast<QVBoxLayout*>(both->layout());
    column->setStretch(0, 3);
    auto* caption = new QLabel(tr("The same, each &spoilt to show one breach:"));
    caption->setWordWrap(true);
    caption->setBuddy(spoilt_);
    column->addWidget(caption);
    column->addWidget(spoilt_, 2);
    both->setVisible(!samples.empty());
    return both;
}

/// One at a time between events, so that the page is there at once.
void StartPage::drawNext() {
    if (drawn_ >= samples_->count()) {
        drawing_.stop();
        return;
    }
    auto* item = samples_->item(drawn_++);
    const auto layout = readSample(item->data(kPath).toString(), shelf_);
    if (!layout) {
        item->setFlags(Qt::NoItemFlags);
        item->setToolTip(toQString(toLine(layout.error())));
        return;
    }
    const qreal ratio = devicePixelRatioF();
    auto picture = QPixmap::fromImage(pictureOf(*layout, shelf_, kPicture * ratio));
    picture.setDevicePixelRatio(ratio);
    item->setIcon(picture);
    item->setToolTip(toQString(layout->title));
}

void StartPage::showRecent(const QStringList& paths) {
    recent_->clear();
    for (const auto& path : paths) {
        const QFileInfo file(path);
        const QString text =
            QStringLiteral("%1   (%2)").arg(file.fileName(), QDir::toNativeSeparators(file.path()));
        if (file.exists()) {
            addRow(*recent_, text, path);
        } else {
            addRow(*recent_, tr("%1 – missing").arg(text), path)->setFlags(Qt::NoItemFlags);
        }
    }
    if (paths.isEmpty()) {
        addRow(*recent_, tr("none yet"), {})->setFlags(Qt::NoItemFlags);
    }
    forget_->setEnabled(!paths.isEmpty());
    fitHeight(*recent_);
}

void StartPage::showLeftovers(const std::vector<Leftover>& leftovers) {
    leftovers_->clear();
    for (const auto& one : leftovers) {
        auto* item =
            addRow(*leftovers_,
                   QStringLiteral("%1, %2").arg(
                       shownName(one), QLocale().toString(one.written, QLocale::ShortFormat)),
                   one.path);
        if (!one.kept) {
            item->setFlags(Qt::NoItemFlags);
        }
    }
    fitHeight(*leftovers_);
    leftoversBox_->setVisible(!leftovers.empty());
}

}  // namespace gw::ui
