#pragma once

#include <functional>
#include <vector>

#include "drawing/sketch.h"

namespace gw::drawing {

/// Where running matter goes: regions of the first page, then columns of as many further pages as
/// it takes. Regions are filled from the top, in order.
class Flow {
public:
    /// A stretch of a page to be filled from the top.
    struct Region {
        std::size_t page = 0;
        Rect rect;
        bool whole = false;  ///< a column of a further page: nothing larger will come
    };
    /// first: regions of pages[0], best first; may be none. columns: those of every further page.
    Flow(std::vector<Sketch>& pages, const std::vector<Rect>& first, std::vector<Rect> columns);

    /// More regions of a page that is there, to be filled after the others.
    void addRegions(std::size_t page, const std::vector<Rect>& rects);
    /// What is left of the region it stands in.
    Rect room() const;
    bool isAtTop() const { return used_ == 0.0; }
    Sketch& sketch() { return (*pages_)[region().page]; }
    void use(double height) { used_ += height; }
    /// Goes on to the next region, making a page when there is none. Regions narrower than `width`
    /// are passed over.
    void next(double width = 0.0);
    /// Stands at the first region, making a page when there is none. REQUIRES before all else.
    void begin();
    /// Stands where at least `height` by `width` is free, going on if it must.
    void ensure(double width, double height);
    /// From here on in narrower columns: what is left of the region it stands in, the regions after
    /// it, and the columns of further pages are divided. Rooms lower than `worth` are left out.
    using Divider = std::function<std::vector<Rect>(const Rect&)>;
    void divide(const Divider& divider, double worth);

private:
    const Region& region() const { return regions_[at_]; }
    void addPage();
    std::vector<Region> rest() const;

    std::vector<Sketch>* pages_;  ///< outlives the flow
    std::vector<Rect> columns_;
    std::vector<Region> regions_;
    std::size_t at_ = 0;
    double used_ = 0.0;
};

}  // namespace gw::drawing
