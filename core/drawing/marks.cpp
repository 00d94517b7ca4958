#include "drawing/marks.h"

#include <algorithm>
#include <cmath>

#include "drawing/block_view.h"
#include "drawing/finding_tables.h"
#include "drawing/gutter_view.h"
#include "drawing/spots.h"

namespace gw::drawing {
namespace {

constexpr double kPlate = 0.4;      // mm of paper around a name
constexpr double kNearWall = 12.0;  // mm: a block no further from the wall is named outside it
constexpr double kArrow = 4.6;      // mm from a cutting plane to its arrow's tip
constexpr double kOutside = 0.3;    // mm between a wall and a name outside it

Text nameText(const std::string& name, const TextSizes& sizes) {
    Text text;
    text.text = name;
    text.height = sizes.body;
    text.face = Face::condensedBold;
    text.anchorX = AnchorX::middle;
    text.anchorY = AnchorY::middle;
    return text;
}

/// A raceway seen from its side, with its locknuts.
Rect stubRect(const geometry::BuiltEntry& entry, const ViewFrame& frame) {
    const auto root = frame.at(entry.centre);
    const auto end = stubEnd(entry, frame);
    return grown(united({root.x, root.y, 0, 0}, {end.x, end.y, 0, 0}),
                 0.5 * frame.mm(entry.bore) + 0.6);
}

void drawLeader(const MarkedView& view, Stratum stratum, const Spot::Leader& leader) {
    view.sketch.line(stratum, leader.start, leader.foot, inkPen(kThin));
    view.sketch.add(stratum, Circle{leader.foot, kLeaderDot, std::nullopt, kInk});
    view.placer.takeLeader(leader.start, leader.foot, kLeaderDot);
}

/// Beside a thing, touching it or with a leader.
void nameBeside(const MarkedView& view, Text text, const Rect& thing) {
    const auto box = grown(view.sketch.extentOf(text), kPlate);
    const auto spot = bestSpot(view.placer, view.legs, box, thing);
    if (!spot) {
        return;
    }
    if (spot->leader) {
        drawLeader(view, Stratum::dimensions, *spot->leader);
    }
    text.at = spot->at;
    view.sketch.plate(text);
    view.placer.take(grown(view.sketch.extentOf(text), kPlate));
}

/// Screws and bores that face the eye: a name on the face leaves them free.
std::vector<Rect> seenOnFace(const geometry::BuiltBlock& block, const ViewFrame& frame) {
    std::vector<Rect> seen;
    const auto add = [&](const Vec3& at, double radius) {
        const auto middle = frame.at(at);
        seen.push_back(grown({middle.x, middle.y, 0, 0}, radius));
    };
    for (const auto& screw : block.screws) {
        if (dot(screw.outward, frame.towardEye()) > 0.5) {
            add(screw.head, screwRadius(frame));
        }
    }
    for (std::size_t i = 0; i < block.ports.size(); ++i) {
        if (std::abs(dot(block.ports[i].direction, frame.towardEye())) > 0.5) {
            add(block.ports[i].mouth, 0.5 * frame.mm(block.part->ports[i].boreDiameter.in()));
        }
    }
    return seen;
}

/// Where on the face the name stands clear: as near its middle as can be.
std::optional<Point> placeOnFace(const MarkedView& view, const Text& text, std::size_t index) {
    const auto& block = view.subject.built->blocks[index];
    const auto face = grown(blockRect(block, view.frame), -0.3);
    const auto seen = seenOnFace(block, view.frame);
    const auto size = view.sketch.extentOf(text);
    const double spareX = 0.5 * (face.width - size.width);
    const double spareY = 0.5 * (face.height - size.height);
    if (spareX < 0.0 || spareY < 0.0) {
        return std::nullopt;
    }
    for (const double across : {0.0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1.0, -1.0}) {
        for (const double along : {0.0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9}) {
            const Rect box{face.x + spareX * (1.0 + along),
                           face.y + spareY * (1.0 + across),
                           size.width,
                           size.height};
            const bool clear = std::none_of(
                seen.begin(), seen.end(), [&](const Rect& other) { return overlap(box, other); });
            if (clear && view.placer.isUnlabelled(box)) {
                return Point{box.x + 0.5 * box.width, box.y + 0.5 * box.height};
            }
        }
    }
    return std::nullopt;
}

/// Outside the upper wall where the block hangs near it, so that all names stand in one row.
bool nameAbove(const MarkedView& view, Text text, const Rect& block) {
    const auto interior = interiorOf(view.frame, view.subject.inside());
    const auto band = bandAbove(interior, view.subject.sizes);
    if (block.y - interior.y > kNearWall) {
        return false;
    }
    for (const double aside : {0.0, 2.0, -2.0, 4.0, -4.0, 6.0, -6.0, 9.0, -9.0}) {
        text.at = {block.x + 0.5 * block.width + aside,
                   band.y + 0.5 * nameBand(view.subject.sizes)};
        const auto box = grown(view.sketch.inkOf(text), 0.3);
        const double x = std::clamp(block.x + 0.5 * block.width, box.x, box.right());
        const Spot::Leader leader{{x, box.bottom()}, {x, block.y + 0.8}};
        if (view.placer.isFree(box) && view.placer.isFree(leader.start, leader.foot, kLeaderDot)) {
            drawLeader(view, Stratum::dimensions, leader);
            view.sketch.plate(text);
            view.placer.take(box);
            return true;
        }
    }
    return false;
}

void nameBlock(const MarkedView& view, std::size_t index) {
    const auto rect = blockRect(view.subject.built->blocks[index], view.frame);
    auto text = nameText(blockName(view.subject.layout().blocks[index]), view.subject.sizes);
    if (const auto place = placeOnFace(view, text, index)) {
        // The text's middle is half the height of its capitals: its extent lies a little lower.
        const auto box = view.sketch.extentOf(text);
        text.at = {place->x, place->y - (box.y + 0.5 * box.height)};
        view.sketch.plate(text, kBlockFill);
        view.placer.take(view.sketch.extentOf(text));
        return;
    }
    if (!nameAbove(view, text, rect)) {
        nameBeside(view, text, rect);
    }
}

/// Left of the stroke, or right of the arrow where a raceway stands there.
void putLetter(const MarkedView& view, const std::string& letter, Point end, bool above) {
    auto text = nameText(letter, view.subject.sizes);
    text.height *= 1.15;
    text.anchorX = AnchorX::right;
    text.at = {end.x - 1.0, end.y + (above ? 1.0 : -1.0)};
    const auto box = view.sketch.inkOf(text);
    const auto& entries = view.subject.built->entries;
    if (std::any_of(entries.begin(), entries.end(), [&](const geometry::BuiltEntry& entry) {
            return sightOf(entry, view.frame) == EntrySight::stub &&
                   overlap(stubRect(entry, view.frame), box);
        })) {
        text.anchorX = AnchorX::left;
        text.at.x = end.x + kArrow + 1.0;
    }
    view.sketch.plate(text);
    view.placer.keepOff(grown(view.sketch.inkOf(text), 0.3));
}

void markSection(const MarkedView& view, const SectionMark& mark, const Rect& interior) {
    const double x = view.frame.at({mark.x, 0, 0}).x;
    const Rect outside = grown(interior, kWall);
    view.sketch.line(
        Stratum::marks, {x, outside.y}, {x, outside.bottom()}, inkPen(kThin, Dash::chain));
    for (const bool above : {true, false}) {
        const double near = above ? outside.y - 0.6 : outside.bottom() + 0.6;
        const double far = near + (above ? -4.0 : 4.0);
        view.sketch.line(Stratum::dimensions, {x, near}, {x, far}, inkPen(kHeavy));
        view.sketch.line(Stratum::dimensions, {x, far}, {x + kArrow - 1.6, far}, inkPen(kFine));
        arrowhead(view.sketch, {x + kArrow, far}, 1.0, 0.0, 2.4);
        view.placer.keepOff(united({x - 0.5, near, 0, 0}, {x + kArrow + 0.4, far, 0, 0}));
        putLetter(view, mark.letter, {x, far}, above);
    }
    view.placer.keepOff(grown({x, interior.y, 0.0, interior.height}, 0.3));
}

void markFinding(const MarkedView& view, int number, Point place) {
    const double radius = 0.8 * view.subject.sizes.body;
    const Rect size{0, 0, 2 * radius + 0.6, 2 * radius + 0.6};
    const auto spot = bestSpot(view.placer, view.legs, size, {place.x, place.y, 0, 0});
    if (!spot) {
        return;
    }
    auto text = nameText(std::to_string(number), view.subject.sizes);
    text.at = spot->at;
    view.sketch.line(Stratum::text, spot->at, place, inkPen(kFine));
    view.sketch.add(Stratum::text, Circle{place, 0.5, std::nullopt, kInk});
    view.sketch.add(Stratum::text, Circle{text.at, radius, inkPen(kObject), kPaper});
    view.sketch.text(text);
    view.placer.take(grown({text.at.x, text.at.y, 0, 0}, radius + 0.3));
    view.placer.takeLeader(spot->at, place, 0.5);
}

Rect entryRect(const geometry::BuiltEntry& entry, const ViewFrame& frame) {
    const auto centre = frame.at(entry.centre);
    return grown({centre.x, centre.y, 0, 0}, 0.5 * frame.mm(entry.bore));
}

}  // namespace

Rect roomForLabels(const Rect& interior, const TextSizes& sizes) {
    const double above = kWall + nameBand(sizes);
    return {
        interior.x + 0.5, interior.y - above, interior.width - 1.0, interior.height - 0.5 + above};
}

Rect bandAbove(const Rect& interior, const TextSizes& sizes) {
    const double above = kWall + nameBand(sizes);
    return {interior.x, interior.y - above, interior.width, above};
}

double nameBand(const TextSizes& sizes) {
    return sizes.body + 2 * kPlate + kOutside + 0.6;
}

void keepLabelsOff(const MarkedView& view) {
    const auto interior = interiorOf(view.frame, view.subject.inside());
    view.placer.keepOff(
        {interior.x, interior.y - kWall - kOutside, interior.width, kWall + kOutside + 0.5});
    for (const auto& block : view.subject.built->blocks) {
        view.placer.keepOff(blockRect(block, view.frame));
    }
    for (const auto& entry : view.subject.built->entries) {
        if (sightOf(entry, view.frame) != EntrySight::stub) {
            view.placer.keepOff(entryRect(entry, view.frame));
            continue;
        }
        view.placer.keepOff(stubRect(entry, view.frame));
    }
}

void nameBlocks(const MarkedView& view) {
    for (std::size_t i = 0; i < view.subject.built->blocks.size(); ++i) {
        nameBlock(view, i);
    }
}

void nameFacingEntries(const MarkedView& view) {
    for (std::size_t i = 0; i < view.subject.built->entries.size(); ++i) {
        const auto& entry = view.subject.built->entries[i];
        if (sightOf(entry, view.frame) != EntrySight::stub) {
            const auto name = entryName(view.subject.layout().entries[i]);
            nameBeside(view, nameText(name, view.subject.sizes), entryRect(entry, view.frame));
        }
    }
}

void markSections(const MarkedView& view) {
    const auto interior = interiorOf(view.frame, view.subject.inside());
    for (const auto& mark : view.subject.sections) {
        markSection(view, mark, interior);
    }
}

void markFindings(const MarkedView& view) {
    int number = 0;
    for (const auto* finding : inOrder(*view.subject.findings)) {
        ++number;
        if (isMarked(*finding)) {
            markFinding(view, number, view.frame.at(*finding->place));
        }
    }
}

}  // namespace gw::drawing
