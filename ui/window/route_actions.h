#pragma once

#include <QMainWindow>
#include <QMenu>
#include <QProgressDialog>
#include <atomic>
#include <optional>
#include <thread>

#include "routing/routing.h"
#include "tools/tool.h"

namespace gw::ui {

/// Finds paths off the window's thread: of the conductors that are selected or end in what is
/// selected, or of all. It shows how far it is and can be cancelled; what it finds arrives as one
/// step of the history.
class RouteActions : public QObject {
    Q_OBJECT
public:
    RouteActions(const Bench& bench, QMainWindow& window);
    ~RouteActions() override;  ///< stops what is under way

    void addTo(QMenu& menu);
    bool isRunning() const { return worker_.joinable(); }
    /// only: empty for all. Nothing happens while a gesture or another run is under way.
    void start(std::vector<layout::ConductorId> only);
    void cancel() { stopped_ = true; }

Q_SIGNALS:
    void finished();

private:
    std::vector<layout::ConductorId> chosen() const;
    void routeChosen();
    void run(const layout::Layout& layout, const routing::Options& options);
    void showProgress(const routing::Progress& progress);
    void arrive(const Result<routing::Routing>& routing);
    void take(const layout::Layout& found, const routing::Routing& routing);
    void offerPartial(const routing::Routing& routing);

    Bench bench_;
    QMainWindow& window_;
    std::optional<QProgressDialog> dialog_;
    std::atomic<bool> stopped_ = false;
    std::thread worker_;
};

}  // namespace gw::ui
