#include "editing/port_room.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/tolerance.h"
#include "standards/tables.h"

namespace gw::editing {
namespace {

using geometry::Box;
using geometry::BuiltLayout;

std::optional<units::WireSize> largestTaken(const parts::Port& port) {
    std::optional<units::WireSize> largest;
    for (const parts::PortRange& range : port.accepts) {
        largest = largest ? std::max(*largest, range.largest) : range.largest;
    }
    return largest;
}

/// Inches; empty where the table asks for nothing or has nothing.
std::optional<double> lengthFor(const parts::Port& port, standards::Edition edition) {
    const auto size = largestTaken(port);
    if (!size) {
        return std::nullopt;
    }
    const auto found = standards::bendingSpaceAtTerminalA(*size, false, 1, edition);
    return found && found->value.least ? std::optional(found->value.least->in()) : std::nullopt;
}

Box boxBefore(const Vec3& mouth, const Vec3& out, double length, double half) {
    const Vec3 end = mouth + out * length;
    const Vec3 across{
        out.x == 0.0 ? half : 0.0, out.y == 0.0 ? half : 0.0, out.z == 0.0 ? half : 0.0};
    const Vec3 least{std::min(mouth.x, end.x), std::min(mouth.y, end.y), std::min(mouth.z, end.z)};
    const Vec3 greatest{
        std::max(mouth.x, end.x), std::max(mouth.y, end.y), std::max(mouth.z, end.z)};
    return {least - across, greatest + across};
}

bool liesIn(const Box& box, const Vec3& inside) {
    return box.least.x >= -kLimitSlack && box.least.y >= -kLimitSlack &&
           box.least.z >= -kLimitSlack && box.greatest.x <= inside.x + kLimitSlack &&
           box.greatest.y <= inside.y + kLimitSlack && box.greatest.z <= inside.z + kLimitSlack;
}

bool nearIsOpen(const layout::Block& block, const parts::Port& port) {
    if (port.opening != parts::PortOpening::either) {
        return true;
    }
    const auto stated = std::find_if(block.openMouths.begin(),
                                     block.openMouths.end(),
                                     [&](const auto& mouth) { return mouth.port == port.name; });
    return stated == block.openMouths.end() || stated->near;
}

bool farIsOpen(const layout::Block& block, const parts::Port& port) {
    return port.opening == parts::PortOpening::both ||
           (port.opening == parts::PortOpening::either && !nearIsOpen(block, port));
}

}  // namespace

std::vector<PortRoom> portRooms(const BuiltLayout& built, std::size_t block) {
    std::vector<PortRoom> rooms;
    const auto& here = built.blocks[block];
    for (std::size_t i = 0; i < here.ports.size(); ++i) {
        const parts::Port& port = here.part->ports[i];
        const auto length = lengthFor(port, built.layout.edition);
        if (!length) {
            continue;
        }
        const auto add = [&](const Vec3& mouth, const Vec3& out) {
            const Box box = boxBefore(mouth, out, *length, port.boreDiameter.in() / 2.0);
            rooms.push_back({box, liesIn(box, built.gutter().inside)});
        };
        if (nearIsOpen(built.layout.blocks[block], port)) {
            add(here.ports[i].mouth, -here.ports[i].direction);
        }
        if (farIsOpen(built.layout.blocks[block], port)) {
            add(here.ports[i].farMouth, here.ports[i].direction);
        }
    }
    return rooms;
}

}  // namespace gw::editing
