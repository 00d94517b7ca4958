#include "tools/select_tool.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "canvas/overlay.h"
#include "editing/bounds.h"
#include "editing/edits.h"

namespace gw::ui {

using editing::Hit;
using geometry::View;

namespace {

constexpr double kDragStarts = 4.0;  // pixels

enum MergeKey { kNudgeKey = 1, kBendKey = 2 };

QString said(const std::string& text) {
    return QString::fromStdString(text);
}

QString verbOf(const Hit& hit) {
    switch (hit.place) {
        case Hit::Place::leg:
            return QObject::tr("drag to move this leg sideways, double-click to add a bend");
        case Hit::Place::bend:
            return QObject::tr("drag to move this bend; + and - change its radius");
        case Hit::Place::fromEnd:
        case Hit::Place::toEnd:
            return QObject::tr("drag this end to a port or raceway");
        case Hit::Place::body:
        case Hit::Place::port:
            return QObject::tr("drag to move; X, Y, Z turn it");
        case Hit::Place::hole:
            return QObject::tr("drag along the wall");
    }
    return {};
}

}  // namespace

SelectTool::~SelectTool() = default;

QString SelectTool::hint() const {
    return tr("Click to choose, drag to move; drag on nothing to choose by a frame");
}

std::vector<Hit> SelectTool::hits(const BoardPoint& point) const {
    const auto& built = bench().document.built();
    const double reach = kReachPixels * point.inchesPerPixel;
    return point.view == View::end ? editing::hitsInSection(built, point.cut, point.at, reach)
                                   : editing::hitsAt(built, point.view, point.at, reach);
}

void SelectTool::press(const BoardPoint& point) {
    auto found = hits(point);
    // What is chosen already keeps the pointer, so that it can be dragged from under others.
    const auto chosen = std::find_if(found.begin(), found.end(), [&](const Hit& hit) {
        return bench().selection.contains(hit.item);
    });
    const bool endsFirst = chosen != found.end();
    std::optional<Hit> hit;
    if (endsFirst) {
        hit = *chosen;
    } else if (!found.empty()) {
        hit = found.front();
    }
    pressed_ = point;
    last_ = point;
    grip_ = hit;
    choose(point, hit);
}

void SelectTool::choose(const BoardPoint& point, const std::optional<Hit>& hit) {
    auto& selection = bench().selection;
    const bool adding = point.modifiers & (Qt::ShiftModifier | Qt::ControlModifier);
    if (hit && adding) {
        selection.toggle(hit->item);
    } else if (hit && !selection.contains(hit->item)) {
        selection.set({hit->item});
    } else if (!hit && !adding) {
        selection.clear();
    }
}

void SelectTool::move(const BoardPoint& point) {
    last_ = point;
    if (!pressed_) {
        hover(point);
        return;
    }
    if (point.view != pressed_->view) {
        return;
    }
    const double moved =
        std::max(std::abs(point.at.x - pressed_->at.x), std::abs(point.at.y - pressed_->at.y)) /
        point.inchesPerPixel;
    if (!drag_ && !band_ && moved >= kDragStarts) {
        startDrag();
    }
    if (drag_) {
        drag(point);
    } else if (band_) {
        band_->b = point.at;
        Q_EMIT paintChanged();
    }
}

void SelectTool::hover(const BoardPoint& point) {
    const auto found = hits(point);
    if (found.empty()) {
        bench().board.setHovered(std::nullopt);
        bench().board.setHint(hint());
        return;
    }
    bench().board.setHovered(found.front().item);
    bench().board.setHint(said(editing::itemName(bench().document.layout(), found.front().item)) +
                          tr(": ") + verbOf(found.front()));
}

void SelectTool::startDrag() {
    if (grip_ && bench().selection.contains(grip_->item)) {
        drag_ = std::make_unique<Drag>(bench().document);
    } else if (!grip_ && pressed_->view != View::end) {
        band_ = editing::Band{pressed_->at, pressed_->at};
    }
}

/// The shift from where the button went down, with the thing's own snapping.
Vec3 SelectTool::snappedShift(const BoardPoint& point) {
    const auto& before = drag_->before();
    editing::SnapOptions options;
    options.held = point.modifiers & Qt::AltModifier;
    options.reach = kReachPixels * point.inchesPerPixel;
    options.leaveOut = bench().selection.items();
    geometry::Point2 grip = pressed_->at;
    if (const auto* block = std::get_if<layout::BlockId>(&grip_->item)) {
        const auto& body = before.blocks[*editing::indexOf(before.layout, *block)].body;
        options.extents = body.greatest - body.least;
        grip = geometry::project(point.view, body.least);
    } else {
        grip = geometry::project(point.view, grip_->at);
    }
    options.from = grip_->at;
    const double across = point.at.x - pressed_->at.x;
    const double up = point.at.y - pressed_->at.y;
    snapped_ = editing::snap(before, point.view, {grip.x + across, grip.y + up}, options);
    Vec3 by = editing::inGutter(point.view, snapped_.at.x - grip.x, snapped_.at.y - grip.y);
    if (point.modifiers & Qt::ShiftModifier) {  // along one direction only
        const auto seen = geometry::project(point.view, by);
        by = std::abs(seen.x) >= std::abs(seen.y) ? editing::inGutter(point.view, seen.x, 0.0)
                                                  : editing::inGutter(point.view, 0.0, seen.y);
    }
    return by;
}

void SelectTool::drag(const BoardPoint& point) {
    const Vec3 by = snappedShift(point);
    landing_.clear();
    const auto refused = drag_->show(outcome(point, by));
    auto& document = bench().document;
    const QString shift = shiftText(by, document.layout().displayUnit);
    plate_ = landing_.isEmpty() ? shift : landing_;
    if (refused) {
        plate_ += QLatin1Char('\n') + *refused;
    } else {
        plate_ += QLatin1Char('\n') + affectedText(document, bench().selection.items());
    }
    bench().board.setHint(snapped_.sentence.empty() ? tr("Alt: no snapping; Shift: one direction")
                                                    : said(snapped_.sentence));
    Q_EMIT paintChanged();
}

editing::Edit SelectTool::outcome(const BoardPoint& point, const Vec3& by) {
    const auto& before = drag_->before();
    const auto& items = bench().selection.items();
    const auto* conductor = std::get_if<layout::ConductorId>(&grip_->item);
    if (conductor == nullptr || items.size() > 1) {
        return editing::moveItems(before, items, by);
    }
    switch (grip_->place) {
        case Hit::Place::leg:
            return editing::moveLeg(before, *conductor, grip_->index, by);
        case Hit::Place::bend:
            return editing::moveCorner(before, *conductor, grip_->index, by);
        case Hit::Place::fromEnd:
        case Hit::Place::toEnd:
            return endOutcome(point, by);
        case Hit::Place::body:
        case Hit::Place::port:
        case Hit::Place::hole:
            break;
    }
    return editing::moveItems(before, items, by);
}

/// An end goes into the port or raceway under the pointer, else where it is drawn to.
editing::Edit SelectTool::endOutcome(const BoardPoint& point, const Vec3& by) {
    const auto& before = drag_->before();
    const auto& id = std::get<layout::ConductorId>(grip_->item);
    const auto end = grip_->place == Hit::Place::fromEnd ? editing::ConductorEnd::from
                                                         : editing::ConductorEnd::to;
    const double reach = 1.5 * kReachPixels * point.inchesPerPixel;
    const auto found = point.view == View::end
                           ? editing::hitsInSection(before, point.cut, point.at, reach)
                           : editing::hitsAt(before, point.view, point.at, reach);
    const auto target = editing::landingAt(found);
    if (target && target->place == Hit::Place::port) {
        const auto& block = std::get<layout::BlockId>(target->item);
        const auto& part = *before.blocks[*editing::indexOf(before.layout, block)].part;
        const auto& port = part.ports[target->index].name;
        landing_ = tr("Land in port %1 of %2")
                       .arg(said(port.text()), said(editing::itemName(before.layout, block)));
        return editing::landEnd(before, id, end, block, port);
    }
    if (target && target->place == Hit::Place::hole) {
        landing_ = tr("Lead through %1").arg(said(editing::itemName(before.layout, target->item)));
        return editing::enterEnd(before, id, end, std::get<layout::EntryId>(target->item));
    }
    return editing::moveEnd(before, id, end, grip_->at + by);
}

QString SelectTool::stepName() const {
    const auto& items = bench().selection.items();
    const QString what = said(editing::itemsName(bench().document.layout(), items));
    if (!grip_ || items.size() > 1) {
        return tr("Move %1").arg(what);
    }
    switch (grip_->place) {
        case Hit::Place::leg:
            return tr("Move a leg of %1").arg(what);
        case Hit::Place::bend:
            return tr("Move a bend of %1").arg(what);
        case Hit::Place::fromEnd:
        case Hit::Place::toEnd:
            return landing_.isEmpty() ? tr("Move an end of %1").arg(what)
                                      : tr("%1: %2").arg(what, landing_.toLower());
        case Hit::Place::body:
        case Hit::Place::port:
        case Hit::Place::hole:
            break;
    }
    return tr("Move %1").arg(what);
}

void SelectTool::release(const BoardPoint& point) {
    if (drag_) {
        drag_->commit(stepName());
        drag_.reset();
    } else if (band_) {
        auto items = editing::itemsInside(bench().document.built(), point.view, *band_);
        if (pressed_->modifiers & (Qt::ShiftModifier | Qt::ControlModifier)) {
            const auto& kept = bench().selection.items();
            items.insert(items.begin(), kept.begin(), kept.end());
        }
        bench().selection.set(std::move(items));
        band_.reset();
    }
    pressed_.reset();
    grip_.reset();
    plate_.clear();
    snapped_ = {};
    Q_EMIT paintChanged();
}

void SelectTool::doubleClick(const BoardPoint& point) {
    const auto found = hits(point);
    if (found.empty() || bench().document.inGesture()) {
        return;
    }
    const auto* conductor = std::get_if<layout::ConductorId>(&found.front().item);
    if (conductor != nullptr && found.front().place == Hit::Place::leg) {
        auto& document = bench().document;
        make(tr("Add a bend to %1").arg(said(editing::itemName(document.layout(), *conductor))),
             editing::addCorner(
                 document.built(), *conductor, found.front().index, found.front().at));
    }
}

bool SelectTool::key(QKeyEvent* event) {
    if (bench().document.inGesture()) {
        return event->key() != Qt::Key_Escape;  // nothing happens in mid-drag but the way out
    }
    if (event->key() == Qt::Key_Tab || event->key() == Qt::Key_Backtab) {
        return false;
    }
    if (event->key() == Qt::Key_BracketRight || event->key() == Qt::Key_BracketLeft) {
        walk(event->key() == Qt::Key_BracketRight ? 1 : -1);
        return true;
    }
    return turn(event) || bend(event) || nudge(event);
}

/// X, Y, Z: the chosen block a quarter turn about that axis of the gutter, with Shift the other
/// way.
bool SelectTool::turn(QKeyEvent* event) {
    const int axis = event->key() == Qt::Key_X   ? 0
                     : event->key() == Qt::Key_Y ? 1
                     : event->key() == Qt::Key_Z ? 2
                                                 : -1;
    const auto& items = bench().selection.items();
    const bool plain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
    if (axis < 0 || !plain || items.size() != 1) {
        return false;
    }
    const auto* block = std::get_if<layout::BlockId>(&items.front());
    if (block == nullptr) {
        return false;
    }
    const int quarters = event->modifiers() & Qt::ShiftModifier ? 3 : 1;
    auto& document = bench().document;
    make(tr("Turn %1").arg(said(editing::itemName(document.layout(), *block))),
         editing::turnBlock(document.built(), *block, axis, quarters));
    return true;
}

/// + and -: all bends of the chosen conductor 1/4 in wider or narrower.
bool SelectTool::bend(QKeyEvent* event) {
    const bool wider = event->key() == Qt::Key_Plus || event->key() == Qt::Key_Equal;
    const auto& items = bench().selection.items();
    if ((!wider && event->key() != Qt::Key_Minus) || items.size() != 1) {
        return false;
    }
    auto& document = bench().document;
    const auto* id = std::get_if<layout::ConductorId>(&items.front());
    const auto index = id != nullptr ? editing::indexOf(document.layout(), *id) : std::nullopt;
    if (!index || document.layout().conductors[*index].corners.empty()) {
        return false;
    }
    const double now = document.layout().conductors[*index].corners.front().radius.in();
    const double next = std::max(0.0, now + (wider ? editing::kNudge : -editing::kNudge));
    make(tr("Change bends of %1").arg(said(editing::itemName(document.layout(), *id))),
         editing::setBendRadius(document.built(), *id, std::nullopt, units::Inches::of(next)),
         kBendKey);
    return true;
}

/// A step of the history, or the reason why there is none.
void SelectTool::make(const QString& name, const editing::Edit& after, int mergeKey) {
    auto& document = bench().document;
    if (!after) {
        bench().board.setHint(said(after.error().sentence));
        return;
    }
    if (const auto edited = document.edit(name, *after, mergeKey); !edited) {
        bench().board.setHint(said(edited.error().sentence));
        return;
    }
    bench().board.setHint(affectedText(document, bench().selection.items())
                              .replace(QLatin1Char('\n'), QStringLiteral("; ")));
}

/// Arrow keys: 1/4 in, with Ctrl 1/16 in, with Shift 1 in; Page Up and Page Down: forward and back.
bool SelectTool::nudge(QKeyEvent* event) {
    const double step = event->modifiers() & Qt::ControlModifier ? editing::kNudgeFine
                        : event->modifiers() & Qt::ShiftModifier ? editing::kNudgeCoarse
                                                                 : editing::kNudge;
    Vec3 by;
    switch (event->key()) {
        case Qt::Key_Left:
            by.x = -step;
            break;
        case Qt::Key_Right:
            by.x = step;
            break;
        case Qt::Key_Up:
            by.y = step;
            break;
        case Qt::Key_Down:
            by.y = -step;
            break;
        case Qt::Key_PageUp:
            by.z = step;
            break;
        case Qt::Key_PageDown:
            by.z = -step;
            break;
        default:
            return false;
    }
    const auto& items = bench().selection.items();
    if (items.empty()) {
        return false;
    }
    auto& document = bench().document;
    make(tr("Move %1").arg(said(editing::itemsName(document.layout(), items))),
         editing::moveItems(document.built(), items, by),
         kNudgeKey);
    return true;
}

/// To the next thing in the gutter, in the order of the layout: entries, blocks, conductors.
void SelectTool::walk(int direction) {
    const auto& layout = bench().document.layout();
    std::vector<Item> all;
    for (const auto& one : layout.entries) {
        all.emplace_back(one.id);
    }
    for (const auto& one : layout.blocks) {
        all.emplace_back(one.id);
    }
    for (const auto& one : layout.conductors) {
        all.emplace_back(one.id);
    }
    if (all.empty()) {
        return;
    }
    const auto& chosen = bench().selection.items();
    const auto count = static_cast<std::ptrdiff_t>(all.size());
    std::ptrdiff_t at = direction > 0 ? -1 : count;
    if (!chosen.empty()) {
        const auto found = std::find(all.begin(), all.end(), chosen.back());
        at = found != all.end() ? found - all.begin() : at;
    }
    at = (at + direction + count) % count;
    bench().selection.set({all[static_cast<std::size_t>(at)]});
    bench().board.setHint(said(editing::itemName(layout, bench().selection.items().front())));
}

bool SelectTool::cancel() {
    const bool under = drag_ || band_ || pressed_;
    drag_.reset();
    band_.reset();
    pressed_.reset();
    grip_.reset();
    plate_.clear();
    snapped_ = {};
    Q_EMIT paintChanged();
    return under;
}

void SelectTool::paint(QPainter& painter, const PaneTransform& transform) const {
    paintHandles(painter, transform);
    if (band_ && transform.view == pressed_->view) {
        paintBand(painter, transform);
    }
    if (drag_ && transform.view == last_.view) {
        painter.setPen(QPen(board_colour::kChosen, 1.0, Qt::DotLine));
        const QRectF room = painter.viewport();
        if (snapped_.lineAcross) {
            const double x = transform.toPixels(geometry::Point2{*snapped_.lineAcross, 0.0}).x();
            painter.drawLine(QPointF(x, room.top()), QPointF(x, room.bottom()));
        }
        if (snapped_.lineUp) {
            const double y = transform.toPixels(geometry::Point2{0.0, *snapped_.lineUp}).y();
            painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y));
        }
        const QString snap = snapped_.sentence.empty() ? QString() : said(snapped_.sentence);
        paintPlate(painter,
                   transform.toPixels(last_.at),
                   snap.isEmpty() ? plate_ : plate_ + QLatin1Char('\n') + snap);
    }
}

void SelectTool::paintBand(QPainter& painter, const PaneTransform& transform) const {
    painter.setPen(QPen(board_colour::kChosen, 1.0, Qt::DashLine));
    painter.setBrush(QColor(20, 110, 220, 30));
    painter.drawRect(
        QRectF(transform.toPixels(band_->a), transform.toPixels(band_->b)).normalized());
}

/// On the one conductor that is chosen: bends as circles, ends as squares.
void SelectTool::paintHandles(QPainter& painter, const PaneTransform& transform) const {
    const auto& items = bench().selection.items();
    if (items.size() != 1 || transform.view == View::end) {
        return;
    }
    const auto* id = std::get_if<layout::ConductorId>(&items.front());
    if (id == nullptr) {
        return;
    }
    const auto& built = bench().document.built();
    const auto index = editing::indexOf(built.layout, *id);
    if (!index) {
        return;
    }
    painter.setPen(QPen(board_colour::kChosen, 2.0));
    painter.setBrush(Qt::white);
    constexpr double kHandle = 5.0;
    for (const auto& bend : built.conductors[*index].built.bends) {
        painter.drawEllipse(transform.toPixels(bend.corner), kHandle, kHandle);
    }
    const auto& path = built.conductors[*index].built.path;
    for (const Vec3& tip : {path.start(), path.end()}) {
        painter.drawRect(QRectF(transform.toPixels(tip) - QPointF(kHandle, kHandle),
                                QSizeF(2 * kHandle, 2 * kHandle)));
    }
}

}  // namespace gw::ui
