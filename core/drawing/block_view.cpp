#include "drawing/block_view.h"

#include <algorithm>
#include <cmath>

namespace gw::drawing {
namespace {

constexpr double kScrewRadius = 0.16;  // in: drawn size of a screw head; parts do not state it

void addBore(std::vector<Element>& elements,
             const geometry::BuiltPort& port,
             double diameter,
             const ViewFrame& frame) {
    const double radius = 0.5 * frame.mm(diameter);
    const auto near = frame.at(port.mouth);
    const double toward = dot(port.direction, frame.towardEye());
    if (std::abs(toward) > 0.5) {
        const bool facing = toward < 0.0;  // the bore leads away from the eye
        elements.push_back(Circle{near,
                                  radius,
                                  inkPen(facing ? kFine : kThin, facing ? Dash::solid : Dash::fine),
                                  facing ? std::optional(kPaleGrey) : std::nullopt});
        return;
    }
    const auto far = frame.at(port.farMouth);
    const auto direction = frame.turned(port.direction);
    const Point across{-direction.y * radius, direction.x * radius};
    for (const double side : {-1.0, 1.0}) {
        elements.push_back(Polyline{{{near.x + side * across.x, near.y + side * across.y},
                                     {far.x + side * across.x, far.y + side * across.y}},
                                    false,
                                    inkPen(kThin, Dash::fine),
                                    std::nullopt});
    }
}

void addScrew(std::vector<Element>& elements,
              const geometry::BuiltBlock::Screw& screw,
              const ViewFrame& frame) {
    if (dot(screw.outward, frame.towardEye()) < 0.5) {
        return;
    }
    const auto at = frame.at(screw.head);
    const double radius = screwRadius(frame);
    elements.push_back(Circle{at, radius, inkPen(kFine), kPaper});
    const double slot = 0.6 * radius;
    elements.push_back(Polyline{
        {{at.x - slot, at.y + slot}, {at.x + slot, at.y - slot}}, false, inkPen(kFine), {}});
}

}  // namespace

double screwRadius(const ViewFrame& frame) {
    return std::max(frame.mm(kScrewRadius), 0.35);
}

SceneItem blockItem(const geometry::BuiltBlock& block, const ViewFrame& frame) {
    SceneItem item;
    item.nearness = std::max(frame.nearness(block.body.least), frame.nearness(block.body.greatest));
    const auto body = blockRect(block, frame);
    item.elements.push_back(Polyline{{{body.x, body.y},
                                      {body.right(), body.y},
                                      {body.right(), body.bottom()},
                                      {body.x, body.bottom()}},
                                     true,
                                     inkPen(kObject),
                                     kBlockFill});
    for (std::size_t i = 0; i < block.ports.size(); ++i) {
        addBore(item.elements, block.ports[i], block.part->ports[i].boreDiameter.in(), frame);
    }
    for (const auto& screw : block.screws) {
        addScrew(item.elements, screw, frame);
    }
    return item;
}

}  // namespace gw::drawing
