#pragma once

#include <QAction>
#include <QMenu>
#include <QObject>
#include <functional>
#include <optional>

#include "canvas/board.h"
#include "editing/edited.h"
#include "editing/hit.h"

namespace gw::ui {

/// What can be done with what is selected, as the Edit menu, keys and context menus offer it. Each
/// is one step of the history, or a sentence at the bottom of the window that says why not.
class EditActions : public QObject {
    Q_OBJECT
public:
    EditActions(const Bench& bench, ToolHolder& tools, Board& board, QWidget& window);

    /// All of them, at the menu's end.
    void addTo(QMenu& menu);
    /// What the context menu of nothing offers beside: placing and views.
    void offerOnNothing(QMenu* menu);

    /// The menu for what is selected, or for what lies under the point, which is selected then.
    /// Whoever asks owns it.
    QMenu* menuFor(const std::optional<BoardPoint>& point);
    /// Shows it; not in mid-drag.
    void showMenu(const std::optional<BoardPoint>& point, const QPoint& global);

    void cut();
    void copy();
    void paste();
    void duplicate();
    void remove();
    void selectAll();
    void mirror();
    void leadNextPhase();
    void moveBy(const Vec3& by);
    void makeCopies(int copies, const Vec3& pitch);

private:
    QAction* action(const QString& text,
                    const QKeySequence& key,
                    const std::function<void()>& what);
    /// Its key only where the board has the keys: fields and tables have it for their own text.
    QAction* boardAction(const QString& text,
                         const QKeySequence& key,
                         const std::function<void()>& what);
    /// Its key is the selecting tool's and only shown.
    QAction* shownKey(const QString& text, const QString& key, const std::function<void()>& what);
    void makeActions();
    void makeBlockMenu();
    void makeConductorMenu();
    void update();

    QString selectedName() const;
    const layout::BlockId* oneBlock() const;
    const layout::ConductorId* oneConductor() const;
    std::vector<editing::Hit> hitsAt(const BoardPoint& point) const;
    void addPlacesOf(QMenu& menu, const editing::Hit& hit);
    void make(const QString& name, const editing::Edit& after);
    void makeNew(const QString& name, const Result<editing::Made>& made);
    bool keepInClipboard();
    void askMove();
    void askCopies();
    void find();
    void turn(int axis, int quarters);
    void bend(double inches);

    Bench bench_;
    ToolHolder& tools_;
    Board& board_;
    QWidget& window_;
    QMenu blockMenu_;
    QMenu conductorMenu_;
    QMenu* nothingMenu_ = nullptr;
    std::vector<QAction*> onSelection_;  ///< of any use only where something is selected
    QAction* cut_ = nullptr;
    QAction* copy_ = nullptr;
    QAction* paste_ = nullptr;
    QAction* duplicate_ = nullptr;
    QAction* remove_ = nullptr;
    QAction* selectAll_ = nullptr;
    QAction* leave_ = nullptr;
    QAction* find_ = nullptr;
    QAction* measure_ = nullptr;
    QAction* move_ = nullptr;
    QAction* mirror_ = nullptr;
    QAction* copies_ = nullptr;
};

}  // namespace gw::ui
