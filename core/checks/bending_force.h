#pragma once

#include <optional>

#include "standards/citation.h"
#include "standards/kinds.h"
#include "units/wire_size.h"

/// How stiff a stranded conductor is, and how hard it pushes when something holds it back. Between
/// wires that slide on one another and wires that stick together lies a factor of twenty and more:
/// every number here is a pair, and an estimate.
///
/// A class B conductor of n wires of diameter d, the wires in hexagonal layers. Sliding: each wire
/// bends by itself. Sticking: all bend about the middle (parallel-axis theorem). Insulation is left
/// out; it adds about a tenth to the smaller number.
namespace gw::checks {

struct Band {
    double least = 0.0;
    double greatest = 0.0;
};

struct BendingForce {
    Band stiffness;        ///< E I, lbf-in²
    Band moment;           ///< lbf-in: the conductor yields and holds no more
    double opening = 0.0;  ///< radians a bend springs open, at most, for each inch of its arc
};

/// Of that size; without a metal the widest band over copper and aluminium. Copper-clad aluminium
/// counts as aluminium.
/// Source: n from NFPA 70 Chapter 9 Table 10. Copper: 117 GPa and 54 MPa (Smithells, Metals
/// Reference Book, Table 22.7), up to 100 MPa bent (from memory). Aluminium: 69 GPa and 28 MPa
/// (Kutz, Handbook of Materials Selection, Table 5), up to 103 MPa half-hard (least strength of
/// AA-8176-H24 wire).
BendingForce bendingForce(units::WireSize size,
                          std::optional<standards::Metal> metal,
                          standards::Edition edition);

/// lbf at the tip of a conductor held at one end: `free` inches beyond its support it is pressed
/// back by `proud` inches. 3 E I proud / free³, and no more than moment / free. REQUIRES free > 0,
/// proud >= 0. Good while proud is below 0.15 of free; beyond that the moment speaks.
Band pushOf(const BendingForce& force, double proud, double free);

}  // namespace gw::checks
