#include "editing/hit.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "editing/conductors.h"
#include "editing/places.h"
#include "geometry/solids.h"

namespace gw::editing {
namespace {

using geometry::BuiltConductor;
using geometry::BuiltEnd;
using geometry::BuiltLayout;
using geometry::Point2;
using geometry::View;

/// inches a raceway is taken to show outside the wall it comes through.
constexpr double kStub = 2.0;

/// Where the pointer is.
struct Pointer {
    View view;
    Point2 at;
    double tolerance;
};

// ---- conductors -----------------------------------------------------------------------------

/// Whether arc length s is at the end that lies before `mouthAt`, or within `reach` of it.
std::optional<Hit::Place> endAt(const BuiltConductor& conductor, double s, double reach) {
    const double length = conductor.built.path.length().in();
    const bool first = s <= conductor.from.mouthAt + reach;
    const bool last = s >= conductor.to.mouthAt - reach;
    if (first && last) {
        return s < length - s ? Hit::Place::fromEnd : Hit::Place::toEnd;
    }
    return first  ? std::optional(Hit::Place::fromEnd)
           : last ? std::optional(Hit::Place::toEnd)
                  : std::nullopt;
}

/// The most telling place of a conductor at arc length s.
void tellPlace(Hit& hit, const BuiltConductor& conductor, double tolerance) {
    const double length = conductor.built.path.length().in();
    const double around = std::max(tolerance, 0.5 * conductor.radius());
    const double reach = std::min(std::max(tolerance, conductor.radius()), length / 4.0);
    if (const auto end = endAt(conductor, hit.along, reach)) {
        hit.place = *end;
        return;
    }
    const PathPlace place = placeAt(conductor.built, hit.along, around);
    hit.place = place.bend ? Hit::Place::bend : Hit::Place::leg;
    hit.index = place.index;
}

std::optional<Hit> hitConductor(const BuiltLayout& built,
                                std::size_t index,
                                const Pointer& pointer) {
    const BuiltConductor& conductor = built.conductors[index];
    const double radius = conductor.radius();
    const Nearest nearest = nearestInView(conductor.built.path, pointer.view, pointer.at, radius);
    if (nearest.distance > std::max(radius, pointer.tolerance)) {
        return std::nullopt;
    }
    Hit hit;
    hit.item = built.layout.conductors[index].id;
    hit.along = nearest.s;
    hit.at = nearest.at;
    hit.beside = std::max(0.0, nearest.distance - radius);
    hit.nearness = geometry::nearness(pointer.view, nearest.at) + radius;
    tellPlace(hit, conductor, pointer.tolerance);
    return hit;
}

// ---- blocks ---------------------------------------------------------------------------------

bool portTaken(const BuiltLayout& built, std::size_t block, std::size_t port) {
    const auto endsThere = [&](const BuiltEnd& end) {
        return end.block == block && end.port == port;
    };
    return std::any_of(
        built.conductors.begin(), built.conductors.end(), [&](const BuiltConductor& conductor) {
            const auto& passes = conductor.passes;
            return endsThere(conductor.from) || endsThere(conductor.to) ||
                   std::any_of(passes.begin(), passes.end(), [&](const auto& pass) {
                       return pass.block == block && pass.port == port;
                   });
        });
}

/// One mouth of a port: where it is, and how far from it the pointer is.
struct MouthNear {
    std::size_t port = 0;
    bool near = true;
    double distance = std::numeric_limits<double>::infinity();
    Vec3 at;
};

/// Over the first of the bore, as wide as it is, or within the tolerance of the mouth.
std::optional<double> distanceToMouth(const Vec3& mouth,
                                      const Vec3& inward,
                                      const parts::Port& port,
                                      const Pointer& pointer) {
    const double across = port.boreDiameter.in();
    const double deep = std::min(across, port.boreDepth.in());
    const Point2 at = geometry::project(pointer.view, mouth);
    const Point2 within = geometry::project(pointer.view, mouth + inward * deep);
    const double reach = std::max(across / 2.0, pointer.tolerance);
    if (distance(pointer.at, at, within) > reach) {
        return std::nullopt;
    }
    return distance(pointer.at, at);
}

std::optional<MouthNear> mouthUnder(const geometry::BuiltBlock& block, const Pointer& pointer) {
    std::optional<MouthNear> best;
    const auto offer = [&](const MouthNear& mouth) {
        if (!best || mouth.distance < best->distance) {
            best = mouth;
        }
    };
    for (std::size_t i = 0; i < block.ports.size(); ++i) {
        const auto& bore = block.ports[i];
        const auto& port = block.part->ports[i];
        if (const auto away = distanceToMouth(bore.mouth, bore.direction, port, pointer)) {
            offer({i, true, *away, bore.mouth});
        }
        if (port.opening != parts::PortOpening::near) {
            if (const auto away = distanceToMouth(bore.farMouth, -bore.direction, port, pointer)) {
                offer({i, false, *away, bore.farMouth});
            }
        }
    }
    return best;
}

Vec3 underPointer(const geometry::Box& body, const Pointer& pointer) {
    Vec3 at = body.centre();
    const auto within = [](double value, double least, double greatest) {
        return std::clamp(value, least, greatest);
    };
    switch (pointer.view) {
        case View::front:
            at.x = within(pointer.at.x, body.least.x, body.greatest.x);
            at.y = within(pointer.at.y, body.least.y, body.greatest.y);
            return at;
        case View::top:
            at.x = within(pointer.at.x, body.least.x, body.greatest.x);
            at.z = within(-pointer.at.y, body.least.z, body.greatest.z);
            return at;
        case View::end:
            at.z = within(pointer.at.x, body.least.z, body.greatest.z);
            at.y = within(pointer.at.y, body.least.y, body.greatest.y);
            return at;
    }
    return at;
}

double nearnessOf(const geometry::Box& box, View view) {
    return std::max(geometry::nearness(view, box.least), geometry::nearness(view, box.greatest));
}

std::optional<Hit> hitBlock(const BuiltLayout& built, std::size_t index, const Pointer& pointer) {
    const auto& block = built.blocks[index];
    const double beside = viewBox(pointer.view, block.body).distanceTo(pointer.at);
    const auto mouth = mouthUnder(block, pointer);
    if (beside > pointer.tolerance && !mouth) {
        return std::nullopt;
    }
    Hit hit;
    hit.item = built.layout.blocks[index].id;
    hit.beside = beside;
    hit.nearness = nearnessOf(block.body, pointer.view);
    hit.at = mouth ? mouth->at : underPointer(block.body, pointer);
    if (mouth) {
        hit.place = Hit::Place::port;
        hit.index = mouth->port;
        hit.nearMouth = mouth->near;
        hit.taken = portTaken(built, index, mouth->port);
    }
    return hit;
}

// ---- entries --------------------------------------------------------------------------------

bool facesView(const geometry::BuiltEntry& entry, View view) {
    const Vec3 axis = entry.axis;
    const double along[] = {axis.x, axis.y, axis.z};
    return std::abs(along[lookedAlong(view)]) > 0.5;
}

/// The hole seen from the side, and the raceway outside it.
ViewBox stubBox(const geometry::BuiltEntry& entry, View view) {
    const Point2 root = geometry::project(view, entry.centre);
    const Point2 out = geometry::project(view, entry.centre - entry.axis * kStub);
    const double half = entry.bore / 2.0;
    const bool upright = std::abs(out.x - root.x) < std::abs(out.y - root.y);
    const Point2 aside = upright ? Point2{half, 0.0} : Point2{0.0, half};
    return viewBox({std::min(root.x, out.x) - aside.x, std::min(root.y, out.y) - aside.y},
                   {std::max(root.x, out.x) + aside.x, std::max(root.y, out.y) + aside.y});
}

double besideEntry(const geometry::BuiltEntry& entry, const Pointer& pointer) {
    if (facesView(entry, pointer.view)) {
        const Point2 centre = geometry::project(pointer.view, entry.centre);
        return std::max(0.0, distance(pointer.at, centre) - entry.bore / 2.0);
    }
    return stubBox(entry, pointer.view).distanceTo(pointer.at);
}

/// The slot that a conductor has and that the pointer is over, else the first that none has.
void tellSlot(Hit& hit, const BuiltLayout& built, std::size_t index, const Pointer& pointer) {
    const auto& entry = built.entries[index];
    double best = pointer.tolerance;
    for (const auto& [slot, place] : entry.slots) {
        const double away = distance(pointer.at, geometry::project(pointer.view, place));
        if (away <= best) {
            best = away;
            hit.index = static_cast<std::size_t>(slot);
            hit.taken = true;
            hit.at = place;
        }
    }
    if (!hit.taken) {
        hit.index =
            static_cast<std::size_t>(freeSlot(built.layout, built.layout.entries[index].id));
    }
}

std::optional<Hit> hitEntry(const BuiltLayout& built, std::size_t index, const Pointer& pointer) {
    const auto& entry = built.entries[index];
    const double beside = besideEntry(entry, pointer);
    if (beside > pointer.tolerance) {
        return std::nullopt;
    }
    Hit hit;
    hit.item = built.layout.entries[index].id;
    hit.place = Hit::Place::hole;
    hit.at = entry.centre;
    hit.beside = beside;
    // A hole in the wall that was taken off to look inside hides nothing.
    hit.nearness = facesView(entry, pointer.view) ? std::numeric_limits<double>::lowest()
                                                  : geometry::nearness(pointer.view, entry.centre);
    tellSlot(hit, built, index, pointer);
    return hit;
}

// ---- together -------------------------------------------------------------------------------

bool comesBefore(const Hit& a, const Hit& b) {
    const bool overA = a.beside <= 0.0;
    const bool overB = b.beside <= 0.0;
    if (overA != overB) {
        return overA;
    }
    if (!overA && a.beside != b.beside) {
        return a.beside < b.beside;
    }
    return a.nearness > b.nearness;
}

std::vector<Hit> inOrder(std::vector<Hit> hits) {
    std::stable_sort(hits.begin(), hits.end(), comesBefore);
    return hits;
}

void add(std::vector<Hit>& hits, std::optional<Hit> hit) {
    if (hit) {
        hits.push_back(std::move(*hit));
    }
}

// ---- the end section ------------------------------------------------------------------------

double distanceToOutline(const geometry::Outline& outline, Point2 at) {
    bool inside = false;
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point2 a = outline[i];
        const Point2 b = outline[(i + 1) % outline.size()];
        if ((a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x) {
            inside = !inside;
        }
        nearest = std::min(nearest, distance(at, a, b));
    }
    return inside ? 0.0 : nearest;
}

std::optional<Hit> hitCut(const BuiltLayout& built,
                          const geometry::CutConductor& cut,
                          double x,
                          const Pointer& pointer) {
    const double beside = distanceToOutline(cut.outline, pointer.at);
    if (beside > pointer.tolerance) {
        return std::nullopt;
    }
    const BuiltConductor& conductor = built.conductors[cut.conductor];
    const Nearest nearest = nearestInSpace(conductor.built.path, {x, pointer.at.y, pointer.at.x});
    Hit hit;
    hit.item = built.layout.conductors[cut.conductor].id;
    hit.along = nearest.s;
    hit.at = nearest.at;
    hit.beside = beside;
    tellPlace(hit, conductor, pointer.tolerance);
    return hit;
}

bool cutBy(const geometry::BuiltEntry& entry, double x) {
    return std::abs(entry.axis.x) > 0.5 || std::abs(entry.centre.x - x) <= entry.bore / 2.0;
}

bool cutBy(const geometry::Box& body, double x) {
    return body.least.x <= x && x <= body.greatest.x;
}

ViewBox boxOf(const geometry::BuiltEntry& entry, View view) {
    const Vec3 half = Vec3{1, 1, 1} * (entry.bore / 2.0);
    const Vec3 flat{half.x * (1.0 - std::abs(entry.axis.x)),
                    half.y * (1.0 - std::abs(entry.axis.y)),
                    half.z * (1.0 - std::abs(entry.axis.z))};
    return viewBox(view, geometry::Box{entry.centre - flat, entry.centre + flat});
}

}  // namespace

std::vector<Hit> hitsAt(const BuiltLayout& built, View view, Point2 at, double tolerance) {
    const Pointer pointer{view, at, tolerance};
    std::vector<Hit> hits;
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        add(hits, hitConductor(built, i, pointer));
    }
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        add(hits, hitBlock(built, i, pointer));
    }
    for (std::size_t i = 0; i < built.entries.size(); ++i) {
        add(hits, hitEntry(built, i, pointer));
    }
    return inOrder(std::move(hits));
}

std::vector<Hit> hitsInSection(const BuiltLayout& built, double x, Point2 at, double tolerance) {
    const Pointer pointer{View::end, at, tolerance};
    std::vector<Hit> hits;
    for (const auto& cut : geometry::sectionAt(built, x).conductors) {
        auto hit = hitCut(built, cut, x, pointer);
        if (hit && (hits.empty() || hits.back().item != hit->item)) {
            hits.push_back(std::move(*hit));
        }
    }
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        if (cutBy(built.blocks[i].body, x)) {
            add(hits, hitBlock(built, i, pointer));
        }
    }
    for (Hit& hit : hits) {
        hit.nearness = 0.0;  // all in the plane: conductors first
    }
    for (std::size_t i = 0; i < built.entries.size(); ++i) {
        if (cutBy(built.entries[i], x)) {
            add(hits, hitEntry(built, i, pointer));
        }
    }
    return inOrder(std::move(hits));
}

Items itemsInside(const BuiltLayout& built, View view, const Band& band) {
    const ViewBox box = viewBox(band.a, band.b);
    Items items;
    for (std::size_t i = 0; i < built.blocks.size(); ++i) {
        if (box.holds(viewBox(view, built.blocks[i].body))) {
            items.emplace_back(built.layout.blocks[i].id);
        }
    }
    for (std::size_t i = 0; i < built.entries.size(); ++i) {
        if (box.holds(boxOf(built.entries[i], view))) {
            items.emplace_back(built.layout.entries[i].id);
        }
    }
    for (std::size_t i = 0; i < built.conductors.size(); ++i) {
        const BuiltConductor& conductor = built.conductors[i];
        const geometry::Tube tube{
            &conductor.built.path, conductor.radius(), 0.0, conductor.built.path.length().in()};
        if (box.holds(viewBox(view, geometry::bounds(tube)))) {
            items.emplace_back(built.layout.conductors[i].id);
        }
    }
    return items;
}

std::optional<Hit> landingAt(const std::vector<Hit>& hits) {
    const auto found = std::find_if(hits.begin(), hits.end(), [](const Hit& hit) {
        return hit.place == Hit::Place::port || hit.place == Hit::Place::hole;
    });
    return found == hits.end() ? std::nullopt : std::optional(*found);
}

}  // namespace gw::editing
