#include <algorithm>
#include <array>

#include "standards/look_up.h"
#include "standards/rows/bend_radius_multiples.h"
#include "standards/rows/bending_space_at_terminals_a.h"
#include "standards/rows/bending_space_opposite_wall_b.h"
#include "standards/tables.h"

namespace gw::standards {
namespace {

using units::Inches;
using units::WireSize;

/// The row for a size: by the compact column where that applies and names the size, else by the
/// ordinary one.
template <class Rows>
auto rowFor(const Rows& table, WireSize size, bool compact) -> decltype(table.data()) {
    if (compact) {
        for (const auto& row : table) {
            if (covers(row.compactSizes, size)) {
                return &row;
            }
        }
    }
    for (const auto& row : table) {
        if (covers(row.sizes, size)) {
            return &row;
        }
    }
    return nullptr;
}

Lookup<BendingSpace> spaceFrom(double cell,
                               double reduction,
                               const std::string& asked,
                               Citation source) {
    if (isBlank(cell)) {
        return noValue<BendingSpace>("the table has no value for " + asked, std::move(source));
    }
    if (cell == rows::kNotSpecified) {
        return answer(BendingSpace{}, std::move(source));
    }
    return answer(BendingSpace{Inches::of(cell), Inches::of(isBlank(reduction) ? 0.0 : reduction)},
                  std::move(source));
}

/// The basis of a row is that of its weakest cell: in this table the one of three wires.
Basis basisOf(const rows::BendingARow& row, int wires) {
    return row.basis == Basis::memory && wires != 3 ? Basis::seen : row.basis;
}

std::string askedText(WireSize size, int wires) {
    return std::to_string(wires) + (wires == 1 ? " wire of " : " wires of ") + size.text() +
           " at a terminal";
}

}  // namespace

Lookup<BendingSpace> bendingSpaceAtTerminalA(WireSize size,
                                             bool compactAluminium,
                                             int wires,
                                             Edition edition) {
    const std::string table = "Table 312.6(A)";
    const auto* row = rowFor(rows::kBendingARows, size, compactAluminium);
    if (row == nullptr || wires < 1 || wires > 5) {
        return noValue<BendingSpace>("the table has no value for " + askedText(size, wires),
                                     tableCitation(edition, table, Basis::seen));
    }
    // "Not specified" stands in the first column and holds for the whole row.
    const std::array<double, 5> cells = {
        row->wires1, row->wires2, row->wires3, row->wires4, row->wires5};
    const double cell =
        row->wires1 == rows::kNotSpecified ? row->wires1 : cells.at(std::size_t(wires - 1));
    const bool byCompact = compactAluminium && covers(row->compactSizes, size);
    return spaceFrom(cell,
                     rows::kBlank,
                     askedText(size, wires),
                     tableCitation(edition,
                                   table,
                                   byCompact ? Basis::memory : basisOf(*row, wires),
                                   byCompact ? "compact AA-8000 column" : ""));
}

Lookup<BendingSpace> bendingSpaceOppositeWallB(WireSize size,
                                               bool compactAluminium,
                                               int wires,
                                               Edition edition) {
    const std::string table = "Table 312.6(B)";
    const auto* row = rowFor(rows::kBendingBRows, size, compactAluminium);
    if (row == nullptr || wires < 1) {
        return noValue<BendingSpace>("the table has no value for " + askedText(size, wires),
                                     tableCitation(edition, table, Basis::seen));
    }
    const std::array<double, 4> cells = {row->wires1, row->wires2, row->wires3, row->wires4};
    const std::array<double, 4> less = {
        row->reduction1, row->reduction2, row->reduction3, row->reduction4};
    const auto column = std::size_t(std::min(wires, 4) - 1);
    const double cell = row->wires1 == rows::kNotSpecified ? row->wires1 : cells.at(column);
    return spaceFrom(
        cell,
        less.at(column),
        askedText(size, wires),
        tableCitation(
            edition,
            table,
            row->basis,
            compactAluminium && covers(row->compactSizes, size) ? "compact AA-8000 column" : ""));
}

namespace {

/// The printed bounds of the training rule: by insulation thickness, then by overall diameter.
std::string_view insulationBand(double thickness) {
    return thickness <= 0.156 ? "<= 0.156" : thickness <= 0.315 ? "0.157-0.315" : "> 0.315";
}

/// The trade table that steps at 25 mm: for metric cable, seen in one place.
Lookup<double> byTwentyFiveMillimetres(Inches diameter, bool installing) {
    constexpr double kStep = 25.0;
    const bool thin = diameter.mm() <= kStep;
    const double multiple = installing ? (thin ? 6.0 : 9.0) : (thin ? 4.0 : 6.0);
    return answer(multiple,
                  Citation{"trade table of internal radii",
                           installing ? "while installing" : "in place",
                           Basis::seen,
                           "not NFPA 70"});
}

std::string_view diameterBand(double diameter) {
    return diameter <= 1.0 ? "<= 1.000" : diameter <= 2.0 ? "1.001-2.000" : "> 2.000";
}

}  // namespace

Lookup<double> bendRadiusMultiple(Inches overallDiameter,
                                  Inches insulation,
                                  BendRule rule,
                                  Edition edition) {
    if (rule == BendRule::over1000V) {
        const bool moved = edition == Edition::nec2023 || edition == Edition::nec2026;
        return answer(8.0,
                      tableCitation(edition,
                                    moved ? "305.5" : "300.34",
                                    moved ? Basis::memory : Basis::seenTwice,
                                    "for over 1000 V, nonshielded"));
    }
    if (rule == BendRule::atRest || rule == BendRule::installing) {
        return byTwentyFiveMillimetres(overallDiameter, rule == BendRule::installing);
    }
    const Citation source{"ICEA S-95-658/NEMA WC 70", "training radius", Basis::seen, {}};
    for (const auto& row : rows::kBendRadiusRows) {
        if (row.insulation == insulationBand(insulation.in()) &&
            row.diameter == diameterBand(overallDiameter.in())) {
            return answer(double(row.multiple.front() - '0'), source);
        }
    }
    return noValue<double>("the training table has no row for this insulation and diameter",
                           source);
}

}  // namespace gw::standards
