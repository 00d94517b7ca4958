#pragma once

#include <QObject>
#include <QString>
#include <optional>

#include "document/selection.h"

namespace gw::ui {

/// What all views of the board share: the one ruler they lie on, the cut, what the pointer is over.
class BoardState : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;

    static constexpr double kLeastPixelsPerInch = 1.0;
    static constexpr double kMostPixelsPerInch = 400.0;

    double pixelsPerInch() const { return pixelsPerInch_; }
    double left() const { return left_; }  ///< inches at the left edge of every view
    /// Clamped to the limits above.
    void setScale(double pixelsPerInch, double left);
    /// So that a stretch of the gutter fills a width of so many pixels, with a margin.
    void fit(double fromInches, double toInches, double widthPixels);

    double cut() const { return cut_; }  ///< inches along the gutter
    void setCut(double inches);

    const std::optional<Item>& hovered() const { return hovered_; }
    void setHovered(std::optional<Item> item);

    /// What the mouse would do here, or what a drag amounts to.
    const QString& hint() const { return hint_; }
    void setHint(const QString& hint);

Q_SIGNALS:
    void scaleChanged();
    void cutChanged();
    void hoveredChanged();
    void hintChanged(const QString& hint);

private:
    double pixelsPerInch_ = 16.0;
    double left_ = -2.0;
    double cut_ = 0.0;
    std::optional<Item> hovered_;
    QString hint_;
};

}  // namespace gw::ui
