#include "drawing/flow.h"

#include "base/contract.h"

namespace gw::drawing {

Flow::Flow(std::vector<Sketch>& pages, std::vector<Rect> first, std::vector<Rect> columns)
    : pages_(&pages), columns_(std::move(columns)) {
    CONTRACT(!pages.empty() && !columns_.empty());
    addRegions(0, first);
}

void Flow::addRegions(std::size_t page, const std::vector<Rect>& rects) {
    for (const auto& rect : rects) {
        regions_.push_back({page, rect, false});
    }
}

void Flow::begin() {
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
    } while (!regions_[at_].whole && regions_[at_].rect.width < width);
    used_ = 0.0;
}

void Flow::ensure(double width, double height) {
    while (room().width < width || room().height < height) {
        if (region().whole && isAtTop()) {
            return;  // it is larger than any: it must do
        }
        next(width);
    }
}

void Flow::addPage() {
    const TextMetrics& metrics = pages_->front().metrics();
    pages_->emplace_back(metrics);
    for (const auto& column : columns_) {
        regions_.push_back({pages_->size() - 1, column, true});
    }
}

}  // namespace gw::drawing
