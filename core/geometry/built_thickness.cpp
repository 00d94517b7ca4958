#include "base/contract.h"
#include "geometry/built_pieces.h"
#include "standards/tables.h"

namespace gw::geometry {
namespace {

Thickness statedThickness(units::Inches diameter) {
    return {diameter,
            units::SquareInches::ofCircle(diameter),
            {"stated outside diameter", {}, standards::Basis::layoutData, {}},
            {}};
}

Thickness largestThickness(units::WireSize size,
                           standards::Edition edition,
                           const std::string& missing) {
    const auto largest = standards::largestInsulatedConductor(size, edition);
    CONTRACT(largest.has_value());  // the table has a row for every size there is
    return {largest->value.diameter, largest->value.area, largest->source, missing};
}

}  // namespace

Thickness thicknessOf(const layout::Conductor& conductor, standards::Edition edition) {
    if (conductor.outsideDiameter) {
        return statedThickness(*conductor.outsideDiameter);
    }
    if (!conductor.insulation || !conductor.stranding) {
        return largestThickness(
            conductor.size, edition, conductor.insulation ? "stranding" : "insulation");
    }
    const auto found = standards::insulatedConductor(
        conductor.size, *conductor.insulation, *conductor.stranding, edition);
    if (!found) {
        return largestThickness(conductor.size, edition, "outside diameter");
    }
    return {found->value.diameter, found->value.area, found->source, {}};
}

}  // namespace gw::geometry
