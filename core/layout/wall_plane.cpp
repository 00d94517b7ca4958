#include "layout/wall_plane.h"

namespace gw::layout {

OnWall alongWall(Wall wall, const Vec3& at) {
    switch (wall) {
        case Wall::left:
        case Wall::right:
            return {at.y, at.z};
        case Wall::top:
        case Wall::bottom:
            return {at.x, at.z};
        case Wall::back:
            return {at.x, at.y};
    }
    return {};
}

}  // namespace gw::layout
