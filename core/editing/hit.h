#pragma once

#include <optional>
#include <vector>

#include "editing/item.h"
#include "geometry/built_layout.h"
#include "geometry/section.h"

/// What a pointer is over.
namespace gw::editing {

struct Hit {
    enum class Place {
        leg,      ///< conductor: `index` from point i to point i + 1 of tip, corners, tip
        bend,     ///< conductor: `index` of its corner
        fromEnd,  ///< conductor: the handle at its first end
        toEnd,
        body,  ///< block
        port,  ///< block: `index` of the part's port, over one of its mouths
        hole,  ///< entry: `index` is the slot: one that is taken near the pointer, or else the
               ///< first free one
    };
    Item item;
    Place place = Place::body;
    std::size_t index = 0;
    bool nearMouth = true;  ///< port: the mouth that the bore's direction starts at
    bool taken = false;     ///< port: a conductor ends in it or passes it; hole: in that slot
    double along = 0.0;     ///< conductor: arc length of the place from its start, inches
    Vec3 at;                ///< the place in the gutter: on a centreline, a mouth, a hole's middle
    double beside = 0.0;    ///< inches in the view from the pointer to the thing; 0 when over it
    double nearness = 0.0;  ///< toward the eye, as geometry::nearness
};

/// What lies under a point of a view (coordinates as geometry::project gives them), each item once,
/// by its most telling place: an end within reach rather than the leg there, a port rather than the
/// body. What is under the pointer itself comes before what is only within `tolerance` (inches,
/// >= 0) of it; then what is nearest to the eye comes first. Entries show as their hole, and where
/// they are seen from the side as the wall there and `tolerance` beyond it.
std::vector<Hit> hitsAt(const geometry::BuiltLayout& built,
                        geometry::View view,
                        geometry::Point2 at,
                        double tolerance);

/// The same in the gutter cut square at x: `at` is (z, y) as in View::end. Conductors by their cut
/// shapes, blocks that the plane goes through.
std::vector<Hit> hitsInSection(const geometry::BuiltLayout& built,
                               double x,
                               geometry::Point2 at,
                               double tolerance);

/// A rectangle of a view, any two opposite corners.
struct Band {
    geometry::Point2 a;
    geometry::Point2 b;
};

/// What lies wholly inside a rubber band: blocks, entries, conductors in the layout's order.
Items itemsInside(const geometry::BuiltLayout& built, geometry::View view, const Band& band);

/// The most telling for one who wants a port or an entry to land in; empty when there is none.
std::optional<Hit> landingAt(const std::vector<Hit>& hits);

}  // namespace gw::editing
