#include "drawing/board_view.h"

#include "drawing/gutter_view.h"
#include "drawing/marks.h"
#include "drawing/names.h"
#include "drawing/placer.h"
#include "drawing/tags.h"

namespace gw::drawing {
namespace {

constexpr double kAround = 12.0;  // mm outside the walls that names may use

/// Beside the raceways that are seen from their sides, where the names do not cover one another.
void nameStubs(Sketch& sketch,
               Placer& placer,
               const geometry::BuiltLayout& built,
               const ViewFrame& frame,
               const TextSizes& sizes) {
    for (std::size_t i = 0; i < built.entries.size(); ++i) {
        const auto& entry = built.entries[i];
        if (sightOf(entry, frame) != EntrySight::stub) {
            continue;
        }
        const Point end = stubEnd(entry, frame);
        const Point inward = frame.turned(entry.axis);
        Text text{end, entryName(built.layout.entries[i]), sizes.body, Face::bold};
        if (inward.x != 0.0) {
            text.anchorX = inward.x > 0.0 ? AnchorX::right : AnchorX::left;
            text.anchorY = AnchorY::middle;
            text.at.x -= inward.x * 0.8;
        } else {
            text.anchorX = AnchorX::middle;
            text.anchorY = inward.y > 0.0 ? AnchorY::bottom : AnchorY::top;
            text.at.y -= inward.y * 0.8;
        }
        if (const Rect place = sketch.extentOf(text); placer.isFree(place)) {
            placer.take(place);
            sketch.text(text);
        }
    }
}

}  // namespace

Drawing boardView(const geometry::BuiltLayout& built,
                  const ViewFrame& frame,
                  const TextMetrics& metrics) {
    Sketch sketch(metrics);
    const TextSizes sizes;
    const auto interior = interiorOf(frame, built.gutter().inside);
    drawGutter(sketch, built, frame);
    Placer placer(grown(interior, kAround));
    nameStubs(sketch, placer, built, frame, sizes);
    const auto legs = legsOf(built, frame);
    const std::vector<checks::Finding> none;
    const Subject subject{&built, &none, {}, sizes};
    const MarkedView view{sketch, placer, subject, frame, legs};
    keepLabelsOff(view);
    nameBlocks(view);
    nameFacingEntries(view);
    placeTags(sketch, placer, built, frame, {sizes, true});
    return std::move(sketch).finish(grown(interior, kAround), {});
}

}  // namespace gw::drawing
