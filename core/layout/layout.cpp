#include "layout/layout.h"

namespace gw::layout {

Vec3 inwardNormal(Wall wall) {
    switch (wall) {
        case Wall::left:
            return {1, 0, 0};
        case Wall::right:
            return {-1, 0, 0};
        case Wall::top:
            return {0, -1, 0};
        case Wall::bottom:
            return {0, 1, 0};
        case Wall::back:
            return {0, 0, 1};
    }
    return {};
}

Vec3 onWall(const Gutter& gutter, Wall wall, double u, double v) {
    switch (wall) {
        case Wall::left:
            return {0, u, v};
        case Wall::right:
            return {gutter.inside.x, u, v};
        case Wall::top:
            return {u, gutter.inside.y, v};
        case Wall::bottom:
            return {u, 0, v};
        case Wall::back:
            return {u, v, 0};
    }
    return {};
}

Vec3 entryCentre(const Gutter& gutter, const Entry& entry) {
    return onWall(gutter, entry.wall, entry.u, entry.v);
}

const parts::Part* findPart(const Layout& layout,
                            const parts::Shelf& shelf,
                            const parts::PartId& id) {
    for (const parts::Part& part : layout.parts) {
        if (part.id == id) {
            return &part;
        }
    }
    const auto found = shelf.find(id);
    return found == shelf.end() ? nullptr : &found->second;
}

}  // namespace gw::layout
