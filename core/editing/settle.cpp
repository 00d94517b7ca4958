#include "editing/settle.h"

#include <algorithm>

#include "base/tolerance.h"
#include "editing/conductors.h"
#include "editing/plan.h"
#include "editing/way.h"

namespace gw::editing {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using layout::Conductor;

struct SameEnd {
    bool operator()(const layout::AtEntry& a, const layout::AtEntry& b) const {
        return a.entry == b.entry;
    }
    bool operator()(const layout::InPort& a, const layout::InPort& b) const {
        return a.block == b.block && a.port == b.port;
    }
    bool operator()(const layout::Spare& a, const layout::Spare& b) const {
        return distance(a.tip, b.tip) < kSamePoint;
    }
    template <class A, class B>
    bool operator()(const A& /*a*/, const B& /*b*/) const {
        return false;
    }
};

bool sameEnd(const layout::End& a, const layout::End& b) {
    return std::visit(SameEnd{}, a, b);
}

bool samePath(const Conductor& a, const Conductor& b) {
    return sameEnd(a.from, b.from) && sameEnd(a.to, b.to) &&
           std::equal(a.corners.begin(),
                      a.corners.end(),
                      b.corners.begin(),
                      b.corners.end(),
                      [](const layout::Corner& p, const layout::Corner& q) {
                          return distance(p.at, q.at) < kSamePoint && p.radius == q.radius;
                      });
}

bool hasTurned(const BuiltEnd& before, const BuiltEnd& after) {
    return before.kind != BuiltEnd::Kind::spare &&
           angleBetween(before.axis, after.axis) > kLargestKink;
}

/// What came of one conductor's ends.
void followEnds(layout::Layout& layout,
                const BuiltLayout& before,
                std::size_t was,
                const BuiltLayout& after,
                std::size_t is) {
    const BuiltConductor& old = before.conductors[was];
    const BuiltConductor& now = after.conductors[is];
    const Vec3 first = now.built.path.start() - old.built.path.start();
    const Vec3 last = now.built.path.end() - old.built.path.end();
    if (hasTurned(old.from, now.from) || hasTurned(old.to, now.to)) {
        planPath(layout, after, is);
        return;
    }
    if (norm(first) < kSamePoint && norm(last) < kSamePoint) {
        return;
    }
    const Way way = wayOf(before, was);
    const bool together = norm(first - last) < kSamePoint;
    lay(layout.conductors[is],
        together ? shifted(way, first) : withLastMoved(withFirstMoved(way, first), last));
}

}  // namespace

Settled settledAndBuilt(const BuiltLayout& before,
                        layout::Layout after,
                        const parts::Shelf& shelf) {
    Settled settled{std::move(after), {}};
    settled.built = geometry::build(settled.layout, shelf);
    for (std::size_t i = 0; i < settled.layout.conductors.size(); ++i) {
        const Conductor& conductor = settled.built.layout.conductors[i];
        const auto was = indexOf(before.layout, conductor.id);
        if (was && samePath(before.layout.conductors[*was], conductor)) {
            followEnds(settled.layout, before, *was, settled.built, i);
        }
    }
    return settled;
}

layout::Layout settled(const BuiltLayout& before, layout::Layout after, const parts::Shelf& shelf) {
    return settledAndBuilt(before, std::move(after), shelf).layout;
}

Edit accepted(layout::Layout layout, const parts::Shelf& shelf) {
    if (const auto valid = layout::validate(layout, shelf); !valid) {
        return fail(valid.error());
    }
    return layout;
}

Edit replanned(const BuiltLayout& before,
               layout::Layout after,
               const layout::ConductorId& conductor,
               std::span<const Vec3> via) {
    if (auto valid = accepted(after, before.shelf); !valid) {
        return valid;
    }
    Settled settled = settledAndBuilt(before, std::move(after), before.shelf);
    const auto index = indexOf(settled.layout, conductor);
    if (!index) {
        return fail(notThere("conductor", conductor.text()));
    }
    planPath(settled.layout, settled.built, *index, via);
    return accepted(std::move(settled.layout), before.shelf);
}

Error notThere(const std::string& what, const std::string& id) {
    return {ErrorCode::dangling, "no such " + what, {}, {}, "the id of one that is there", id};
}

}  // namespace gw::editing
