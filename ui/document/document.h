#pragma once

#include <QObject>
#include <QUndoStack>
#include <optional>

#include "live/live_layout.h"

/// The one owner of the layout being edited, its history and what follows from it.
namespace gw::ui {

class Document : public QObject {
    Q_OBJECT
public:
    explicit Document(live::LiveLayout live, QObject* parent = nullptr);
    ~Document() override;

    const layout::Layout& layout() const { return live_.layout(); }
    const geometry::BuiltLayout& built() const { return live_.built(); }
    const std::vector<checks::Finding>& findings() const { return findings_; }
    const parts::Shelf& shelf() const { return live_.shelf(); }

    /// Another layout altogether, with an empty history. Refused, with nothing changed, where
    /// layout::validate refuses it. REQUIRES no gesture under way.
    Result<void> replace(const layout::Layout& layout);

    /// One step of the history, called `name` ("Move block A"). Nothing happens where `after` is
    /// the layout as it is, or while a gesture is under way. Steps of the same name and
    /// merge key (>= 0) that follow one another become one.
    Result<void> edit(const QString& name, const layout::Layout& after, int mergeKey = -1);

    // A gesture shows its outcome all the while and becomes one step at its end, or none.
    void beginGesture();
    bool inGesture() const { return beforeGesture_.has_value(); }
    /// The layout as it was when the gesture began. REQUIRES a gesture.
    const layout::Layout& beforeGesture() const { return *beforeGesture_; }
    Result<void> preview(const layout::Layout& after);
    void commitGesture(const QString& name);
    void cancelGesture();

    /// The list of steps, for views of it. Steps are taken by undo() and redo() alone, which do
    /// nothing during a gesture.
    QUndoStack& history() { return history_; }
    const QUndoStack& history() const { return history_; }
    bool canUndo() const { return !inGesture() && history_.canUndo(); }
    bool canRedo() const { return !inGesture() && history_.canRedo(); }
    void undo();
    void redo();
    void goToStep(int index);

    bool isModified() const { return !history_.isClean() || modifiedElsewhere_; }
    void setSaved();
    /// For a layout that came from a recovery: unsaved whatever the history says.
    void setUnsaved();

Q_SIGNALS:
    void replaced();                               ///< everything is another
    void changed(const gw::layout::Patch& patch);  ///< after edits, previews, undo and redo
    void gestureChanged();
    void modifiedChanged();

private:
    friend class EditStep;
    void applyStep(const layout::Patch& patch);
    void tellChanged(const layout::Patch& patch);

    live::LiveLayout live_;
    std::vector<checks::Finding> findings_;  ///< the live layout's, as they were last told
    QUndoStack history_;
    std::optional<layout::Layout> beforeGesture_;
    bool modifiedElsewhere_ = false;
};

/// Previews while it lives; cancels when it goes out of scope without commit.
class Gesture {
public:
    explicit Gesture(Document& document) : document_(&document) { document.beginGesture(); }
    Gesture(const Gesture&) = delete;
    Gesture& operator=(const Gesture&) = delete;
    ~Gesture();

    const layout::Layout& before() const { return document_->beforeGesture(); }
    Result<void> preview(const layout::Layout& after) { return document_->preview(after); }
    void commit(const QString& name);

private:
    Document* document_;
};

}  // namespace gw::ui
