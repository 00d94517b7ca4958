#include "window/edit_actions.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QMimeData>
#include <algorithm>
#include <memory>

#include "editing/bounds.h"
#include "editing/copy.h"
#include "editing/edits.h"
#include "editing/mirror.h"
#include "editing/next_phase.h"
#include "editing/snap.h"
#include "files/layout_file.h"
#include "panels/panel_text.h"
#include "tools/measure_tool.h"
#include "tools/select_tool.h"
#include "window/edit_dialogs.h"
#include "window/find_dialog.h"

namespace gw::ui {
namespace {

const QString kMimeType = QStringLiteral("application/x-gutterwright-layout+json");

constexpr int kBackwards = 3;  // quarter turns

}  // namespace

EditActions::EditActions(const Bench& bench, ToolHolder& tools, Board& board, QWidget& window)
    : QObject(&window), bench_(bench), tools_(tools), board_(board), window_(window) {
    makeActions();
    makeBlockMenu();
    makeConductorMenu();
    for (const auto signal : {&Document::gestureChanged, &Document::replaced}) {
        connect(&bench.document, signal, this, &EditActions::update);
    }
    connect(&bench.selection, &Selection::changed, this, &EditActions::update);
    connect(&board, &Board::menuWanted, this, &EditActions::showMenu);
    update();
}

// ---- the actions --------------------------------------------------------------------------------

QAction* EditActions::action(const QString& text,
                             const QKeySequence& key,
                             const std::function<void()>& what) {
    auto* made = new QAction(text, this);
    made->setShortcut(key);
    made->setShortcutVisibleInContextMenu(true);
    // NOLINTNEXTLINE(clang-analyzer-cplusplus.NewDeleteLeaks): its parent owns it
    connect(made, &QAction::triggered, this, [this, what] {
        if (!bench_.document.inGesture()) {  // in mid-drag nothing else happens
            what();
        }
    });
    return made;
}

QAction* EditActions::boardAction(const QString& text,
                                  const QKeySequence& key,
                                  const std::function<void()>& what) {
    auto* made = action(text, key, what);
    made->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    board_.addAction(made);
    return made;
}

QAction* EditActions::shownKey(const QString& text,
                               const QString& key,
                               const std::function<void()>& what) {
    return action(text + QLatin1Char('\t') + key, {}, what);
}

void EditActions::makeActions() {
    cut_ = boardAction(tr("Cu&t"), QKeySequence::Cut, [this] { cut(); });
    copy_ = boardAction(tr("&Copy"), QKeySequence::Copy, [this] { copy(); });
    paste_ = boardAction(tr("&Paste"), QKeySequence::Paste, [this] { paste(); });
    selectAll_ = boardAction(tr("Select &all"), QKeySequence::SelectAll, [this] { selectAll(); });
    remove_ = boardAction(tr("&Delete"), QKeySequence::Delete, [this] { remove(); });
    duplicate_ =
        action(tr("D&uplicate"), QKeySequence(Qt::CTRL | Qt::Key_D), [this] { duplicate(); });
    copies_ = action(tr("Copies in a &row…"),
                     QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_D),
                     [this] { askCopies(); });
    move_ = action(tr("Mo&ve by…"), QKeySequence(Qt::Key_M), [this] { askMove(); });
    mirror_ = action(
        tr("M&irror left for right"), QKeySequence(Qt::CTRL | Qt::Key_M), [this] { mirror(); });
    find_ = action(tr("&Find…"), QKeySequence::Find, [this] { find(); });
    measure_ = action(tr("Mea&sure"), QKeySequence(Qt::Key_T), [this] {
        tools_.take(std::make_unique<MeasureTool>(bench_));
        board_.setFocus();
    });
    leave_ = new QAction(tr("&Leave the tool, or select nothing"), this);
    leave_->setShortcut(Qt::Key_Escape);
    leave_->setShortcutVisibleInContextMenu(true);
    connect(leave_, &QAction::triggered, this, [this] { tools_.cancel(); });
    onSelection_ = {cut_, copy_, duplicate_, copies_, remove_, move_, mirror_};
}

void EditActions::makeBlockMenu() {
    blockMenu_.setTitle(tr("&Block"));
    const QString axes[] = {tr("along the gutter"), tr("upright"), tr("toward you")};
    const QString keys[] = {QStringLiteral("X"), QStringLiteral("Y"), QStringLiteral("Z")};
    for (int axis = 0; axis < 3; ++axis) {
        blockMenu_.addAction(shownKey(tr("Turn about the axis %1").arg(axes[axis]),
                                      keys[axis],
                                      [this, axis] { turn(axis, 1); }));
        blockMenu_.addAction(shownKey(tr("the other way"),
                                      QStringLiteral("Shift+") + keys[axis],
                                      [this, axis] { turn(axis, kBackwards); }));
    }
    blockMenu_.addAction(action(tr("&As the part is drawn"), {}, [this] {
        if (const auto* block = oneBlock()) {
            make(tr("Turn %1 as drawn").arg(selectedName()),
                 editing::setAttitude(bench_.document.built(), *block, {}));
        }
    }));
    blockMenu_.addSeparator();
    auto* phases = blockMenu_.addMenu(tr("&Phase"));
    for (const layout::Phase phase : layout::allPhases()) {
        const QString name = toQString(layout::phaseText(phase));
        phases->addAction(action(name, {}, [this, phase, name] {
            if (const auto* block = oneBlock()) {
                make(tr("Set phase of %1 to %2").arg(selectedName(), name),
                     editing::setPhase(bench_.document.built(), *block, phase));
            }
        }));
    }
    const auto mounting = [this](const QString& text, const QString& step, bool mounted) {
        blockMenu_.addAction(action(text, {}, [this, step, mounted] {
            if (const auto* block = oneBlock()) {
                make(step.arg(selectedName()),
                     editing::setMounted(bench_.document.built(), *block, mounted));
            }
        }));
    };
    mounting(tr("&Bolt down"), tr("Bolt down %1"), true);
    mounting(tr("Leave &loose"), tr("Leave %1 loose"), false);
}

void EditActions::makeConductorMenu() {
    conductorMenu_.setTitle(tr("C&onductor"));
    const auto add = [this](QAction* made) { conductorMenu_.addAction(made); };
    add(action(tr("&New path"), QKeySequence(Qt::Key_R), [this] {
        if (const auto* id = oneConductor()) {
            make(tr("Lead %1 anew").arg(selectedName()),
                 editing::reroute(bench_.document.built(), *id));
        }
    }));
    add(action(tr("Same route for the next &phase"), QKeySequence(Qt::Key_N), [this] {
        leadNextPhase();
    }));
    add(shownKey(tr("&Wider bends"), QStringLiteral("+"), [this] { bend(editing::kNudge); }));
    add(shownKey(tr("&Tighter bends"), QStringLiteral("-"), [this] { bend(-editing::kNudge); }));
    conductorMenu_.addSeparator();
    const auto freeing = [&](const QString& text, editing::ConductorEnd end) {
        add(action(text, {}, [this, end] {
            if (const auto* id = oneConductor()) {
                make(tr("Free an end of %1").arg(selectedName()),
                     editing::freeEnd(bench_.document.built(), *id, end));
            }
        }));
    };
    freeing(tr("Free the &first end"), editing::ConductorEnd::from);
    freeing(tr("Free the &second end"), editing::ConductorEnd::to);
}

void EditActions::addTo(QMenu& menu) {
    menu.addActions({cut_, copy_, paste_, duplicate_, copies_});
    menu.addSeparator();
    menu.addActions({move_, mirror_});
    menu.addMenu(&blockMenu_);
    menu.addMenu(&conductorMenu_);
    menu.addSeparator();
    menu.addActions({remove_});
    menu.addSeparator();
    menu.addActions({selectAll_, leave_, find_, measure_});
}

void EditActions::offerOnNothing(QMenu* menu) {
    nothingMenu_ = menu;
}

void EditActions::update() {
    const bool idle = !bench_.document.inGesture();
    for (auto* one : onSelection_) {
        one->setEnabled(idle && !bench_.selection.empty());
    }
    blockMenu_.setEnabled(idle && oneBlock() != nullptr);
    conductorMenu_.setEnabled(idle && oneConductor() != nullptr);
}

// ---- context menus ------------------------------------------------------------------------------

std::vector<editing::Hit> EditActions::hitsAt(const BoardPoint& point) const {
    const auto& built = bench_.document.built();
    const double reach = kReachPixels * point.inchesPerPixel;
    return point.view == geometry::View::end
               ? editing::hitsInSection(built, point.cut, point.at, reach)
               : editing::hitsAt(built, point.view, point.at, reach);
}

QMenu* EditActions::menuFor(const std::optional<BoardPoint>& point) {
    auto menu = std::make_unique<QMenu>();
    auto& selection = bench_.selection;
    std::optional<editing::Hit> hit;
    if (point) {
        const auto found = hitsAt(*point);
        const auto chosen = std::find_if(found.begin(), found.end(), [&](const auto& one) {
            return selection.contains(one.item);
        });
        if (chosen != found.end()) {
            hit = *chosen;
        } else if (!found.empty()) {
            hit = found.front();
            selection.set({hit->item});
        } else {
            selection.clear();
        }
    }
    if (dynamic_cast<SelectTool*>(&tools_.current()) == nullptr) {
        menu->addAction(leave_);
        menu->addSeparator();
    }
    if (selection.empty()) {
        menu->addActions({paste_, selectAll_, find_, measure_});
        if (nothingMenu_ != nullptr) {
            menu->addSeparator();
            menu->addActions(nothingMenu_->actions());
        }
        return menu.release();
    }
    menu->addSection(selectedName());
    if (hit) {
        addPlacesOf(*menu, *hit);
    }
    if (oneBlock() != nullptr) {
        menu->addActions(blockMenu_.actions());
        menu->addSeparator();
    } else if (oneConductor() != nullptr) {
        menu->addActions(conductorMenu_.actions());
        menu->addSeparator();
    }
    menu->addActions({move_, mirror_});
    menu->addSeparator();
    menu->addActions({cut_, copy_, duplicate_, copies_});
    menu->addSeparator();
    menu->addAction(remove_);
    return menu.release();
}

/// What can be done at this place of a conductor.
void EditActions::addPlacesOf(QMenu& menu, const editing::Hit& hit) {
    const auto* id = std::get_if<layout::ConductorId>(&hit.item);
    if (id == nullptr || bench_.selection.items().size() != 1) {
        return;
    }
    QAction* made = nullptr;
    if (hit.place == editing::Hit::Place::leg) {
        made = shownKey(tr("Add a &bend here"), tr("double click"), [this, hit, id = *id] {
            make(tr("Add a bend to %1").arg(selectedName()),
                 editing::addCorner(bench_.document.built(), id, hit.index, hit.at));
        });
    } else if (hit.place == editing::Hit::Place::bend) {
        made = action(tr("Remove this &bend"), {}, [this, hit, id = *id] {
            make(tr("Remove a bend of %1").arg(selectedName()),
                 editing::removeCorner(bench_.document.built(), id, hit.index));
        });
    }
    if (made != nullptr) {
        made->setParent(&menu);  // it goes with the menu
        menu.addAction(made);
    }
}

void EditActions::showMenu(const std::optional<BoardPoint>& point, const QPoint& global) {
    if (bench_.document.inGesture()) {
        return;
    }
    QMenu* menu = menuFor(point);
    menu->setParent(&window_, menu->windowFlags());
    menu->setAttribute(Qt::WA_DeleteOnClose);
    menu->popup(global);
}

// ---- what is selected ---------------------------------------------------------------------------

QString EditActions::selectedName() const {
    return toQString(editing::itemsName(bench_.document.layout(), bench_.selection.items()));
}

const layout::BlockId* EditActions::oneBlock() const {
    const auto& items = bench_.selection.items();
    return items.size() == 1 ? std::get_if<layout::BlockId>(&items.front()) : nullptr;
}

const layout::ConductorId* EditActions::oneConductor() const {
    const auto& items = bench_.selection.items();
    return items.size() == 1 ? std::get_if<layout::ConductorId>(&items.front()) : nullptr;
}

void EditActions::make(const QString& name, const editing::Edit& after) {
    if (!after) {
        bench_.board.setHint(errorText(after.error()));
    } else if (const auto edited = bench_.document.edit(name, *after); !edited) {
        bench_.board.setHint(errorText(edited.error()));
    } else {
        const QString affected =
            affectedText(bench_.document, bench_.selection.items()).replace('\n', "; ");
        bench_.board.setHint(affected.isEmpty() ? name : name + QStringLiteral(": ") + affected);
    }
}

void EditActions::makeNew(const QString& name, const Result<editing::Made>& made) {
    if (!made) {
        bench_.board.setHint(errorText(made.error()));
        return;
    }
    make(name, made->layout);
    bench_.selection.set(made->items);
}

// ---- clipboard ----------------------------------------------------------------------------------

bool EditActions::keepInClipboard() {
    const auto piece = editing::pieceOf(bench_.document.built(), bench_.selection.items());
    if (!piece) {
        bench_.board.setHint(errorText(piece.error()));
        return false;
    }
    const auto bytes = QByteArray::fromStdString(files::writeLayout(*piece));
    auto data = std::make_unique<QMimeData>();
    data->setData(kMimeType, bytes);
    data->setText(QString::fromUtf8(bytes));
    QGuiApplication::clipboard()->setMimeData(data.release());
    return true;
}

void EditActions::copy() {
    if (keepInClipboard()) {
        bench_.board.setHint(tr("Copied %1").arg(selectedName()));
    }
}

void EditActions::cut() {
    if (keepInClipboard()) {
        make(tr("Cut %1").arg(selectedName()),
             editing::removeItems(bench_.document.built(), bench_.selection.items()));
    }
}

void EditActions::paste() {
    const auto* data = QGuiApplication::clipboard()->mimeData();
    const QByteArray bytes = data == nullptr              ? QByteArray()
                             : data->hasFormat(kMimeType) ? data->data(kMimeType)
                                                          : data->text().trimmed().toUtf8();
    if (!bytes.startsWith('{')) {
        bench_.board.setHint(tr("There is nothing of a gutter in the clipboard"));
        return;
    }
    const auto& document = bench_.document;
    const auto piece = files::readLayout(bytes.toStdString(), "clipboard", document.shelf());
    if (!piece) {
        bench_.board.setHint(toQString(toLine(piece.error())));
        return;
    }
    const auto made = editing::putPiece(document.built(),
                                        document.shelf(),
                                        *piece,
                                        editing::shiftToFreePlace(document.built(), *piece));
    makeNew(made ? tr("Paste %1").arg(toQString(editing::itemsName(made->layout, made->items)))
                 : QString(),
            made);
}

void EditActions::duplicate() {
    const auto& document = bench_.document;
    makeNew(tr("Duplicate %1").arg(selectedName()),
            editing::duplicated(document.built(), document.shelf(), bench_.selection.items()));
}

void EditActions::makeCopies(int copies, const Vec3& pitch) {
    const auto& document = bench_.document;
    makeNew(tr("Make %n copies of %1", nullptr, copies).arg(selectedName()),
            editing::arrayed(
                document.built(), document.shelf(), bench_.selection.items(), copies, pitch));
}

void EditActions::remove() {
    const auto items = bench_.selection.items();
    const auto& layout = bench_.document.layout();
    const QString more = toQString(editing::dependantsText(layout, items));
    make(tr("Delete %1").arg(selectedName()), editing::removeItems(bench_.document.built(), items));
    bench_.board.setHint(more.isEmpty() ? tr("Deleted") : tr("Deleted; %1").arg(more));
}

// ---- the rest -----------------------------------------------------------------------------------

void EditActions::selectAll() {
    std::vector<Item> all;
    const auto& layout = bench_.document.layout();
    const auto add = [&](const auto& things) {
        for (const auto& thing : things) {
            all.emplace_back(thing.id);
        }
    };
    add(layout.entries);
    add(layout.blocks);
    add(layout.conductors);
    bench_.selection.set(std::move(all));
}

void EditActions::mirror() {
    make(tr("Mirror %1").arg(selectedName()),
         editing::mirrorItems(bench_.document.built(), bench_.selection.items()));
}

void EditActions::moveBy(const Vec3& by) {
    make(tr("Move %1").arg(selectedName()),
         editing::moveItems(bench_.document.built(), bench_.selection.items(), by));
}

void EditActions::askMove() {
    const auto unit = bench_.document.layout().displayUnit;
    if (const auto by = askShift(&window_, unit, selectedName())) {
        moveBy(*by);
    }
}

void EditActions::askCopies() {
    const auto& built = bench_.document.built();
    const auto piece = editing::pieceOf(built, bench_.selection.items());
    if (!piece) {
        bench_.board.setHint(errorText(piece.error()));
        return;
    }
    const auto row = askRow(&window_,
                            built.layout.displayUnit,
                            selectedName(),
                            editing::shiftToFreePlace(built, *piece));
    if (row) {
        makeCopies(row->copies, row->pitch);
    }
}

void EditActions::find() {
    auto* dialog = new FindDialog(bench_, &window_);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &FindDialog::found, this, [this](const Item& item) {
        board_.show(editing::boundsOf(bench_.document.built(), {item}).centre());
    });
    dialog->show();
}

void EditActions::turn(int axis, int quarters) {
    if (const auto* block = oneBlock()) {
        make(tr("Turn %1").arg(selectedName()),
             editing::turnBlock(bench_.document.built(), *block, axis, quarters));
    }
}

void EditActions::leadNextPhase() {
    const auto* id = oneConductor();
    if (id == nullptr) {
        bench_.board.setHint(tr("Select the conductor whose route is wanted again"));
        return;
    }
    const auto made = editing::routeForNextPhase(bench_.document.built(), *id);
    makeNew(made
                ? tr("Lead %1 like %2")
                      .arg(toQString(editing::itemsName(made->layout, made->items)), selectedName())
                : QString(),
            made);
}

void EditActions::bend(double inches) {
    const auto* id = oneConductor();
    const auto& layout = bench_.document.layout();
    const auto index = id != nullptr ? editing::indexOf(layout, *id) : std::nullopt;
    if (!index || layout.conductors[*index].corners.empty()) {
        return;
    }
    const double now = layout.conductors[*index].corners.front().radius.in();
    make(tr("Change bends of %1").arg(selectedName()),
         editing::setBendRadius(bench_.document.built(),
                                *id,
                                std::nullopt,
                                units::Inches::of(std::max(0.0, now + inches))));
}

}  // namespace gw::ui
