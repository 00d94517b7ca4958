#include <array>

#include "base/contract.h"
#include "checks/entry_users.h"
#include "checks/support.h"
#include "checks/units.h"

/// Large insulated conductors come into the gutter over a smooth, rounded, insulating edge.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;

std::vector<std::size_t> largeOnes(const BuiltLayout& built,
                                   const std::vector<std::size_t>& users) {
    std::vector<std::size_t> large;
    for (const std::size_t i : users) {
        if (isLargeInsulated(built.layout.conductors[i])) {
            large.push_back(i);
        }
    }
    return large;
}

std::string bushingText(const std::optional<bool>& bushing) {
    if (!bushing) {
        return "whether it has an insulating bushing is not stated";
    }
    return *bushing ? "it has an insulating bushing" : "it has no insulating bushing";
}

/// From the 2023 edition on the order of work is part of the rule.
std::string orderOfWork(standards::Edition edition) {
    return edition >= standards::Edition::nec2023 ? ", to be in place before they are pulled" : "";
}

Finding findingAt(const BuiltLayout& built,
                  std::size_t entry,
                  const std::vector<std::size_t>& large) {
    const auto& bushing = built.layout.entries[entry].insulatingBushing;
    const auto unknown = insulationsMissing(built, large);
    Finding finding;
    finding.check = Check::insulatingBushing;
    finding.subjects = {built.layout.entries[entry].id};
    finding.place = built.entries[entry].centre;
    finding.citation = sectionFor(built, standards::Rule::insulatingBushing);
    finding.working =
        sentence(entryName(built, entry) + ": " + counted(large.size(), "conductor", "conductors") +
                 " of 4 AWG or larger, up to " + largestSize(built, large).text() + ", and " +
                 bushingText(bushing) + orderOfWork(built.layout.edition));
    finding.verdict = bushing == true ? Verdict::meets : Verdict::breach;
    if (!bushing) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {"insulating bushing at " + entryName(built, entry)};
    } else if (!*bushing && unknown.size() == large.size()) {
        finding.verdict = Verdict::cannotTell;  // all of them may be bare
        finding.missing = unknown;
    }
    return finding;
}

void ofEntry(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t entry) {
    const auto large = largeOnes(built, facts.links.atEntries[entry]);
    if (!large.empty()) {
        findings.push_back(findingAt(built, entry, large));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::entry, reads::kNothing, ofEntry}});

}  // namespace

std::span<const Section> insulatingBushingSections() {
    return kSections;
}

std::vector<Finding> checkInsulatingBushing(const BuiltLayout& built) {
    return runChecks(built, {Check::insulatingBushing});
}

}  // namespace gw::checks
