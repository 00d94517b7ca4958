#include "checks/fill_support.h"

#include "base/tolerance.h"
#include "checks/diameters.h"
#include "checks/support.h"
#include "standards/tables.h"

namespace gw::checks {
namespace {

bool cutBetween(const geometry::BuiltConductor& conductor, double from, double to) {
    const auto& path = conductor.built.path;
    const auto covered = geometry::bounds({&path, conductor.radius(), 0.0, path.length().in()});
    return covered.least.x <= to + kSamePoint && covered.greatest.x >= from - kSamePoint;
}

/// A conductor whose diameter is not known is at least its metal.
geometry::FillConductor leastFillOf(const geometry::BuiltLayout& built, std::size_t index) {
    const auto& conductor = built.conductors[index];
    if (conductor.assumed.empty()) {
        return {
            &conductor.built.path, conductor.radius(), conductor.area.in2(), conductor.inBlocks};
    }
    const auto bare =
        units::Inches::of(leastBareDiameter(built.layout.conductors[index], built.layout.edition));
    return {&conductor.built.path,
            bare.in() / 2.0,
            units::SquareInches::ofCircle(bare).in2(),
            conductor.inBlocks};
}

}  // namespace

standards::Cited<double> spliceLimit(const geometry::BuiltLayout& built) {
    const auto rule =
        standards::gutterSpliceFillPercent(built.gutter().article, built.layout.edition);
    CONTRACT(rule.has_value());
    return amended(*rule, built.layout.amendments.spliceFillPercent, built);
}

geometry::FillProfile certainFill(const geometry::BuiltLayout& built) {
    std::vector<geometry::FillConductor> conductors;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        conductors.push_back(leastFillOf(built, i));
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
    constexpr std::size_t kNamed = 2;
    if (conductors.empty()) {
        return {};
    }
    std::vector<std::string> names;
    names.reserve(conductors.size());
    for (const std::size_t i : conductors) {
        names.push_back(conductorName(built, i));
    }
    return ", by the largest published diameter of " +
           (conductors.size() > kNamed ? counted(conductors.size(), "conductor", "conductors")
                                       : listed(names));
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
