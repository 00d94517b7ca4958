#include "canvas/board.h"

#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "editing/bounds.h"

namespace gw::ui {

using geometry::View;

namespace {

/// A pane's name over its upper left corner.
class PaneTitle : public QWidget {
public:
    PaneTitle(const QString& text, QWidget* pane) : QWidget(pane), text_(text) {
        setAttribute(Qt::WA_TransparentForMouseEvents);
        const QFontMetricsF metrics(fontOf(drawing::Face::bold, kSize));
        resize(static_cast<int>(std::ceil(metrics.horizontalAdvance(text))) + 10, kSize + 8);
        move(4, 2);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.fillRect(rect(), QColor(255, 255, 255, 220));
        painter.setPen(QColor(70, 70, 70));
        painter.setFont(fontOf(drawing::Face::bold, kSize));
        painter.drawText(rect(), Qt::AlignCenter, text_);
    }

private:
    static constexpr int kSize = 12;
    QString text_;
};

}  // namespace

Board::Board(const Bench& bench, ToolHolder& tools, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      tools_(tools),
      ruler_(new Ruler(bench, this)),
      top_(new GutterPane(View::top, bench, tools, this)),
      front_(new GutterPane(View::front, bench, tools, this)),
      profile_(new ProfilePane(bench, this)),
      section_(new SectionPane(bench, tools, this)),
      scroll_(new QScrollBar(Qt::Horizontal, this)) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Drawing board"));
    setAccessibleDescription(
        tr("Top view, front view, fill and section of the gutter. The same things are listed in "
           "the panel \"Tables\"."));
    top_->setAccessibleName(tr("Top view"));
    front_->setAccessibleName(tr("Front view, cover off"));
    for (QWidget* pane : {static_cast<QWidget*>(top_), static_cast<QWidget*>(front_)}) {
        pane->setFocusProxy(this);
    }
    new PaneTitle(tr("Top view, looking down"), top_);
    new PaneTitle(tr("Front view, cover off"), front_);
    layOut();
    const auto wantMenu = [this](const BoardPoint& point, const QPoint& global) {
        Q_EMIT menuWanted(point, global);
    };
    connect(top_, &GutterPane::menuWanted, this, wantMenu);
    connect(front_, &GutterPane::menuWanted, this, wantMenu);
    connect(section_, &SectionPane::menuWanted, this, wantMenu);
    connect(scroll_, &QScrollBar::valueChanged, this, [this](int value) {
        bench_.board.setScale(bench_.board.pixelsPerInch(), value / 100.0);
    });
    connect(&bench.board, &BoardState::scaleChanged, this, &Board::scaleWasChanged);
    front_->installEventFilter(this);
    bench.board.setCut(bench.document.built().gutter().inside.x / 2.0);
    connect(&bench.document, &Document::replaced, this, [this] {
        fitAll();
        bench_.board.setCut(bench_.document.built().gutter().inside.x / 2.0);
    });
}

void Board::layOut() {
    auto* views = new QSplitter(Qt::Vertical, this);
    views->addWidget(top_);
    views->addWidget(front_);
    views->addWidget(profile_);
    views->setStretchFactor(0, 3);
    views->setStretchFactor(1, 5);
    views->setStretchFactor(2, 2);
    views->setChildrenCollapsible(false);
    auto* left = new QWidget(this);
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(ruler_);
    column->addWidget(views, 1);
    column->addWidget(scroll_);
    auto* both = new QSplitter(Qt::Horizontal, this);
    both->addWidget(left);
    both->addWidget(section_);
    both->setStretchFactor(0, 1);
    both->setStretchFactor(1, 0);
    both->setChildrenCollapsible(false);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(both);
}

void Board::fitAll() {
    bench_.board.fit(0.0, bench_.document.built().gutter().inside.x, front_->width());
    top_->centre();
    front_->centre();
    whole_ = true;
    updateScrollBar();
}

void Board::fitSelection() {
    const auto& built = bench_.document.built();
    if (bench_.selection.empty()) {
        fitAll();
        return;
    }
    const auto box = editing::boundsOf(built, bench_.selection.items());
    constexpr double kAround = 2.0;  // inches
    bench_.board.fit(box.least.x - kAround, box.greatest.x + kAround, front_->width());
    top_->centre();
    front_->centre();
}

void Board::zoomBy(double factor) {
    auto& board = bench_.board;
    const double middle = board.left() + front_->width() / 2.0 / board.pixelsPerInch();
    const double scale = std::clamp(board.pixelsPerInch() * factor,
                                    BoardState::kLeastPixelsPerInch,
                                    BoardState::kMostPixelsPerInch);
    board.setScale(scale, middle - front_->width() / 2.0 / scale);
}

void Board::show(const Vec3& place) {
    auto& board = bench_.board;
    board.setCut(std::clamp(place.x, 0.0, bench_.document.built().gutter().inside.x));
    const double width = front_->width() / board.pixelsPerInch();
    const double margin = width * 0.1;
    if (place.x < board.left() + margin || place.x > board.left() + width - margin) {
        board.setScale(board.pixelsPerInch(), place.x - width / 2.0);
    }
}

void Board::keyPressEvent(QKeyEvent* event) {
    if (!tools_.current().key(event)) {
        QWidget::keyPressEvent(event);
    }
}

/// By key: in the middle of the front view. By mouse the views themselves ask.
void Board::contextMenuEvent(QContextMenuEvent* event) {
    if (event->reason() != QContextMenuEvent::Mouse) {
        Q_EMIT menuWanted(std::nullopt, front_->mapToGlobal(front_->rect().center()));
    }
}

bool Board::eventFilter(QObject* watched, QEvent* event) {
    if (watched == front_ && event->type() == QEvent::Resize) {
        if (whole_) {
            fitAll();
        } else {
            updateScrollBar();
        }
    }
    return QWidget::eventFilter(watched, event);
}

void Board::scaleWasChanged() {
    whole_ = false;
    updateScrollBar();
}

/// From a gutter's length before it to one after it, in hundredths of an inch.
void Board::updateScrollBar() {
    const auto& board = bench_.board;
    const double length = bench_.document.built().gutter().inside.x;
    const double width = front_->width() / board.pixelsPerInch();
    const QSignalBlocker quiet(scroll_);
    constexpr double kMargin = 3.0;  // inches
    const double low = std::min(board.left(), -kMargin);
    const double high = std::max(board.left(), length + kMargin - width);
    scroll_->setRange(static_cast<int>(low * 100.0), static_cast<int>(std::max(high, low) * 100.0));
    scroll_->setPageStep(static_cast<int>(width * 100.0));
    scroll_->setSingleStep(100);
    scroll_->setValue(static_cast<int>(board.left() * 100.0));
}

}  // namespace gw::ui
