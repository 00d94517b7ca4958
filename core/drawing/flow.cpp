#include "drawing/flow.h"

#include "base/contract.h"

namespace gw::drawing {

Flow::Flow(std::vector<Sketch>& pages, const std::vector<Rect>& first, std::vector<Rect> columns)
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

/// What is left of the region it stands in, and those after it.
std::vector<Flow::Region> Flow::rest() const {
    std::vector<Region> rest;
    for (std::size_t i = at_; i < regions_.size(); ++i) {
        rest.push_back(regions_[i]);
    }
    if (!rest.empty()) {
        rest.front().rect = room();
    }
    return rest;
}

void Flow::divide(const Divider& divider, double worth) {
    std::vector<Region> divided;
    for (const auto& region : rest()) {
        for (const auto& rect : divider(region.rect)) {
            if (rect.height >= worth) {
                divided.push_back({region.page, rect, region.whole});
            }
        }
    }
    regions_ = std::move(divided);
    at_ = 0;
    used_ = 0.0;
    std::vector<Rect> columns;
    for (const auto& column : columns_) {
        const auto more = divider(column);
        columns.insert(columns.end(), more.begin(), more.end());
    }
    columns_ = std::move(columns);
}

void Flow::addPage() {
    const TextMetrics& metrics = pages_->front().metrics();
    pages_->emplace_back(metrics);
    for (const auto& column : columns_) {
        regions_.push_back({pages_->size() - 1, column, true});
    }
}

}  // namespace gw::drawing
