#include "checks/least_radius.h"

#include <algorithm>

#include "base/contract.h"
#include "checks/diameters.h"
#include "checks/support.h"

namespace gw::checks {

standards::Cited<double> bendMultiple(units::Inches diameter,
                                      units::Inches insulation,
                                      const layout::Layout& layout) {
    auto rule = standards::bendRadiusMultiple(
        diameter, insulation, standards::BendRule::training, layout.edition);
    CONTRACT(rule.has_value());
    rule->source.note = "the code has none to 1000 V";
    return amended(*rule, layout.amendments.bendRadiusMultiple, layout);
}

double leastBendRadius(const layout::Layout& layout,
                       const layout::Conductor& conductor,
                       units::Inches diameter) {
    const double bare = leastBareDiameter(conductor, layout.edition);
    const auto covering = units::Inches::of(std::max(0.0, diameter.in() - bare) / 2.0);
    const double multiple = std::max(bendMultiple(diameter, covering, layout).value,
                                     bendMultiple(diameter, kThinInsulation, layout).value);
    return (multiple + 0.5) * diameter.in();
}

}  // namespace gw::checks
