#include "tools/conductor_tool.h"

#include <algorithm>
#include <utility>

#include "canvas/overlay.h"
#include "editing/bounds.h"
#include "editing/next_conductor.h"

namespace gw::ui {

using editing::Hit;
using geometry::View;

namespace {

QString said(const std::string& text) {
    return QString::fromStdString(text);
}

}  // namespace

ConductorTool::ConductorTool(const Bench& bench,
                             layout::CircuitId circuit,
                             editing::ConductorKind kind)
    : Tool(bench),
      circuit_(std::move(circuit)),
      kind_(kind),
      facts_(editing::nextConductor(bench.document.layout(), circuit_, kind)) {
    const Vec3& inside = bench.document.built().gutter().inside;
    lane_ = {0.0, inside.y / 2.0, inside.z / 4.0};
}

ConductorTool::~ConductorTool() = default;

QString ConductorTool::hint() const {
    if (!facts_) {
        return tr("Every conductor of this circuit is there");
    }
    const auto& layout = bench().document.layout();
    const auto index = editing::indexOf(layout, circuit_);
    const QString tag =
        index ? said(editing::tagFor(layout.circuits[*index], facts_->set, facts_->phase))
              : QString();
    return from_ ? tr("%1: click places to lead it through, then a port or raceway; Enter leaves "
                      "the end capped, Backspace takes back, Page Up and Down change the depth")
                       .arg(tag)
                 : tr("%1, %2: click the raceway or port it comes from")
                       .arg(tag, said(facts_->kind.size.text()));
}

/// A place the view points at: what it does not show is the lane's.
Vec3 ConductorTool::placeAt(const BoardPoint& point) {
    const auto& built = drag_ ? drag_->before() : bench().document.built();
    editing::SnapOptions options;
    options.held = point.modifiers & Qt::AltModifier;
    options.reach = 7.0 * point.inchesPerPixel;
    if (!via_.empty()) {
        options.from = via_.back();
    } else if (from_) {
        options.from = from_->at;
    }
    snapped_ = point.view == View::end ? editing::Snapped{point.at, {}, {}, {}}
                                       : editing::snap(built, point.view, point.at, options);
    switch (point.view) {
        case View::front:
            return {snapped_.at.x, snapped_.at.y, lane_.z};
        case View::top:
            return {snapped_.at.x, lane_.y, -snapped_.at.y};
        case View::end:
            return {point.cut, point.at.y, point.at.x};
    }
    return {};
}

ConductorTool::Target ConductorTool::targetAt(const BoardPoint& point) {
    const auto& built = drag_ ? drag_->before() : bench().document.built();
    constexpr double kReach = 10.0;  // pixels
    const double reach = kReach * point.inchesPerPixel;
    const auto found = point.view == View::end
                           ? editing::hitsInSection(built, point.cut, point.at, reach)
                           : editing::hitsAt(built, point.view, point.at, reach);
    const auto hit = editing::landingAt(found);
    if (hit && hit->place == Hit::Place::port) {
        const auto& block = std::get<layout::BlockId>(hit->item);
        const auto& part = *built.blocks[*editing::indexOf(built.layout, block)].part;
        const auto& port = part.ports[hit->index].name;
        if (const auto end = editing::endInPort(built, block, port)) {
            return {*end,
                    hit->at,
                    tr("port %1 of %2")
                        .arg(said(port.text()), said(editing::itemName(built.layout, block))),
                    true};
        }
    }
    if (hit && hit->place == Hit::Place::hole) {
        const auto& entry = std::get<layout::EntryId>(hit->item);
        return {layout::AtEntry{entry, editing::freeSlot(built.layout, entry)},
                hit->at,
                said(editing::itemName(built.layout, entry)),
                true};
    }
    const Vec3 at = placeAt(point);
    return {layout::Spare{at}, at, {}, false};
}

void ConductorTool::move(const BoardPoint& point) {
    last_ = point;
    const Target target = targetAt(point);
    if (from_) {
        showTo(target);
    } else {
        plate_ = target.holds ? tr("from %1").arg(target.text) : QString();
        bench().board.setHint(hint());
        Q_EMIT paintChanged();
    }
}

void ConductorTool::begin(const Target& target) {
    if (!facts_) {
        return;
    }
    drag_ = std::make_unique<Drag>(bench().document);
    from_ = target;
    lane_ = target.at;
    via_.clear();
}

void ConductorTool::showTo(const Target& target) {
    auto& document = bench().document;
    const auto conductor = editing::newConductor(drag_->before().layout, *facts_);
    if (!conductor) {
        plate_ = said(conductor.error().sentence);
        return;
    }
    auto made = editing::drawConductor(drag_->before(), *conductor, from_->end, target.end, via_);
    if (!made) {
        plate_ = said(made.error().sentence);
    } else if (const auto refused = drag_->show(made->layout)) {
        plate_ = *refused;
    } else {
        made_ = made->items;
        plate_ = (target.holds ? tr("to %1").arg(target.text) + QLatin1Char('\n') : QString()) +
                 affectedText(document, made_);
    }
    bench().board.setHint(snapped_.sentence.empty() || target.holds ? hint()
                                                                    : said(snapped_.sentence));
    Q_EMIT paintChanged();
}

void ConductorTool::release(const BoardPoint& point) {
    const Target target = targetAt(point);
    if (!from_) {
        begin(target);
    } else if (target.holds) {
        showTo(target);
        finish();
    } else {
        via_.push_back(target.at);
        lane_ = target.at;
    }
    Q_EMIT paintChanged();
}

void ConductorTool::doubleClick(const BoardPoint&) {
    if (from_ && !made_.empty()) {
        finish();
    }
}

void ConductorTool::finish() {
    if (made_.empty()) {
        return;
    }
    drag_->commit(tr("Draw %1").arg(said(editing::itemsName(bench().document.layout(), made_))));
    bench().selection.set(made_);
    cancel();
    facts_ = editing::nextConductor(bench().document.layout(), circuit_, kind_);
    bench().board.setHint(hint());
    if (!facts_) {
        Q_EMIT finished();
    }
}

void ConductorTool::shiftLane(double direction) {
    const double step = editing::kNudge;
    const Vec3& inside = bench().document.built().gutter().inside;
    if (last_ && last_->view == View::top) {
        lane_.y = std::clamp(lane_.y + direction * step, 0.0, inside.y);
    } else {
        lane_.z = std::clamp(lane_.z + direction * step, 0.0, inside.z);
    }
    if (last_) {
        move(*last_);
    }
}

bool ConductorTool::key(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            finish();
            return true;
        case Qt::Key_Backspace:
            if (!via_.empty()) {
                via_.pop_back();
            } else {
                cancel();
            }
            if (last_) {
                move(*last_);
            }
            return true;
        case Qt::Key_PageUp:
            shiftLane(1.0);
            return true;
        case Qt::Key_PageDown:
            shiftLane(-1.0);
            return true;
        default:
            return from_.has_value() && event->key() != Qt::Key_Escape;
    }
}

bool ConductorTool::cancel() {
    const bool under = from_.has_value();
    drag_.reset();
    from_.reset();
    via_.clear();
    made_.clear();
    plate_.clear();
    snapped_ = {};
    Q_EMIT paintChanged();
    return under;
}

void ConductorTool::paint(QPainter& painter, const PaneTransform& transform) const {
    if (transform.view != View::end && drag_) {
        for (const Item& item : made_) {
            paintHalo(
                painter, bench().document.built(), transform, item, board_colour::kChosen, 2.0);
        }
        painter.setPen(QPen(board_colour::kChosen, 2.0));
        painter.setBrush(Qt::white);
        for (const Vec3& via : via_) {
            painter.drawEllipse(transform.toPixels(via), 4.0, 4.0);
        }
    }
    if (last_ && transform.view == last_->view) {
        paintPlate(painter, transform.toPixels(last_->at), plate_);
    }
}

}  // namespace gw::ui
