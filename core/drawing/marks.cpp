#include "drawing/marks.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "drawing/gutter_view.h"
#include "drawing/schedules.h"

namespace gw::drawing {
namespace {

Text nameText(const std::string& name, const TextSizes& sizes) {
    Text text;
    text.text = name;
    text.height = sizes.body;
    text.face = Face::condensedBold;
    text.anchorX = AnchorX::middle;
    text.anchorY = AnchorY::middle;
    return text;
}

/// Directions to look for room in, nearest first.
constexpr std::array<Point, 12> kAround = {{{0.7, -0.7},
                                            {-0.7, -0.7},
                                            {0.7, 0.7},
                                            {-0.7, 0.7},
                                            {0, -1},
                                            {0, 1},
                                            {1, 0},
                                            {-1, 0},
                                            {0.4, -0.9},
                                            {-0.4, -0.9},
                                            {0.4, 0.9},
                                            {-0.4, 0.9}}};

/// Writes a plate with a leader from the nearest free place around a point.
bool putBeside(const MarkedView& view, Text text, Point foot) {
    for (const double reach : {4.0, 6.5, 9.5, 13.0, 17.0, 22.0}) {
        for (const auto& step : kAround) {
            text.at = {foot.x + step.x * reach, foot.y + step.y * reach};
            const auto box = grown(view.sketch.extentOf(text), 0.4);
            const Point start{std::clamp(foot.x, box.x, box.right()),
                              std::clamp(foot.y, box.y, box.bottom())};
            if (view.placer.isFree(box) && view.placer.isFree(start, foot)) {
                view.sketch.line(Stratum::dimensions, start, foot, inkPen(kThin));
                view.sketch.plate(text);
                view.placer.take(box);
                view.placer.takeLine(start, foot);
                return true;
            }
        }
    }
    return false;
}

bool putAt(const MarkedView& view, const Text& text) {
    const auto box = grown(view.sketch.extentOf(text), 0.3);
    if (!view.placer.isFree(box)) {
        return false;
    }
    view.sketch.plate(text);
    view.placer.take(box);
    return true;
}

void nameBlock(const MarkedView& view, std::size_t index) {
    const auto rect = blockRect(view.subject.built->blocks[index], view.frame);
    auto text = nameText(blockName(view.subject.layout().blocks[index]), view.subject.sizes);
    const auto size = view.sketch.extentOf(text);
    if (size.width + 1.0 < rect.width && size.height + 0.5 < rect.height) {
        for (const Point t : {Point{0.5, 0.5},
                              Point{0.5, 0.3},
                              Point{0.5, 0.7},
                              Point{0.3, 0.5},
                              Point{0.7, 0.5}}) {
            text.at = {rect.x + t.x * rect.width, rect.y + t.y * rect.height};
            if (putAt(view, text)) {
                return;
            }
        }
    }
    putBeside(view, text, {rect.x + 0.5 * rect.width, rect.y + 0.5 * rect.height});
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
        view.sketch.line(Stratum::dimensions, {x, far}, {x + 2.6, far}, inkPen(kThin));
        arrowhead(view.sketch, {x + 3.4, far}, 1.0, 0.0);
        auto text = nameText(mark.letter, view.subject.sizes);
        text.height *= 1.15;
        text.anchorX = AnchorX::right;
        text.at = {x - 0.9, far + (above ? 1.2 : -1.2)};
        view.sketch.text(text);
        view.placer.take(view.sketch.extentOf(text));
    }
}

void markFinding(const MarkedView& view, int number, Point place) {
    const double radius = 0.8 * view.subject.sizes.body;
    auto text = nameText(std::to_string(number), view.subject.sizes);
    for (const double reach : {4.5, 7.0, 10.0, 14.0, 19.0}) {
        for (const auto& step : kAround) {
            text.at = {place.x + step.x * reach, place.y + step.y * reach};
            const Rect box = grown({text.at.x, text.at.y, 0, 0}, radius + 0.3);
            const Point start{place.x + step.x * (reach - radius),
                              place.y + step.y * (reach - radius)};
            if (!view.placer.isFree(box) || !view.placer.isFree(start, place)) {
                continue;
            }
            view.sketch.line(Stratum::text, start, place, inkPen(kFine));
            view.sketch.add(Stratum::text, Circle{place, 0.5, std::nullopt, kInk});
            view.sketch.add(Stratum::text, Circle{text.at, radius, inkPen(kObject), kPaper});
            view.sketch.text(text);
            view.placer.take(box);
            view.placer.takeLine(start, place);
            return;
        }
    }
}

}  // namespace

void nameBlocks(const MarkedView& view) {
    for (std::size_t i = 0; i < view.subject.built->blocks.size(); ++i) {
        nameBlock(view, i);
    }
}

void nameFacingEntries(const MarkedView& view) {
    for (std::size_t i = 0; i < view.subject.built->entries.size(); ++i) {
        const auto& entry = view.subject.built->entries[i];
        if (sightOf(entry, view.frame) == EntrySight::stub) {
            continue;
        }
        auto text = nameText(entryName(view.subject.layout().entries[i]), view.subject.sizes);
        const auto centre = view.frame.at(entry.centre);
        const double up = 0.5 * view.frame.mm(entry.bore) + view.subject.sizes.body;
        bool done = false;
        for (const double dy : {0.0, -0.5 * up, 0.5 * up, -up, up}) {
            text.at = {centre.x, centre.y + dy};
            done = done || putAt(view, text);
        }
        if (!done) {
            putBeside(view, text, centre);
        }
    }
}

void nameEndEntries(const MarkedView& view) {
    const auto& entries = view.subject.layout().entries;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const bool left = entries[i].wall == layout::Wall::left;
        if (!left && entries[i].wall != layout::Wall::right) {
            continue;
        }
        auto text = nameText(entryName(entries[i]), view.subject.sizes);
        const auto end = stubEnd(view.subject.built->entries[i], view.frame);
        text.anchorX = left ? AnchorX::right : AnchorX::left;
        text.at = {end.x + (left ? -1.8 : 1.8), end.y};
        putAt(view, text);
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
        const bool told = finding->verdict == checks::Verdict::breach ||
                          finding->verdict == checks::Verdict::caution;
        if (told && finding->place) {
            markFinding(view, number, view.frame.at(*finding->place));
        }
    }
}

}  // namespace gw::drawing
