#include <array>

#include "checks/support.h"
#include "checks/units.h"

/// No conductor in a wireway is larger than the wireway is designed for.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;

units::WireSize largestOf(const BuiltLayout& built) {
    auto largest = built.layout.conductors.front().size;
    for (const auto& conductor : built.layout.conductors) {
        largest = std::max(largest, conductor.size);
    }
    return largest;
}

/// Those larger than the wireway is designed for; where none is, the largest, in the order of ids.
std::vector<Subject> subjectsOf(const BuiltLayout& built,
                                const Facts& facts,
                                const std::optional<units::WireSize>& designedFor) {
    const auto largest = largestOf(built);
    std::vector<std::size_t> which;
    for (std::size_t i = 0; i < built.layout.conductors.size(); ++i) {
        const auto size = built.layout.conductors[i].size;
        if (designedFor && largest > *designedFor ? size > *designedFor : size == largest) {
            which.push_back(i);
        }
    }
    facts.links.sortById(which);
    std::vector<Subject> subjects;
    for (const std::size_t i : which) {
        subjects.emplace_back(built.layout.conductors[i].id);
    }
    return subjects;
}

void ofGutter(std::vector<Finding>& findings,
              const BuiltLayout& built,
              const Facts& facts,
              std::size_t) {
    const auto& gutter = built.gutter();
    if (gutter.article == standards::GutterArticle::auxiliaryGutter ||
        built.layout.conductors.empty()) {
        return;
    }
    const auto largest = largestOf(built);
    const auto& designedFor = gutter.largestConductor;
    Finding finding;
    finding.check = Check::largestConductor;
    finding.subjects = subjectsOf(built, facts, designedFor);
    finding.citation = sectionFor(built, standards::Rule::largestConductor);
    const std::string said = "the largest conductor is " + largest.text();
    if (designedFor) {
        finding.verdict = largest > *designedFor ? Verdict::breach : Verdict::meets;
        finding.working = sentence(said + ", where the wireway is designed for " +
                                   designedFor->text() + " at most");
    } else {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {"the largest conductor the wireway is designed for"};
        finding.working = sentence(said + ", and for which the wireway is designed is not stated");
    }
    findings.push_back(std::move(finding));
}

constexpr auto kSections = std::to_array<Section>({{Unit::gutter, reads::kNothing, ofGutter}});

}  // namespace

std::span<const Section> largestConductorSections() {
    return kSections;
}

std::vector<Finding> checkLargestConductor(const BuiltLayout& built) {
    return runChecks(built, {Check::largestConductor});
}

}  // namespace gw::checks
