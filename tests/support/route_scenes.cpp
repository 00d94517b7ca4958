#include "support/route_scenes.h"

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "support/random.h"
#include "support/small_gutter.h"

namespace gw::test_support {
namespace {

using layout::Wall;

struct Spot {
    Wall wall;
    double u;
    double v;
};

template <class T>
void shuffle(std::vector<T>& items, Random& random) {
    for (std::size_t i = items.size(); i > 1; --i) {
        std::swap(items[i - 1], items[random.below(i)]);
    }
}

std::array<int, 4> slotsOf(Random& random) {
    std::vector<int> slots{1, 2, 3, 4};
    if (random.chance(0.5)) {
        shuffle(slots, random);
    }
    return {slots[0], slots[1], slots[2], slots[3]};
}

std::vector<Spot> spotsOn(Wall wall,
                          const std::vector<double>& us,
                          const std::vector<double>& vs,
                          Random& random) {
    std::vector<Spot> spots;
    for (const double u : us) {
        for (const double v : vs) {
            spots.push_back({wall, u + random.between(-0.1, 0.1), v + random.between(-0.1, 0.1)});
        }
    }
    return spots;
}

/// Four blocks along the top, a phase each; every raceway brings one conductor to each of them.
layout::Layout toFourBlocks(const Vec3& inside,
                            const std::string& size,
                            const std::string& part,
                            const Vec3& firstCorner,
                            double pitch,
                            const std::vector<Spot>& spots,
                            Random& random) {
    SmallGutter gutter(inside);
    gutter.size = size;
    std::vector<std::string> blocks{"A", "B", "C", "N"};
    shuffle(blocks, random);
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        const Vec3 corner{
            firstCorner.x + pitch * static_cast<double>(b), firstCorner.y, firstCorner.z};
        gutter.addBlock(blocks[b], part, corner);
    }
    for (std::size_t set = 0; set < spots.size(); ++set) {
        const std::string number = std::to_string(set + 1);
        gutter.addEntry("E" + number, spots[set].wall, spots[set].u, spots[set].v);
        const auto slots = slotsOf(random);
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            gutter.addConductor("S" + number + "-" + blocks[b],
                                SmallGutter::atEntry("E" + number, slots[b]),
                                SmallGutter::inPort(blocks[b], number));
        }
    }
    return gutter.layout;
}

layout::Layout smallScene(Random& random) {
    auto spots = spotsOn(Wall::left, {1.4, 3.6}, {3.4, 5.8}, random);
    shuffle(spots, random);
    spots.resize(3);
    return toFourBlocks(
        {36.0, 8.0, 8.0}, "250", "row-one-side-4-to-350", {9.5, 6.25, 0.05}, 6.2, spots, random);
}

layout::Layout middleScene(Random& random) {
    auto spots = spotsOn(Wall::left, {1.6, 4.2}, {4.6, 7.2, 9.8}, random);
    const auto more = spotsOn(Wall::right, {1.6, 4.2}, {4.6, 7.2, 9.8}, random);
    spots.insert(spots.end(), more.begin(), more.end());
    shuffle(spots, random);
    spots.resize(8);
    return toFourBlocks(
        {60.0, 12.0, 12.0}, "500", "two-tier-8-to-500", {12.5, 8.45, 0.05}, 9.6, spots, random);
}

void addThrough(SmallGutter& gutter, Random& random) {
    const std::vector<double> us{2.5, 5.5, 8.5, 11.5, 14.5};
    const std::vector<double> vs{5.0, 9.0, 13.0, 17.0, 21.0};
    const auto in = spotsOn(Wall::left, us, vs, random);
    auto out = spotsOn(Wall::right, us, vs, random);
    for (std::size_t i = 0; i < 8; ++i) {
        std::swap(out[random.below(out.size())], out[random.below(out.size())]);
    }
    for (std::size_t i = 0; i < in.size(); ++i) {
        const std::string number = std::to_string(i + 10);
        gutter.addEntry("L" + number, Wall::left, in[i].u, in[i].v);
        gutter.addEntry("R" + number, Wall::right, out[i].u, out[i].v);
        for (int slot = 1; slot <= 4; ++slot) {
            gutter.addConductor("T" + number + "-" + std::to_string(slot),
                                SmallGutter::atEntry("L" + number, slot),
                                SmallGutter::atEntry("R" + number, slot));
        }
    }
}

void addTaps(SmallGutter& gutter, Random& random) {
    std::vector<std::pair<std::string, std::string>> ports;
    for (int b = 0; b < 10; ++b) {
        const std::string name = "B" + std::to_string(b);
        gutter.addBlock(name, "two-tier-10-to-350", {14.0 + 9.5 * b, 20.9, 0.05});
        for (int port = 1; port <= 10; ++port) {
            ports.emplace_back(name, std::to_string(port));
        }
    }
    for (std::size_t i = 0; i < 25; ++i) {
        const std::string number = std::to_string(i + 10);
        const double x = 8.0 + 4.2 * static_cast<double>(i);
        gutter.addEntry("U" + number, Wall::bottom, x, i % 2 == 0 ? 2.2 : 5.0);
        const auto slots = slotsOf(random);
        for (std::size_t k = 0; k < 4; ++k) {
            const auto& [block, port] = ports[4 * i + k];
            gutter.addConductor("U" + number + "-" + std::to_string(k + 1),
                                SmallGutter::atEntry("U" + number, slots[k]),
                                SmallGutter::inPort(block, port));
        }
    }
}

layout::Layout largeScene(Random& random) {
    SmallGutter gutter({120.0, 24.0, 24.0});
    gutter.size = "4/0";
    addThrough(gutter, random);
    addTaps(gutter, random);
    return gutter.layout;
}

}  // namespace

layout::Layout routeScene(RouteFamily family, std::uint64_t seed) {
    Random random(seed);
    switch (family) {
        case RouteFamily::small:
            return smallScene(random);
        case RouteFamily::middle:
            return middleScene(random);
        case RouteFamily::large:
            return largeScene(random);
    }
    return {};
}

}  // namespace gw::test_support
