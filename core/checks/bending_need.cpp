#include "checks/bending_need.h"

#include "base/contract.h"
#include "base/tolerance.h"
#include "checks/support.h"
#include "standards/tables.h"

namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using standards::BendingSpace;
using standards::Lookup;
using standards::Metal;
using standards::Stranding;

using Table = Lookup<BendingSpace> (*)(units::WireSize, bool, int, standards::Edition);

enum class Compact { no, yes, notKnown };

Compact isCompactAluminium(const layout::Conductor& conductor) {
    const auto& metal = conductor.metal;
    const auto& stranding = conductor.stranding;
    if ((metal && *metal != Metal::aluminium) || (stranding && *stranding != Stranding::compact)) {
        return Compact::no;
    }
    return metal && stranding ? Compact::yes : Compact::notKnown;
}

std::vector<std::string> notStated(const BuiltLayout& built, std::size_t index) {
    const auto& conductor = built.layout.conductors[index];
    std::vector<std::string> missing;
    if (!conductor.metal) {
        missing.push_back("metal of " + conductorName(built, index));
    }
    if (!conductor.stranding) {
        missing.push_back("stranding of " + conductorName(built, index));
    }
    return missing;
}

std::string wiresText(std::size_t wires, units::WireSize size) {
    return counted(wires, "wire", "wires") + " of " + size.text();
}

/// Which table was read, in few words: the rule that calls for it is the finding's citation.
std::string tableText(const standards::Citation& source) {
    return source.section +
           (source.basis == standards::Basis::memory ? ", from memory" : std::string());
}

SpaceNeed needOf(const Lookup<BendingSpace>& found, const std::string& wires) {
    SpaceNeed need;
    if (!found) {
        need.source = found.error().asked;
        need.missing = {"a published bending space for " + wires + " at a terminal"};
        need.text = found.error().why + " (" + tableText(need.source) + ")";
        return need;
    }
    need.source = found->source;
    const std::string cited = " for " + wires + " (" + tableText(need.source) + ")";
    const auto& least = found->value.least;
    if (!least) {
        need.kind = SpaceNeed::Kind::notSpecified;
        need.text = "no space is specified" + cited;
        return need;
    }
    need.kind = SpaceNeed::Kind::space;
    need.least = least->in();
    need.text = inText(need.least) + " is needed" + cited;
    return need;
}

SpaceNeed needBy(Table table, const BuiltLayout& built, std::size_t index, std::size_t wires) {
    const auto& conductor = built.layout.conductors[index];
    const Compact compact = isCompactAluminium(conductor);
    const auto look = [&](bool byCompact) {
        return table(conductor.size, byCompact, static_cast<int>(wires), built.layout.edition);
    };
    SpaceNeed need = needOf(look(compact == Compact::yes), wiresText(wires, conductor.size));
    if (compact == Compact::notKnown && need.kind == SpaceNeed::Kind::space) {
        const auto other = needOf(look(true), wiresText(wires, conductor.size));
        const double least = other.kind == SpaceNeed::Kind::noValue ? need.least : other.least;
        if (least < need.least) {
            need.leastIfCompact = least;
            need.missing = notStated(built, index);
        }
    }
    return need;
}

double marginOf(const SpaceNeed& need, double space) {
    return need.kind == SpaceNeed::Kind::space ? space - need.least : space;
}

}  // namespace

SpaceNeed needByTableA(const BuiltLayout& built, std::size_t conductor, std::size_t wires) {
    return needBy(standards::bendingSpaceAtTerminalA, built, conductor, wires);
}

SpaceNeed needByTableB(const BuiltLayout& built, std::size_t conductor, std::size_t wires) {
    return needBy(standards::bendingSpaceOppositeWallB, built, conductor, wires);
}

Verdict verdictOf(const SpaceNeed& need, double space) {
    switch (need.kind) {
        case SpaceNeed::Kind::notSpecified:
            return Verdict::meets;
        case SpaceNeed::Kind::noValue:
            return Verdict::cannotTell;
        case SpaceNeed::Kind::space:
            break;
    }
    if (atLeast(space, need.least)) {
        return Verdict::meets;
    }
    const bool ifCompact = need.leastIfCompact && atLeast(space, *need.leastIfCompact);
    return ifCompact ? Verdict::cannotTell : Verdict::breach;
}

bool isWorse(const SpaceNeed& a, double spaceA, const SpaceNeed& b, double spaceB) {
    const int graveA = gravity(verdictOf(a, spaceA));
    const int graveB = gravity(verdictOf(b, spaceB));
    if (graveA != graveB) {
        return graveA > graveB;
    }
    return marginOf(a, spaceA) < marginOf(b, spaceB);
}

void judgeSpace(Finding& finding, const SpaceNeed& need, double space) {
    finding.measured = inches(space);
    if (need.kind == SpaceNeed::Kind::space) {
        judge(finding, inches(space), inches(need.least), Bound::atLeast);
    }
    finding.verdict = verdictOf(need, space);
    if (finding.verdict == Verdict::cannotTell) {
        finding.missing = need.missing;
    }
}

}  // namespace gw::checks
