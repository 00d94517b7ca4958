#include "drawing/gutter_view.h"

#include <algorithm>
#include <cmath>

#include "drawing/block_view.h"
#include "drawing/entry_view.h"
#include "drawing/walls.h"

namespace gw::drawing {
namespace {

/// With every line and every face of one colour each.
SceneItem recoloured(SceneItem item, Colour lines, Colour faces) {
    const auto recolour = [&](std::optional<Pen>& pen, std::optional<Colour>& fill) {
        if (pen) {
            pen->colour = lines;
        }
        if (fill) {
            fill = faces;
        }
    };
    for (Element& element : item.elements) {
        if (auto* line = std::get_if<Polyline>(&element)) {
            recolour(line->pen, line->fill);
        } else if (auto* circle = std::get_if<Circle>(&element)) {
            recolour(circle->pen, circle->fill);
        }
    }
    return item;
}

SceneItem shown(SceneItem item, Showing how) {
    if (how == Showing::pale) {
        return recoloured(std::move(item), kMidGrey, kPaleGrey);
    }
    return how == Showing::inked ? recoloured(std::move(item), kInk, kInk) : item;
}

std::vector<SceneItem> sceneOf(const geometry::BuiltLayout& built,
                               const ViewFrame& frame,
                               const std::function<Showing(std::size_t)>& showing) {
    std::vector<SceneItem> items;
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        items.push_back(blockItem(built.blocks[i], frame));
    }
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const Showing how = showing(i);
        if (how == Showing::hidden) {
            continue;
        }
        for (SceneItem& item : tubeItems(built, i, frame)) {
            items.push_back(shown(std::move(item), how));
        }
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
    drawGutter(sketch, built, frame, [](std::size_t) { return Showing::full; });
}

void drawGutter(Sketch& sketch,
                const geometry::BuiltLayout& built,
                const ViewFrame& frame,
                const std::function<Showing(std::size_t)>& showing) {
    const auto& inside = built.gutter().inside;
    drawWalls(sketch, interiorOf(frame, inside), frame.view);
    for (const auto& entry : built.entries) {
        if (sightOf(entry, frame) == EntrySight::far) {
            drawFacingEntry(sketch, Stratum::walls, entry, frame);
        }
    }
    for (auto& item : sceneOf(built, frame, showing)) {
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
