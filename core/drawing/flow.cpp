#include "drawing/flow.h"

#include "base/contract.h"

namespace gw::drawing {

Flow::Flow(std::vector<Sketch>& pages, std::vector<Rect> first, std::vector<Rect> columns)
    : pages_(&pages), columns_(std::move(columns)) {
    CONTRACT(!pages.empty() && !columns_.empty());
    for (const auto& rect : first) {
        regions_.push_back({0, rect});
    }
    if (regions_.empty()) {
        addPage();
    }
}

Rect Flow::room() const {
    const auto& rect = region().rect;
    return {rect.x, rect.y + used_, rect.width, rect.height - used_};
}

void Flow::next(double width) {
    do {
        if (++at_ == regions_.size()) {
            addPage();
        }
    } while (regions_[at_].page == 0 && regions_[at_].rect.width < width);
    used_ = 0.0;
}

void Flow::ensure(double width, double height) {
    while (room().width < width || room().height < height) {
        if (region().page > 0 && isAtTop()) {
            return;  // taller or wider than a whole column: it must do
        }
        next(width);
    }
}

void Flow::addPage() {
    const TextMetrics& metrics = pages_->front().metrics();
    pages_->emplace_back(metrics);
    for (const auto& column : columns_) {
        regions_.push_back({pages_->size() - 1, column});
    }
}

}  // namespace gw::drawing
