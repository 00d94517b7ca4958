#include "document/document.h"

#include <QUndoCommand>
#include <utility>

#include "base/contract.h"

namespace gw::ui {

/// A step of the history: the difference it makes. It has been made when it is pushed.
class EditStep : public QUndoCommand {
public:
    EditStep(Document& document, const QString& name, layout::Patch patch, int mergeKey)
        : QUndoCommand(name), document_(document), patch_(std::move(patch)), mergeKey_(mergeKey) {}

    void undo() override { document_.applyStep(patch_.reversed()); }

    void redo() override {
        if (made_) {
            document_.applyStep(patch_);
        }
        made_ = true;
    }

    int id() const override { return mergeKey_; }

    bool mergeWith(const QUndoCommand* later) override {
        if (later->text() != text()) {
            return false;
        }
        const auto* next = static_cast<const EditStep*>(later);
        layout::Layout before = document_.layout();
        layout::apply(next->patch_.reversed(), before);
        layout::apply(patch_.reversed(), before);
        patch_ = layout::difference(before, document_.layout());
        setObsolete(patch_.empty());
        return true;
    }

private:
    Document& document_;
    layout::Patch patch_;
    int mergeKey_;
    bool made_ = false;
};

Document::Document(live::LiveLayout live, QObject* parent)
    : QObject(parent), live_(std::move(live)), findings_(live_.findings()) {
    connect(&history_, &QUndoStack::cleanChanged, this, &Document::modifiedChanged);
}

Document::~Document() {
    history_.disconnect(this);
}

Result<void> Document::replace(const layout::Layout& layout) {
    CONTRACT(!inGesture());
    if (const auto changed = live_.change(layout); !changed) {
        return fail(changed.error());
    }
    findings_ = live_.findings();
    history_.clear();
    modifiedElsewhere_ = false;
    Q_EMIT replaced();
    Q_EMIT modifiedChanged();
    return {};
}

Result<void> Document::edit(const QString& name, const layout::Layout& after, int mergeKey) {
    if (inGesture()) {
        return {};
    }
    auto patch = live_.change(after);
    if (!patch) {
        return fail(patch.error());
    }
    if (!patch->empty()) {
        const layout::Patch made = *patch;
        history_.push(new EditStep(*this, name, std::move(*patch), mergeKey));
        tellChanged(made);
    }
    return {};
}

void Document::beginGesture() {
    CONTRACT(!inGesture());
    beforeGesture_ = layout();
    Q_EMIT gestureChanged();
}

Result<void> Document::preview(const layout::Layout& after) {
    CONTRACT(inGesture());
    const auto patch = live_.change(after);
    if (!patch) {
        return fail(patch.error());
    }
    tellChanged(*patch);
    return {};
}

void Document::commitGesture(const QString& name) {
    CONTRACT(inGesture());
    layout::Patch patch = layout::difference(*beforeGesture_, layout());
    beforeGesture_.reset();
    if (!patch.empty()) {
        history_.push(new EditStep(*this, name, std::move(patch), -1));
    }
    Q_EMIT gestureChanged();
}

void Document::cancelGesture() {
    CONTRACT(inGesture());
    const layout::Patch back = layout::difference(layout(), *beforeGesture_);
    beforeGesture_.reset();
    applyStep(back);
    Q_EMIT gestureChanged();
}

void Document::undo() {
    if (canUndo()) {
        history_.undo();
    }
}

void Document::redo() {
    if (canRedo()) {
        history_.redo();
    }
}

void Document::goToStep(int index) {
    if (!inGesture()) {
        history_.setIndex(index);
    }
}

void Document::setSaved() {
    modifiedElsewhere_ = false;
    history_.setClean();
    Q_EMIT modifiedChanged();
}

void Document::setUnsaved() {
    modifiedElsewhere_ = true;
    Q_EMIT modifiedChanged();
}

void Document::applyStep(const layout::Patch& patch) {
    live_.apply(patch);
    tellChanged(patch);
}

void Document::tellChanged(const layout::Patch& patch) {
    if (!patch.empty()) {
        findings_ = live_.findings();
        Q_EMIT changed(patch);
    }
}

Gesture::~Gesture() {
    if (document_ != nullptr) {
        document_->cancelGesture();
    }
}

void Gesture::commit(const QString& name) {
    document_->commitGesture(name);
    document_ = nullptr;
}

}  // namespace gw::ui
