#include "tools/entry_tool.h"

#include <QStringList>
#include <algorithm>

#include "canvas/overlay.h"
#include "editing/edits.h"

namespace gw::ui {

using geometry::View;

EntryTool::EntryTool(const Bench& bench,
                     std::optional<standards::RacewayType> raceway,
                     std::optional<standards::TradeSize> tradeSize)
    : Tool(bench), raceway_(raceway), tradeSize_(tradeSize) {}

EntryTool::~EntryTool() = default;

QString EntryTool::hint() const {
    return tr("Click near a wall to lead a raceway in there; Shift-click for several, Esc ends");
}

/// The nearest wall of those the view shows from their edge; the depth or height that the view does
/// not show is the middle.
editing::EntryFacts EntryTool::factsAt(const BoardPoint& point) const {
    const auto& gutter = bench().document.layout().gutter;
    const Vec3& inside = gutter.inside;
    Vec3 at;
    switch (point.view) {
        case View::front:
            at = {snapped_.at.x, snapped_.at.y, inside.z / 2.0};
            break;
        case View::top:
            at = {snapped_.at.x, inside.y / 2.0, -snapped_.at.y};
            break;
        case View::end:
            at = {point.cut, point.at.y, point.at.x};
            break;
    }
    auto facts = editing::entryNear(gutter, at);
    facts.raceway = raceway_;
    facts.tradeSize = tradeSize_;
    return facts;
}

void EntryTool::move(const BoardPoint& point) {
    last_ = point;
    if (!drag_) {
        drag_ = std::make_unique<Drag>(bench().document);
    }
    editing::SnapOptions options;
    options.held = point.modifiers & Qt::AltModifier;
    options.reach = 7.0 * point.inchesPerPixel;
    snapped_ = point.view == View::end
                   ? editing::Snapped{point.at, {}, {}, {}}
                   : editing::snap(drag_->before(), point.view, point.at, options);
    show(factsAt(point));
}

void EntryTool::show(const editing::EntryFacts& facts) {
    const auto made = editing::addEntry(drag_->before(), facts);
    if (!made) {
        plate_ = QString::fromStdString(made.error().sentence);
        return;
    }
    if (const auto refused = drag_->show(made->layout)) {
        plate_ = *refused;
        return;
    }
    made_ = made->items;
    const auto& document = bench().document;
    const auto unit = document.layout().displayUnit;
    const auto length = [&](double inches) {
        return QString::fromStdString(units::formatLength(units::Inches::of(inches), unit));
    };
    const auto wall = layout::wallText(facts.wall);
    plate_ = tr("%1 wall, %2 and %3")
                 .arg(QString::fromUtf8(wall.data(), static_cast<qsizetype>(wall.size())),
                      length(facts.u),
                      length(facts.v));
    const QString hole = holeText(document.built(), std::get<layout::EntryId>(made_.front()));
    if (!hole.isEmpty()) {
        plate_ += QLatin1Char('\n') + hole;
    }
    Q_EMIT paintChanged();
}

void EntryTool::settle(bool stay) {
    if (!drag_ || made_.empty()) {
        return;
    }
    drag_->commit(tr("Add %1").arg(
        QString::fromStdString(editing::itemsName(bench().document.layout(), made_))));
    drag_.reset();
    bench().selection.set(made_);
    made_.clear();
    if (!stay) {
        Q_EMIT finished();
    }
}

void EntryTool::release(const BoardPoint& point) {
    settle(point.modifiers & Qt::ShiftModifier);
}

/// With the keyboard: Enter puts it in the middle of the top wall.
bool EntryTool::key(QKeyEvent* event) {
    if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) {
        return false;
    }
    if (!drag_) {
        drag_ = std::make_unique<Drag>(bench().document);
        const Vec3& inside = drag_->before().gutter().inside;
        show({layout::Wall::top, inside.x / 2.0, inside.z / 2.0, raceway_, tradeSize_});
    }
    settle(false);
    return true;
}

bool EntryTool::cancel() {
    drag_.reset();
    made_.clear();
    plate_.clear();
    return false;
}

void EntryTool::paint(QPainter& painter, const PaneTransform& transform) const {
    if (!drag_ || transform.view == View::end) {
        return;
    }
    for (const Item& item : made_) {
        paintHalo(painter, bench().document.built(), transform, item, board_colour::kChosen, 2.0);
    }
    if (last_ && transform.view == last_->view) {
        paintPlate(painter, transform.toPixels(last_->at), plate_);
    }
}

QString holeText(const geometry::BuiltLayout& built, const layout::EntryId& entry) {
    const auto room = editing::holeRoom(built, entry);
    const auto unit = built.layout.displayUnit;
    const auto length = [&](units::Inches inches) {
        return QString::fromStdString(units::formatLength(inches, unit));
    };
    QStringList parts;
    if (room.knockout) {
        parts.append(QObject::tr("knockout %1").arg(length(*room.knockout)));
    }
    if (room.locknut) {
        parts.append(QObject::tr("locknut about %1 across").arg(length(*room.locknut)));
    }
    QString text = parts.join(QStringLiteral(", "));
    for (const auto& one : room.collides) {
        text += QObject::tr("\n✕ collides with %1").arg(QString::fromStdString(one));
    }
    return text;
}

}  // namespace gw::ui
