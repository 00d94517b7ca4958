#include "window/route_actions.h"

#include <QMessageBox>
#include <QPushButton>
#include <algorithm>

#include "panels/panel_text.h"

namespace gw::ui {
namespace {

bool endsIn(const layout::End& end, const Item& item) {
    if (const auto* at = std::get_if<layout::AtEntry>(&end)) {
        return item == Item(at->entry);
    }
    const auto* port = std::get_if<layout::InPort>(&end);
    return port != nullptr && item == Item(port->block);
}

bool concerns(const layout::Conductor& conductor, const Item& item) {
    return item == Item(conductor.id) || item == Item(conductor.circuit) ||
           endsIn(conductor.from, item) || endsIn(conductor.to, item) ||
           std::any_of(conductor.passes.begin(), conductor.passes.end(), [&](const auto& pass) {
               return item == Item(pass.block);
           });
}

QString unresolvedText(const routing::Routing& routing) {
    QString text;
    for (const auto& one : routing.unresolved) {
        text += QStringLiteral("%1: %2 (%3)\n")
                    .arg(toQString(one.conductor.text()),
                         toQString(one.sentence),
                         toQString(routing::whyText(one.why)));
    }
    return text;
}

}  // namespace

RouteActions::RouteActions(const Bench& bench, QMainWindow& window)
    : QObject(&window), bench_(bench), window_(window) {}

RouteActions::~RouteActions() {
    stopped_ = true;
    if (worker_.joinable()) {
        worker_.join();
    }
}

void RouteActions::addTo(QMenu& menu) {
    auto* chosen = menu.addAction(tr("Find &ways for what is selected"));
    chosen->setShortcut(Qt::Key_W);
    connect(chosen, &QAction::triggered, this, &RouteActions::routeChosen);
    auto* all = menu.addAction(tr("Find ways for &all conductors"));
    all->setShortcut(QKeySequence(Qt::SHIFT | Qt::Key_W));
    connect(all, &QAction::triggered, this, [this] { start({}); });
}

std::vector<layout::ConductorId> RouteActions::chosen() const {
    const auto& items = bench_.selection.items();
    std::vector<layout::ConductorId> ids;
    for (const auto& conductor : bench_.document.layout().conductors) {
        if (std::any_of(items.begin(), items.end(), [&](const Item& item) {
                return concerns(conductor, item);
            })) {
            ids.push_back(conductor.id);
        }
    }
    return ids;
}

void RouteActions::routeChosen() {
    const auto only = chosen();
    if (only.empty()) {
        bench_.board.setHint(tr("Select conductors, or what they end in, to be routed"));
        return;
    }
    start(only);
}

void RouteActions::start(std::vector<layout::ConductorId> only) {
    if (isRunning() || bench_.document.inGesture() || bench_.document.layout().conductors.empty()) {
        return;
    }
    constexpr int kSoon = 300;  // ms before the dialog shows
    dialog_.emplace(tr("Looking for ways…"), tr("Cancel"), 0, 0, &window_);
    dialog_->setWindowModality(Qt::WindowModal);
    dialog_->setMinimumDuration(kSoon);
    dialog_->setAutoReset(false);
    connect(&*dialog_, &QProgressDialog::canceled, this, &RouteActions::cancel);
    stopped_ = false;
    routing::Options options;
    options.only = std::move(only);
    options.onProgress = [this](const routing::Progress& progress) {
        QMetaObject::invokeMethod(
            this, [this, progress] { showProgress(progress); }, Qt::QueuedConnection);
        return !stopped_;
    };
    worker_ =
        std::thread([this, layout = bench_.document.layout(), options] { run(layout, options); });
}

/// On the worker's thread: it has its own copy of the layout; nobody changes the shelf.
void RouteActions::run(const layout::Layout& layout, const routing::Options& options) {
    auto routing = routing::route(layout, bench_.document.shelf(), options);
    QMetaObject::invokeMethod(
        this, [this, routing = std::move(routing)] { arrive(routing); }, Qt::QueuedConnection);
}

void RouteActions::showProgress(const routing::Progress& progress) {
    if (!dialog_) {
        return;
    }
    dialog_->setMaximum(static_cast<int>(progress.asked));
    dialog_->setValue(static_cast<int>(progress.prepared));
    if (progress.round > 0) {
        dialog_->setLabelText(tr("Round %1: %2 pairs still in each other's way")
                                  .arg(progress.round)
                                  .arg(progress.conflicts));
    }
}

void RouteActions::arrive(const Result<routing::Routing>& routing) {
    worker_.join();
    dialog_.reset();
    if (!routing) {
        QMessageBox::warning(&window_, tr("Route"), errorText(routing.error()));
    } else if (routing->answer) {
        take(*routing->answer, *routing);
    } else if (routing->stopped) {
        bench_.board.setHint(tr("Routing cancelled; nothing was changed"));
    } else {
        offerPartial(*routing);
    }
    Q_EMIT finished();
}

void RouteActions::take(const layout::Layout& found, const routing::Routing& routing) {
    const auto count = static_cast<int>(routing.routed.size());
    const auto edited = bench_.document.edit(
        count == 1 ? tr("Route 1 conductor") : tr("Route %1 conductors").arg(count), found);
    if (!edited) {
        QMessageBox::warning(&window_, tr("Route"), errorText(edited.error()));
        return;
    }
    double inches = 0.0;
    for (const auto& one : routing.routed) {
        inches += one.length;
    }
    bench_.board.setHint(
        tr("%1 routed, %2 together")
            .arg(count)
            .arg(toQString(units::formatLength(units::Inches::of(inches),
                                               bench_.document.layout().displayUnit))));
}

void RouteActions::offerPartial(const routing::Routing& routing) {
    QMessageBox box(&window_);
    box.setWindowTitle(tr("Route"));
    box.setIcon(QMessageBox::Information);
    box.setText(tr("%1 of %2 conductors have a way.")
                    .arg(routing.routed.size())
                    .arg(routing.routed.size() + routing.unresolved.size()));
    box.setInformativeText(unresolvedText(routing));
    auto* keep = box.addButton(tr("Keep what was found"), QMessageBox::AcceptRole);
    box.addButton(tr("Leave all as it was"), QMessageBox::RejectRole);
    keep->setEnabled(!routing.routed.empty());
    box.exec();
    if (box.clickedButton() == static_cast<QAbstractButton*>(keep)) {
        take(routing.partial, routing);
    }
}

}  // namespace gw::ui
