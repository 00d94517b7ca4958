#include "checks/fill_support.h"

#include "base/tolerance.h"
#include "checks/support.h"

namespace gw::checks {
namespace {

bool cutBetween(const geometry::BuiltConductor& conductor, double from, double to) {
    const auto& path = conductor.built.path;
    const auto covered = geometry::bounds({&path, conductor.radius(), 0.0, path.length().in()});
    return covered.least.x <= to + kSamePoint && covered.greatest.x >= from - kSamePoint;
}

geometry::FillConductor fillOf(const geometry::BuiltConductor& conductor) {
    return {&conductor.built.path, conductor.radius(), conductor.area.in2(), conductor.inBlocks};
}

}  // namespace

geometry::FillProfile certainFill(const geometry::BuiltLayout& built) {
    std::vector<geometry::FillConductor> conductors;
    for (const auto& conductor : built.conductors) {
        if (conductor.assumed.empty()) {
            conductors.push_back(fillOf(conductor));
        }
    }
    std::vector<geometry::Box> blocks;
    blocks.reserve(built.blocks.size());
    for (const auto& block : built.blocks) {
        blocks.push_back(block.body);
    }
    return geometry::fillProfile(built.gutter().inside, conductors, blocks);
}

std::vector<std::size_t> assumedBetween(const geometry::BuiltLayout& built,
                                        double from,
                                        double to) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto& conductor = built.conductors[i];
        if (!conductor.assumed.empty() && cutBetween(conductor, from, to)) {
            found.push_back(i);
        }
    }
    return found;
}

std::vector<std::string> assumedInputs(const geometry::BuiltLayout& built,
                                       const std::vector<std::size_t>& conductors) {
    std::vector<std::string> inputs;
    inputs.reserve(conductors.size());
    for (const std::size_t i : conductors) {
        inputs.push_back(built.conductors[i].assumed + " of " + conductorName(built, i));
    }
    return inputs;
}

std::string assumedClause(const geometry::BuiltLayout& built,
                          const std::vector<std::size_t>& conductors) {
    if (conductors.empty()) {
        return {};
    }
    return ", with the largest published diameter where none is known (not stated: " +
           listed(assumedInputs(built, conductors)) + ")";
}

void placeAt(Finding& finding, const geometry::BuiltLayout& built, double from, double to) {
    const Vec3& inside = built.gutter().inside;
    finding.place = Vec3{(from + to) / 2.0, inside.y / 2.0, inside.z / 2.0};
    finding.interval = {from, to};
}

void excuseAssumed(Finding& finding,
                   const geometry::BuiltLayout& built,
                   const std::vector<std::size_t>& assumed) {
    finding.verdict = Verdict::cannotTell;
    finding.missing = assumedInputs(built, assumed);
}

std::string stretchText(double from, double to) {
    return "between x = " + inText(from) + " and x = " + inText(to);
}

}  // namespace gw::checks
