#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "checks/support.h"
#include "checks/units.h"
#include "geometry/solids.h"

/// With what force the phases of a circuit drive each other apart in a fault, and how close ties
/// would have to be: for information, no rule asks it of a gutter.
namespace gw::checks {
namespace {

using geometry::BuiltLayout;
using layout::Circuit;
using layout::Phase;

/// What five wraps of nylon rope of 3/8 in (2000 lbf) are trusted with: a quarter of its strength,
/// each. Five wraps of such rope are what labels of switchboards ask for; the quarter is a
/// judgement.
constexpr double kTie = 5.0 * 500.0;  // lbf

// ---- the current ----------------------------------------------------------------------------

/// X/R of the circuits in which low-voltage breakers of that rating are tested. Source: Tri-Service
/// Electrical Working Group, TP-6, Low-voltage breaker interrupting ratings.
double reactanceRatio(double kiloamperes) {
    if (kiloamperes <= 10.0) {
        return 1.73;
    }
    return kiloamperes <= 20.0 ? 3.18 : 4.90;
}

/// Peak over effective value of the first half-wave, by IEC 60909: kappa times the root of 2.
double peakFactor(double ratio) {
    return (1.02 + 0.98 * std::exp(-3.0 / ratio)) * std::sqrt(2.0);
}

/// kA in one conductor, the sets sharing alike.
double peakOf(const Circuit& circuit, double kiloamperes) {
    return peakFactor(reactanceRatio(kiloamperes)) * kiloamperes / circuit.sets;
}

// ---- the force ------------------------------------------------------------------------------

bool isLine(Phase phase) {
    return phase == Phase::a || phase == Phase::b || phase == Phase::c;
}

bool isThreePhase(const Circuit& circuit) {
    return std::count_if(circuit.phases.begin(), circuit.phases.end(), isLine) == 3;
}

/// lbf per ft on the worst placed of long parallel conductors. N/m: 0.2 i²/a between two that carry
/// the same current, with i in kA and a in m; of three phases the middle one in a row, or any in a
/// triangle, gets the root of 3 over 2 of that.
double forceOf(bool threePhase, double peak, double apart) {
    constexpr double kMetresPerInch = 0.0254;
    constexpr double kPerNewtonMetre = 0.3048 / 4.4482216152605;  // lbf/ft
    const double share = threePhase ? std::sqrt(3.0) / 2.0 : 1.0;
    return share * 0.2 * peak * peak / (apart * kMetresPerInch) * kPerNewtonMetre;
}

/// inches between ties. In a triangle a band pulls with the force over the root of 3, around two
/// conductors with half of it.
double tieEvery(bool threePhase, double force) {
    constexpr double kInchesPerFoot = 12.0;
    return (threePhase ? std::sqrt(3.0) : 2.0) * kTie / force * kInchesPerFoot;
}

// ---- who lies next to whom ------------------------------------------------------------------

struct Nearest {
    std::size_t a = 0;
    std::size_t b = 0;
    double apart = 0.0;  ///< inches between centres, no less than touching
    Vec3 at;
};

/// The conductors of a circuit between which a fault current flows: the phases, and with the
/// neutral where there are fewer than three.
std::vector<std::size_t> carriersOf(const BuiltLayout& built,
                                    const Circuit& circuit,
                                    const std::vector<std::size_t>& members) {
    std::vector<std::size_t> carriers;
    for (const std::size_t i : members) {
        const Phase phase = built.layout.conductors[i].phase;
        if (isLine(phase) || (phase == Phase::n && !isThreePhase(circuit))) {
            carriers.push_back(i);
        }
    }
    return carriers;
}

geometry::Tube tubeOf(const geometry::BuiltConductor& conductor) {
    const auto& path = conductor.built.path;
    return {&path, conductor.radius(), 0.0, path.length().in()};
}

geometry::Box centrelineBox(const geometry::BuiltConductor& conductor) {
    const auto& path = conductor.built.path;
    return geometry::bounds({&path, 0.0, 0.0, path.length().in()});
}

double touching(const BuiltLayout& built, std::size_t a, std::size_t b) {
    return built.conductors[a].radius() + built.conductors[b].radius();
}

Nearest nearestOf(const BuiltLayout& built, std::size_t a, std::size_t b) {
    const auto closest =
        geometry::clearance(tubeOf(built.conductors[a]), tubeOf(built.conductors[b]));
    return {a,
            b,
            touching(built, a, b) + std::max(0.0, closest.gap.in()),
            (closest.onA + closest.onB) * 0.5};
}

/// The two of different phases that lie nearest to each other. Nearer than touching, and than
/// the boxes around their centrelines, is none, so that most need not be measured.
std::optional<Nearest> nearestPair(const BuiltLayout& built,
                                   const std::vector<std::size_t>& carriers) {
    const auto& conductors = built.layout.conductors;
    std::vector<geometry::Box> boxes;
    boxes.reserve(carriers.size());
    for (const std::size_t i : carriers) {
        boxes.push_back(centrelineBox(built.conductors[i]));
    }
    std::optional<Nearest> nearest;
    for (std::size_t a = 0; a < carriers.size(); ++a) {
        for (std::size_t b = a + 1; b < carriers.size(); ++b) {
            const bool apart = conductors[carriers[a]].phase != conductors[carriers[b]].phase;
            const double between = geometry::clearance(boxes[a], boxes[b]).in() - kClearanceError;
            const double least = std::max(between, touching(built, carriers[a], carriers[b]));
            if (!apart || (nearest && nearest->apart <= least)) {
                continue;
            }
            const Nearest pair = nearestOf(built, carriers[a], carriers[b]);
            if (!nearest || pair.apart < nearest->apart) {
                nearest = pair;
            }
        }
    }
    return nearest;
}

std::string kiloamperesText(double value) {
    return units::formatDecimal(value, 1) + " kA";
}

/// In a gutter shorter than the interval one tie holds them all.
std::string tiesText(const BuiltLayout& built, double every) {
    const std::string ties = "of 5 wraps of rope (500 lbf each)";
    return every >= built.gutter().inside.x
               ? "one tie " + ties + " holds them"
               : "ties " + ties + " every " + units::formatDecimal(every, 1) + " in hold them";
}

Finding findingFor(const BuiltLayout& built,
                   std::size_t index,
                   const Nearest& nearest,
                   double kiloamperes) {
    const Circuit& circuit = built.layout.circuits[index];
    const bool threePhase = isThreePhase(circuit);
    const double peak = peakOf(circuit, kiloamperes);
    const double force = forceOf(threePhase, peak, nearest.apart);
    Finding finding;
    finding.check = Check::faultForces;
    finding.subjects = {
        circuit.id, built.layout.conductors[nearest.a].id, built.layout.conductors[nearest.b].id};
    finding.place = nearest.at;
    finding.measured = Quantity{force, Quantity::Unit::poundsForcePerFoot};
    finding.citation = {"IEC 60909 peak current, force between long parallel conductors",
                        {},
                        standards::Basis::seen,
                        "for information: no rule asks it of a gutter"};
    finding.working = sentence(
        circuitName(built, index) + ": " + kiloamperesText(kiloamperes) + " make peaks of " +
        kiloamperesText(peak) + " in each; " + conductorName(built, nearest.a) + " and " +
        conductorName(built, nearest.b) + ", " + inText(nearest.apart) +
        " between centres, then get up to " + toText(given(finding.measured)) + "; " +
        tiesText(built, tieEvery(threePhase, force)));
    return finding;
}

void ofCircuit(std::vector<Finding>& findings,
               const BuiltLayout& built,
               const Facts& facts,
               std::size_t circuit) {
    const auto& system = built.layout.systems[facts.links.systemOf[circuit]];
    if (!system.faultKiloamperes) {
        return;
    }
    const auto carriers =
        carriersOf(built, built.layout.circuits[circuit], facts.links.members[circuit]);
    if (const auto nearest = nearestPair(built, carriers)) {
        findings.push_back(findingFor(built, circuit, *nearest, *system.faultKiloamperes));
    }
}

constexpr auto kSections = std::to_array<Section>({{Unit::circuit, reads::kPaths, ofCircuit}});

}  // namespace

std::span<const Section> faultForcesSections() {
    return kSections;
}

std::vector<Finding> checkFaultForces(const BuiltLayout& built) {
    return runChecks(built, {Check::faultForces});
}

}  // namespace gw::checks
