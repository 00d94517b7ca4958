#include "drawing/gutter_picture.h"

#include <algorithm>

#include "base/contract.h"
#include "drawing/gutter_view.h"

namespace gw::drawing {

Drawing gutterPicture(const geometry::BuiltLayout& built,
                      double width,
                      double height,
                      const TextMetrics& metrics) {
    constexpr double kAround = kWall + kStub + 1.0;  // walls, raceways, a little air
    CONTRACT(width > 20.0 && height > 20.0);
    const Vec3& inside = built.gutter().inside;
    const double scale =
        std::min((width - 2.0 * kAround) / inside.x, (height - 2.0 * kAround) / inside.y);
    const Point corner{(width - inside.x * scale) / 2.0, (height - inside.y * scale) / 2.0};
    Sketch sketch(metrics);
    drawGutter(sketch, built, frameAt(geometry::View::front, inside, scale, corner));
    return std::move(sketch).finish({0.0, 0.0, width, height}, built.layout.title);
}

}  // namespace gw::drawing
