#include "geometry/built_pieces.h"

namespace gw::geometry {
namespace {

/// From body coordinates to gutter coordinates for one placed block.
class Placing {
public:
    Placing(const layout::Block& block, const Vec3& body) : attitude_(block.attitude) {
        // A turned edge that points backwards would leave the corner; shift the body back onto it.
        const Vec3 turned = attitude_.turn(body);
        const auto back = [](double edge) { return edge < 0.0 ? -edge : 0.0; };
        origin_ = block.corner + Vec3{back(turned.x), back(turned.y), back(turned.z)};
    }

    Vec3 point(const Vec3& p) const { return origin_ + attitude_.turn(p); }
    Vec3 direction(const Vec3& d) const { return attitude_.turn(d); }

private:
    parts::Attitude attitude_;
    Vec3 origin_;
};

}  // namespace

BuiltBlock buildBlock(const layout::Block& block, const parts::Part& part) {
    const Placing placing(block, part.body);
    BuiltBlock built;
    built.part = &part;
    built.body = {block.corner, block.corner + block.attitude.turnedExtents(part.body)};
    for (const auto& port : part.ports) {
        built.ports.push_back({placing.point(port.mouth),
                               placing.direction(port.direction),
                               placing.point(parts::boreEnd(port))});
    }
    for (const auto& screw : part.screws) {
        built.screws.push_back({placing.point(screw.head), placing.direction(screw.outward)});
    }
    for (const auto& hole : part.mountingHoles) {
        built.mountingHoles.push_back(placing.point(hole.centre));
    }
    return built;
}

}  // namespace gw::geometry
