#include "editing/move.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "editing/places.h"
#include "editing/settle.h"
#include "editing/shape.h"
#include "editing/way.h"
#include "layout/wall_plane.h"

namespace gw::editing {
namespace {

using geometry::BuiltEnd;
using geometry::BuiltLayout;

double rounded(double value) {
    constexpr double kFinest = 1e9;
    return std::round(value * kFinest) / kFinest + 0.0;
}
Vec3 rounded(const Vec3& p) {
    return {rounded(p.x), rounded(p.y), rounded(p.z)};
}

/// How far everything selected has moved: blocks all alike, entries as their walls let them.
struct Moves {
    std::vector<Vec3> blocks;   ///< as the layout's blocks; zero where it stays
    std::vector<Vec3> entries;  ///< as the layout's entries
};

/// The part of a move that keeps least … greatest, which lie inside 0 … room, inside.
double keptInside(double by, double least, double greatest, double room) {
    if (least < -kLimitSlack || greatest > room + kLimitSlack) {
        return by;  // it sticks out already: whoever put it there may move it
    }
    return std::clamp(by, std::min(0.0, -least), std::max(0.0, room - greatest));
}

Vec3 blocksMove(const BuiltLayout& built, const Items& items, const Vec3& by) {
    Vec3 move = by;
    const Vec3& inside = built.gutter().inside;
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        if (holds(items, built.layout.blocks[i].id)) {
            const geometry::Box& body = built.blocks[i].body;
            move.x = keptInside(move.x, body.least.x, body.greatest.x, inside.x);
            move.y = keptInside(move.y, body.least.y, body.greatest.y, inside.y);
            move.z = keptInside(move.z, body.least.z, body.greatest.z, inside.z);
        }
    }
    return move;
}

Moves movesOf(const BuiltLayout& built, const Items& items, const Vec3& by, layout::Layout& after) {
    Moves moves{std::vector<Vec3>(built.blocks.size()), std::vector<Vec3>(built.entries.size())};
    const Vec3 ofBlocks = blocksMove(built, items, by);
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        layout::Block& block = after.blocks[i];
        if (holds(items, block.id)) {
            const Vec3 corner = rounded(block.corner + ofBlocks);
            moves.blocks[i] = corner - block.corner;
            block.corner = corner;
        }
    }
    for (std::size_t i = 0; i < built.entries.size(); ++i) {
        layout::Entry& entry = after.entries[i];
        if (holds(items, entry.id)) {
            const auto step = layout::alongWall(entry.wall, by);
            const auto room = layout::alongWall(entry.wall, built.gutter().inside);
            entry.u = rounded(std::clamp(entry.u + step.u, 0.0, room.u));
            entry.v = rounded(std::clamp(entry.v + step.v, 0.0, room.v));
            moves.entries[i] = layout::entryCentre(after.gutter, entry) - built.entries[i].centre;
        }
    }
    return moves;
}

Vec3 moveOf(const Moves& moves, const BuiltEnd& end) {
    return end.entry ? moves.entries[*end.entry] : end.block ? moves.blocks[*end.block] : Vec3{};
}

bool isNothing(const Vec3& v) {
    return norm(v) < kSamePoint;
}

bool alike(const Vec3& a, const Vec3& b) {
    return distance(a, b) < kSamePoint;
}

/// The legs through ports of blocks that moved go along with these.
Way withPassesMoved(Way way, const BuiltLayout& built, std::size_t conductor, const Moves& moves) {
    const auto& laid = built.conductors[conductor];
    for (const auto& pass : laid.passes) {
        const Vec3& by = moves.blocks[pass.block];
        if (isNothing(by)) {
            continue;
        }
        const auto place = placeAt(laid.built, (pass.nearAt + pass.farAt) / 2.0, 0.0);
        const std::size_t leg = place.index;
        if (place.bend || leg >= way.legs() || norm(way.leg(leg)) < kSamePoint) {
            continue;
        }
        const Vec3 along = unit(way.leg(leg));
        way = pulled(way, {leg, leg + 1, by - along * dot(by, along)});
        if (way.points.size() != built.layout.conductors[conductor].corners.size() + 2) {
            break;  // it has got offsets: the legs of further passes are counted no more
        }
    }
    return way;
}

/// Where a conductor goes whose ends, or ports passed, may have moved; `own`: how far it was asked
/// to move itself.
void follow(layout::Layout& after,
            const BuiltLayout& built,
            std::size_t index,
            const Moves& moves,
            const std::optional<Vec3>& own) {
    const auto& laid = built.conductors[index];
    const Vec3 first = moveOf(moves, laid.from);
    const Vec3 last = moveOf(moves, laid.to);
    const bool capped =
        laid.from.kind == BuiltEnd::Kind::spare || laid.to.kind == BuiltEnd::Kind::spare;
    const Way way = wayOf(built, index);
    if (own && laid.from.kind == BuiltEnd::Kind::spare && laid.to.kind == BuiltEnd::Kind::spare) {
        lay(after.conductors[index], shifted(way, *own));
        return;
    }
    if (!isNothing(first) && alike(first, last)) {
        lay(after.conductors[index], shifted(way, first));
        return;
    }
    // What is selected goes along whole with the one end that moved, where the other is capped.
    if (own && capped && (!isNothing(first) || !isNothing(last))) {
        lay(after.conductors[index], shifted(way, isNothing(first) ? last : first));
        return;
    }
    Way moved = way;
    if (!isNothing(first)) {
        moved = withFirstMoved(moved, first);
    }
    if (!isNothing(last)) {
        moved = withLastMoved(moved, last);
    }
    lay(after.conductors[index], withPassesMoved(std::move(moved), built, index, moves));
}

bool isConcerned(const BuiltLayout& built, std::size_t index, const Moves& moves) {
    const auto& laid = built.conductors[index];
    return !isNothing(moveOf(moves, laid.from)) || !isNothing(moveOf(moves, laid.to)) ||
           std::any_of(laid.passes.begin(), laid.passes.end(), [&](const auto& pass) {
               return !isNothing(moves.blocks[pass.block]);
           });
}

/// The middle of the path, pulled as far as its held ends let it: everything between the first and
/// the last leg.
void moveFreePart(layout::Layout& after,
                  const BuiltLayout& built,
                  std::size_t index,
                  const Vec3& by) {
    const Way way = wayOf(built, index);
    const std::size_t first = way.first.held ? 1 : 0;
    const std::size_t last = way.points.size() - (way.last.held ? 2 : 1);
    if (first > last || last >= way.points.size()) {
        return;  // straight from one end to the other
    }
    // From the innermost out: the first stretch that can take the whole move does.
    std::size_t a = first;
    std::size_t b = last;
    Way best = pulled(way, {a, b, by, false});
    double moved = 0.0;
    for (std::size_t i = first; i <= last; ++i) {
        for (std::size_t j = i; j <= last; ++j) {
            const Way tried = pulled(way, {i, j, by, false});
            const bool kept = tried.points.size() == way.points.size();
            const double reached = kept ? distance(tried.points[i], way.points[i]) : 0.0;
            // The longer stretch wins among those that move as far.
            if (reached > moved + kSamePoint ||
                (reached > moved - kSamePoint && reached > kSamePoint && j - i > b - a)) {
                moved = reached;
                best = tried;
                a = i;
                b = j;
            }
        }
    }
    lay(after.conductors[index], best);
}

}  // namespace

Edit moveItems(const BuiltLayout& built, const Items& items, const Vec3& by) {
    for (const Item& item : items) {
        if (!isThere(built.layout, item)) {
            return fail(notThere("item", idText(item)));
        }
    }
    layout::Layout after = built.layout;
    const Moves moves = movesOf(built, items, by, after);
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const bool own = holds(items, built.layout.conductors[i].id);
        if (isConcerned(built, i, moves)) {
            follow(after, built, i, moves, own ? std::optional(by) : std::nullopt);
        } else if (own) {
            moveFreePart(after, built, i, by);
        }
    }
    return accepted(std::move(after), built.shelf);
}

}  // namespace gw::editing
