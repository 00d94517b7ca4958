#include "drawing/section_view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numeric>

#include "drawing/dimensions.h"
#include "drawing/gutter_view.h"
#include "drawing/names.h"
#include "drawing/spots.h"
#include "drawing/walls.h"
#include "geometry/section.h"

namespace gw::drawing {
namespace {

constexpr double kLeader = 4.0;     // mm between the wall and the tags at the side
constexpr double kReach = 0.34;     // of a conductor's width: from its centre to a leader's end
constexpr double kWorstSpot = 4.0;  // mean cost above which the tags go to the sides
constexpr double kBelow = 1.4;      // room for tags below the section, in body text

std::vector<Point> onPaper(const geometry::Outline& outline, const ViewFrame& frame, double x) {
    std::vector<Point> points;
    for (const auto& point : outline) {
        points.push_back(frame.at({x, point.y, point.x}));  // outlines are in (z, y)
    }
    return points;
}

void drawCutBlock(Sketch& sketch, const std::vector<Point>& outline) {
    sketch.add(Stratum::walls, Polyline{outline, true, std::nullopt, kBlockFill});
    Rect box{outline.front().x, outline.front().y, 0, 0};
    for (const auto& point : outline) {
        box = united(box, {point.x, point.y, 0, 0});
    }
    hatch(sketch, Stratum::walls, box, 2.2, inkPen(kThin));
    sketch.add(Stratum::walls, Polyline{outline, true, inkPen(kOutline), std::nullopt});
}

/// A cut conductor on the paper.
struct Cut {
    std::size_t conductor = 0;
    Point centre;
    std::vector<Point> outline;
    double reach = 0.0;  ///< mm from the centre that surely lie in it
};

/// One whose tag stands at the side.
struct Callout {
    std::size_t conductor = 0;
    Point centre;
    double y = 0.0;  ///< where its tag stands
};

Text sideTag(const std::string& tag, const TextSizes& sizes) {
    Text text;
    text.text = tag;
    text.height = sizes.body;
    text.face = Face::condensed;
    text.anchorY = AnchorY::middle;
    return text;
}

double widestTag(const geometry::BuiltLayout& built,
                 const TextSizes& sizes,
                 const TextMetrics& metrics) {
    double widest = 0.0;
    for (const auto& conductor : built.layout.conductors) {
        widest = std::max(widest, metrics.width(conductor.tag, sizes.body, Face::condensed));
    }
    return widest;
}

double sideMargin(const geometry::BuiltLayout& built,
                  const SectionPlan& plan,
                  const TextMetrics& metrics) {
    return kWall + kLeader + widestTag(built, plan.sizes, metrics) + 1.5;
}

/// Room above and below the interior: the wall, or more where many tags stand at one side.
double verticalMargin(const geometry::BuiltLayout& built, const SectionPlan& plan) {
    const auto section = geometry::sectionAt(built, plan.x);
    const double perSide = std::ceil(0.5 * static_cast<double>(section.conductors.size()));
    const double tags = perSide * (plan.sizes.body + 0.5);
    const double interior = built.gutter().inside.y * plan.mmPerInch;
    return std::max(kWall, 0.5 * (tags - interior) + 0.5);
}

/// Half of the cut conductors get their tags at the left, by how far left they lie.
std::array<std::vector<Callout>, 2> bySide(std::vector<Callout> callouts) {
    std::stable_sort(callouts.begin(), callouts.end(), [](const Callout& a, const Callout& b) {
        return a.centre.x < b.centre.x;
    });
    const auto half = static_cast<std::ptrdiff_t>((callouts.size() + 1) / 2);
    std::array<std::vector<Callout>, 2> sides = {
        std::vector<Callout>(callouts.begin(), callouts.begin() + half),
        std::vector<Callout>(callouts.begin() + half, callouts.end())};
    for (auto& side : sides) {
        std::stable_sort(side.begin(), side.end(), [](const Callout& a, const Callout& b) {
            return a.centre.y < b.centre.y;
        });
    }
    return sides;
}

void spreadTags(std::vector<Callout>& side, const Rect& room, double line) {
    std::vector<double> wishes;
    for (const auto& callout : side) {
        wishes.push_back(callout.centre.y);
    }
    const std::vector<double> heights(side.size(), line);
    const auto places = spreadOut(wishes, heights, 0.0, room.y, room.bottom());
    for (std::size_t i = 0; i < side.size(); ++i) {
        side[i].y = places ? (*places)[i] : room.y + line * (static_cast<double>(i) + 0.5);
    }
}

void drawCallouts(Sketch& sketch,
                  const geometry::BuiltLayout& built,
                  const std::vector<Cut>& cuts,
                  const Rect& interior,
                  const Rect& room,
                  const TextSizes& sizes) {
    std::vector<Callout> callouts;
    for (const auto& cut : cuts) {
        callouts.push_back({cut.conductor, cut.centre, cut.centre.y});
    }
    auto sides = bySide(std::move(callouts));
    for (std::size_t s = 0; s < sides.size(); ++s) {
        const bool left = s == 0;
        const double edge =
            left ? interior.x - kWall - kLeader : interior.right() + kWall + kLeader;
        spreadTags(sides[s], room, sizes.body + 0.5);
        for (const auto& callout : sides[s]) {
            auto text = sideTag(tagOf(built.layout.conductors[callout.conductor]), sizes);
            text.at = {left ? edge - 0.6 : edge + 0.6, callout.y};
            text.anchorX = left ? AnchorX::right : AnchorX::left;
            sketch.text(text);
            sketch.line(Stratum::dimensions, {edge, callout.y}, callout.centre, inkPen(0.13));
            sketch.add(Stratum::dimensions, Circle{callout.centre, 0.35, std::nullopt, kInk});
        }
    }
}

/// The cut conductors as a label placer sees them: their outlines, and a cross inside.
std::vector<Leg> legsOf(const std::vector<Cut>& cuts) {
    std::vector<Leg> legs;
    for (const auto& cut : cuts) {
        const auto count = cut.outline.size();
        for (std::size_t i = 0; i < count; ++i) {
            legs.push_back(
                legOf(cut.conductor, cut.outline[i], cut.outline[(i + 1) % count], 0.0, kObject));
        }
        const double reach = cut.reach;
        const Point at = cut.centre;
        legs.push_back(
            legOf(cut.conductor, {at.x - reach, at.y}, {at.x + reach, at.y}, 0.0, reach));
        legs.push_back(
            legOf(cut.conductor, {at.x, at.y - reach}, {at.x, at.y + reach}, 0.0, reach));
    }
    return legs;
}

/// Every tag beside its conductor, or none: where one finds no place all stand at the sides.
std::optional<std::vector<Spot>> spotsOf(const Sketch& sketch,
                                         const std::vector<Text>& tags,
                                         const std::vector<Cut>& cuts,
                                         const std::vector<std::size_t>& order,
                                         Placer placer) {
    const auto legs = legsOf(cuts);
    std::vector<Spot> spots(cuts.size());
    for (const auto i : order) {
        const auto box = grown(sketch.extentOf(tags[i]), 0.2);
        const auto spot = bestSpot(
            placer, legs, box, grown({cuts[i].centre.x, cuts[i].centre.y, 0, 0}, cuts[i].reach));
        if (!spot) {
            return std::nullopt;
        }
        const Rect taken{
            spot->at.x - 0.5 * box.width, spot->at.y - 0.5 * box.height, box.width, box.height};
        if (conductorsUnder(legs, taken) > 0) {
            return std::nullopt;
        }
        placer.take(taken);
        if (spot->leader) {
            placer.takeLeader(spot->leader->start, spot->leader->foot, kLeaderDot);
        }
        spots[i] = *spot;
    }
    return spots;
}

/// Orders to place the tags in: as given, from each side, and from the middle of the bundle out.
std::vector<std::vector<std::size_t>> ordersOf(const std::vector<Cut>& cuts) {
    Point middle;
    for (const auto& cut : cuts) {
        middle.x += cut.centre.x / static_cast<double>(cuts.size());
        middle.y += cut.centre.y / static_cast<double>(cuts.size());
    }
    const std::array<std::function<double(const Point&)>, 7> keys = {
        [](const Point&) { return 0.0; },
        [](const Point& at) { return at.y; },
        [](const Point& at) { return -at.y; },
        [](const Point& at) { return at.x; },
        [](const Point& at) { return -at.x; },
        [&](const Point& at) { return std::hypot(at.x - middle.x, at.y - middle.y); },
        [&](const Point& at) { return -std::hypot(at.x - middle.x, at.y - middle.y); }};
    std::vector<std::vector<std::size_t>> orders;
    for (const auto& key : keys) {
        std::vector<std::size_t> order(cuts.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return key(cuts[a].centre) < key(cuts[b].centre) - 1e-9;
        });
        orders.push_back(std::move(order));
    }
    return orders;
}

/// The order that spoils least; none where no order places all, or some would be hard to follow.
std::optional<std::vector<Spot>> bestOrder(const Sketch& sketch,
                                           const std::vector<Text>& tags,
                                           const std::vector<Cut>& cuts,
                                           const Placer& placer) {
    std::optional<std::vector<Spot>> best;
    double least = kWorstSpot * static_cast<double>(cuts.size());
    for (const auto& order : ordersOf(cuts)) {
        auto spots = spotsOf(sketch, tags, cuts, order, placer);
        double cost = 0.0;
        for (std::size_t i = 0; spots && i < spots->size(); ++i) {
            cost += (*spots)[i].cost;
        }
        if (spots && cost < least - 1e-9) {
            least = cost;
            best = std::move(spots);
        }
    }
    return best;
}

/// Whether a leader or another conductor runs through the middle of a cut.
bool isCrossed(const Rect& box,
               std::size_t cut,
               const std::vector<Cut>& cuts,
               const std::vector<Spot>& spots) {
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        const auto& leader = spots[i].leader;
        if (leader && crosses(grown(box, kLeaderDot), leader->start, leader->foot)) {
            return true;
        }
        const auto& outline = cuts[i].outline;
        for (std::size_t k = 0; i != cut && k < outline.size(); ++k) {
            if (crosses(grown(box, kObject), outline[k], outline[(k + 1) % outline.size()])) {
                return true;
            }
        }
    }
    return false;
}

/// The phases' letters in the cuts where there is room for them and nothing runs through.
void drawPhases(Sketch& sketch,
                const geometry::BuiltLayout& built,
                const std::vector<Cut>& cuts,
                const std::vector<Spot>& spots,
                const TextSizes& sizes) {
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        Text text;
        text.at = cuts[i].centre;
        text.text = layout::phaseText(built.layout.conductors[cuts[i].conductor].phase);
        text.height = sizes.body;
        text.face = Face::bold;
        text.anchorX = AnchorX::middle;
        text.anchorY = AnchorY::middle;
        const bool fits = cuts[i].reach >= 1.1 * sizes.body;
        if (fits && !isCrossed(sketch.inkOf(text), i, cuts, spots)) {
            sketch.text(text);
        }
    }
}

bool drawTagsBeside(Sketch& sketch,
                    const geometry::BuiltLayout& built,
                    const std::vector<Cut>& cuts,
                    const Placer& placer,
                    const TextSizes& sizes) {
    std::vector<Text> tags;
    for (const auto& cut : cuts) {
        tags.push_back(sideTag(tagOf(built.layout.conductors[cut.conductor]), sizes));
        tags.back().anchorX = AnchorX::middle;
    }
    const auto spots = bestOrder(sketch, tags, cuts, placer);
    if (!spots) {
        return false;
    }
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        tags[i].at = (*spots)[i].at;
        sketch.text(tags[i]);
        if (const auto& leader = (*spots)[i].leader) {
            sketch.line(Stratum::dimensions, leader->start, leader->foot, inkPen(0.13));
            sketch.add(Stratum::dimensions, Circle{leader->foot, kLeaderDot, std::nullopt, kInk});
        }
    }
    drawPhases(sketch, built, cuts, *spots, sizes);
    return true;
}

}  // namespace

Rect sectionSize(const geometry::BuiltLayout& built,
                 const SectionPlan& plan,
                 const TextMetrics& metrics) {
    const auto& inside = built.gutter().inside;
    return {0,
            0,
            inside.z * plan.mmPerInch + 2 * sideMargin(built, plan, metrics),
            inside.y * plan.mmPerInch + 2 * verticalMargin(built, plan) + kBelow * plan.sizes.body};
}

namespace {

Rect boxOf(const std::vector<Point>& outline) {
    Rect box{outline.front().x, outline.front().y, 0, 0};
    for (const auto& point : outline) {
        box = united(box, {point.x, point.y, 0, 0});
    }
    return box;
}

/// Draws the cut conductors; says where they lie.
std::vector<Cut> drawCuts(Sketch& sketch,
                          const geometry::BuiltLayout& built,
                          const geometry::Section& section,
                          const ViewFrame& frame) {
    std::vector<Cut> cuts;
    for (const auto& cut : section.conductors) {
        const auto& conductor = built.layout.conductors[cut.conductor];
        const bool bare = conductor.insulation == standards::Insulation::bare;
        const auto fill = bare ? kCopperFill : styleOf(conductor, built.layout).fill;
        const auto outline = onPaper(cut.outline, frame, section.x);
        sketch.add(Stratum::objects, Polyline{outline, true, inkPen(kObject), fill});
        const auto centre = frame.at({section.x, cut.centre.y, cut.centre.x});
        const double width = frame.mm(built.conductors[cut.conductor].diameter.in());
        cuts.push_back({cut.conductor, centre, outline, kReach * width});
    }
    return cuts;
}

/// Inside the walls or beside them, off the walls and the blocks.
Placer placerOf(const Rect& room, const Rect& interior, const std::vector<Rect>& blocks) {
    Placer placer(room);
    const auto outside = grown(interior, kWall + 0.4);
    const double band = kWall + 0.8;
    placer.keepOff({outside.x, outside.y, outside.width, band});
    placer.keepOff({outside.x, outside.bottom() - band, outside.width, band});
    placer.keepOff({outside.x, outside.y, band, outside.height});
    placer.keepOff({outside.right() - band, outside.y, band, outside.height});
    for (const auto& block : blocks) {
        placer.keepOff(block);
    }
    return placer;
}

}  // namespace

ViewFrame sectionFrame(const geometry::BuiltLayout& built,
                       const SectionPlan& plan,
                       const TextMetrics& metrics,
                       Point corner) {
    return frameAt(
        geometry::View::end,
        built.gutter().inside,
        plan.mmPerInch,
        {corner.x + sideMargin(built, plan, metrics), corner.y + verticalMargin(built, plan)});
}

void drawSection(Sketch& sketch,
                 const geometry::BuiltLayout& built,
                 const SectionPlan& plan,
                 Point corner) {
    const auto size = sectionSize(built, plan, sketch.metrics());
    const auto frame = sectionFrame(built, plan, sketch.metrics(), corner);
    const auto interior = interiorOf(frame, built.gutter().inside);
    drawWalls(sketch, interior, geometry::View::end);
    const auto section = geometry::sectionAt(built, plan.x);
    std::vector<Rect> blocks;
    for (const auto& block : section.blocks) {
        const auto outline = onPaper(block.outline, frame, plan.x);
        drawCutBlock(sketch, outline);
        blocks.push_back(boxOf(outline));
    }
    const auto cuts = drawCuts(sketch, built, section, frame);
    const Rect room{corner.x, corner.y, size.width, size.height};
    if (!drawTagsBeside(sketch, built, cuts, placerOf(room, interior, blocks), plan.sizes)) {
        drawCallouts(sketch, built, cuts, interior, room, plan.sizes);
    }
}

Rect endViewSize(const geometry::BuiltLayout& built, double mmPerInch, const TextSizes& sizes) {
    const auto& inside = built.gutter().inside;
    const double beside = kWall + kStub + 2.0;
    return {0,
            0,
            inside.z * mmPerInch + 2 * beside + dimensionBand(sizes),
            inside.y * mmPerInch + 2 * beside + dimensionBand(sizes)};
}

void drawEndView(Sketch& sketch,
                 const geometry::BuiltLayout& built,
                 double mmPerInch,
                 const TextSizes& sizes,
                 Point corner) {
    const auto& inside = built.gutter().inside;
    const double beside = kWall + kStub + 2.0;
    const auto frame = frameAt(geometry::View::end,
                               inside,
                               mmPerInch,
                               {corner.x + beside + dimensionBand(sizes), corner.y + beside});
    drawGutter(sketch, built, frame);
    const auto interior = interiorOf(frame, inside);
    const auto unit = built.layout.displayUnit;
    dimensionAlongX(sketch,
                    {interior.x,
                     interior.right(),
                     interior.bottom() + kWall,
                     interior.bottom() + beside + dimensionBand(sizes) - 1.5},
                    dimensionText(inside.z, unit),
                    sizes);
    dimensionAlongY(sketch,
                    {interior.y, interior.bottom(), interior.x - kWall, interior.x - beside - 0.5},
                    dimensionText(inside.y, unit),
                    sizes);
}

}  // namespace gw::drawing
