#include <algorithm>
#include <array>

#include "checks/support.h"
#include "checks/units.h"

/// How far apart the supports of the gutter may be, by what it is and how it hangs.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::GutterMaterial;
using layout::Orientation;
using standards::GutterArticle;

constexpr double kFoot = 12.0;

/// Up to `always` the spacing is allowed as it is, up to `perhaps` on a condition.
struct Spacing {
    double always = 0.0;   ///< inches
    double perhaps = 0.0;  ///< inches; as `always` where there is no condition
    std::string condition{};
};

/// Source: NFPA 70 366.30, 376.30 (from memory) and 378.30.
Spacing allowed(const layout::Gutter& gutter) {
    const bool vertical = gutter.orientation == Orientation::vertical;
    switch (gutter.article) {
        case GutterArticle::auxiliaryGutter:
            return gutter.material == GutterMaterial::nonmetallic
                       ? Spacing{3.0 * kFoot, 3.0 * kFoot}
                       : Spacing{5.0 * kFoot, 5.0 * kFoot};
        case GutterArticle::metalWireway:
            return vertical ? Spacing{15.0 * kFoot, 15.0 * kFoot}
                            : Spacing{5.0 * kFoot,
                                      10.0 * kFoot,
                                      "whether it is made of single lengths longer than 5 ft, each "
                                      "supported at its ends"};
        case GutterArticle::nonmetallicWireway:
            return vertical ? Spacing{4.0 * kFoot, 4.0 * kFoot}
                            : Spacing{3.0 * kFoot,
                                      10.0 * kFoot,
                                      "whether it is listed for supports further apart than 3 ft"};
    }
    return {};
}

Finding startOf(const BuiltLayout& built) {
    Finding finding;
    finding.check = Check::supportSpacing;
    finding.citation = sectionFor(built, standards::Rule::support);
    return finding;
}

Finding judged(const BuiltLayout& built, double spacing, const std::string& how) {
    const Spacing limit = allowed(built.gutter());
    Finding finding = startOf(built);
    const bool conditional = limit.perhaps > limit.always &&
                             !holds(inches(spacing), inches(limit.always), Bound::atMost);
    judge(finding,
          inches(spacing),
          inches(conditional ? limit.perhaps : limit.always),
          Bound::atMost);
    std::string rest;
    if (conditional && finding.verdict == Verdict::meets) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {limit.condition};
        rest = ", and only on a condition over " + inText(limit.always);
    }
    finding.working =
        sentence(how + "; a " + std::string(layout::orientationText(built.gutter().orientation)) +
                 " " + std::string(standards::articleText(built.gutter().article)) +
                 " has its supports at most " + inText(finding.limit->value) + " apart" + rest);
    return finding;
}

Finding notStated(const BuiltLayout& built) {
    Finding finding = startOf(built);
    finding.verdict = Verdict::cannotTell;
    finding.limit = inches(allowed(built.gutter()).always);
    finding.missing = {"distance between the supports of the gutter"};
    finding.working = sentence("how far apart the supports are is not stated; " +
                               inText(finding.limit->value) + " are allowed");
    return finding;
}

void ofGutter(std::vector<Finding>& findings, const BuiltLayout& built, const Facts&, std::size_t) {
    const double length = built.gutter().inside.x;
    const auto& stated = built.gutter().supportSpacing;
    if (stated) {
        const double spacing = std::min(stated->in(), length);
        findings.push_back(
            judged(built, spacing, "the supports are at most " + inText(spacing) + " apart"));
        return;
    }
    if (holds(inches(length), inches(allowed(built.gutter()).always), Bound::atMost)) {
        findings.push_back(judged(
            built,
            length,
            "the gutter is " + inText(length) + " long, so no two supports are further apart"));
        return;
    }
    findings.push_back(notStated(built));
}

constexpr auto kSections = std::to_array<Section>({{Unit::gutter, reads::kNothing, ofGutter}});

}  // namespace

std::span<const Section> supportSpacingSections() {
    return kSections;
}

std::vector<Finding> checkSupportSpacing(const BuiltLayout& built) {
    return runChecks(built, {Check::supportSpacing});
}

}  // namespace gw::checks
