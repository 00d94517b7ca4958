#include "canvas/board_state.h"

#include <algorithm>
#include <utility>

namespace gw::ui {

void BoardState::setScale(double pixelsPerInch, double left) {
    const double scale = std::clamp(pixelsPerInch, kLeastPixelsPerInch, kMostPixelsPerInch);
    if (scale != pixelsPerInch_ || left != left_) {
        pixelsPerInch_ = scale;
        left_ = left;
        Q_EMIT scaleChanged();
    }
}

void BoardState::fit(double fromInches, double toInches, double widthPixels) {
    constexpr double kMargin = 44.0;  // pixels at each end: walls, raceways and their names
    const double room = std::max(widthPixels - 2.0 * kMargin, 50.0);
    const double scale = std::clamp(
        room / std::max(toInches - fromInches, 0.1), kLeastPixelsPerInch, kMostPixelsPerInch);
    const double middle = (fromInches + toInches) / 2.0;
    setScale(scale, middle - widthPixels / 2.0 / scale);
}

void BoardState::setCut(double inches) {
    if (inches != cut_) {
        cut_ = inches;
        Q_EMIT cutChanged();
    }
}

void BoardState::setHovered(std::optional<Item> item) {
    if (item != hovered_) {
        hovered_ = std::move(item);
        Q_EMIT hoveredChanged();
    }
}

void BoardState::setHint(const QString& hint) {
    if (hint != hint_) {
        hint_ = hint;
        Q_EMIT hintChanged(hint_);
    }
}

}  // namespace gw::ui
