#include <algorithm>
#include <array>
#include <set>

#include "checks/support.h"
#include "checks/units.h"
#include "parts/torque.h"
#include "standards/tables.h"

/// The tightening torque that belongs to each conductor in a port is stated by the part. It is
/// never invented: where it is not stated, the recommended value of the annex is told as something
/// to ask about.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using standards::Rule;

/// The screws of a port and what they say of one size.
struct Torques {
    std::size_t screws = 0;
    std::vector<std::string> silent;  ///< names of the screws that state none for the size
    std::set<double> poundInches;
    const parts::Screw* firstSilent = nullptr;
};

Torques torquesFor(const parts::Part& part, const parts::Port& port, units::WireSize size) {
    Torques torques;
    for (const parts::Screw& screw : part.screws) {
        if (screw.port != port.name) {
            continue;
        }
        ++torques.screws;
        if (const auto stated = parts::statedTorque(screw, size)) {
            torques.poundInches.insert(*stated);
        } else {
            torques.silent.push_back(screw.name.text());
            torques.firstSilent = torques.firstSilent == nullptr ? &screw : torques.firstSilent;
        }
    }
    return torques;
}

std::string lbfInText(double poundInches) {
    return units::formatDecimal(poundInches, 1) + " lbf-in";
}

/// What the annex recommends for a drive: recessed hex and square by their width, a slot by the
/// conductor's size (a large one, as on the screws of connectors this size). Empty: no such row.
std::optional<standards::Cited<double>> annexTorque(const parts::Screw& screw,
                                                    units::WireSize size,
                                                    standards::Edition edition) {
    const std::string& drive = screw.drive;
    const std::size_t space = drive.find(' ');
    const std::string kind = drive.substr(0, space);
    const std::string width =
        space == std::string::npos ? "" : drive.substr(space + 1, drive.rfind(" in") - space - 1);
    const auto found =
        kind == "slot"
            ? standards::annexTorqueByConductor(size, standards::ScrewHead::largeSlot, edition)
            : standards::annexTorqueByRecess(kind == "hex" || kind == "square" ? width : "",
                                             edition);
    return found ? std::optional(*found) : std::nullopt;
}

/// "Informative Annex I gives 120 lbf-in for a hex 1/4 in drive: ask the maker about it, do not use
/// it".
std::string fallbackText(const BuiltLayout& built,
                         const parts::Screw* screw,
                         units::WireSize size) {
    const auto annex =
        screw == nullptr ? std::nullopt : annexTorque(*screw, size, built.layout.edition);
    return annex ? "; only to ask the maker about, not to use: " + lbfInText(annex->value) +
                       " by " + annex->source.section + " for " + screw->drive
                 : "; ask the maker";
}

/// "conductor S1-A, 350 kcmil, in port 1 of block A".
std::string placeText(const BuiltLayout& built,
                      const Occupant& occupant,
                      std::size_t block,
                      std::size_t port) {
    return conductorName(built, occupant.conductor) + ", " +
           built.layout.conductors[occupant.conductor].size.text() + ", in " +
           portName(built, block, port);
}

Finding startOf(const BuiltLayout& built,
                const Occupant& occupant,
                std::size_t block,
                std::size_t port) {
    Finding finding;
    finding.check = Check::torqueKnown;
    finding.subjects = {built.layout.conductors[occupant.conductor].id,
                        built.layout.blocks[block].id};
    finding.place = built.blocks[block].ports[port].mouth;
    finding.citation = sectionFor(built, Rule::torque);
    return finding;
}

void tellUnknown(Finding& finding,
                 const BuiltLayout& built,
                 const Torques& torques,
                 const std::string& place,
                 std::size_t block,
                 units::WireSize size) {
    const std::string part = built.blocks[block].part->id.text();
    finding.verdict = Verdict::cannotTell;
    if (torques.screws == 0) {
        finding.missing = {"screws of part " + part, "torque of part " + part};
        finding.working = sentence("for " + place + ", neither screws nor torque are stated" +
                                   fallbackText(built, nullptr, size));
        return;
    }
    finding.missing = {"torque of part " + part + " for " + size.text() + ", screw " +
                       listed(torques.silent)};
    finding.working = sentence("for " + place + ", the part states no torque" +
                               fallbackText(built, torques.firstSilent, size));
}

Finding findingFor(const BuiltLayout& built,
                   const Occupant& occupant,
                   std::size_t block,
                   std::size_t portIndex) {
    const parts::Part& part = *built.blocks[block].part;
    const units::WireSize size = built.layout.conductors[occupant.conductor].size;
    const Torques torques = torquesFor(part, part.ports[portIndex], size);
    const std::string place = placeText(built, occupant, block, portIndex);
    Finding finding = startOf(built, occupant, block, portIndex);
    if (torques.screws == 0 || !torques.silent.empty()) {
        tellUnknown(finding, built, torques, place, block, size);
        return finding;
    }
    std::vector<std::string> values;
    for (const double value : torques.poundInches) {
        values.push_back(lbfInText(value));
    }
    finding.verdict = Verdict::meets;
    finding.working = sentence("for " + place + ", the part states " + listed(values) + " on " +
                               counted(torques.screws, "screw", "screws"));
    return finding;
}

void ofBlock(std::vector<Finding>& findings,
             const BuiltLayout& built,
             const Facts& facts,
             std::size_t block) {
    for (std::size_t port = 0; port < built.blocks[block].ports.size(); ++port) {
        for (const Occupant& occupant : facts.occupancy.of(block, port)) {
            findings.push_back(findingFor(built, occupant, block, port));
        }
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::block, reads::kBlocks, ofBlock}});

}  // namespace

std::span<const Section> torqueKnownSections() {
    return kSections;
}

std::vector<Finding> checkTorqueKnown(const BuiltLayout& built) {
    return runChecks(built, {Check::torqueKnown});
}

}  // namespace gw::checks
