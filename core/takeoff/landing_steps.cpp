#include "takeoff/landing_steps.h"

#include "checks/landing_order.h"
#include "editing/fields.h"
#include "takeoff/words.h"

namespace gw::takeoff {
namespace {

using geometry::BuiltLayout;

std::string passesText(const BuiltLayout& built, const layout::Conductor& conductor) {
    std::string text;
    for (const auto& pass : conductor.passes) {
        text += (text.empty() ? "uncut through " : ", ") +
                editing::endText(built.layout, layout::InPort{pass.block, pass.port, {}, {}});
    }
    return text;
}

std::vector<Cell> stepOf(const BuiltLayout& built,
                         std::size_t number,
                         std::size_t round,
                         std::size_t index) {
    const auto& conductor = built.layout.conductors[index];
    return {static_cast<double>(number),
            static_cast<double>(round + 1),
            tagOf(conductor),
            conductor.size.text(),
            editing::endText(built.layout, conductor.from),
            passesText(built, conductor),
            editing::endText(built.layout, conductor.to)};
}

std::string knotText(const BuiltLayout& built, const std::vector<std::size_t>& knot) {
    std::string tags;
    for (const auto index : knot) {
        tags += (tags.empty() ? "" : ", ") + tagOf(built.layout.conductors[index]);
    }
    return "No order lands " + tags +
           ": each blocks another's screw or place. Lay them in together, "
           "or move one.";
}

}  // namespace

Table landingTable(const BuiltLayout& built) {
    const auto order = checks::landingOrder(built);
    Table table{
        "landing-order",
        "Landing order",
        "No conductor blocks the screw or the place of a later one. Conductors of one round "
        "can go in in any order.",
        {{"Step", Kind::count},
         {"Round", Kind::count},
         {"Tag"},
         {"Size"},
         {"From"},
         {"On the way"},
         {"To"}},
        {}};
    for (std::size_t step = 0; step < order.order.size(); ++step) {
        const auto index = order.order[step];
        table.rows.push_back(stepOf(built, step + 1, order.rounds[index], index));
    }
    for (const auto& knot : order.knots) {
        table.notes.push_back(knotText(built, knot));
    }
    return table;
}

}  // namespace gw::takeoff
