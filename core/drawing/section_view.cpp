#include "drawing/section_view.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "drawing/dimensions.h"
#include "drawing/gutter_view.h"
#include "drawing/placer.h"
#include "drawing/walls.h"
#include "geometry/section.h"

namespace gw::drawing {
namespace {

constexpr double kLeader = 4.0;  // mm between the wall and the tags at the side

std::vector<Point> onPaper(const geometry::Outline& outline, const ViewFrame& frame, double x) {
    std::vector<Point> points;
    for (const auto& point : outline) {
        points.push_back(frame.at({x, point.y, point.x}));  // outlines are in (z, y)
    }
    return points;
}

void drawCutBlock(Sketch& sketch, const std::vector<Point>& outline) {
    sketch.add(Stratum::walls, Polyline{outline, true, std::nullopt, Colour{246, 240, 214}});
    Rect box{outline.front().x, outline.front().y, 0, 0};
    for (const auto& point : outline) {
        box = united(box, {point.x, point.y, 0, 0});
    }
    hatch(sketch, Stratum::walls, box, 2.2, inkPen(kThin));
    sketch.add(Stratum::walls, Polyline{outline, true, inkPen(kOutline), std::nullopt});
}

/// A cut conductor whose tag stands at the side.
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
                  std::vector<Callout> callouts,
                  const Rect& interior,
                  const Rect& room,
                  const TextSizes& sizes) {
    auto sides = bySide(std::move(callouts));
    for (std::size_t s = 0; s < sides.size(); ++s) {
        const bool left = s == 0;
        const double edge =
            left ? interior.x - kWall - kLeader : interior.right() + kWall + kLeader;
        spreadTags(sides[s], room, sizes.body + 0.5);
        for (const auto& callout : sides[s]) {
            auto text = sideTag(built.layout.conductors[callout.conductor].tag, sizes);
            text.at = {left ? edge - 0.6 : edge + 0.6, callout.y};
            text.anchorX = left ? AnchorX::right : AnchorX::left;
            sketch.text(text);
            sketch.line(Stratum::dimensions, {edge, callout.y}, callout.centre, inkPen(0.13));
            sketch.add(Stratum::dimensions, Circle{callout.centre, 0.35, std::nullopt, kInk});
        }
    }
}

/// The phase's letter in the cut, above its leader's dot, where there is room for it.
void drawPhase(Sketch& sketch,
               const layout::Conductor& conductor,
               Point centre,
               double width,
               const TextSizes& sizes) {
    if (width < 2.6 * sizes.body) {
        return;
    }
    Text text;
    text.at = {centre.x, centre.y - 0.22 * width};
    text.text = std::string(layout::phaseText(conductor.phase));
    text.height = sizes.body;
    text.face = Face::bold;
    text.anchorX = AnchorX::middle;
    text.anchorY = AnchorY::middle;
    sketch.text(text);
}

}  // namespace

Rect sectionSize(const geometry::BuiltLayout& built,
                 const SectionPlan& plan,
                 const TextMetrics& metrics) {
    const auto& inside = built.gutter().inside;
    return {0,
            0,
            inside.z * plan.mmPerInch + 2 * sideMargin(built, plan, metrics),
            inside.y * plan.mmPerInch + 2 * verticalMargin(built, plan)};
}

void drawSection(Sketch& sketch,
                 const geometry::BuiltLayout& built,
                 const SectionPlan& plan,
                 Point corner) {
    const auto size = sectionSize(built, plan, sketch.metrics());
    const double above = verticalMargin(built, plan);
    const auto frame =
        frameAt(geometry::View::end,
                built.gutter().inside,
                plan.mmPerInch,
                {corner.x + sideMargin(built, plan, sketch.metrics()), corner.y + above});
    const auto interior = interiorOf(frame, built.gutter().inside);
    drawWalls(sketch, interior, geometry::View::end);
    const auto section = geometry::sectionAt(built, plan.x);
    for (const auto& block : section.blocks) {
        drawCutBlock(sketch, onPaper(block.outline, frame, plan.x));
    }
    std::vector<Callout> callouts;
    for (const auto& cut : section.conductors) {
        const auto& conductor = built.layout.conductors[cut.conductor];
        const auto style = styleOf(conductor, built.layout);
        sketch.add(
            Stratum::objects,
            Polyline{onPaper(cut.outline, frame, plan.x), true, inkPen(kObject), style.fill});
        const auto centre = frame.at({plan.x, cut.centre.y, cut.centre.x});
        drawPhase(sketch,
                  conductor,
                  centre,
                  frame.mm(built.conductors[cut.conductor].diameter.in()),
                  plan.sizes);
        callouts.push_back({cut.conductor, centre, centre.y});
    }
    drawCallouts(sketch,
                 built,
                 std::move(callouts),
                 interior,
                 {corner.x, corner.y, size.width, size.height},
                 plan.sizes);
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
