#include <algorithm>
#include <array>

#include "checks/metal_area.h"
#include "checks/support.h"
#include "checks/units.h"

/// Metal raceways with service conductors are bonded to the gutter by more than standard locknuts,
/// and the jumper of a bonding bushing is large enough.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::BondedBy;
using standards::RacewayType;

std::vector<std::size_t> onSide(const BuiltLayout& built,
                                const Links& links,
                                const std::vector<std::size_t>& users,
                                Side side) {
    std::vector<std::size_t> found;
    std::copy_if(users.begin(), users.end(), std::back_inserter(found), [&](std::size_t i) {
        return links.sideOf(built, i) == side;
    });
    return found;
}

Finding startOf(const BuiltLayout& built, std::size_t entry) {
    Finding finding;
    finding.check = Check::serviceBonding;
    finding.subjects = {built.layout.entries[entry].id};
    finding.place = built.entries[entry].centre;
    finding.citation = sectionFor(built, standards::Rule::serviceBonding);
    return finding;
}

Finding notStated(const BuiltLayout& built, std::size_t entry, const std::string& what) {
    Finding finding = startOf(built, entry);
    finding.verdict = Verdict::cannotTell;
    finding.missing = {what + " at " + entryName(built, entry)};
    finding.working = sentence(entryName(built, entry) + " brings in service conductors, and " +
                               what + " is not stated");
    return finding;
}

Finding perhapsService(const BuiltLayout& built, std::size_t entry, std::size_t index) {
    const std::string circuit = circuitName(built, index);
    Finding finding = startOf(built, entry);
    finding.verdict = Verdict::cannotTell;
    finding.missing = {"what " + circuit + " is tapped from"};
    finding.working = sentence("whether " + entryName(built, entry) +
                               " brings in service conductors is not known: what " + circuit +
                               " is tapped from is not stated");
    return finding;
}

/// The jumper of this raceway alone, by the conductors in it.
Finding jumperFinding(const BuiltLayout& built,
                      std::size_t entry,
                      const std::vector<std::size_t>& service) {
    const auto& jumper = built.layout.entries[entry].bondingJumper;
    if (!jumper) {
        return notStated(built, entry, "the size of the bonding jumper");
    }
    Finding finding = startOf(built, entry);
    const std::string start =
        entryName(built, entry) + " is bonded by a jumper of " + jumper->text() + " copper, and ";
    const auto area = ungroundedArea(built, service);
    if (!area) {
        finding.verdict = Verdict::cannotTell;
        finding.missing = {"the ungrounded conductors that belong to " + entryName(built, entry)};
        finding.working = sentence(start + "no ungrounded conductor comes in by it to size it by");
        return finding;
    }
    judgeJumper(finding, {*jumper, standards::Metal::copper}, *area, built.layout.edition);
    finding.working = sentence(start + neededText(*area, standards::Metal::copper, built));
    return finding;
}

Finding meansFinding(const BuiltLayout& built, std::size_t entry, BondedBy means) {
    Finding finding = startOf(built, entry);
    finding.verdict = means == BondedBy::standardLocknuts ? Verdict::breach : Verdict::meets;
    finding.working =
        sentence(entryName(built, entry) + " brings in service conductors and is bonded by " +
                 std::string(layout::bondedByText(means)) +
                 (means == BondedBy::standardLocknuts ? ", which alone do not bond it" : ""));
    return finding;
}

Finding findingAt(const BuiltLayout& built,
                  std::size_t entry,
                  const std::vector<std::size_t>& service) {
    const auto& one = built.layout.entries[entry];
    if (!one.raceway) {
        return notStated(built, entry, "whether the raceway is of metal");
    }
    if (!one.bondedBy) {
        return notStated(built, entry, "what bonds the raceway to the gutter");
    }
    return *one.bondedBy == BondedBy::bushingAndJumper ? jumperFinding(built, entry, service)
                                                       : meansFinding(built, entry, *one.bondedBy);
}

void ofEntry(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t entry) {
    if (built.gutter().material == layout::GutterMaterial::nonmetallic ||
        built.layout.entries[entry].raceway == RacewayType::pvc40) {
        return;
    }
    const Links& links = facts.links;
    const auto service = onSide(built, links, links.atEntries[entry], Side::service);
    const auto doubtful = onSide(built, links, links.atEntries[entry], Side::unknown);
    if (!service.empty()) {
        findings.push_back(findingAt(built, entry, service));
    } else if (!doubtful.empty()) {
        findings.push_back(perhapsService(built, entry, links.circuitOf[doubtful.front()]));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::entry, reads::kNothing, ofEntry}});

}  // namespace

std::span<const Section> serviceBondingSections() {
    return kSections;
}

std::vector<Finding> checkServiceBonding(const BuiltLayout& built) {
    return runChecks(built, {Check::serviceBonding});
}

}  // namespace gw::checks
