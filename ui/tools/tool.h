#pragma once

#include <QCursor>
#include <QKeyEvent>
#include <QPainter>
#include <QString>
#include <memory>

#include "canvas/board_state.h"
#include "canvas/pane_transform.h"
#include "document/document.h"
#include "document/selection.h"

/// What the pointer does on the board. A tool turns events into calls of core/editing; it decides
/// nothing about the trade.
namespace gw::ui {

/// What tools work on; all of it outlives them.
struct Bench {
    Document& document;
    Selection& selection;
    BoardState& board;
};

/// How far from a thing the pointer counts as on it, in pixels.
inline constexpr double kReachPixels = 7.0;

/// The pointer in a view.
struct BoardPoint {
    geometry::View view = geometry::View::front;
    geometry::Point2 at;          ///< inches, as geometry::project gives them
    double inchesPerPixel = 0.1;  ///< how far a pixel is
    Qt::KeyboardModifiers modifiers;
    double cut = 0.0;  ///< of the end view: where it is cut
};

class Tool : public QObject {
    Q_OBJECT
public:
    explicit Tool(const Bench& bench) : bench_(bench) {}

    virtual QString name() const = 0;  ///< "Select", for the status bar and screen readers
    virtual QString hint() const = 0;  ///< what the mouse would do
    virtual QCursor cursor() const { return Qt::ArrowCursor; }
    virtual void press(const BoardPoint& point) = 0;
    virtual void move(const BoardPoint& point) = 0;  ///< with or without the button
    virtual void release(const BoardPoint& point) = 0;
    virtual void doubleClick(const BoardPoint&) {}
    virtual bool key(QKeyEvent*) { return false; }  ///< whether it was of use
    /// Esc, or another tool is taken up: whatever is under way leaves no trace. Whether there was
    /// anything under way.
    virtual bool cancel() = 0;
    /// On top of a view.
    virtual void paint(QPainter&, const PaneTransform&) const {}

Q_SIGNALS:
    void finished();      ///< the job is done: back to selecting
    void paintChanged();  ///< the views must be painted again

protected:
    const Bench& bench() const { return bench_; }

private:
    Bench bench_;
};

/// The tool in hand.
class ToolHolder : public QObject {
    Q_OBJECT
public:
    explicit ToolHolder(const Bench& bench, QObject* parent = nullptr);
    ~ToolHolder() override;

    Tool& current() const { return *tool_; }
    /// Takes up a tool; nullptr: the selecting one.
    void take(std::unique_ptr<Tool> tool);
    /// Esc: cancels what is under way, else goes back to selecting, else selects nothing.
    void cancel();

Q_SIGNALS:
    void changed();
    void paintChanged();

private:
    Bench bench_;
    std::unique_ptr<Tool> tool_;
};

}  // namespace gw::ui
