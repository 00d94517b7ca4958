#include "drawing/gutter_view.h"

#include <algorithm>
#include <cmath>

#include "drawing/block_view.h"
#include "drawing/entry_view.h"
#include "drawing/walls.h"

namespace gw::drawing {
namespace {

std::vector<SceneItem> sceneOf(const geometry::BuiltLayout& built, const ViewFrame& frame) {
    std::vector<SceneItem> items;
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        items.push_back(blockItem(built.blocks[i], frame));
    }
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        auto tube = tubeItems(built, i, frame);
        std::move(tube.begin(), tube.end(), std::back_inserter(items));
    }
    std::stable_sort(items.begin(), items.end(), [](const SceneItem& a, const SceneItem& b) {
        return a.nearness < b.nearness;
    });
    return items;
}

}  // namespace

Rect blockRect(const geometry::BuiltBlock& block, const ViewFrame& frame) {
    const auto a = frame.at(block.body.least);
    const auto b = frame.at(block.body.greatest);
    return united({a.x, a.y, 0, 0}, {b.x, b.y, 0, 0});
}

void drawGutter(Sketch& sketch, const geometry::BuiltLayout& built, const ViewFrame& frame) {
    const auto& inside = built.gutter().inside;
    drawWalls(sketch, interiorOf(frame, inside), frame.view);
    for (const auto& entry : built.entries) {
        if (sightOf(entry, frame) == EntrySight::far) {
            drawFacingEntry(sketch, Stratum::walls, entry, frame);
        }
    }
    for (auto& item : sceneOf(built, frame)) {
        for (auto& element : item.elements) {
            sketch.add(Stratum::objects, std::move(element));
        }
    }
    for (const auto& entry : built.entries) {
        const auto sight = sightOf(entry, frame);
        if (sight == EntrySight::stub) {
            drawStub(sketch, entry, frame);
        } else if (sight == EntrySight::near) {
            drawFacingEntry(sketch, Stratum::marks, entry, frame);
        }
    }
}

}  // namespace gw::drawing
