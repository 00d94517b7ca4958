#include "support/scene.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "support/paths.h"

namespace gw::test_support {

std::vector<geometry::SceneItem> Scene::items() const {
    std::vector<geometry::SceneItem> items;
    for (const SceneTube& tube : tubes) {
        geometry::SceneItem item;
        item.path = &tube.path;
        item.radius = tube.radius;
        item.to = tube.path.length().in();
        items.push_back(item);
    }
    for (const geometry::Box& block : blocks) {
        geometry::SceneItem item;
        item.box = block;
        items.push_back(item);
    }
    for (std::size_t i = 0; i < items.size(); ++i) {
        items[i].group = static_cast<std::uint32_t>(i + 1);
    }
    return items;
}

std::vector<geometry::FillConductor> Scene::fillConductors() const {
    std::vector<geometry::FillConductor> conductors;
    for (const SceneTube& tube : tubes) {
        const double area = std::numbers::pi * tube.radius * tube.radius;
        conductors.push_back({&tube.path, tube.radius, area, {}});
    }
    return conductors;
}

namespace {

geometry::Box boxAt(Random& random, const Vec3& inside) {
    const Vec3 size = random.in({2, 2, 2}, {6, 4, 3});
    const Vec3 corner = random.in({0, 0, 0}, inside - size);
    return {corner, corner + size};
}

/// What the conductors of a bundle share.
struct Bundle {
    double diameter = 0.0;
    double bendRadius = 0.0;
    bool fromTop = true;
    bool bendsOut = true;
    bool changesLane = false;
    double x = 0.0;
    double run = 0.0;
    double y = 0.0;
    double z = 0.0;
};

Bundle makeBundle(Random& random, const Vec3& inside) {
    // Diameters as NFPA 70 Chapter 9 Table 5 has them for THHN 1/0, 4/0, 350 and 500.
    constexpr std::array<double, 4> kDiameters{0.486, 0.642, 0.817, 0.949};
    Bundle bundle;
    bundle.diameter = kDiameters[random.below(kDiameters.size())];
    bundle.bendRadius = 4.5 * bundle.diameter;
    bundle.fromTop = random.chance(0.5);
    bundle.changesLane = random.chance(0.4);
    bundle.run = random.between(12.0, std::min(40.0, inside.x - 6.0));
    bundle.x = random.between(2.0, inside.x - bundle.run - 4.0);
    const double margin = bundle.bendRadius + 0.2;
    const double share = random.between(0.0, 1.0);
    bundle.y = bundle.fromTop ? 0.6 + share * std::max(0.0, inside.y - margin - 0.6)
                              : margin + share * std::max(0.0, inside.y - margin - 0.6);
    bundle.z = random.between(0.5, inside.z - 3.5);
    bundle.bendsOut = random.chance(0.6);
    return bundle;
}

/// Member `i` lies beside the one before it, a little apart, and bends in and out that much later.
geometry::Path memberPath(Random& random, const Bundle& bundle, double i, const Vec3& inside) {
    const double aside = i * (bundle.diameter + random.between(-0.02, 0.1));
    const double x = bundle.x + aside;
    const double far = x + bundle.run;
    const double wall = bundle.fromTop ? inside.y : 0.0;
    double z = bundle.z + aside;
    std::vector<Vec3> points{{x, wall, z}, {x, bundle.y, z}};
    if (bundle.changesLane) {
        const double middle = x + bundle.run * 0.5;
        points.push_back({middle - 1.5, bundle.y, z});
        z += random.between(-0.4, 1.0);
        points.push_back({middle + 1.5, bundle.y, z});
    }
    points.push_back({far, bundle.y, z});
    if (bundle.bendsOut) {
        points.push_back({far, wall, z});
    }
    return rounded(points, bundle.bendRadius);
}

}  // namespace

Scene gutterScene(std::size_t conductors, std::uint64_t seed) {
    Random random(seed);
    const double length = std::max(40.0, 96.0 * static_cast<double>(conductors) / 50.0);
    Scene scene{{length, 12, 12}, {}, {}};
    while (scene.tubes.size() < conductors) {
        const Bundle bundle = makeBundle(random, scene.inside);
        const std::size_t members = 3 + random.below(2);
        for (std::size_t i = 0; i < members && scene.tubes.size() < conductors; ++i) {
            scene.tubes.push_back({memberPath(random, bundle, static_cast<double>(i), scene.inside),
                                   bundle.diameter * 0.5});
        }
    }
    for (std::size_t i = 0; i < conductors / 6; ++i) {
        scene.blocks.push_back(boxAt(random, scene.inside));
    }
    return scene;
}

Scene looseScene(std::size_t tubes, std::size_t blocks, std::uint64_t seed) {
    Random random(seed);
    Scene scene{{30, 20, 16}, {}, {}};
    for (std::size_t i = 0; i < tubes; ++i) {
        const Vec3 start = random.in({0, 0, 0}, scene.inside);
        const int bends = static_cast<int>(random.below(5));
        scene.tubes.push_back({wandering(random, start, bends), random.between(0.2, 0.6)});
    }
    for (std::size_t i = 0; i < blocks; ++i) {
        scene.blocks.push_back(boxAt(random, scene.inside));
    }
    return scene;
}

}  // namespace gw::test_support
