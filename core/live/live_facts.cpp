#include "live/live_facts.h"

#include <algorithm>
#include <utility>

#include "geometry/solids.h"

namespace gw::live {
namespace {

using checks::kNeighbourhood;
using geometry::Box;
using geometry::BuiltBlock;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::Things;

/// inches. More than the radius of any conductor that is made.
constexpr double kWidest = 2.0;
/// inches. Further than any gutter reaches.
constexpr double kBeyondAll = 1e6;

Box boxOf(const geometry::BuiltConductor& conductor) {
    const auto& path = conductor.built.path;
    return geometry::bounds({&path, conductor.radius(), 0.0, path.length().in()});
}

Box widened(const Box& box, const Vec3& by) {
    return {box.least - by, box.greatest + by};
}

bool overlap(const Box& a, const Box& b) {
    return a.least.x <= b.greatest.x && b.least.x <= a.greatest.x && a.least.y <= b.greatest.y &&
           b.least.y <= a.greatest.y && a.least.z <= b.greatest.z && b.least.z <= a.greatest.z;
}

void sortOnce(std::vector<std::size_t>& indices) {
    std::sort(indices.begin(), indices.end());
    indices.erase(std::unique(indices.begin(), indices.end()), indices.end());
}

/// All that a conductor coming out of either mouth of the port may meet, going straight.
Box wayBefore(const geometry::BuiltPort& port) {
    const Vec3 far = port.direction * kBeyondAll;
    const auto [a, b] = std::pair(port.mouth - far, port.farMouth + far);
    const Vec3 least{std::min(a.x, b.x), std::min(a.y, b.y), std::min(a.z, b.z)};
    const Vec3 greatest{std::max(a.x, b.x), std::max(a.y, b.y), std::max(a.z, b.z)};
    return widened({least, greatest}, {kWidest, kWidest, kWidest});
}

bool looksAt(const BuiltBlock& block, const std::vector<Box>& bodies) {
    return std::any_of(block.ports.begin(), block.ports.end(), [&](const auto& port) {
        const Box way = wayBefore(port);
        return std::any_of(
            bodies.begin(), bodies.end(), [&](const Box& body) { return overlap(way, body); });
    });
}

/// Blocks that moved, and those with a port before which one of them stands or stood.
std::vector<std::size_t> lookingAt(const BuiltLayout& built,
                                   const Things& moved,
                                   const std::vector<Box>& bodies) {
    std::vector<std::size_t> looking = moved.blocks;
    for (std::size_t i = 0; !bodies.empty() && i < built.blocks.size(); ++i) {
        if (looksAt(built.blocks[i], bodies)) {
            looking.push_back(i);
        }
    }
    sortOnce(looking);
    return looking;
}

}  // namespace

LiveFacts::LiveFacts(const BuiltLayout& built)
    : facts_(checks::factsOf(built)),
      conductors_(built.conductors.size()),
      things_(built.gutter().inside.x, built.conductors.size() + built.blocks.size()),
      screws_(built.gutter().inside.x, built.blocks.size()) {
    place(built, geometry::allThings(built));
}

/// Into the bins. Gives back the boxes of all of them, conductors first.
std::vector<Box> LiveFacts::place(const BuiltLayout& built, const Things& moved) {
    std::vector<Box> boxes;
    boxes.reserve(moved.conductors.size() + moved.blocks.size());
    for (const std::size_t i : moved.conductors) {
        boxes.push_back(boxOf(built.conductors[i]));
        things_.place(i, boxes.back());
    }
    for (const std::size_t i : moved.blocks) {
        boxes.push_back(built.blocks[i].body);
        things_.place(conductors_ + i, boxes.back());
        screws_.place(i, checks::reachOfScrews(built, i));
    }
    return boxes;
}

Things LiveFacts::thingsIn(const std::vector<Box>& boxes, const Vec3& wider) const {
    std::vector<std::size_t> numbers;
    for (const Box& box : boxes) {
        const auto found = things_.overlapping(widened(box, wider));
        numbers.insert(numbers.end(), found.begin(), found.end());
    }
    sortOnce(numbers);
    const auto firstBlock = std::lower_bound(numbers.begin(), numbers.end(), conductors_);
    Things things{{numbers.begin(), firstBlock}, {firstBlock, numbers.end()}};
    for (std::size_t& block : things.blocks) {
        block -= conductors_;
    }
    return things;
}

std::vector<std::size_t> LiveFacts::screwsIn(const std::vector<Box>& boxes) const {
    std::vector<std::size_t> blocks;
    for (const Box& box : boxes) {
        const auto found = screws_.overlapping(box);
        blocks.insert(blocks.end(), found.begin(), found.end());
    }
    sortOnce(blocks);
    return blocks;
}

void LiveFacts::touchAttached(Touched& touched, const BuiltLayout& built) const {
    touched.blocks = touched.moved.blocks;
    for (const std::size_t i : touched.moved.conductors) {
        const auto& conductor = built.conductors[i];
        touched.circuits.push_back(facts_.links.circuitOf[i]);
        for (const BuiltEnd* end : {&conductor.from, &conductor.to}) {
            if (end->entry) {
                touched.entries.push_back(*end->entry);
            }
            if (end->block) {
                touched.blocks.push_back(*end->block);
            }
        }
        for (const auto& pass : conductor.passes) {
            touched.blocks.push_back(pass.block);
        }
    }
    sortOnce(touched.circuits);
    sortOnce(touched.entries);
    sortOnce(touched.blocks);
}

void LiveFacts::updateCorridors(Touched& touched,
                                const BuiltLayout& built,
                                const std::vector<Box>& before,
                                const std::vector<Box>& now) {
    std::vector<std::size_t> near = screwsIn(before);
    const std::vector<std::size_t> nearNow = screwsIn(now);
    near.insert(near.end(), nearNow.begin(), nearNow.end());
    sortOnce(near);
    std::vector<Box> reaches;
    for (const std::size_t i : touched.moved.blocks) {
        reaches.push_back(screws_.boxOf(i));
    }
    touched.corridors = checks::updateCorridors(
        facts_.corridors, built, facts_.occupancy, touched.moved, near, thingsIn(reaches, {}));
}

Touched LiveFacts::update(const BuiltLayout& built, const Things& moved) {
    Touched touched;
    touched.moved = moved;
    touchAttached(touched, built);
    std::vector<Box> before;
    std::vector<Box> bodies;
    for (const std::size_t i : moved.conductors) {
        before.push_back(things_.boxOf(i));
    }
    for (const std::size_t i : moved.blocks) {
        before.push_back(things_.boxOf(conductors_ + i));
        bodies.push_back(before.back());
        bodies.push_back(built.blocks[i].body);
    }
    const std::vector<Box> now = place(built, moved);
    if (!moved.blocks.empty()) {
        facts_.blockRow = checks::BlockRow(built);
    }
    touched.blockRow = lookingAt(built, moved, bodies);
    constexpr Vec3 kAround{kNeighbourhood, kNeighbourhood, kNeighbourhood};
    touched.neighbours = checks::updateNeighbours(
        facts_.neighbours, built, facts_.occupancy, moved, thingsIn(now, kAround));
    checks::updateCoverGaps(facts_.coverGaps, built, moved);
    for (const std::size_t i : facts_.carrying.update(built, moved.conductors)) {
        touched.carrying.push_back(facts_.links.circuitOf[i]);
    }
    sortOnce(touched.carrying);
    updateCorridors(touched, built, before, now);
    touched.landing = checks::updateLanding(facts_.landing,
                                            built,
                                            facts_.occupancy,
                                            facts_.corridors,
                                            moved.conductors,
                                            thingsIn(now, {0.0, 0.0, kBeyondAll}).conductors,
                                            touched.corridors);
    for (const std::size_t i : moved.conductors) {
        facts_.springs[i] = checks::springOfConductor(built, i);
    }
    return touched;
}

}  // namespace gw::live
