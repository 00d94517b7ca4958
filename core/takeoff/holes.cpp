#include "takeoff/holes.h"

#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "editing/fields.h"
#include "standards/tables.h"
#include "takeoff/words.h"

namespace gw::takeoff {
namespace {

using geometry::BuiltLayout;
using layout::Wall;

struct OnWall {
    double width;
    double height;
    double u;
    double v;
    double off;  ///< inches from the wall
};

OnWall seenOn(Wall wall, const Vec3& inside, const Vec3& point) {
    switch (wall) {
        case Wall::left:
            return {inside.y, inside.z, point.y, point.z, point.x};
        case Wall::right:
            return {inside.y, inside.z, point.y, point.z, inside.x - point.x};
        case Wall::top:
            return {inside.x, inside.z, point.x, point.z, inside.y - point.y};
        case Wall::bottom:
            return {inside.x, inside.z, point.x, point.z, point.y};
        case Wall::back:
            return {inside.x, inside.y, point.x, point.y, point.z};
    }
    return {};
}

bool liesOn(Wall wall, const Vec3& inside, const Vec3& point) {
    return std::abs(seenOn(wall, inside, point).off) <= kOnAxis;
}

/// The wall on which all mounting holes of a block lie.
std::optional<Wall> mountedOn(const BuiltLayout& built, std::size_t block) {
    const auto& holes = built.blocks[block].mountingHoles;
    for (const Wall wall : layout::allWalls()) {
        const bool all = std::all_of(holes.begin(), holes.end(), [&](const Vec3& hole) {
            return liesOn(wall, built.gutter().inside, hole);
        });
        if (all && !holes.empty()) {
            return wall;
        }
    }
    return std::nullopt;
}

Hole knockoutOf(const layout::Layout& layout, const layout::Entry& entry) {
    Hole hole{editing::ownerName(layout, entry.id), "trade size not stated", {}, entry.u, entry.v};
    if (entry.tradeSize) {
        hole.size = "knockout for trade size " + std::string(entry.tradeSize->text());
        if (const auto row = standards::knockout(*entry.tradeSize)) {
            hole.diameter = row->value.nominal;
        }
    }
    return hole;
}

void addMountingHoles(WallHoles& wall, const BuiltLayout& built, std::size_t block) {
    const auto& part = *built.blocks[block].part;
    for (std::size_t i = 0; i < part.mountingHoles.size(); ++i) {
        const auto at =
            seenOn(wall.wall, built.gutter().inside, built.blocks[block].mountingHoles[i]);
        wall.holes.push_back({editing::ownerName(built.layout, built.layout.blocks[block].id),
                              "mounting hole",
                              part.mountingHoles[i].diameter,
                              at.u,
                              at.v});
    }
}

}  // namespace

std::vector<WallHoles> wallHoles(const BuiltLayout& built) {
    const auto& layout = built.layout;
    std::vector<WallHoles> walls;
    for (const Wall wall : {Wall::left, Wall::right, Wall::top, Wall::bottom, Wall::back}) {
        const auto extent = seenOn(wall, layout.gutter.inside, {});
        WallHoles one{wall, extent.width, extent.height, {}};
        for (const auto& entry : layout.entries) {
            if (entry.wall == wall) {
                one.holes.push_back(knockoutOf(layout, entry));
            }
        }
        for (std::size_t block = 0; block < built.blocks.size(); ++block) {
            if (layout.blocks[block].mounted.value_or(false) && mountedOn(built, block) == wall) {
                addMountingHoles(one, built, block);
            }
        }
        if (!one.holes.empty()) {
            walls.push_back(std::move(one));
        }
    }
    return walls;
}

std::vector<std::string> holeNotes(const BuiltLayout& built) {
    std::vector<std::string> notes;
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        const auto& block = built.layout.blocks[i];
        const auto name = editing::ownerName(built.layout, block.id);
        if (!block.mounted) {
            notes.push_back("Whether " + name + " is bolted down is not stated: no holes for it.");
        } else if (*block.mounted && built.blocks[i].part->mountingHoles.empty()) {
            notes.push_back("The part of " + name + " states no mounting holes.");
        } else if (*block.mounted && !mountedOn(built, i)) {
            notes.push_back("The mounting face of " + name + " lies on no wall: no holes for it.");
        }
    }
    for (const auto& entry : built.layout.entries) {
        if (!knockoutOf(built.layout, entry).diameter) {
            notes.push_back("The trade size of " + editing::ownerName(built.layout, entry.id) +
                            " is not stated: its centre is marked, without a hole.");
        }
    }
    return notes;
}

Table holeTable(const BuiltLayout& built) {
    Table table{"holes",
                "Holes",
                "Centres from the interior corner left, bottom, back: top and bottom walls along "
                "and from the back, left and right up and from the back, back along and up. "
                "Knockouts nominal.",
                {{"Wall"},
                 {"For"},
                 {"Hole"},
                 {"Diameter", Kind::number, "in"},
                 {"First", Kind::length},
                 {"Second", Kind::length}},
                {},
                holeNotes(built)};
    for (const auto& wall : wallHoles(built)) {
        for (const auto& hole : wall.holes) {
            table.rows.push_back({std::string(layout::wallText(wall.wall)),
                                  hole.what,
                                  hole.size,
                                  lengthCell(hole.diameter),
                                  hole.u,
                                  hole.v});
        }
    }
    return table;
}

}  // namespace gw::takeoff
