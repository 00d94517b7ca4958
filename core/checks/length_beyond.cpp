#include <array>

#include "checks/support.h"
#include "checks/units.h"

/// An auxiliary gutter ends at most 30 ft beyond the equipment it supplements.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;

/// Inches. Source: NFPA 70 366.12(2).
constexpr double kFurthest = 360.0;

void ofGutter(std::vector<Finding>& findings, const BuiltLayout& built, const Facts&, std::size_t) {
    const auto& gutter = built.gutter();
    if (gutter.article != standards::GutterArticle::auxiliaryGutter) {
        return;
    }
    Finding finding;
    finding.check = Check::lengthBeyond;
    finding.citation = sectionFor(built, standards::Rule::gutterLength);
    const double reach = gutter.beyondEquipment ? gutter.beyondEquipment->in() : gutter.inside.x;
    judge(finding, inches(reach), inches(kFurthest), Bound::atMost);
    const std::string limit = ", where " + inText(kFurthest) + " are allowed";
    if (gutter.beyondEquipment) {
        finding.working = sentence("its far end lies " + inText(reach) +
                                   " beyond the equipment it supplements" + limit);
    } else {
        finding.working = sentence("it is " + inText(reach) +
                                   " long, and no further beyond its equipment" + limit);
    }
    if (!gutter.beyondEquipment && finding.verdict == Verdict::breach) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {"how far the gutter reaches beyond the equipment it supplements"};
    }
    findings.push_back(std::move(finding));
}

constexpr auto kSections = std::to_array<Section>({{Unit::gutter, reads::kNothing, ofGutter}});

}  // namespace

std::span<const Section> lengthBeyondSections() {
    return kSections;
}

std::vector<Finding> checkLengthBeyond(const BuiltLayout& built) {
    return runChecks(built, {Check::lengthBeyond});
}

}  // namespace gw::checks
