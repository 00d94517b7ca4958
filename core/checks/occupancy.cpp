#include "checks/occupancy.h"

#include <algorithm>
#include <numeric>

#include "base/contract.h"
#include "checks/support.h"

namespace gw::checks {
namespace {

/// Calls found(block, port, occupant) for every seat taken, in order of the layout.
template <class Found>
void forEachSeat(const geometry::BuiltLayout& built, Found found) {
    const auto end = [&](const geometry::BuiltEnd& at, const Occupant& occupant) {
        if (at.kind == geometry::BuiltEnd::Kind::port) {
            found(given(at.block), given(at.port), occupant);
        }
    };
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const auto& conductor = built.conductors[i];
        end(conductor.from, {i, Occupant::How::from, 0});
        end(conductor.to, {i, Occupant::How::to, 0});
        for (std::size_t p = 0; p < conductor.passes.size(); ++p) {
            found(conductor.passes[p].block,
                  conductor.passes[p].port,
                  Occupant{i, Occupant::How::pass, p});
        }
    }
}

}  // namespace

Occupancy::Occupancy(const geometry::BuiltLayout& built) {
    std::size_t slots = 0;
    for (const auto& block : built.blocks) {
        firstSlots_.push_back(slots);
        slots += block.part->ports.size();
    }
    // Counted two slots on, so that each start moves to its place while its slot is filled.
    starts_.assign(slots + 2, 0);
    forEachSeat(built, [&](std::size_t block, std::size_t port, const Occupant&) {
        ++starts_[firstSlots_[block] + port + 2];
    });
    std::partial_sum(starts_.begin(), starts_.end(), starts_.begin());
    occupants_.resize(starts_.back());
    forEachSeat(built, [&](std::size_t block, std::size_t port, const Occupant& occupant) {
        occupants_[starts_[firstSlots_[block] + port + 1]++] = occupant;
    });
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
