#include <algorithm>
#include <array>

#include "checks/support.h"
#include "checks/units.h"

/// How many disconnects the conductors of one service feed.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Role;
using standards::Edition;
using Circuits = std::vector<std::size_t>;

/// Source: NFPA 70 230.71, (A) in 2017 and (B) since.
constexpr std::size_t kMostDisconnects = 6;

/// Circuits that end in a disconnect. A tap or a service conductor from which others are tapped is
/// on the way to theirs; what is joined to a feeder or a branch lies beyond its disconnect.
Circuits disconnectsOf(const BuiltLayout& built, const Links& links, std::size_t circuit) {
    Circuits found;
    for (const std::size_t next : links.joinedBy[circuit]) {
        const Role role = built.layout.circuits[next].role;
        if (role == Role::bonding) {
            continue;
        }
        const bool goesOn = role == Role::tap || role == Role::service;
        const Circuits beyond = goesOn ? disconnectsOf(built, links, next) : Circuits{};
        if (beyond.empty()) {
            found.push_back(next);
        }
        found.insert(found.end(), beyond.begin(), beyond.end());
    }
    return found;
}

/// What the edition asks of them beside their number, which the layout does not say.
std::string formText(Edition edition) {
    switch (edition) {
        case Edition::nec2017:
            return "in this edition they may share one enclosure, which is not judged";
        case Edition::nec2020:
        case Edition::nec2023:
        case Edition::nec2026:
            return "from 2020 on each has to be in an enclosure or compartment of its own, which "
                   "is not judged";
    }
    return {};
}

Finding findingFor(const BuiltLayout& built, std::size_t service, Circuits disconnects) {
    const auto idOf = [&](std::size_t i) { return built.layout.circuits[i].id; };
    std::sort(disconnects.begin(), disconnects.end(), [&](std::size_t a, std::size_t b) {
        return idOf(a) < idOf(b);
    });
    Finding finding;
    finding.check = Check::serviceDisconnects;
    finding.citation = sectionFor(built, standards::Rule::disconnectCount);
    finding.subjects.emplace_back(idOf(service));
    for (const std::size_t i : disconnects) {
        finding.subjects.emplace_back(idOf(i));
    }
    judge(finding, count(disconnects.size()), count(kMostDisconnects), Bound::atMost);
    finding.working =
        sentence(circuitName(built, service) + " feeds " +
                 counted(disconnects.size(), "disconnect", "disconnects") + ", where " +
                 std::to_string(kMostDisconnects) + " are allowed" +
                 (disconnects.size() > 1 ? "; " + formText(built.layout.edition) : std::string()));
    return finding;
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t index) {
    const auto& circuit = built.layout.circuits[index];
    if (circuit.role != Role::service || circuit.joins) {
        return;
    }
    const Circuits disconnects = disconnectsOf(built, facts.links, index);
    if (!disconnects.empty()) {
        findings.push_back(findingFor(built, index, disconnects));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::circuit, reads::kNothing, ofCircuit}});

}  // namespace

std::span<const Section> serviceDisconnectsSections() {
    return kSections;
}

std::vector<Finding> checkServiceDisconnects(const BuiltLayout& built) {
    return runChecks(built, {Check::serviceDisconnects});
}

}  // namespace gw::checks
