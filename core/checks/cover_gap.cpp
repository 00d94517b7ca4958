#include "checks/cover_gap.h"

#include "geometry/solids.h"

namespace gw::checks {
namespace {

constexpr Vec3 kTowardCover{0, 0, 1};

CoverGap gapOf(const geometry::BuiltLayout& built, const geometry::BuiltConductor& conductor) {
    const geometry::Tube tube{
        &conductor.built.path, conductor.radius(), 0.0, conductor.built.path.length().in()};
    const auto reach = geometry::reach(tube, kTowardCover);
    return {built.gutter().inside.z - reach.value, reach.at};
}

CoverGap gapOf(const geometry::BuiltLayout& built, const geometry::BuiltBlock& block) {
    return {built.gutter().inside.z - block.body.greatest.z, block.body.centre()};
}

}  // namespace

CoverGaps coverGapsOf(const geometry::BuiltLayout& built) {
    CoverGaps gaps;
    gaps.conductors.reserve(built.conductors.size());
    for (const auto& conductor : built.conductors) {
        gaps.conductors.push_back(gapOf(built, conductor));
    }
    gaps.blocks.reserve(built.blocks.size());
    for (const auto& block : built.blocks) {
        gaps.blocks.push_back(gapOf(built, block));
    }
    return gaps;
}

void updateCoverGaps(CoverGaps& gaps,
                     const geometry::BuiltLayout& built,
                     const geometry::Things& moved) {
    for (const std::size_t i : moved.conductors) {
        gaps.conductors[i] = gapOf(built, built.conductors[i]);
    }
    for (const std::size_t i : moved.blocks) {
        gaps.blocks[i] = gapOf(built, built.blocks[i]);
    }
}

}  // namespace gw::checks
