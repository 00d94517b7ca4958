#include "peer/fcl_scene.h"

#include <fcl/fcl.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace gw::test_support {

namespace {

using Object = fcl::CollisionObjectd;
using Objects = std::vector<std::unique_ptr<Object>>;

fcl::Vector3d toFcl(const Vec3& v) {
    return {v.x, v.y, v.z};
}

std::unique_ptr<Object> capsule(const Vec3& from, const Vec3& to, double radius) {
    const fcl::Vector3d along = toFcl(to - from);
    fcl::Transform3d place = fcl::Transform3d::Identity();
    place.translation() = toFcl((from + to) * 0.5);
    place.linear() =
        Eigen::Quaterniond::FromTwoVectors(fcl::Vector3d::UnitZ(), along).toRotationMatrix();
    return std::make_unique<Object>(std::make_shared<fcl::Capsuled>(radius, along.norm()), place);
}

std::unique_ptr<Object> box(const geometry::Box& block, double grown) {
    const Vec3 size = block.extents() + Vec3{2, 2, 2} * grown;
    fcl::Transform3d place = fcl::Transform3d::Identity();
    place.translation() = toFcl(block.centre());
    return std::make_unique<Object>(std::make_shared<fcl::Boxd>(size.x, size.y, size.z), place);
}

void appendCapsules(Objects& objects, const SceneTube& tube, double chordAngle, double grown) {
    for (const geometry::Piece& piece : tube.path.pieces()) {
        if (piece.length <= 0.0) {
            continue;
        }
        const double chords = piece.isArc() ? std::ceil(piece.angle() / chordAngle) : 1.0;
        const double sagShare = 1.0 - std::cos(piece.angle() / chords * 0.5);
        const auto at = [&](double i) {
            const Vec3 point = piece.pointAt(piece.length * i / chords);
            return piece.isArc() ? point + (point - piece.origin) * (sagShare * 0.5) : point;
        };
        for (double i = 0.0; i < chords; i += 1.0) {
            objects.push_back(capsule(at(i), at(i + 1.0), tube.radius + grown));
        }
    }
}

double shapeDistance(Object* a, Object* b) {
    fcl::DistanceRequestd request;
    fcl::DistanceResultd result;
    return fcl::distance(a, b, request, result);
}

double leastDistance(const Objects& as, const Objects& bs) {
    double least = std::numeric_limits<double>::infinity();
    for (const auto& a : as) {
        for (const auto& b : bs) {
            least = std::min(least, shapeDistance(a.get(), b.get()));
        }
    }
    return least;
}

/// What is known so far, carried through the library's callbacks.
struct Query {
    std::size_t items = 0;
    double within = 0.0;
    std::vector<bool> known;
    ItemPairs pairs;

    static std::size_t itemOf(const Object* object) {
        return *static_cast<const std::uint32_t*>(object->getUserData());
    }
    /// The pair's place in `known`; nothing to do when both are one item or it is known.
    bool needed(const Object* a, const Object* b, std::size_t& index) const {
        const std::size_t i = std::min(itemOf(a), itemOf(b));
        const std::size_t j = std::max(itemOf(a), itemOf(b));
        index = i * items + j;
        return i != j && !known[index];
    }
    void add(std::size_t index) {
        known[index] = true;
        pairs.emplace_back(static_cast<std::uint32_t>(index / items),
                           static_cast<std::uint32_t>(index % items));
    }
};

/// Least distances so far, of all pairs of items: a table, the fastest to look up.
struct GapQuery {
    std::size_t items = 0;
    double within = 0.0;
    std::vector<double> gaps;
    std::vector<std::size_t> found;
};

bool onDistance(Object* a, Object* b, void* data, double& reach) {
    auto& query = *static_cast<GapQuery*>(data);
    reach = query.within;
    const std::size_t i = std::min(Query::itemOf(a), Query::itemOf(b));
    const std::size_t j = std::max(Query::itemOf(a), Query::itemOf(b));
    if (i == j) {
        return false;
    }
    const double gap = shapeDistance(a, b);
    double& least = query.gaps[i * query.items + j];
    if (gap <= query.within && gap < least) {
        if (std::isinf(least)) {
            query.found.push_back(i * query.items + j);
        }
        least = gap;
    }
    return false;
}

/// Least distances so far of one item to every other.
struct MovedQuery {
    std::size_t item = 0;
    double within = 0.0;
    std::vector<double> gaps;
    std::vector<std::size_t> found;
};

bool onDistanceFromMoved(Object* a, Object* b, void* data, double& reach) {
    auto& query = *static_cast<MovedQuery*>(data);
    reach = query.within;
    const std::size_t other = Query::itemOf(a) == query.item ? Query::itemOf(b) : Query::itemOf(a);
    if (other == query.item) {
        return false;
    }
    const double gap = shapeDistance(a, b);
    double& least = query.gaps[other];
    if (gap <= query.within && gap < least) {
        if (std::isinf(least)) {
            query.found.push_back(other);
        }
        least = gap;
    }
    return false;
}

bool onOverlap(Object* a, Object* b, void* data) {
    auto& query = *static_cast<Query*>(data);
    std::size_t index = 0;
    if (query.needed(a, b, index) && shapeDistance(a, b) <= 0.0) {
        query.add(index);
    }
    return false;
}

bool onCollision(Object* a, Object* b, void* data) {
    auto& query = *static_cast<Query*>(data);
    std::size_t index = 0;
    if (!query.needed(a, b, index)) {
        return false;
    }
    const fcl::CollisionRequestd request(1, false);
    fcl::CollisionResultd result;
    if (fcl::collide(a, b, request, result) > 0) {
        query.add(index);
    }
    return false;
}

/// One set of shapes and the tree over them.
struct Forest {
    Objects objects;
    fcl::DynamicAABBTreeCollisionManagerd tree;

    Forest(const Scene& scene,
           double chordAngle,
           double grown,
           const std::vector<std::uint32_t>& numbers) {
        for (std::size_t i = 0; i < scene.tubes.size(); ++i) {
            const std::size_t first = objects.size();
            appendCapsules(objects, scene.tubes[i], chordAngle, grown);
            number(first, numbers[i]);
        }
        for (std::size_t i = 0; i < scene.blocks.size(); ++i) {
            objects.push_back(box(scene.blocks[i], grown));
            number(objects.size() - 1, numbers[scene.tubes.size() + i]);
        }
    }

    void number(std::size_t first, const std::uint32_t& item) {
        for (std::size_t i = first; i < objects.size(); ++i) {
            objects[i]->setUserData(const_cast<std::uint32_t*>(&item));
        }
    }

    void setUp() {
        tree.clear();
        std::vector<Object*> all;
        for (const auto& object : objects) {
            all.push_back(object.get());
        }
        tree.registerObjects(all);
        tree.setup();
    }
};

std::vector<std::uint32_t> numbersTo(std::size_t count) {
    std::vector<std::uint32_t> numbers(count);
    for (std::size_t i = 0; i < count; ++i) {
        numbers[i] = static_cast<std::uint32_t>(i);
    }
    return numbers;
}

}  // namespace

struct FclScene::Parts {
    std::vector<std::uint32_t> numbers;
    double within;
    Forest plain;
    Forest grown;

    Parts(const Scene& scene, double chordAngle, double reach)
        : numbers(numbersTo(scene.tubes.size() + scene.blocks.size())),
          within(reach),
          plain(scene, chordAngle, 0.0, numbers),
          grown(scene, chordAngle, reach * 0.5, numbers) {
        plain.setUp();
        grown.setUp();
    }
};

FclScene::FclScene(const Scene& scene, double chordAngle, double within)
    : parts_(std::make_unique<Parts>(scene, chordAngle, within)) {}

FclScene::~FclScene() = default;

std::vector<ItemGap> FclScene::nearGaps() const {
    GapQuery query;
    query.items = parts_->numbers.size();
    query.within = parts_->within;
    query.gaps.assign(query.items * query.items, std::numeric_limits<double>::infinity());
    parts_->plain.tree.distance(&query, onDistance);
    std::sort(query.found.begin(), query.found.end());
    std::vector<ItemGap> gaps;
    for (const std::size_t index : query.found) {
        gaps.push_back({static_cast<std::uint32_t>(index / query.items),
                        static_cast<std::uint32_t>(index % query.items),
                        query.gaps[index]});
    }
    return gaps;
}

std::vector<ItemGap> FclScene::gapsAfterMove(std::uint32_t item, const Vec3& by) {
    std::vector<Object*> moved;
    for (const auto& object : parts_->plain.objects) {
        if (Query::itemOf(object.get()) == item) {
            object->setTranslation(object->getTranslation() + toFcl(by));
            object->computeAABB();
            moved.push_back(object.get());
        }
    }
    parts_->plain.tree.update(moved);
    MovedQuery query;
    query.item = item;
    query.within = parts_->within;
    query.gaps.assign(parts_->numbers.size(), std::numeric_limits<double>::infinity());
    for (Object* object : moved) {
        parts_->plain.tree.distance(object, &query, onDistanceFromMoved);
    }
    std::sort(query.found.begin(), query.found.end());
    std::vector<ItemGap> gaps;
    for (const std::size_t other : query.found) {
        gaps.push_back({std::min(item, static_cast<std::uint32_t>(other)),
                        std::max(item, static_cast<std::uint32_t>(other)),
                        query.gaps[other]});
    }
    return gaps;
}

ItemPairs FclScene::nearPairs(Way way) const {
    Query query;
    query.items = parts_->numbers.size();
    query.within = parts_->within;
    query.known.assign(query.items * query.items, false);
    switch (way) {
        case Way::overlaps:
            parts_->grown.tree.collide(&query, onOverlap);
            break;
        case Way::collisions:
            parts_->grown.tree.collide(&query, onCollision);
            break;
    }
    std::sort(query.pairs.begin(), query.pairs.end());
    return query.pairs;
}

void FclScene::setUpTree(Tree tree) {
    (tree == Tree::plain ? parts_->plain : parts_->grown).setUp();
}

double fclGap(const Scene& scene, std::size_t tubeA, std::size_t tubeB, double chordAngle) {
    Objects as;
    Objects bs;
    appendCapsules(as, scene.tubes[tubeA], chordAngle, 0.0);
    appendCapsules(bs, scene.tubes[tubeB], chordAngle, 0.0);
    return leastDistance(as, bs);
}

double fclGapToBlock(const Scene& scene, std::size_t tube, std::size_t block, double chordAngle) {
    Objects as;
    Objects bs;
    appendCapsules(as, scene.tubes[tube], chordAngle, 0.0);
    bs.push_back(box(scene.blocks[block], 0.0));
    return leastDistance(as, bs);
}

}  // namespace gw::test_support
