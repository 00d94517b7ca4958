#include "checks/bending_force.h"

#include <algorithm>
#include <cmath>

#include "base/contract.h"
#include "standards/tables.h"

namespace gw::checks {
namespace {

using standards::Metal;

constexpr double kPi = 3.14159265358979323846;
constexpr double kPsiPerMpa = 145.037737730;  // 1 lbf = 4.4482216152605 N, 1 in = 25.4 mm

struct MetalRow {
    double modulus;  ///< MPa
    Band flow;       ///< MPa: the stress at which it yields
};
constexpr MetalRow kCopper{117000.0, {54.0, 100.0}};
constexpr MetalRow kAluminium{69000.0, {28.0, 103.0}};

struct Strand {
    double count;
    double diameter;  ///< inches
};

/// Layers of a hexagonal strand of n wires: n = 1 + 3 m (m + 1).
double layersOf(double wires) {
    return (std::sqrt(1.0 + 4.0 * (wires - 1.0) / 3.0) - 1.0) / 2.0;
}

/// E I with all wires stuck over that with all sliding: (n + 48 sum k³)/n over the layers k, whose
/// wires lie k diameters from the middle.
double stuckStiffness(double wires) {
    return 1.0 + 4.0 / 3.0 * (wires - 1.0) * (wires - 1.0) / wires;
}

/// The like for the plastic moment: the mean of |y| over the wires, averaged over their attitudes,
/// is (2/pi)(k + 1/(32 k)) diameters in layer k.
double stuckMoment(double wires) {
    const double m = layersOf(wires);
    const double sumOfSquares = m * (m + 1.0) * (2.0 * m + 1.0) / 6.0;
    return (1.0 + 18.0 * (sumOfSquares + m / 32.0)) / wires;
}

/// What a bend loses when it is let go: 16/(3 pi) times twice the yield strain over the diameter,
/// for each inch of arc, whatever the radius.
double openingOf(const MetalRow& metal, const Strand& strand) {
    return 16.0 / (3.0 * kPi) * 2.0 * metal.flow.greatest / (metal.modulus * strand.diameter);
}

BendingForce forceOf(const MetalRow& metal, const Strand& strand) {
    const double d = strand.diameter;
    const double n = strand.count;
    const double sliding = metal.modulus * kPsiPerMpa * n * kPi * std::pow(d, 4) / 64.0;
    const double section = n * std::pow(d, 3) / 6.0;
    return {{sliding, sliding * stuckStiffness(n)},
            {metal.flow.least * kPsiPerMpa * section,
             metal.flow.greatest * kPsiPerMpa * section * stuckMoment(n)},
            openingOf(metal, strand)};
}

Band widest(const Band& a, const Band& b) {
    return {std::min(a.least, b.least), std::max(a.greatest, b.greatest)};
}

BendingForce either(const BendingForce& a, const BendingForce& b) {
    return {widest(a.stiffness, b.stiffness),
            widest(a.moment, b.moment),
            std::max(a.opening, b.opening)};
}

BendingForce ofMetal(const std::optional<Metal>& metal, const Strand& strand) {
    if (!metal) {
        return either(forceOf(kCopper, strand), forceOf(kAluminium, strand));
    }
    return forceOf(*metal == Metal::copper ? kCopper : kAluminium, strand);
}

}  // namespace

BendingForce bendingForce(units::WireSize size,
                          std::optional<Metal> metal,
                          standards::Edition edition) {
    const auto count = standards::strandCount(size, standards::Stranding::classB, edition);
    CONTRACT(count.has_value());  // the table has class B of every size
    const double n = count->value;
    return ofMetal(metal, {n, std::sqrt(size.circularMils() / n) / 1000.0});
}

Band pushOf(const BendingForce& force, double proud, double free) {
    CONTRACT(free > 0.0 && proud >= 0.0);
    const double perStiffness = 3.0 * proud / (free * free * free);
    return {std::min(force.stiffness.least * perStiffness, force.moment.least / free),
            std::min(force.stiffness.greatest * perStiffness, force.moment.greatest / free)};
}

}  // namespace gw::checks
