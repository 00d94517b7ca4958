#include "drawing/walls.h"

#include <array>

namespace gw::drawing {
namespace {

constexpr double kHatch = 0.9;  // mm between hatching lines

enum Side { kTop, kBottom, kLeft, kRight };

std::array<Rect, 4> bandsOf(const Rect& inside) {
    const Rect outside = grown(inside, kWall);
    return {{{outside.x, outside.y, outside.width, kWall},
             {outside.x, inside.bottom(), outside.width, kWall},
             {outside.x, inside.y, kWall, inside.height},
             {inside.right(), inside.y, kWall, inside.height}}};
}

/// Where the cover lies in the view; nothing in the front view, where it is off.
std::optional<Side> coverOf(geometry::View view) {
    switch (view) {
        case geometry::View::front:
            return std::nullopt;
        case geometry::View::top:
            return kBottom;
        case geometry::View::end:
            return kRight;
    }
    return std::nullopt;
}

}  // namespace

void drawWalls(Sketch& sketch, const Rect& inside, geometry::View view) {
    const auto bands = bandsOf(inside);
    const auto cover = coverOf(view);
    for (const Side side : {kTop, kBottom, kLeft, kRight}) {
        if (side == cover) {
            sketch.rect(Stratum::walls, bands[side], inkPen(kThin), kPaleGrey);
        } else {
            hatch(sketch, Stratum::walls, bands[side], kHatch, inkPen(kThin));
        }
    }
    sketch.rect(Stratum::walls, grown(inside, kWall), inkPen(kOutline));
    sketch.rect(Stratum::walls, inside, inkPen(kFine));
}

}  // namespace gw::drawing
