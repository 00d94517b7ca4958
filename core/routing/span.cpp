#include "routing/span.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "checks/least_radius.h"

namespace gw::routing {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;

Terminal mouthOf(
    const BuiltLayout& built, std::size_t block, std::size_t port, bool near, double lead) {
    const auto& bore = built.blocks[block].ports[port];
    return {near ? bore.mouth : bore.farMouth,
            near ? -bore.direction : bore.direction,
            lead,
            std::nullopt,
            block,
            port};
}

bool mayUseEither(const BuiltLayout& built, const BuiltEnd& end) {
    const auto& block = built.layout.blocks[*end.block];
    const auto& port = built.blocks[*end.block].part->ports[*end.port];
    const bool stated = std::any_of(block.openMouths.begin(),
                                    block.openMouths.end(),
                                    [&](const auto& open) { return open.port == port.name; });
    return port.opening == parts::PortOpening::both ||
           (port.opening == parts::PortOpening::either && !stated);
}

std::vector<Terminal> terminalsOf(const BuiltLayout& built, const BuiltEnd& end, double diameter) {
    switch (end.kind) {
        case BuiltEnd::Kind::entry:
            return {{end.mouth, end.axis, 0.0, end.entry, std::nullopt, std::nullopt}};
        case BuiltEnd::Kind::spare:
            return {{end.mouth, {}, 0.0, std::nullopt, std::nullopt, std::nullopt}};
        case BuiltEnd::Kind::port:
            break;
    }
    const double lead = kLeadInDiameters * diameter;
    const auto& bore = built.blocks[*end.block].ports[*end.port];
    const bool near = distance(end.mouth, bore.mouth) <= distance(end.mouth, bore.farMouth);
    std::vector<Terminal> found{mouthOf(built, *end.block, *end.port, near, lead)};
    if (mayUseEither(built, end)) {
        found.push_back(mouthOf(built, *end.block, *end.port, !near, lead));
    }
    return found;
}

Vec3 leadEnd(const Terminal& terminal) {
    return terminal.mouth + terminal.axis * terminal.lead;
}

double apart(const std::vector<Terminal>& a, const std::vector<Terminal>& b) {
    double least = std::numeric_limits<double>::infinity();
    for (const Terminal& one : a) {
        for (const Terminal& other : b) {
            least = std::min(least, one.lead + distance(leadEnd(one), leadEnd(other)) + other.lead);
        }
    }
    return least;
}

/// For each pass whether it is run from the near mouth to the far one: the way with the least of
/// straight lines, all of them tried where there are few.
std::vector<bool> directionsOf(const BuiltLayout& built,
                               const BuiltConductor& conductor,
                               const Terminal& from,
                               const Terminal& to) {
    const std::size_t passes = std::min<std::size_t>(conductor.passes.size(), 10);
    std::vector<bool> best(conductor.passes.size(), true);
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t bits = 0; bits < (std::size_t{1} << passes); ++bits) {
        Vec3 at = from.mouth;
        double length = 0.0;
        for (std::size_t i = 0; i < passes; ++i) {
            const auto& bore =
                built.blocks[conductor.passes[i].block].ports[conductor.passes[i].port];
            const bool forward = (bits >> i & 1U) == 0;
            length += distance(at, forward ? bore.mouth : bore.farMouth);
            at = forward ? bore.farMouth : bore.mouth;
        }
        length += distance(at, to.mouth);
        if (length < least - kSamePoint) {
            least = length;
            for (std::size_t i = 0; i < passes; ++i) {
                best[i] = (bits >> i & 1U) == 0;
            }
        }
    }
    return best;
}

}  // namespace

double bendRadiusFor(const BuiltLayout& built, std::size_t conductor) {
    constexpr double kStep = 0.25;
    const double least = checks::leastBendRadius(
        built.layout, built.layout.conductors[conductor], built.conductors[conductor].diameter);
    return std::ceil(least / kStep - kLimitSlack) * kStep;
}

std::vector<Span> spansOf(const BuiltLayout& built, std::size_t index) {
    const BuiltConductor& conductor = built.conductors[index];
    const double diameter = conductor.diameter.in();
    const double lead = kLeadInDiameters * diameter;
    Span span;
    span.conductor = index;
    span.radius = conductor.radius();
    span.bend = bendRadiusFor(built, index);
    span.starts = terminalsOf(built, conductor.from, diameter);
    const auto last = terminalsOf(built, conductor.to, diameter);
    const auto forward = directionsOf(built, conductor, span.starts.front(), last.front());
    std::vector<Span> spans;
    for (std::size_t i = 0; i < conductor.passes.size(); ++i) {
        const auto& pass = conductor.passes[i];
        span.ends = {mouthOf(built, pass.block, pass.port, forward[i], lead)};
        spans.push_back(span);
        span.starts = {mouthOf(built, pass.block, pass.port, !forward[i], lead)};
        ++span.number;
    }
    span.ends = last;
    spans.push_back(span);
    return spans;
}

double straightLineOf(const BuiltLayout& built, std::size_t index, const std::vector<Span>& spans) {
    const BuiltConductor& conductor = built.conductors[index];
    double length = conductor.from.inserted + conductor.to.inserted;
    for (const auto& pass : conductor.passes) {
        const auto& bore = built.blocks[pass.block].ports[pass.port];
        length += distance(bore.mouth, bore.farMouth);
    }
    for (const Span& span : spans) {
        length += apart(span.starts, span.ends);
    }
    return length;
}

}  // namespace gw::routing
