#include "checks/occupancy.h"

#include <algorithm>

#include "base/contract.h"
#include "checks/support.h"

namespace gw::checks {
namespace {

void seat(Occupancy& occupancy,
          const geometry::BuiltEnd& end,
          std::size_t conductor,
          Occupant::How how) {
    if (end.kind == geometry::BuiltEnd::Kind::port) {
        occupancy[given(end.block)][given(end.port)].push_back({conductor, how, 0});
    }
}

}  // namespace

Occupancy occupancyOf(const geometry::BuiltLayout& built) {
    Occupancy occupancy;
    for (const auto& block : built.blocks) {
        occupancy.emplace_back(block.part->ports.size());
    }
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto& conductor = built.conductors[i];
        seat(occupancy, conductor.from, i, Occupant::How::from);
        seat(occupancy, conductor.to, i, Occupant::How::to);
        for (std::size_t p = 0; p < conductor.passes.size(); ++p) {
            const auto& pass = conductor.passes[p];
            occupancy[pass.block][pass.port].push_back({i, Occupant::How::pass, p});
        }
    }
    return occupancy;
}

const geometry::BuiltEnd* endOf(const geometry::BuiltLayout& built, const Occupant& occupant) {
    const auto& conductor = built.conductors[occupant.conductor];
    switch (occupant.how) {
        case Occupant::How::from:
            return &conductor.from;
        case Occupant::How::to:
            return &conductor.to;
        case Occupant::How::pass:
            return nullptr;
    }
    return nullptr;
}

const geometry::BuiltPass* passOf(const geometry::BuiltLayout& built, const Occupant& occupant) {
    return occupant.how == Occupant::How::pass
               ? &built.conductors[occupant.conductor].passes[occupant.pass]
               : nullptr;
}

bool entersFar(const geometry::BuiltLayout& built, const geometry::BuiltEnd& end) {
    CONTRACT(end.kind == geometry::BuiltEnd::Kind::port);
    // The way out of a mouth points against the bore's direction at the near one, along it at the
    // far one; more telling than comparing places in a bore of little depth.
    return dot(end.axis, built.blocks[given(end.block)].ports[given(end.port)].direction) > 0.0;
}

bool insertionStated(const geometry::BuiltLayout& built,
                     std::size_t conductor,
                     const geometry::BuiltEnd& end) {
    const auto& one = built.layout.conductors[conductor];
    const bool atFrom = &end == &built.conductors[conductor].from;
    const auto* inPort = std::get_if<layout::InPort>(atFrom ? &one.from : &one.to);
    CONTRACT(inPort != nullptr);
    return inPort->inserted.has_value();
}

bool insertionKnown(const geometry::BuiltLayout& built,
                    std::size_t conductor,
                    const geometry::BuiltEnd& end) {
    const auto& port = built.blocks[given(end.block)].part->ports[given(end.port)];
    return port.opening != parts::PortOpening::both || insertionStated(built, conductor, end);
}

double boreDepth(const geometry::BuiltLayout& built, std::size_t block, std::size_t port) {
    return built.blocks[block].part->ports[port].boreDepth.in();
}

std::vector<double> screwsAlongBore(const geometry::BuiltLayout& built,
                                    std::size_t block,
                                    std::size_t port) {
    const parts::Part& part = *built.blocks[block].part;
    const parts::Port& bore = part.ports[port];
    std::vector<double> along;
    for (const parts::Screw& screw : part.screws) {
        if (screw.port == bore.name) {
            along.push_back(dot(screw.head - bore.mouth, bore.direction));
        }
    }
    std::sort(along.begin(), along.end());
    return along;
}

}  // namespace gw::checks
